/** "What if": a parcel on another day or of another size, by the same way as the parcels of the advice. */
import { addDays } from '../climate/calendar.ts';
import type { Fit } from '../forecast.ts';
import { decidingMembers } from '../inference/overLimit.ts';
import { upTo } from '../inference/seasonPath.ts';
import type { ReleasePlan, Way } from '../outcome.ts';
import type { EnemyId, PestId, Season } from '../season.ts';
import { type ReleaseOption, releaseOption, weighable } from './candidates.ts';
import { nextDelivery } from './delivery.ts';
import { leaveDraft, parcelNow } from './drafts.ts';
import { evidence } from './evidence.ts';
import { parcelOf, parcelToOrder } from './parcel.ts';
import { weigh } from './ways.ts';

/** What is tried: so many of an enemy, set out on a local day. */
export interface Trial {
  pest: PestId;
  enemy: EnemyId;
  number: number;
  day: string;
}

export interface Tried extends ReleaseOption {
  /** What it may cost, weighed on fewer possible seasons than the advice decides on, to answer at once. */
  way: Way;
}

/** The parcel that would be advised of each enemy of a pest, where a try begins. */
export function usualParcels(season: Season, pest: PestId, asOfMs: number): ReleasePlan[] {
  const known = upTo(season, asOfMs);
  return weighable(known.place, pest).map((record) => parcelToOrder(known, record.id as EnemyId, asOfMs));
}

/** The forecast with the parcel tried; equal to the advice's own for the same day and number. */
export function tryRelease(season: Season, fit: Fit, { pest, ...trial }: Trial, asOfMs: number): Tried {
  const known = upTo(season, asOfMs);
  const facts = { pest, evidence: evidence(known, pest, asOfMs), asOfMs };
  const plan = planOf(known, trial, asOfMs);
  const { way } = weigh(known, fit, facts, parcelNow('now', plan));
  return { ...releaseOption(known, fit, facts, plan), way };
}

/** What leaving it may cost, to hold a try against. */
export const leftWay = (season: Season, fit: Fit, pest: PestId, asOfMs: number): Way =>
  weigh(upTo(season, asOfMs), fit, { pest, asOfMs }, leaveDraft, decidingMembers).way;

/** The last delivery on or before the day, when one can still be ordered; otherwise no day to order by. */
function planOf({ place }: Season, { enemy, number, day }: Omit<Trial, 'pest'>, asOfMs: number): ReleasePlan {
  const parcel = parcelOf(place, { enemy, number }, day);
  const delivery = Array.from({ length: 7 }, (_, back) =>
    nextDelivery(place, asOfMs, addDays(day, -back)),
  ).find(({ arrivesOn }) => arrivesOn <= day);
  return { ...parcel, ...delivery };
}
