/** A thread that scores one season after the other. */
import { parentPort } from 'node:worker_threads';
import { scoreSeason, type Task } from './forecastSeason.ts';
import type { Job } from './pool.ts';

parentPort?.on('message', ({ key, task }: Job<Task>) => {
  parentPort?.postMessage({ key, result: scoreSeason(task, () => performance.now()) });
});
