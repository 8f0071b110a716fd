/**
 * When a forecast is computed: soon after it was asked for, one at a time, and once for all who
 * asked meanwhile. Every outcome is kept as issued, before the next count is known.
 */
import type { Clock } from '../clock.ts';
import type { Advice, Forecast, Season } from '../model/index.ts';
import type { IssuedForecast, Store } from '../store/store.ts';
import { isoInstant } from './canonicalSeason.ts';
import { assembleSeason } from './season.ts';

export interface Outcome {
  forecast: Forecast;
  advice: Advice;
}
export type Compute = (season: Season, asOf: string, options: { seed: number }) => Promise<Outcome>;

export interface Forecasting {
  /** Asks for a new forecast soon; returns at once. */
  request(placeId: string): void;
  /** A forecast that knows everything stored before the call; rejects when it could not be computed. */
  now(placeId: string): Promise<IssuedForecast>;
  /** Resolves when nothing is asked for and nothing is being computed. */
  idle(): Promise<void>;
  /** Lets the running computation end and refuses the others. */
  close(): Promise<void>;
}

export interface ForecastingParts {
  store: Store;
  clock: Clock;
  compute: Compute;
  onIssued(issued: IssuedForecast): void | Promise<void>;
  /** Hears of a computation or an `onIssued` that threw; the last outcome stands. */
  onFault(placeId: string, error: unknown): void;
}

interface Asker {
  resolve(issued: IssuedForecast): void;
  reject(error: unknown): void;
}

/** One seed for all: the same inputs give the same forecast, on the service and from the season file. */
const seed = 1;

export function createForecasting(parts: ForecastingParts): Forecasting {
  const waiting = new Map<string, Asker[]>();
  let running: Promise<void> | undefined;
  let closed = false;

  async function runWaiting(): Promise<void> {
    // Begin after the present tick, so that all its requests are answered by one computation.
    await Promise.resolve();
    for (let next = takeFirst(waiting); next; next = takeFirst(waiting)) {
      const [placeId, askers] = next;
      await issueFor(parts, placeId, askers);
    }
    running = undefined;
  }

  function ask(placeId: string, askers: Asker[]): void {
    if (closed) {
      for (const asker of askers) asker.reject(new Error('The service is closing: ask again later.'));
      return;
    }
    waiting.set(placeId, [...(waiting.get(placeId) ?? []), ...askers]);
    running ??= runWaiting();
  }

  return {
    request: (placeId) => ask(placeId, []),
    now: (placeId) => new Promise((resolve, reject) => ask(placeId, [{ resolve, reject }])),
    async idle() {
      while (running) await running;
    },
    async close() {
      closed = true;
      const dropped = [...waiting];
      waiting.clear();
      for (const [placeId, askers] of dropped) ask(placeId, askers);
      await running;
    },
  };
}

async function issueFor(parts: ForecastingParts, placeId: string, askers: Asker[]): Promise<void> {
  try {
    const issued = await issue(parts, placeId);
    for (const asker of askers) asker.resolve(issued);
    await parts.onIssued(issued);
  } catch (error) {
    for (const asker of askers) asker.reject(error);
    parts.onFault(placeId, error);
  }
}

async function issue({ store, clock, compute }: ForecastingParts, placeId: string): Promise<IssuedForecast> {
  const asOfMs = clock.nowMs();
  const season = await assembleSeason(store, placeId, asOfMs);
  const outcome = await compute(season, isoInstant(asOfMs), { seed });
  const issued = { placeId, asOfMs, ...outcome };
  store.issued.keep(issued);
  return issued;
}

function takeFirst(waiting: Map<string, Asker[]>): [string, Asker[]] | undefined {
  const [first] = waiting;
  if (first) waiting.delete(first[0]);
  return first;
}
