/** Hours worked out from readings, for a server that does not do it exactly alike each time. */
import { hourMs } from '../rollups.ts';
import type { HourlyRollup, StoredReading } from '../store.ts';

export const hourOf = (timeMs: number) => Math.floor(timeMs / hourMs) * hourMs;

export function byTimeThenSensor(a: StoredReading, b: StoredReading): number {
  return a.timeMs - b.timeMs || (a.sensorId < b.sensorId ? -1 : 1);
}

/** The roll-up of one sensor's hour from all its readings, ordered by time so that sums are the same each time. */
export function rollUp(sensorId: string, startMs: number, readings: readonly StoredReading[]): HourlyRollup {
  const believed = readings.filter(({ doubt }) => doubt === undefined).sort(byTimeThenSensor);
  const temperatures = believed.map(({ temperatureC }) => temperatureC);
  const count = believed.length;
  return {
    sensorId,
    hourMs: startMs,
    count,
    meanC: count === 0 ? 0 : temperatures.reduce((sum, value) => sum + value, 0) / count,
    minC: count === 0 ? 0 : Math.min(...temperatures),
    maxC: count === 0 ? 0 : Math.max(...temperatures),
    doubted: readings.length - count,
  };
}

/** Readings by sensor and hour. */
export function byHour(readings: readonly StoredReading[]): Map<string, StoredReading[]> {
  const hours = new Map<string, StoredReading[]>();
  for (const reading of readings) {
    const key = hourKey(reading.sensorId, hourOf(reading.timeMs));
    const hour = hours.get(key);
    if (hour) hour.push(reading);
    else hours.set(key, [reading]);
  }
  return hours;
}

export const hourKey = (sensorId: string, startMs: number) => `${sensorId} ${startMs}`;
export const readingKey = ({ sensorId, timeMs }: { sensorId: string; timeMs: number }) =>
  `${sensorId} ${timeMs}`;
