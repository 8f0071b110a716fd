import { Body, Equator, Horizon, Observer } from 'astronomy-engine';
import { describe, expect, test } from 'vitest';
import { stream } from '../../simulators/random.ts';
import { scenarioByName } from '../../simulators/scenarios.ts';
import { globalRadiation, sineOfSolarHeight, weather } from '../../simulators/weather.ts';

const { climate } = scenarioByName('spring-whitefly');
const startMs = Date.UTC(2026, 2, 2);

describe('sun', () => {
  // astronomy-engine 2.1.19 is an independent implementation (VSOP87, within 1 arc minute).
  test.each([
    [51, 0],
    [45, 8],
    [-34, 151],
    [64, -21],
  ])('height at %d N %d E within half a degree of astronomy-engine, every 5 hours of a year', (lat, lon) => {
    const observer = new Observer(lat, lon, 0);
    for (let hour = 0; hour < 8760; hour += 5) {
      const time = new Date(startMs + hour * 3_600_000);
      const { ra, dec } = Equator(Body.Sun, time, observer, true, true);
      const height = Horizon(time, observer, ra, dec).altitude;
      const ours = Math.asin(sineOfSolarHeight({ latitudeDeg: lat, longitudeDeg: lon }, time.getTime()));
      expect(Math.abs((ours * 180) / Math.PI - height)).toBeLessThan(0.5);
    }
  });

  // Clear-sky radiation of Haurwitz 1945 as tabulated in the tests of pvlib-python (BSD-3); from memory.
  test.each([
    [-20, 0],
    [5, 48.6299],
    [10, 135.7417],
    [30, 487.8941],
    [50, 778.7667],
    [90, 1035.092],
  ])('clear sky at %d degrees gives %d W/m2', (heightDeg, expected) => {
    expect(globalRadiation(Math.sin((heightDeg * Math.PI) / 180), 0)).toBeCloseTo(expected, 3);
  });

  test('an overcast sky leaves a quarter (Kasten & Czeplak 1980)', () => {
    expect(globalRadiation(0.7, 1)).toBeCloseTo(0.25 * globalRadiation(0.7, 0), 9);
  });
});

describe('weather', () => {
  const year = weather(climate, startMs, 8760, stream(7, 'weather'));

  test('the same stream gives the same weather, another seed another', () => {
    expect(weather(climate, startMs, 500, stream(7, 'weather'))).toEqual(year.slice(0, 500));
    expect(weather(climate, startMs, 500, stream(8, 'weather'))).not.toEqual(year.slice(0, 500));
  });

  test('neighbouring seeds are not the same stream in disguise', () => {
    const firsts = Array.from({ length: 200 }, (_, seed) => stream(seed, 'weather')());
    expect(new Set(firsts).size).toBe(200);
  });

  test('the year keeps its mean, summer is warmer, nights are dark', () => {
    const mean = (hours: typeof year) => hours.reduce((sum, hour) => sum + hour.outdoorC, 0) / hours.length;
    expect(mean(year)).toBeGreaterThan(climate.yearMeanC - 1.5);
    expect(mean(year)).toBeLessThan(climate.yearMeanC + 1.5);
    const from = (month: number) => (Date.UTC(2026, month, 1) - startMs) / 3_600_000;
    expect(mean(year.slice(from(6), from(8)))).toBeGreaterThan(mean(year.slice(from(11), from(12))) + 8);
    expect(year[0]!.globalWm2).toBe(0);
  });

  test('cloud and radiation stay within bounds', () => {
    for (const hour of year) {
      expect(hour.cloudCover).toBeGreaterThanOrEqual(0);
      expect(hour.cloudCover).toBeLessThanOrEqual(1);
      expect(hour.globalWm2).toBeLessThan(1098);
    }
  });
});
