/** The computing thread: forecasts take seconds, and readings must be stored meanwhile. */
import { parentPort } from 'node:worker_threads';
import { forecastAndAdvise } from '../model/index.ts';
import { answerRequests } from './messages.ts';

if (!parentPort) throw new Error('worker.ts is started by compute.ts, not by itself.');
answerRequests(parentPort, forecastAndAdvise);
