/** Day length and the sun's path: printed examples, and values by hand from the published equations. */
import { expect, it } from 'vitest';
import { dayLengthHours, sunAt, sunTimes } from '../../services/model/climate/dayLength.ts';
import { sunOfDay } from '../../services/model/climate/solarRadiation.ts';

// Forsythe et al. 1995, Ecological Modelling 80:87-95, equations 1-3 with p = 0.8333, by hand.
it('check 22: 51.5° N has 16.640 h on day 172 and 7.826 h on day 355', () => {
  expect(Math.abs(dayLengthHours({ latitudeDeg: 51.5, dayOfYear: 172 }) - 16.64)).toBeLessThan(0.005);
  expect(Math.abs(dayLengthHours({ latitudeDeg: 51.5, dayOfYear: 355 }) - 7.826)).toBeLessThan(0.005);
});

// Midnight sun and polar night.
it('check 23: 70° N has 24 h on day 172 and none on day 355', () => {
  expect(dayLengthHours({ latitudeDeg: 70, dayOfYear: 172 })).toBe(24);
  expect(dayLengthHours({ latitudeDeg: 70, dayOfYear: 355 })).toBe(0);
});

// FAO Irrigation and Drainage Paper 56, examples 8 and 9 (20° S, 3 September); radiation as printed there, from memory.
it('check 24: FAO-56 examples 8 and 9: declination 0.120, sunset angle 1.527, 11.7 h, distance 0.985', () => {
  const sun = sunOfDay({ latitudeDeg: -20, dayOfYear: 246 });
  expect(Math.abs(sun.declinationRad - 0.12)).toBeLessThan(0.001);
  expect(Math.abs(sun.sunsetAngleRad - 1.527)).toBeLessThan(0.001);
  expect(Math.abs(sun.daylightHours - 11.7)).toBeLessThan(0.05);
  expect(Math.abs(sun.inverseDistance - 0.985)).toBeLessThan(0.001);
  expect(Math.abs(sun.extraterrestrialMJPerM2 - 32.2)).toBeLessThan(0.1);
});

// NOAA solar calculator, short form, by hand for Greenwich (51.4779° N, 0° E) on 21 June.
it('check 25: at Greenwich on day 172 the sun rises at 03:42 and sets at 20:20 UT', () => {
  const sun = sunTimes(Date.UTC(2025, 5, 21, 12), { latitudeDeg: 51.4779, longitudeDeg: 0 });
  const minutesFrom = (timeMs: number, hour: number, minute: number) =>
    Math.abs(timeMs - Date.UTC(2025, 5, 21, hour, minute)) / 60_000;
  expect(minutesFrom(sun.sunriseMs, 3, 42)).toBeLessThan(2);
  expect(minutesFrom(sun.sunsetMs, 20, 20)).toBeLessThan(2);
});

// Meeus, Astronomical Algorithms, example 25.a (declination from memory), and the equation of time of that day.
it('check 26: on 13 October 1992, 0 h, the declination is -7.79° and the sundial 13.71 minutes ahead', () => {
  const sun = sunAt(Date.UTC(1992, 9, 13));
  // 0.01° is what the low-precision formulas promise; Meeus's own series comes within 0.001°.
  expect(Math.abs(sun.declinationDeg + 7.7851)).toBeLessThan(0.01);
  expect(Math.abs(sun.equationOfTimeMinutes - 13.71)).toBeLessThan(0.02);
});
