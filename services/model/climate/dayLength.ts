/**
 * Day length, sunrise and sunset. How far below the horizon the sun may stand and still count as day is an
 * argument: insects that answer to day length see part of the twilight too.
 */
import { dayMs, hourMs } from '../units.ts';

/** Upper limb on the horizon, refraction included: sunrise as in an almanac. */
export const almanacDepressionDeg = 0.8333;
/** End of civil twilight. */
export const civilDepressionDeg = 6;

const radians = Math.PI / 180;
const clamp = (x: number) => Math.min(1, Math.max(-1, x));

/**
 * Hours of daylight; 24 or 0 where the sun does not set or rise. Forsythe, Rykiel, Stahl, Wu & Schoolfield
 * 1995, Ecological Modelling 80:87-95, equations 1-3 (`depressionDeg` is their p).
 */
export function dayLengthHours(at: {
  latitudeDeg: number;
  dayOfYear: number;
  depressionDeg?: number | undefined;
}): number {
  const { latitudeDeg, dayOfYear, depressionDeg = almanacDepressionDeg } = at;
  const revolution = 0.2163108 + 2 * Math.atan(0.9671396 * Math.tan(0.0086 * (dayOfYear - 186)));
  const declination = Math.asin(0.39795 * Math.cos(revolution));
  const latitude = latitudeDeg * radians;
  const cosine =
    (Math.sin(depressionDeg * radians) + Math.sin(latitude) * Math.sin(declination)) /
    (Math.cos(latitude) * Math.cos(declination));
  return 24 - (24 / Math.PI) * Math.acos(clamp(cosine));
}

/** Day of the year in UTC, 1 = 1 January. */
export function dayOfYear(timeMs: number): number {
  const startMs = Date.UTC(new Date(timeMs).getUTCFullYear(), 0, 1);
  return Math.floor((timeMs - startMs) / dayMs) + 1;
}

export interface SunTimes {
  sunriseMs: number;
  noonMs: number;
  sunsetMs: number;
}

/** Sunrise, solar noon and sunset of the solar day nearest to an instant. */
export function sunTimes(timeMs: number, place: { latitudeDeg: number; longitudeDeg: number }): SunTimes {
  const solarShiftMs = (place.longitudeDeg / 360) * dayMs;
  const solarDayStartMs = Math.floor((timeMs + solarShiftMs) / dayMs) * dayMs;
  const meanNoonMs = solarDayStartMs + dayMs / 2 - solarShiftMs;
  const noonMs = meanNoonMs - equationOfTimeMinutes(meanNoonMs) * 60_000;
  const halfDayMs =
    (dayLengthHours({ latitudeDeg: place.latitudeDeg, dayOfYear: dayOfYear(meanNoonMs) }) / 2) * hourMs;
  return { sunriseMs: noonMs - halfDayMs, noonMs, sunsetMs: noonMs + halfDayMs };
}

/** Sundial minus clock in minutes; Spencer 1971, Search 2:172 (the short form of NOAA's solar calculator). */
export function equationOfTimeMinutes(timeMs: number): number {
  const yearAngle = ((2 * Math.PI) / 365) * (dayOfYear(timeMs) - 1);
  return (
    229.18 *
    (0.000075 +
      0.001868 * Math.cos(yearAngle) -
      0.032077 * Math.sin(yearAngle) -
      0.014615 * Math.cos(2 * yearAngle) -
      0.040849 * Math.sin(2 * yearAngle))
  );
}
