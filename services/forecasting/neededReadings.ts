/**
 * The readings that a forecast needs: all of the last days, one in half an hour before. A year of four sensors that
 * speak each minute is two million readings, and insects live by the means of hours.
 */
import { findDoubts, type Season } from '../model/index.ts';
import { firstOfEach, type Readings, type StoredReading } from '../store/store.ts';
import { stretches } from './stretches.ts';

const minuteMs = 60_000;
const dayMs = 86_400_000;
const sampleMs = 30 * minuteMs;
/** Doubts are looked for in these, and told of the last seven days. */
const wholeDays = 8;

const wholeFrom = (asOfMs: number) => Math.floor((asOfMs - wholeDays * dayMs) / sampleMs) * sampleMs;

/** Up to and including `asOfMs`, in the order of the store. */
export async function* neededReadings(
  readings: Readings,
  placeId: string,
  asOfMs: number,
): AsyncGenerator<StoredReading[]> {
  const fromMs = wholeFrom(asOfMs);
  const sample = (stretch: { fromMs: number; toMs: number }) => readings.sampled(placeId, stretch, sampleMs);
  yield* stretches(readings, placeId, { fromMs: Number.NEGATIVE_INFINITY, toMs: fromMs }, sample);
  yield* stretches(readings, placeId, { fromMs, toMs: asOfMs + 1 });
}

/** The same of a season from a file: what the service would have worked with at that instant. */
export function withNeededReadings(season: Season, asOf: string): Season {
  const fromMs = wholeFrom(Date.parse(asOf));
  const timed = season.readings.map((reading) => ({ ...reading, timeMs: Date.parse(reading.time) }));
  const doubts = new Map(findDoubts(timed, season.place).map((d) => [`${d.sensorId} ${d.timeMs}`, d.doubt]));
  const first = firstOfEach(sampleMs);
  const readings = season.readings.filter((_, i) => {
    const { sensorId, timeMs, temperatureC } = timed[i]!;
    if (timeMs >= fromMs) return true;
    const doubt = doubts.get(`${sensorId} ${timeMs}`);
    return first({ sensorId, timeMs, temperatureC, ...(doubt !== undefined && { doubt }) });
  });
  return { ...season, readings };
}
