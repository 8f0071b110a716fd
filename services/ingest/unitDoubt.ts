import type { StoredReading } from '../store/store.ts';
import { toCelsius } from './units.ts';

/** Rarely true in a place where plants grow, and the range of °F in a warm house. */
export const suspiciousFrom = 45;
const farOffC = 20;
const fitsC = 10;
const hourMs = 3_600_000;
const ownHours = 6;
const otherHours = 2;
/** What a 1-wire probe says after power-up: a known fault, marked as such, never °F. */
const powerUp = 85;

/**
 * True when a bare number taken as °C makes no sense, but does as °F next to what the sensor itself
 * or another one lately measured; with nothing to compare, when it is a usual temperature in °F.
 * `known` are readings around that time. Thresholds: common practice, no source.
 */
export function looksLikeFahrenheit(
  reading: { sensorId: string; timeMs: number; temperatureC: number },
  known: readonly StoredReading[],
): boolean {
  const value = reading.temperatureC;
  if (value <= suspiciousFrom || value === powerUp) return false;
  const asFahrenheitC = toCelsius(value, 'Far');
  const nearby = known.filter((other) => isNearby(other, reading));
  if (nearby.length === 0) return asFahrenheitC <= suspiciousFrom;
  const away = (celsius: number) =>
    Math.min(...nearby.map((other) => Math.abs(other.temperatureC - celsius)));
  return away(value) >= farOffC && away(asFahrenheitC) <= fitsC;
}

function isNearby(other: StoredReading, { sensorId, timeMs }: { sensorId: string; timeMs: number }): boolean {
  const hours = other.sensorId === sensorId ? ownHours : otherHours;
  return other.doubt === undefined && Math.abs(other.timeMs - timeMs) <= hours * hourMs;
}
