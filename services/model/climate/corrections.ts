/** A sensor that reads too high or too low: what its owner adds to it from a day on. Its readings stay as they came. */
import type { Sensor } from '../season.ts';
import { startOfLocalDay } from './calendar.ts';

/** What to add to a reading, in °C, by its sensor and instant. */
export type CorrectionC = (sensorId: string, timeMs: number) => number;

/** Of several corrections of a sensor the last one begun counts, alone; 0 ends the one before. */
export function correctionsOf(sensors: readonly Sensor[], timeZone: string): CorrectionC {
  const bySensor = new Map(
    sensors.map(({ id, corrections = [] }) => {
      const latestFirst = corrections
        .map(({ from, addC }) => ({ fromMs: startOfLocalDay(from, timeZone), addC }))
        .sort((a, b) => b.fromMs - a.fromMs);
      return [id, latestFirst];
    }),
  );
  return (sensorId, timeMs) => bySensor.get(sensorId)?.find(({ fromMs }) => fromMs <= timeMs)?.addC ?? 0;
}
