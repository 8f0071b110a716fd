/** Fetches the forecast of the air outdoors for each place that names a source: every six hours, sooner after a miss. */
import type { Clock } from '../clock.ts';
import { shownAddress } from '../outdoorSource.ts';
import type { Refusal } from '../refusals.ts';
import type { OutdoorSource, Store } from '../store/store.ts';
import { getText, NotFetched } from './get.ts';
import { readForecast } from './read.ts';

const minuteMs = 60_000;
const everyMs = 360 * minuteMs;
/** After one miss, two, three and more. */
const retryMs = [5, 30, 120].map((minutes) => minutes * minuteMs);

export interface OutdoorParts {
  store: Store;
  clock: Clock;
  /** Something new is known, or was put aside. */
  onChange(placeId: string, what: 'reading' | 'quarantine'): void;
  get?(address: string): Promise<string>;
}

/** How a fetch went: how many points came, or why none, in a sentence. */
export type Fetched = { points: number } | { trouble: string };

export interface OutdoorFetching {
  /** Fetches what is due; call it every minute. Never rejects. */
  tick(): Promise<void>;
  /** Fetches at once, due or not. */
  now(placeId: string): Promise<Fetched>;
  /** Forgets past misses: the source was changed. */
  afresh(placeId: string): void;
  troubleOf(placeId: string): string | undefined;
  troubles(): string[];
  /** Resolves when nothing is being fetched. */
  idle(): Promise<void>;
}

interface Misses {
  count: number;
  nextMs: number;
  trouble: string;
}

export function createOutdoor({ store, clock, onChange, get = getText }: OutdoorParts): OutdoorFetching {
  const missed = new Map<string, Misses>();
  const running = new Map<string, Promise<Fetched>>();

  function isDue(placeId: string): boolean {
    const misses = missed.get(placeId);
    if (misses) return clock.nowMs() >= misses.nextMs;
    return clock.nowMs() >= (store.outdoor.lastIssuedMs(placeId) ?? Number.NEGATIVE_INFINITY) + everyMs;
  }

  function miss(placeId: string, trouble: string): Fetched {
    const count = (missed.get(placeId)?.count ?? 0) + 1;
    const waitMs = retryMs[Math.min(count, retryMs.length) - 1]!;
    missed.set(placeId, { count, nextMs: clock.nowMs() + waitMs, trouble });
    return { trouble };
  }

  async function fetchFor(placeId: string, source: OutdoorSource): Promise<Fetched> {
    try {
      const text = await get(source.url);
      const arrivedMs = clock.nowMs();
      const points = readForecast(text, source, arrivedMs);
      if (!Array.isArray(points)) {
        await putAside(store, { placeId, url: source.url, text, arrivedMs, refusal: points });
        onChange(placeId, 'quarantine');
        return miss(placeId, points.reason);
      }
      store.outdoor.issue(placeId, arrivedMs, points);
      missed.delete(placeId);
      onChange(placeId, 'reading');
      return { points: points.length };
    } catch (error) {
      if (error instanceof NotFetched) return miss(placeId, error.message);
      return miss(
        placeId,
        `The weather forecast was not kept: ${error instanceof Error ? error.message : error}.`,
      );
    }
  }

  function now(placeId: string): Promise<Fetched> {
    const source = store.outdoor.source(placeId);
    if (!source) return Promise.resolve({ trouble: 'No address is set for the weather forecast.' });
    const already = running.get(placeId);
    if (already) return already;
    const fetched = fetchFor(placeId, source).finally(() => running.delete(placeId));
    running.set(placeId, fetched);
    return fetched;
  }

  const sources = () =>
    store.records.places().filter(({ placeId }) => store.outdoor.source(placeId) !== undefined);

  return {
    async tick() {
      await Promise.all(
        sources()
          .filter(({ placeId }) => isDue(placeId))
          .map(({ placeId }) => now(placeId)),
      );
    },
    now,
    afresh: (placeId) => void missed.delete(placeId),
    troubleOf: (placeId) => missed.get(placeId)?.trouble,
    // One miss is a passing cloud.
    troubles: () =>
      sources().flatMap(({ placeId, data }) => {
        const misses = missed.get(placeId);
        return misses && misses.count > 1 ? [`No weather forecast for ${data.name}: ${misses.trouble}`] : [];
      }),
    async idle() {
      while (running.size > 0) await Promise.all(running.values());
    },
  };
}

/** A refused answer that comes again each time is kept once, until the owner sets it aside. */
async function putAside(
  store: Store,
  {
    placeId,
    url,
    text,
    arrivedMs,
    refusal,
  }: { placeId: string; url: string; text: string; arrivedMs: number; refusal: Refusal },
): Promise<void> {
  const topic = shownAddress(url);
  const { code, reason } = refusal;
  const waiting = store.quarantine.list({ placeId });
  if (waiting.some((kept) => kept.topic === topic && kept.code === code && kept.reason === reason)) return;
  const payload = new TextEncoder().encode(text);
  const { length: payloadBytes } = payload;
  await store.quarantine.add({
    placeId,
    topic,
    payload,
    payloadBytes,
    retained: false,
    arrivedMs,
    code,
    reason,
  });
}
