/** Carries readings from one store of readings to another, place by place, and looks afterwards whether all are there. */
import { hourMs } from '../rollups.ts';
import type { Readings, StoredReading } from '../store.ts';
import { readingKey } from './hours.ts';

export interface Moved {
  placeId: string;
  readings: number;
  /** Were there already, with the same value or another. */
  knownBefore: number;
  /** Are not there now, or with another value: the first one stays in use there. */
  different: number;
}

interface Span {
  fromMs: number;
  toMs: number;
}

const sliceMs = 31 * 24 * hourMs;

/**
 * Copies everything from one to the other; what is in `from` stays. May be ended and begun again: what is
 * there already is not written twice.
 * @param settled resolves when the other one has everything on its own disk
 */
export async function moveReadings(
  from: Readings,
  to: Readings,
  settled: () => Promise<void>,
  tell: (moved: Moved) => void,
): Promise<void> {
  for (const placeId of await from.places()) {
    const slices = await slicesOf(from, placeId);
    let [readings, knownBefore, different] = [0, 0, 0];
    for (const slice of slices) {
      const part = await from.range(placeId, slice);
      if (part.length === 0) continue;
      readings += part.length;
      knownBefore += (await to.add(placeId, part)).duplicates;
      await settled();
    }
    for (const slice of slices)
      different += differences(await from.range(placeId, slice), await to.range(placeId, slice));
    tell({ placeId, readings, knownBefore, different });
  }
}

/** Time cut into months around the hours that have readings, with all the time before and after them. */
async function slicesOf(readings: Readings, placeId: string): Promise<Span[]> {
  const always = { fromMs: Number.MIN_SAFE_INTEGER, toMs: Number.MAX_SAFE_INTEGER };
  const hours = (await readings.hourly(placeId, always)).map((hour) => hour.hourMs);
  const [first, last] = [hours[0], hours.at(-1)];
  if (first === undefined || last === undefined) return [always];
  const cuts = Array.from(
    { length: Math.floor((last - first) / sliceMs) + 1 },
    (_, i) => first + i * sliceMs,
  );
  const bounds = [always.fromMs, ...cuts, last + hourMs, always.toMs];
  return bounds.slice(1).map((toMs, i) => ({ fromMs: bounds[i] ?? toMs, toMs }));
}

function differences(wanted: readonly StoredReading[], found: readonly StoredReading[]): number {
  const there = new Map(found.map((reading) => [readingKey(reading), reading]));
  return wanted.filter((reading) => {
    const known = there.get(readingKey(reading));
    return known?.temperatureC !== reading.temperatureC || known.humidityPct !== reading.humidityPct;
  }).length;
}
