/** How issued forecasts did against the counts that came after them. */
import { crpsOfQuantiles, heldRounds, type PestId, type Quantiles, type Season } from '../model/index.ts';
import type { IssuedForecast } from '../store/store.ts';

/** One count beside what had been expected of it: for a week on a whole card, or leaves with any of ten. */
export interface ScoredCount {
  pest: PestId;
  timeMs: number;
  counted: number;
  expected: Quantiles;
  /** The mean of the round before; absent for the first. */
  before?: number;
}

/** Every count of the season for which a forecast had been kept about a week before, by pest and time. */
export function scoredCounts(
  season: Season,
  issued: readonly IssuedForecast[],
  nowMs: number,
): ScoredCount[] {
  const kept = {
    times: issued.map(({ asOfMs }) => asOfMs),
    at: (ms: number) => issued.find(({ asOfMs }) => asOfMs === ms)?.forecast,
  };
  return heldRounds(season, kept, nowMs).flatMap(({ pest, time, counts, said, last }) => {
    if (!said) return [];
    const before = last === undefined ? {} : { before: last };
    return counts.map((counted) => ({
      pest,
      timeMs: Date.parse(time),
      counted,
      expected: said.count,
      ...before,
    }));
  });
}

/** Inside the range that promises 8 of 10. */
export const isInside = ({ counted, expected }: ScoredCount): boolean =>
  counted >= expected.q10 && counted <= expected.q90;

const levels = { q025: 0.025, q10: 0.1, q25: 0.25, q50: 0.5, q75: 0.75, q90: 0.9, q975: 0.975 } as const;
const log1p = (value: number) => Math.log1p(Math.max(0, value));

/**
 * Mean CRPS on log(1 + count) of the forecast and of repeating the last count, over the counts that have
 * one before them; undefined without any.
 */
export function againstRepeating(
  scored: readonly ScoredCount[],
): { forecast: number; repeating: number } | undefined {
  const both = scored.flatMap((each) =>
    each.before === undefined ? [] : [{ ...each, before: each.before }],
  );
  if (both.length === 0) return undefined;
  const mean = (values: number[]) => values.reduce((sum, value) => sum + value, 0) / values.length;
  return {
    forecast: mean(
      both.map(({ expected, counted }) =>
        crpsOfQuantiles(
          Object.entries(levels).map(([name, level]) => ({
            level,
            value: log1p(expected[name as keyof typeof levels]),
          })),
          log1p(counted),
        ),
      ),
    ),
    repeating: mean(both.map(({ before, counted }) => Math.abs(log1p(before) - log1p(counted)))),
  };
}
