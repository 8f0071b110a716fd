/**
 * Totals under leaves, played again count by count: counts so dense that every leaf has some would be all alike as
 * leaves with any of ten. What was known at a count makes its forecast; later counts lend only their time and leaves.
 */
import { type Fit, type ForecastOptions, fit as fitSeason } from '../forecast.ts';
import { seeded } from '../numerics/random.ts';
import { middleOf, shownOf } from '../observation/counts.ts';
import type { PestId, Season } from '../season.ts';
import { dayMs } from '../units.ts';
import { firstRound, type ScoredCount, scoresOfRound } from './replay.ts';

/** Forecasts are scored so many counts ahead. */
const countsAhead = [1, 2, 4] as const;

/** Scores of all forecasts of one pest; `lead` is in counts. */
export function replayTotals(season: Season, pest: PestId, options: ForecastOptions = {}): ScoredCount[] {
  const rounds = shownOf(season, pest, 0).leaves.flatMap(({ timeMs, leaves, young }) =>
    young ? [{ timeMs, leaves, counts: [Math.round(middleOf(young))] }] : [],
  );
  let earlier: Fit | undefined;
  return rounds.slice(firstRound - 1, -1).flatMap(({ timeMs: asOfMs }, i) => {
    const now = firstRound - 1 + i;
    const due = countsAhead.flatMap((lead) => {
      const round = rounds[now + lead];
      return round ? [{ lead, round }] : [];
    });
    const asOf = new Date(asOfMs).toISOString();
    earlier = fitSeason(season, asOf, { ...options, ...(earlier ? { earlier } : {}) });
    const samples = earlier.leafTotals(
      pest,
      due.map(({ round }) => round),
    );
    const random = seeded(Math.floor(asOfMs / dayMs));
    return due.flatMap(({ lead, round }, at) => {
      const weeks = (round.timeMs - asOfMs) / (7 * dayMs);
      const before = rounds.slice(0, now + 1);
      const said = { pest, asOfMs, before, unit: 'trap-week', lead, weeks, sample: samples[at]! } as const;
      return scoresOfRound(round, said, random);
    });
  });
}
