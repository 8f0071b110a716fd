/** Forecasts of the totals counted in cages, scored: cage by cage, and the table of docs/real-counts.md. */
import { type PestScore, replayTotals, type ScoredCount, scoresByPest } from '../services/model/index.ts';
import { allCages, type Cage, type SeriesId, seriesById } from './cages.ts';
import { bestBaseline, mean } from './forecastScores.ts';
import type { Stamp } from './page.ts';

export interface CageTask {
  /** Id of the place. */
  cage: string;
  members: number;
}

export interface CageResult {
  series: SeriesId;
  task: CageTask;
  counts: ScoredCount[];
}

/** One series of cages; leads are in counts. */
export interface SeriesScore {
  series: SeriesId;
  cages: number;
  /** Cages in which the forecast did better than the better baseline of the series. */
  better: number;
  score: PestScore;
}

/** What the page is written from. */
export interface CageScores {
  stamp: Stamp;
  series: SeriesScore[];
}

/** Every forecast of one cage, made from what was known then. */
export function scoreCage(task: CageTask): CageResult {
  const { series, season } = cageById(task.cage);
  const { pest } = seriesById[series];
  return { series, task, counts: replayTotals(season, pest, { members: task.members }) };
}

function cageById(id: string): Cage {
  const found = allCages().find(({ season }) => season.place.id === id);
  if (!found) throw new RangeError(`no cage ${id} stands in tests/data`);
  return found;
}

export function seriesScores(results: readonly CageResult[]): SeriesScore[] {
  return (Object.keys(seriesById) as SeriesId[]).flatMap((series) => {
    const own = results.filter((result) => result.series === series && result.counts.length > 0);
    const counts = own.flatMap((result) => result.counts);
    const [score] = scoresByPest(counts);
    if (!score) return [];
    const { of, spread } = bestBaseline(counts);
    const isBetter = (result: CageResult) =>
      mean(result.counts.map(({ crps }) => crps)) < mean(result.counts.map((count) => count[of][spread]!));
    return [{ series, cages: own.length, better: own.filter(isBetter).length, score }];
  });
}

/** The small part that every run of the tests does again. */
export const fixedCageTasks: readonly CageTask[] = [
  { cage: 'wasps-20-1', members: 60 },
  { cage: 'ladybirds-2', members: 60 },
];

export interface FixedCage {
  cage: string;
  counts: number;
  /** Mean CRPS on log(1 + count), of the forecast and of "as last time" with its best spread. */
  ours: number;
  last: number;
}

export const fixedCages = (): FixedCage[] =>
  fixedCageTasks.map((task) => {
    const { counts } = scoreCage(task);
    const round = (value: number) => Math.round(1e4 * value) / 1e4;
    const lasts = counts[0]!.last.map((_, spread) => mean(counts.map(({ last }) => last[spread]!)));
    return {
      cage: task.cage,
      counts: counts.length,
      ours: round(mean(counts.map(({ crps }) => crps))),
      last: round(Math.min(...lasts)),
    };
  });
