/** Every way to deal with a pest, weighed on possible seasons, and what to choose of them. */
import { addDays, atLocalHour, localDay } from '../climate/calendar.ts';
import type { Fit } from '../forecast.ts';
import { decidingMembers, fewMembers, type OverLimit } from '../inference/overLimit.ts';
import type { ReleasePlan, Way, WayKind } from '../outcome.ts';
import type { EnemyId, PestId, Place, Release, Season, Treatment } from '../season.ts';
import { type Draft, laterDates, leaveDraft, otherSizes, parcelNow, washDraft } from './drafts.ts';
import { costOf, expectedLoss, gain, total, washCosts } from './loss.ts';
import { isSameParcel, orderSum, parcelToOrder } from './parcel.ts';
import { canWashToday } from './washDay.ts';

/** Sizes and dates are tried of the enemies that do best at their usual size. */
const triedFurther = 2;
/** A gain of less than this share of the money is not worth a parcel. Judgement. */
const leastReturn = 0.1;
/** Errors by which another size must be better than the usual: near ties turn with every reading, and the model errs too. Judgement. */
const surely = 2;

export interface Weighed {
  kind: WayKind;
  plan?: ReleasePlan;
  seasons: OverLimit;
  money: number;
  way: Way;
}

/** All ways, and again on more possible seasons those between which it is decided; of both the least expected loss first. */
export interface WaysWeighed {
  ways: readonly Weighed[];
  between: readonly Weighed[];
}

/** Weighs all ways on few possible seasons, and those it is decided between on more. `enemies` are those that may be set out. */
export function weighWays(
  season: Season,
  fit: Fit,
  facts: { pest: PestId; asOfMs: number },
  enemies: readonly EnemyId[],
): WaysWeighed {
  const { asOfMs } = facts;
  const weighed = (draft: Draft) => weigh(season, fit, facts, draft);
  const usual = enemies.map((enemy) => weighed(parcelNow('now', parcelToOrder(season, enemy, asOfMs))));
  const further = [...usual]
    .sort(byLoss)
    .slice(0, triedFurther)
    .map(({ plan }) => plan!);
  const others = further.flatMap((plan) => [
    ...otherSizes(season, plan),
    ...laterDates(season, plan, asOfMs),
  ]);
  const few = [...usual, ...[...others, leaveDraft, washDraft].map(weighed)].sort(byLoss);
  const between = decidedBetween(season.place, few)
    .map((draft) => weigh(season, fit, facts, draft, decidingMembers))
    .sort(byLoss);
  const isRough = ({ way }: Weighed) => between.every(({ way: { id } }) => id !== way.id);
  return { ways: [...between, ...few.filter(isRough)].sort(byLoss), between };
}

/** The best parcel now and the best of a usual size, alone and after a wash; the best later; to leave it, and to wash. */
function decidedBetween(place: Place, ways: readonly Weighed[]): Draft[] {
  const now = ways.filter(({ kind }) => kind === 'now');
  const parcels = [...new Set([now[0]!, now.find((way) => isUsualSize(place, way))!])];
  const others = (['later', 'leave', 'wash'] as const).map(
    (wanted) => ways.find(({ kind }) => kind === wanted)!,
  );
  return [
    ...[...parcels, ...others].map(({ kind, plan, way: { id, label } }) => ({
      kind,
      id,
      label,
      ...(plan ? { plan } : {}),
    })),
    ...parcels.map(({ plan }) => parcelNow('wash-then', plan!)),
  ];
}

const isUsualSize = (place: Place, { plan }: Weighed): boolean =>
  plan!.number === orderSum(place, plan!.enemy).number;

const byLoss = (a: Weighed, b: Weighed): number => a.way.expectedLoss - b.way.expectedLoss;

/** Whether the first spares enough against the second to be sure of it: by so many of its errors, and by the money it asks. */
export function isClearGain(place: Place, first: Weighed, second: Weighed, errors = 1): boolean {
  const { mean, standardError } = gain(place, first, second);
  return mean > Math.max(errors * standardError, leastReturn * Math.max(0, first.money - second.money));
}

/** What to do now with a parcel: set it out, after a wash where that is clearly better than the same parcel alone. */
export function actOfChoice(season: Season, between: readonly Weighed[], asOfMs: number): Weighed {
  const parcel = parcelOfChoice(season.place, between);
  const washed = between.find(({ kind, plan }) => kind === 'wash-then' && isSameParcel(plan!, parcel.plan!));
  const isFirst =
    washed && canWashBefore(season, asOfMs, parcel.plan!) && isClearGain(season.place, washed, parcel);
  return isFirst ? washed : parcel;
}

/** The parcel to buy now: of the usual size of what then loses least, unless another is better by more than twice the error. */
function parcelOfChoice(place: Place, between: readonly Weighed[]): Weighed {
  const now = between.filter(({ kind }) => kind === 'now');
  const usual = now.find((way) => isUsualSize(place, way))!;
  return isClearGain(place, now[0]!, usual, surely) ? now[0]! : usual;
}

/** Whether somebody is at home to wash today, the film is dry when the parcel is set out, and nothing was washed or sprayed of late. */
function canWashBefore(season: Season, asOfMs: number, { windowFrom }: ReleasePlan): boolean {
  const today = localDay(asOfMs, season.place.timeZone);
  return canWashToday(season, asOfMs) && windowFrom >= addDays(today, 2);
}

/** Whether the plants are washed before a parcel that is ordered already. */
export function isWashFirstOf(
  season: Season,
  fit: Fit,
  facts: { pest: PestId; asOfMs: number },
  plan: ReleasePlan,
): boolean {
  if (!canWashBefore(season, facts.asOfMs, plan)) return false;
  const [parcel, washed] = (['now', 'wash-then'] as const).map((kind) =>
    weigh(season, fit, facts, parcelNow(kind, plan), decidingMembers),
  );
  return isClearGain(season.place, washed!, parcel!);
}

/** One way on the same possible seasons as all others of as many members. */
export function weigh(
  season: Season,
  fit: Fit,
  { pest, asOfMs }: { pest: PestId; asOfMs: number },
  { kind, id, label, plan }: Draft,
  members = fewMembers,
): Weighed {
  const { place } = season;
  const washes = kind === 'wash' || kind === 'wash-then';
  const releases = plan ? [releaseOf(season, plan)] : [];
  const treatments = washes ? [washTomorrow(season, asOfMs)] : [];
  const seasons = fit.overLimit(pest, { releases, treatments }, members);
  const money = (plan ? costOf(plan, place) : 0) + (washes ? washCosts : 0);
  const loss = expectedLoss(place, seasons, money);
  const way: Way = {
    id,
    kind,
    label,
    expectedLoss: cents(total(loss)),
    money: cents(loss.money),
    harm: cents(loss.harm),
    weeksOver: Math.round(loss.weeksOver * 10) / 10,
    ...(plan ? { plan } : {}),
  };
  return { kind, seasons, money, way, ...(plan ? { plan } : {}) };
}

const cents = (money: number): number => Math.round(money * 100) / 100;

/** A parcel as if it were set out on its first day. */
export const releaseOf = ({ place }: Season, { enemy, form, number, windowFrom }: ReleasePlan): Release => ({
  id: `plan-${enemy}`,
  enemy,
  form,
  number,
  time: noon(windowFrom, place.timeZone),
  aliveShare: 1,
});

/** A soap wash tomorrow. */
export const washTomorrow = ({ place: { timeZone } }: Season, asOfMs: number): Treatment => ({
  id: 'wash-tomorrow',
  kind: 'soap',
  time: noon(addDays(localDay(asOfMs, timeZone), 1), timeZone),
  coveredShare: 0.8,
});

const noon = (day: string, timeZone: string): string =>
  new Date(atLocalHour(day, 12, timeZone)).toISOString();
