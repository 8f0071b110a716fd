/** What the service and its computing thread say to each other: plain data, one answer to each request. */
import type { MessagePort } from 'node:worker_threads';
import type { Season } from '../model/index.ts';
import type { Outcome } from './forecasting.ts';

export interface Request {
  number: number;
  season: Season;
  asOf: string;
  options: { seed: number };
}
export type Answer = { number: number; outcome: Outcome } | { number: number; error: unknown };

/** Answers every request that comes through the port; an error is an answer too. */
export function answerRequests(
  port: MessagePort,
  compute: (season: Season, asOf: string, options: { seed: number }) => Outcome,
): void {
  port.on('message', ({ number, season, asOf, options }: Request) => {
    port.postMessage(answer());

    function answer(): Answer {
      try {
        return { number, outcome: compute(season, asOf, options) };
      } catch (error) {
        return { number, error };
      }
    }
  });
}
