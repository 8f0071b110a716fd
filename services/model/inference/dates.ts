/** Days since the start of the season as instants. */
import { quantileRange } from '../numerics/quantiles.ts';
import type { DateRange } from '../outcome.ts';
import { dayMs } from '../units.ts';

export const instantOf = (startMs: number, day: number): string =>
  new Date(startMs + day * dayMs).toISOString();

/** Quantiles of weighted days as instants. */
export function dateRange(startMs: number, days: readonly number[], weights: readonly number[]): DateRange {
  const { q025, q10, q25, q50, q75, q90, q975 } = quantileRange(days, weights);
  const at = (day: number) => instantOf(startMs, day);
  return {
    q025: at(q025),
    q10: at(q10),
    q25: at(q25),
    q50: at(q50),
    q75: at(q75),
    q90: at(q90),
    q975: at(q975),
  };
}
