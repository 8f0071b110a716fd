/** The computing thread: forecasts take seconds, and readings must be stored meanwhile. */
import { parentPort } from 'node:worker_threads';
import { adviseFrom, fit as fitSeason, type Season } from '../model/index.ts';
import type { Outcome } from './forecasting.ts';
import { answerRequests } from './messages.ts';
import { openReadBefore } from './readBefore.ts';

if (!parentPort) throw new Error('worker.ts is started by compute.ts, not by itself.');

const readBefore = openReadBefore();

function compute(season: Season, asOf: string, options: { seed: number }): Outcome {
  const { id } = season.place;
  const read = readBefore.get(id);
  const fitted = fitSeason(season, asOf, { ...options, ...(read ? { earlier: { read } } : {}) });
  readBefore.set(id, fitted.read);
  return { forecast: fitted.forecast, advice: adviseFrom(season, fitted, asOf) };
}

answerRequests(parentPort, compute);
