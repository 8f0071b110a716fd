/** Readings of a place, a stretch after the other: others have their turn in between. */
import type { Store, StoredReading } from '../store/store.ts';

/** At a reading a minute this is some ten milliseconds of work. */
const stretchMs = 7 * 86_400_000;

/** Non-empty stretches in order of time, up to `endMs`; those that come in meanwhile may be missed. */
export async function* stretches(
  { readings }: Store,
  placeId: string,
  endMs = Number.POSITIVE_INFINITY,
): AsyncGenerator<StoredReading[]> {
  if (!readings.earliestMs) {
    const all = await readings.range(placeId, { fromMs: 0, toMs: endMs });
    if (all.length > 0) yield all;
    return;
  }
  const latest = await readings.latest(placeId);
  const lastMs = Math.min(endMs, Math.max(...latest.map(({ timeMs }) => timeMs + 1)));
  let fromMs = (await readings.earliestMs(placeId)) ?? lastMs;
  while (fromMs < lastMs) {
    const toMs = Math.min(fromMs + stretchMs, lastMs);
    const some = await readings.range(placeId, { fromMs, toMs });
    if (some.length > 0) yield some;
    fromMs = toMs;
    await new Promise((resolve) => setImmediate(resolve));
  }
}
