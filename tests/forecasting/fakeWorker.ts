/** Answers as the computing thread does, without a forecast; `seed` chooses what happens. */
import { parentPort, threadId } from 'node:worker_threads';
import type { Outcome } from '../../services/forecasting/forecasting.ts';
import { answerRequests } from '../../services/forecasting/messages.ts';

answerRequests(parentPort!, (season, asOf, { seed }) => {
  if (seed === 2) throw new RangeError('the density of young is not finite');
  if (seed === 3) process.exit(9);
  return { forecast: { placeId: season.place.id, asOf, seed: threadId }, advice: { asOf } } as Outcome;
});
