/** A thread that finds the places of the truth in one drawn season after the other. */
import { parentPort } from 'node:worker_threads';
import { placesOf } from './calibration.ts';
import type { Job } from './pool.ts';

export interface CalibrationTask {
  seed: number;
  members: number;
}

parentPort?.on('message', ({ key, task }: Job<CalibrationTask>) => {
  parentPort?.postMessage({ key, result: placesOf(task.seed, task.members) });
});
