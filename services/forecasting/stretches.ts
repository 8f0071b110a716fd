/** Readings of a place, a stretch after the other: others have their turn in between. */
import type { Readings, StoredReading } from '../store/store.ts';

/** At a reading a minute this is some ten milliseconds of work. Counted from 1970, so that no hour is cut in two. */
const stretchMs = 7 * 86_400_000;

const always = { fromMs: Number.NEGATIVE_INFINITY, toMs: Number.POSITIVE_INFINITY };

export interface Stretch {
  fromMs: number;
  /** Exclusive. */
  toMs: number;
}

/** Non-empty ones in order of time, as `read` gives them; those that come in meanwhile may be missed. */
export async function* stretches(
  readings: Readings,
  placeId: string,
  whole: Stretch = always,
  read: (stretch: Stretch) => Promise<StoredReading[]> = (stretch) => readings.range(placeId, stretch),
): AsyncGenerator<StoredReading[]> {
  const latest = await readings.latest(placeId);
  const lastMs = Math.min(whole.toMs, Math.max(...latest.map(({ timeMs }) => timeMs + 1)));
  let fromMs = Math.max(whole.fromMs, (await readings.earliestMs(placeId)) ?? lastMs);
  while (fromMs < lastMs) {
    const toMs = Math.min((Math.floor(fromMs / stretchMs) + 1) * stretchMs, lastMs);
    const some = await read({ fromMs, toMs });
    if (some.length > 0) yield some;
    fromMs = toMs;
    await new Promise((resolve) => setImmediate(resolve));
  }
}
