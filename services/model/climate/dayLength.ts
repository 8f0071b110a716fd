/**
 * Day length, sunrise and sunset. How far below the horizon the sun may stand and still count as day is an
 * argument: insects that answer to day length see part of the twilight too.
 */
import { dayMs, minuteMs } from '../units.ts';

/** Upper limb on the horizon, refraction included: sunrise as in an almanac. */
export const almanacDepressionDeg = 0.8333;
/** End of civil twilight. */
export const civilDepressionDeg = 6;

const radians = Math.PI / 180;
const clamp = (x: number) => Math.min(1, Math.max(-1, x));

/**
 * Hours of daylight; 24 or 0 where the sun does not set or rise. Forsythe, Rykiel, Stahl, Wu & Schoolfield
 * 1995, Ecological Modelling 80:87-95, equations 1-3 (`depressionDeg` is their p); up to 6 minutes off around
 * the equinoxes at 50 degrees (measured against an ephemeris).
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

/**
 * Sunrise, solar noon and sunset of the solar day around an instant; noon plus and minus 12 or 0 hours where the
 * sun does not set or rise. The sunrise equation with refraction, on the sun's place of that noon.
 */
export function sunTimes(timeMs: number, place: { latitudeDeg: number; longitudeDeg: number }): SunTimes {
  const solarShiftMs = (place.longitudeDeg / 360) * dayMs;
  const solarDayStartMs = Math.floor((timeMs + solarShiftMs) / dayMs) * dayMs;
  const meanNoonMs = solarDayStartMs + dayMs / 2 - solarShiftMs;
  const { equationOfTimeMinutes, declinationDeg } = sunAt(meanNoonMs);
  const noonMs = meanNoonMs - equationOfTimeMinutes * minuteMs;
  const latitude = place.latitudeDeg * radians;
  const declination = declinationDeg * radians;
  const cosine =
    -Math.sin(almanacDepressionDeg * radians) / (Math.cos(latitude) * Math.cos(declination)) -
    Math.tan(latitude) * Math.tan(declination);
  const halfDayMs = (Math.acos(clamp(cosine)) / (2 * Math.PI)) * dayMs;
  return { sunriseMs: noonMs - halfDayMs, noonMs, sunsetMs: noonMs + halfDayMs };
}

/**
 * Declination, and sundial minus clock, within 0.01 degrees and 0.1 minutes from 1950 to 2050: the low-precision
 * formulas of the Astronomical Almanac, section C (from memory).
 */
export function sunAt(timeMs: number): { declinationDeg: number; equationOfTimeMinutes: number } {
  const days = (timeMs - Date.UTC(2000, 0, 1, 12)) / dayMs;
  const meanLongitude = 280.46 + 0.9856474 * days;
  const anomaly = (357.528 + 0.9856003 * days) * radians;
  const longitude = (meanLongitude + 1.915 * Math.sin(anomaly) + 0.02 * Math.sin(2 * anomaly)) * radians;
  const tilt = (23.439 - 0.0000004 * days) * radians;
  const rightAscension = Math.atan2(Math.cos(tilt) * Math.sin(longitude), Math.cos(longitude)) / radians;
  const lagDeg = meanLongitude - rightAscension;
  return {
    declinationDeg: Math.asin(Math.sin(tilt) * Math.sin(longitude)) / radians,
    equationOfTimeMinutes: 4 * (lagDeg - 360 * Math.round(lagDeg / 360)),
  };
}
