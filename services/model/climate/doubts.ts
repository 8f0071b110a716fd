/**
 * Which readings not to believe, and why. Pure and free of order: the same set of readings gives the same
 * doubts however they arrived. Doubted readings are kept and shown, never used.
 */
import type { Codes, DoubtCode, TimedReading } from './doubtCodes.ts';
import { markFractions, markSpikes, markStuck } from './faultySensor.ts';
import { markSunlit } from './sunlitSensor.ts';

export { doubtWords } from './doubtCodes.ts';

export interface Doubted {
  sensorId: string;
  timeMs: number;
  doubt: DoubtCode;
}

/** Where the sensors hang; without it, sunlit sensors cannot be told. */
export interface DoubtOptions {
  latitudeDeg?: number;
  longitudeDeg?: number;
}

/** The doubted readings, by sensor and time. O(n log n). */
export function findDoubts(readings: readonly TimedReading[], options: DoubtOptions = {}): Doubted[] {
  return doubtedOf(readings, doubtsOf(readings, options));
}

/** The readings that carry a code, by sensor and time. */
export function doubtedOf(readings: readonly TimedReading[], codes: Readonly<Codes>): Doubted[] {
  return readings
    .flatMap(({ sensorId, timeMs }, i) => (codes[i] ? [{ sensorId, timeMs, doubt: codes[i] }] : []))
    .sort(
      (a, b) => compareText(a.sensorId, b.sensorId) || a.timeMs - b.timeMs || compareText(a.doubt, b.doubt),
    );
}

/** One code or none for each reading, in the order given. Each test sees only what the ones before believe. */
export function doubtsOf(
  readings: readonly TimedReading[],
  { latitudeDeg, longitudeDeg }: DoubtOptions = {},
): Codes {
  const codes: Codes = readings.map(({ temperatureC }) => impossible(temperatureC));
  const sensors = indicesInTime(readings);
  const believed = (indices: readonly number[]) => indices.filter((i) => codes[i] === undefined);
  for (const indices of sensors) {
    for (const mark of [markSpikes, markFractions, markStuck]) mark(readings, believed(indices), codes);
  }
  if (latitudeDeg !== undefined && longitudeDeg !== undefined) {
    markSunlit(readings, sensors.map(believed), codes, { latitudeDeg, longitudeDeg });
  }
  return codes;
}

/** Positions of each sensor's readings, ascending in time. */
function indicesInTime(readings: readonly TimedReading[]): number[][] {
  const sensors = new Map<string, number[]>();
  readings.forEach(({ sensorId }, i) => {
    const own = sensors.get(sensorId);
    if (own) own.push(i);
    else sensors.set(sensorId, [i]);
  });
  const inTime = (i: number, j: number) =>
    readings[i]!.timeMs - readings[j]!.timeMs || readings[i]!.temperatureC - readings[j]!.temperatureC;
  return [...sensors.values()].map((indices) => indices.sort(inTime));
}

function impossible(temperatureC: number): DoubtCode | undefined {
  if (!Number.isFinite(temperatureC)) return 'not-a-number';
  if (temperatureC === 85) return 'one-wire-power-up';
  if (temperatureC === -127) return 'one-wire-lost';
  return temperatureC < -30 || temperatureC > 65 ? 'out-of-range' : undefined;
}

const compareText = (a: string, b: string) => (a < b ? -1 : a > b ? 1 : 0);
