/** Day length, sunrise and sunset against astronomy-engine 2.1, an independent library (VSOP87, refraction). */
import { Body, Observer, SearchRiseSet } from 'astronomy-engine';
import { describe, expect, it } from 'vitest';
import {
  civilDepressionDeg,
  dayLengthHours,
  dayOfYear,
  sunTimes,
} from '../../services/model/climate/dayLength.ts';
import { day, hour } from './curves.ts';

const minutes = (ms: number) => Math.abs(ms) / 60_000;

function reference(noonMs: number, latitudeDeg: number, longitudeDeg: number) {
  const observer = new Observer(latitudeDeg, longitudeDeg, 0);
  const rise = SearchRiseSet(Body.Sun, observer, 1, new Date(noonMs - 12 * hour), 1)!.date.getTime();
  const set = SearchRiseSet(Body.Sun, observer, -1, new Date(noonMs), 1)!.date.getTime();
  return { rise, set };
}

describe.each([
  ['London', 51.5, -0.1],
  ['Naples', 40.8, 14.3],
  ['Seattle', 47.6, -122.3],
  ['Sydney', -33.9, 151.2],
  ['Nairobi', -1.3, 36.8],
])('at the latitude of %s', (_, latitudeDeg, longitudeDeg) => {
  const dates = Array.from({ length: 37 }, (_, i) => Date.UTC(2024, 0, 3, 12) + i * 40 * day);

  // Forsythe et al. 1995 promise 7 minutes up to 60° (from memory); the largest seen here is 6.
  it('day length is within 7 minutes in four years', () => {
    for (const date of dates) {
      const { noonMs } = sunTimes(date, { latitudeDeg, longitudeDeg });
      const { rise, set } = reference(noonMs, latitudeDeg, longitudeDeg);
      const hours = dayLengthHours({ latitudeDeg, dayOfYear: dayOfYear(noonMs) });
      expect(minutes(hours * hour - (set - rise))).toBeLessThan(7);
    }
  });

  it('sunrise and sunset are within 2 minutes in four years', () => {
    for (const date of dates) {
      const { sunriseMs, noonMs, sunsetMs } = sunTimes(date, { latitudeDeg, longitudeDeg });
      const { rise, set } = reference(noonMs, latitudeDeg, longitudeDeg);
      expect(minutes(sunriseMs - rise)).toBeLessThan(2);
      expect(minutes(sunsetMs - set)).toBeLessThan(2);
    }
  });
});

it('counts the twilight when asked to, and the poles have a whole day of it', () => {
  const latitudeDeg = 62;
  const almanac = dayLengthHours({ latitudeDeg, dayOfYear: 172 });
  const civil = dayLengthHours({ latitudeDeg, dayOfYear: 172, depressionDeg: civilDepressionDeg });
  expect(almanac).toBeLessThan(20);
  expect(civil).toBe(24);
});
