/** The small part of the study of warnings that every run of the tests plays again. */

import { scoreTold, type WarningScore } from './warningScores.ts';
import { playWarned, type WarningTask } from './warningSeason.ts';
import { tellDiary } from './warningTelling.ts';

/** Nothing to tell but counts; and a first order, with a supplier who gives three days. */
export const fixedWarningTasks: readonly WarningTask[] = [
  { trial: 'no-pest', seed: 9301, members: 40, weeks: 4 },
  { trial: 'early-whitefly', seed: 9305, members: 40, weeks: 8 },
];

export async function fixedWarnings(): Promise<WarningScore[]> {
  const scores: WarningScore[] = [];
  for (const task of fixedWarningTasks) {
    const diary = playWarned(task);
    scores.push(scoreTold(diary, await tellDiary(diary)));
  }
  return scores;
}
