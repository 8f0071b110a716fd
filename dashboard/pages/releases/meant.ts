/** What a release most likely is, and what may speak against it on a day. */
import type { Advice, EnemyId, Order, Release, Treatment } from '../../../services/model/index.ts';
import type { Recorded } from '../../api.ts';
import { addDays, dayAndMonth, localDay } from '../../words/dates.ts';
import { animals, enemyWords, treatmentNames } from '../../words/names.ts';

export interface MeantRelease {
  enemy: EnemyId;
  form: string;
  /** As typed; '' when nobody has said. */
  number: string;
}

/** The oldest open order, else what the advice plans, else the most usual friend. */
export function meantRelease(waiting: readonly Recorded<Order>[], advice: Advice | undefined): MeantRelease {
  const ordered = [...waiting].sort((a, b) => Date.parse(a.data.orderedAt) - Date.parse(b.data.orderedAt))[0];
  const planned = advice?.plan;
  const { enemy, number } = ordered?.data ?? planned ?? { enemy: 'encarsia-formosa', number: '' };
  const form = planned?.enemy === enemy ? planned.form : enemyWords[enemy].form;
  return { enemy, form, number: String(number) };
}

interface ReleaseCase {
  enemy: EnemyId;
  day: string;
  advice: Advice | undefined;
  treatments: readonly Recorded<Treatment>[];
  timeZone: string;
}

/** The longest waiting time after a known wash or spray (the model's own table goes no further). */
const longestWaitDays = 14;

/**
 * The wash or spray that may still harm them on that day. The advice judges residue for the day it plans:
 * for an earlier one its line is shown when something was washed or sprayed in the fortnight before.
 */
export function releaseCaution(release: ReleaseCase): string | undefined {
  const { enemy, day, advice, treatments, timeZone } = release;
  const dayOf = (treatment: Recorded<Treatment>) => localDay(Date.parse(treatment.data.time), timeZone);
  const sameDay = treatments.find((each) => dayOf(each) === day)?.data;
  if (sameDay)
    return `${treatmentNames[sameDay.kind]} the same day: it may harm or wash off what is released.`;
  const residue = advice?.conditions.find((each) => each.rule === 'residue');
  if (!residue || day === '' || advice?.plan?.enemy !== enemy) return undefined;
  const from = addDays(day, -longestWaitDays);
  const lately = treatments.some((each) => dayOf(each) >= from && dayOf(each) < day);
  const early = day < advice.plan.windowFrom && lately;
  return residue.verdict !== 'holds' || early ? residue.text : undefined;
}

/** A wash or spray on the day of a release. */
export function washCaution(
  day: string,
  releases: readonly Recorded<Release>[],
  timeZone: string,
): string | undefined {
  const released = releases.find(({ data }) => localDay(Date.parse(data.time), timeZone) === day)?.data;
  return (
    released &&
    `${animals(released.number, released.enemy)} released the same day, ${dayAndMonth(day)}: it may harm them or wash them off.`
  );
}
