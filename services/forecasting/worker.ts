/** The computing thread: forecasts take seconds, and readings must be stored meanwhile. */
import { parentPort } from 'node:worker_threads';
import { adviseFrom, type Fit, fit as fitSeason, type Season } from '../model/index.ts';
import type { Outcome } from './forecasting.ts';
import { lastFew } from './lastFew.ts';
import { answerRequests } from './messages.ts';

if (!parentPort) throw new Error('worker.ts is started by compute.ts, not by itself.');

/**
 * Counts read for the last forecast of a place: the next one goes on from there, and without them reads them again.
 * Some megabytes each, so a club keeps those of few places, and a place that was deleted is forgotten.
 */
const readBefore = lastFew<Pick<Fit, 'read'>>(20);

function compute(season: Season, asOf: string, options: { seed: number }): Outcome {
  const { id } = season.place;
  const earlier = readBefore.get(id);
  const fitted = fitSeason(season, asOf, { ...options, ...(earlier ? { earlier } : {}) });
  readBefore.set(id, { read: fitted.read });
  return { forecast: fitted.forecast, advice: adviseFrom(season, fitted, asOf) };
}

answerRequests(parentPort, compute);
