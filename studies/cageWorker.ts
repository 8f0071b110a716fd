/** A thread that scores one cage after the other. */
import { parentPort } from 'node:worker_threads';
import { type CageTask, scoreCage } from './cageScores.ts';
import type { Job } from './pool.ts';

parentPort?.on('message', ({ key, task }: Job<CageTask>) => {
  parentPort?.postMessage({ key, result: scoreCage(task) });
});
