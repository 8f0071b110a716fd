/** Knots of a piecewise linear temperature, ascending in time. */
import { hourMs } from '../units.ts';

export type FilledBy = 'other-sensor' | 'daily-extremes' | 'diurnal-curve';

export interface Knot {
  timeMs: number;
  temperatureC: number;
  /** Absent for a believed reading of the leading sensor. */
  by?: FilledBy;
}

/** Readings up to this far apart are joined by a straight line. */
export const longestLineMs = 2 * hourMs;

/** Index of the first knot at or after an instant. */
export function firstFrom(knots: readonly Knot[], timeMs: number): number {
  let low = 0;
  let high = knots.length;
  while (low < high) {
    const middle = (low + high) >> 1;
    if (knots[middle]!.timeMs < timeMs) low = middle + 1;
    else high = middle;
  }
  return low;
}

/** The knots from one instant to another, both included. */
export function between(knots: readonly Knot[], fromMs: number, toMs: number): Knot[] {
  return knots.slice(firstFrom(knots, fromMs), firstFrom(knots, toMs + 1));
}

/** The straight line between the knots around an instant; undefined where they are too far apart. */
export function lineAt(
  knots: readonly Knot[],
  timeMs: number,
  longestMs = longestLineMs,
): number | undefined {
  const i = firstFrom(knots, timeMs);
  const before = knots[i - 1];
  const after = knots[i];
  if (after?.timeMs === timeMs) return after.temperatureC;
  if (!before || !after || after.timeMs - before.timeMs > longestMs) return undefined;
  const share = (timeMs - before.timeMs) / (after.timeMs - before.timeMs);
  return before.temperatureC + share * (after.temperatureC - before.temperatureC);
}

export function mean(values: readonly number[]): number | undefined {
  return values.length === 0 ? undefined : values.reduce((sum, value) => sum + value, 0) / values.length;
}
