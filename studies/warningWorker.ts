/** A thread that plays one season after the other. */
import { parentPort } from 'node:worker_threads';
import type { Job } from './pool.ts';
import { playWarned, type WarningTask } from './warningSeason.ts';

parentPort?.on('message', ({ key, task }: Job<WarningTask>) => {
  parentPort?.postMessage({ key, result: playWarned(task) });
});
