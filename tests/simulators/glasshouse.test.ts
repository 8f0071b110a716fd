import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { describe, expect, test } from 'vitest';
import {
  type HouseState,
  relativeHumidityPct,
  saturationGm3,
  stepHouse,
} from '../../simulators/glasshouse.ts';
import { scenarioByName } from '../../simulators/scenarios.ts';

/** psychrolib ships no types. */
const psychrolib: { SI: number; SetUnitSystem(system: number): void; GetSatVapPres(airC: number): number } =
  createRequire(import.meta.url)('psychrolib');

const { house } = scenarioByName('spring-whitefly');
const start: HouseState = { airC: 14, groundC: 13, vapourGm3: 8 };

test('every step keeps the energy: stored = sun + heater - skin - vents', () => {
  let state = start;
  for (let quarter = 0; quarter < 500; quarter += 1) {
    const outdoors = { outdoorC: 12 + 10 * Math.sin(quarter / 15), globalWm2: (quarter * 37) % 900 };
    const step = stepHouse(house, state, outdoors, 900);
    const { sunWm2, heaterWm2, skinWm2, ventWm2, storedWm2 } = step.flows;
    expect(storedWm2).toBeCloseTo(sunWm2 + heaterWm2 - skinWm2 - ventWm2, 6);
    state = step.state;
  }
});

test('without sun or heater the house comes to the temperature outdoors', () => {
  let state = { ...start, airC: 30, groundC: 25 };
  for (let quarter = 0; quarter < 96 * 10; quarter += 1) {
    state = stepHouse({ ...house, heaterWm2: 0 }, state, { outdoorC: 5, globalWm2: 0 }, 900).state;
  }
  expect(state.airC).toBeCloseTo(5, 1);
  expect(state.groundC).toBeCloseTo(5, 1);
});

test('vents hold the house down', () => {
  const warmest = (ventWm2K: number) => {
    let state = start;
    for (let n = 0; n < 40; n += 1)
      state = stepHouse({ ...house, ventWm2K }, state, { outdoorC: 20, globalWm2: 800 }, 900).state;
    return state.airC;
  };
  expect(warmest(60)).toBeLessThan(warmest(20));
  expect(warmest(20)).toBeLessThan(warmest(0));
});

// Saturation against psychrolib 1.1.1 (ASHRAE Handbook 2017) and the gas law, within 0.5 %.
test.each([0, 5, 10, 20, 30, 40])('saturated air at %d degC holds what psychrolib says', (airC) => {
  psychrolib.SetUnitSystem(psychrolib.SI);
  const expected = (psychrolib.GetSatVapPres(airC) / (461.5 * (airC + 273.15))) * 1000;
  expect(Math.abs(saturationGm3(airC) / expected - 1)).toBeLessThan(0.005);
});

describe('a real house under the same sky (Bleiswijk, May 2022, see the file for origin and licence)', () => {
  const rows = readFileSync(new URL('./bleiswijk-may-2022.csv', import.meta.url), 'utf8')
    .split('\n')
    .filter((line) => line.startsWith('2022'))
    .map((line) => line.split(',').slice(1).map(Number))
    .map(([outdoorC, globalWm2, insideC, insideRH]) => ({
      outdoorC: outdoorC!,
      globalWm2: globalWm2!,
      insideC: insideC!,
      insideRH: insideRH!,
    }));
  const modelled = inside(rows);
  const days = [1, 2, 3, 4, 5, 6, 7];
  const dayOf = (values: readonly number[], day: number) => values.slice(day * 24, day * 24 + 24);
  const mean = (values: readonly number[]) => values.reduce((sum, value) => sum + value, 0) / values.length;

  test('the extract is whole', () => {
    expect(rows).toHaveLength(8 * 24);
    expect(rows.flatMap((row) => Object.values(row)).every(Number.isFinite)).toBe(true);
  });

  // Not the same house: theirs has a computer, screens, pipes and large vents. The claim is one class of climate.
  const realC = rows.map((row) => row.insideC);
  const oursC = modelled.map((hour) => hour.airC);

  test('mean of the week within 3 degrees', () => {
    expect(Math.abs(mean(oursC) - mean(realC))).toBeLessThan(3);
  });

  test.each(days)('day %d: mean within 5, warmest hour within 6 degrees', (day) => {
    expect(Math.abs(mean(dayOf(oursC, day)) - mean(dayOf(realC, day)))).toBeLessThan(5);
    expect(Math.abs(Math.max(...dayOf(oursC, day)) - Math.max(...dayOf(realC, day)))).toBeLessThan(6);
  });

  test('mean humidity of the week within 15 points', () => {
    const real = mean(rows.map((row) => row.insideRH));
    expect(Math.abs(mean(modelled.map((hour) => hour.humidityPct)) - real)).toBeLessThan(15);
  });

  function inside(hours: typeof rows) {
    let state = start;
    return hours.map((hour) => {
      for (let quarter = 0; quarter < 4; quarter += 1) state = stepHouse(house, state, hour, 900).state;
      return { airC: state.airC, humidityPct: relativeHumidityPct(state) };
    });
  }
});
