/** The small part of the study that every run of the tests does again. */
import { countsOf, mean, pestsOf } from './forecastScores.ts';
import type { SeasonScore, Task } from './forecastSeason.ts';

/** One season of each pest and one without any, with a small ensemble, to where most of it has been seen. */
export const fixedTasks: readonly Task[] = [
  { trial: 'no-pest', seed: 9101, members: 60, weeks: 12 },
  { trial: 'early-whitefly', seed: 9102, members: 60, weeks: 16 },
  { trial: 'summer-thrips', seed: 9103, members: 60, weeks: 16 },
  { trial: 'winged-aphids', seed: 9104, members: 60, weeks: 16 },
  { trial: 'dry-mites', seed: 9105, members: 60, weeks: 16 },
];

export interface FixedScore {
  trial: string;
  pest: string;
  counts: number;
  ours: number;
  limit: number;
}

/** Mean CRPS of forecast and limit by season and pest. */
export function fixedSummary(seasons: readonly SeasonScore[]): FixedScore[] {
  const round = (value: number) => Math.round(1e4 * value) / 1e4;
  return seasons.flatMap((season) =>
    pestsOf([season]).map((pest) => {
      const counts = countsOf([season], pest);
      return {
        trial: season.task.trial,
        pest,
        counts: counts.length,
        ours: round(mean(counts.map(({ crps }) => crps))),
        limit: round(mean(counts.map(({ limit }) => limit))),
      };
    }),
  );
}
