/** What shows that a release has settled, and when: by the development of its young in the warmth of this house. */
import { addDays, localDay } from '../../climate/calendar.ts';
import type { Look } from '../../followUps.ts';
import type { LedgerEntry } from '../../outcome.ts';
import type { EnemyId, Place, Release } from '../../season.ts';
import { speciesById } from '../../species/catalogue.ts';
import { soldAs } from '../parcel.ts';
import { groupOf } from '../waitingTimes.ts';

/** They lay over some days, and insects differ: finding none tells so many days after the expected one. Judgement. */
const spreadDays = 7;
/** A sign seen so many days before the expected one may still be theirs. Judgement. */
const earlyDays = 3;

/** The first day on which a sign can be of this release. */
export const earliestSign = ({ from }: Look): string => addDays(from, -earlyDays);

/** What is looked for after a release; `ledger` is that of the forecast. */
export function lookOf(place: Place, ledger: readonly LedgerEntry[], release: Release): Look {
  const { lookFor, lookAfterDays } = soldAs(release.enemy);
  const dayOf = (time: string) => localDay(Date.parse(time), place.timeZone);
  const released = generationsOf(ledger, release);
  const sign = releasedAsLarvae(release) ? seenThemselves(released[0]) : youngShow(release.enemy, released);
  if (sign) {
    const { until } = sign;
    const from = dayOf(sign.from);
    // Larvae are there or not; of young the last of 9 of 10 may come later than a week after the first.
    const surelyBy = until ? from : latest(dayOf(sign.surelyBy), addDays(from, spreadDays));
    return { lookFor, from, surelyBy, ...(until && { until: dayOf(until) }), by: 'development' };
  }
  const from = addDays(dayOf(release.time), lookAfterDays);
  return { lookFor, from, surelyBy: addDays(from, spreadDays), by: 'usual-days' };
}

interface Sign {
  from: string;
  surelyBy: string;
  until?: string;
}

/** Of two days. */
export const latest = (a: string, b: string): string => (a > b ? a : b);

const releasedAsLarvae = ({ form }: Release): boolean => /larva/i.test(form);

const generationsOf = (ledger: readonly LedgerEntry[], { id, enemy }: Release): LedgerEntry[] =>
  ledger.filter((entry) => entry.species === enemy && entry.id === `${id}-${entry.generation}`);

/** Larvae are looked for themselves: once they have spread, until they pupate. */
function seenThemselves(entry: LedgerEntry | undefined): Sign | undefined {
  const ends = entry?.stages[0]?.ends;
  if (!entry || !ends) return undefined;
  const halfway = (Date.parse(entry.startedAt) + Date.parse(ends.q50)) / 2;
  const from = new Date(halfway).toISOString();
  return { from, surelyBy: from, until: ends.q90 };
}

/**
 * Of wasps the scale turns black or the aphid a mummy after the first stage; of mites the young must be grown to tell
 * that they breed; of the rest eggs are not seen and the larvae or nymphs are.
 */
function youngShow(enemy: EnemyId, generations: readonly LedgerEntry[]): Sign | undefined {
  const { stages } = speciesById(enemy).development;
  const young = generations.find((entry) => entry.stages.length === stages.length);
  const ends = young?.stages.at(groupOf(enemy) === 'mite' ? -1 : 0)?.ends;
  return ends && { from: ends.q50, surelyBy: ends.q90 };
}
