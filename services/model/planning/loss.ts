/**
 * What a way costs: money, and harm to the crop by the days that pests sit on it (docs/advice.md). Published thresholds
 * are few and of other crops; a person who bears less than usual loses more by the same pests.
 */
import type { OverLimit } from '../inference/overLimit.ts';
import type { ReleasePlan } from '../outcome.ts';
import type { Place } from '../season.ts';
import { soldAs } from './parcel.ts';

/** Worth of a season's crop on a m2 under glass, in the currency of the place: common practice, no source. */
const cropWorthPerM2 = 20;
/** Soap and half an hour: common practice, no source. */
export const washCosts = 2;
/** Where no price is entered: a fee, and one usual dose for a m2. Common practice, no source. */
const assumed = { parcelFee: 6, perM2: 1.2 };

/** Worth of a season's crop of the place. */
export const cropWorth = ({ areaM2 }: Place): number => cropWorthPerM2 * areaM2;

/** Harm of one possible season. */
const harmOf = (worth: number, damage: number): number => worth * -Math.expm1(-damage);

export interface ExpectedLoss {
  money: number;
  harm: number;
  /** Weeks over the limit, of the weeks ahead. */
  weeksOver: number;
}

/** Mean over the possible seasons. */
export function expectedLoss(place: Place, seasons: OverLimit, money: number): ExpectedLoss {
  const worth = cropWorth(place);
  const mean = (of: (season: OverLimit[number]) => number) =>
    seasons.reduce((sum, season) => sum + of(season), 0) / seasons.length;
  return {
    money,
    harm: mean(({ damage }) => harmOf(worth, damage)),
    weeksOver: mean(({ weeksOver }) => weeksOver),
  };
}

export const total = ({ money, harm }: ExpectedLoss): number => money + harm;

/** Of a parcel by the supplier's list, or an assumed price. */
export function costOf({ price, enemy, perM2 }: ReleasePlan, { areaM2 }: Place): number {
  return price ?? assumed.parcelFee + (assumed.perM2 * areaM2 * perM2) / soldAs(enemy).perM2;
}

/** Saved by the first against the second in the same possible seasons, and its standard error. */
export function gain(
  place: Place,
  first: { seasons: OverLimit; money: number },
  second: { seasons: OverLimit; money: number },
): { mean: number; standardError: number } {
  const worth = cropWorth(place);
  const saved = first.seasons.map(
    ({ damage }, i) =>
      harmOf(worth, second.seasons[i]!.damage) - harmOf(worth, damage) + second.money - first.money,
  );
  const mean = saved.reduce((sum, each) => sum + each, 0) / saved.length;
  const variance = saved.reduce((sum, each) => sum + (each - mean) ** 2, 0) / Math.max(1, saved.length - 1);
  return { mean, standardError: Math.sqrt(variance / saved.length) };
}
