/** How issued forecasts did against the counts that came after them. */
import {
  type Counted,
  crpsOfQuantiles,
  heldRounds,
  isCountedOnLeaves,
  type PestId,
  type Quantiles,
  type Season,
  type TrapCount,
} from '../model/index.ts';
import type { IssuedForecast } from '../store/store.ts';
import { dayMs } from './rules/rule.ts';

/** One count beside what had been expected of it: for a week on a whole card, or leaves with any of ten. */
export interface ScoredCount {
  pest: PestId;
  timeMs: number;
  counted: number;
  expected: Quantiles;
  /** What the same trap held the time before; absent for its first count. */
  before?: number;
}

/** A forecast made less than this before a count is no forecast of the week. Judgement. */
const fewestDaysAhead = 5;
const mostDaysAhead = 9;

/** Every count of a trap for which a forecast had been issued about a week before, oldest first. */
export function scoredCounts(season: Season, issued: readonly IssuedForecast[]): ScoredCount[] {
  const counts = season.trapCounts
    .filter(({ card }) => card === 'new')
    .sort((a, b) => Date.parse(a.time) - Date.parse(b.time));
  return counts.flatMap((count) => {
    const timeMs = Date.parse(count.time);
    const earlier = newestBefore(issued, timeMs);
    return (earlier?.forecast.pests ?? []).flatMap(({ pest, counted: seen, weeks }) => {
      if (seen.unit !== 'trap-week') return [];
      const kind = seen.kind;
      const weekly = perTrapWeek(count, kind);
      const week = weeks.find(({ end }) => Math.abs(Date.parse(end) - timeMs) <= 3.5 * dayMs);
      if (weekly === undefined || week === undefined) return [];
      const previous = counts
        .filter((other) => other.trapId === count.trapId && Date.parse(other.time) < timeMs)
        .at(-1);
      const before = previous && perTrapWeek(previous, kind);
      return [
        { pest, timeMs, counted: weekly, expected: week.count, ...(before !== undefined && { before }) },
      ];
    });
  });
}

/** The same of pests counted on leaves: each leaf check of this season for which a forecast had been kept. */
export function scoredLeaves(
  season: Season,
  issued: readonly IssuedForecast[],
  nowMs: number,
): ScoredCount[] {
  const kept = {
    times: issued.map(({ asOfMs }) => asOfMs),
    at: (ms: number) => issued.find(({ asOfMs }) => asOfMs === ms)?.forecast,
  };
  return heldRounds(season, kept, nowMs)
    .filter(({ pest }) => isCountedOnLeaves(season.place, pest))
    .flatMap(({ pest, time, counts, said, last }) =>
      counts.flatMap((counted) =>
        said === undefined
          ? []
          : [
              {
                pest,
                timeMs: Date.parse(time),
                counted,
                expected: said.count,
                ...(last !== undefined && { before: last }),
              },
            ],
      ),
    );
}

function newestBefore(issued: readonly IssuedForecast[], timeMs: number): IssuedForecast | undefined {
  return issued
    .filter(({ asOfMs }) => {
      const days = (timeMs - asOfMs) / dayMs;
      return days >= fewestDaysAhead && days <= mostDaysAhead;
    })
    .sort((a, b) => a.asOfMs - b.asOfMs)
    .at(-1);
}

function perTrapWeek(
  { counts, exposureDays, countedFraction }: TrapCount,
  kind: keyof TrapCount['counts'],
): number | undefined {
  const seen = counts[kind];
  return seen === undefined ? undefined : (middle(seen) * 7) / (exposureDays * countedFraction);
}

const middle = (seen: Counted): number => (typeof seen === 'number' ? seen : (seen.low + seen.high) / 2);

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
