/** The small part of the study of advice that every run of the tests plays again. */
import { type AdviceScore, type AdviceTask, lossOf } from './adviceSeason.ts';

/** Half seasons with a small ensemble, and no search in hindsight. */
export const fixedAdviceTasks: readonly AdviceTask[] = [
  { trial: 'no-pest', seed: 9201, members: 40, weeks: 12, searched: false },
  { trial: 'early-whitefly', seed: 9202, members: 40, weeks: 14, searched: false },
];

export interface FixedAdvice {
  trial: string;
  never: number;
  rule: number;
  advice: number;
  parcels: number;
}

/** Losses of who does nothing, of the rule and of the advice, and the parcels it bought. */
export const fixedAdviceSummary = (seasons: readonly AdviceScore[]): FixedAdvice[] =>
  seasons.map(({ task, never, rule, advice }) => {
    const loss = (played: Parameters<typeof lossOf>[0]) => Math.round(100 * lossOf(played)) / 100;
    return {
      trial: task.trial,
      never: loss(never),
      rule: loss(rule),
      advice: loss(advice),
      parcels: advice.parcels,
    };
  });
