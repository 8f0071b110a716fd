/** Moist air: the examples of FAO Irrigation and Drainage Paper 56 and the ASHRAE table. */
import { expect, it } from 'vitest';
import {
  dailySaturationVapourPressureKPa,
  dewPointC,
  saturationVapourPressureKPa,
  vapourPressureDeficitKPa,
} from '../../services/model/climate/humidity.ts';

const near = (value: number, expected: number, tolerance: number) =>
  expect(Math.abs(value - expected)).toBeLessThanOrEqual(tolerance);

// FAO-56 chapter 3, example 3.
it('check 27: 15 and 24.5 °C have 1.705 and 3.075 kPa, on average 2.39', () => {
  near(saturationVapourPressureKPa(15), 1.705, 0.001);
  near(saturationVapourPressureKPa(24.5), 3.075, 0.001);
  near(dailySaturationVapourPressureKPa({ minC: 15, maxC: 24.5 }), 2.39, 0.005);
});

// FAO-56 chapter 3, example 5; example 4 for 19.5 °C.
it('check 28: 18, 19.5 and 25 °C have 2.064, 2.267 and 3.168 kPa', () => {
  near(saturationVapourPressureKPa(18), 2.064, 0.001);
  near(saturationVapourPressureKPa(19.5), 2.267, 0.001);
  near(saturationVapourPressureKPa(25), 3.168, 0.001);
});

// ASHRAE Handbook of Fundamentals 2017, chapter 1, table 3.
it('check 29: within 0.15 % of the ASHRAE table at 5, 25 and 50 °C', () => {
  for (const [temperatureC, kPa] of [
    [5, 0.8726],
    [25, 3.1697],
    [50, 12.3513],
  ] as const) {
    near(saturationVapourPressureKPa(temperatureC) / kPa, 1, 0.0015);
  }
});

// FAO-56 chapter 3, example 5: 18 °C with 82 % and 25 °C with 54 %; the deficit by subtraction.
it('check 30: the vapour pressure of that day is 1.70 kPa and its deficit 0.914', () => {
  const actual = (saturationVapourPressureKPa(18) * 0.82 + saturationVapourPressureKPa(25) * 0.54) / 2;
  near(actual, 1.7, 0.005);
  near(dailySaturationVapourPressureKPa({ minC: 18, maxC: 25 }) - actual, 0.914, 0.005);
});

// From the same equation by hand; dew point is the equation turned round.
it('check 31: deficit 0.950 kPa at 25 °C and 70 %, 2.122 at 30 and 50; dew point 19.15 °C', () => {
  near(vapourPressureDeficitKPa({ temperatureC: 25, humidityPct: 70 }), 0.95, 0.002);
  near(vapourPressureDeficitKPa({ temperatureC: 30, humidityPct: 50 }), 2.122, 0.002);
  near(dewPointC({ temperatureC: 25, humidityPct: 70 }), 19.15, 0.05);
});

// Shipp & Gillespie 1993, Environ Entomol 22:726: 40 °C with a deficit of 4.76 kPa clears a house of thrips.
it('check 57: at 40 °C a deficit of 4.76 kPa is 35.5 % humidity', () => {
  near(vapourPressureDeficitKPa({ temperatureC: 40, humidityPct: 35.5 }), 4.76, 0.2 * 0.0738);
});
