/** A thread that plays one season after the other. */
import { parentPort } from 'node:worker_threads';
import { type AdviceTask, playAdvice } from './adviceSeason.ts';
import type { Job } from './pool.ts';

parentPort?.on('message', ({ key, task }: Job<AdviceTask>) => {
  parentPort?.postMessage({ key, result: playAdvice(task, () => performance.now()) });
});
