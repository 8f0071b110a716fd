/** Published daily courses between a lowest and a highest temperature. */
import { expect, it } from 'vitest';
import { campbellNormanC, cesaraccioC, partonLoganC } from '../../services/model/climate/diurnal.ts';

// Campbell & Norman 1998, eq 2.2; value printed in the reference of TrenchR, diurnal_temp_variation_sine.
it('check 19: Campbell and Norman, 10/30 °C at 11 o’clock, 25.08958', () => {
  expect(campbellNormanC({ minC: 10, maxC: 30 }, 11)).toBeCloseTo(25.08958, 4);
});

const day = { minC: 10, maxC: 30, sunriseHour: 6, sunsetHour: 18 };

// Cesaraccio et al. 2001, Int J Biometeorol 45:161; value printed in TrenchR, diurnal_temp_variation_sinesqrt.
it('check 20: Cesaraccio, 10/30 °C and next lowest 12 at 8 o’clock, 17.65367', () => {
  expect(cesaraccioC({ ...day, nextMinC: 12 }, 8)).toBeCloseTo(17.65367, 4);
});

// By the equations of the paper with To = 30 - 0.39 (30 - 12) = 22.98.
it('Cesaraccio passes sunset at 22.98 without a step and ends at the next lowest', () => {
  expect(cesaraccioC({ ...day, nextMinC: 12 }, 18)).toBeCloseTo(22.98, 9);
  expect(cesaraccioC({ ...day, nextMinC: 12 }, 18 + 1e-9)).toBeCloseTo(22.98, 3);
  expect(cesaraccioC({ ...day, nextMinC: 12 }, 30)).toBeCloseTo(12, 9);
});

// Parton & Logan 1981, Agricultural Meteorology 23:205, with their Denver constants at 150 cm (by hand).
it('check 21: Parton and Logan, 28.870 at noon and warmest at 13.69 h', () => {
  expect(Math.abs(partonLoganC(day, 12) - 28.87)).toBeLessThan(0.001);
  const hours = Array.from({ length: 2400 }, (_, i) => i / 100);
  const warmest = hours.reduce((best, hour) =>
    partonLoganC(day, hour) > partonLoganC(day, best) ? hour : best,
  );
  expect(Math.abs(warmest - 13.69)).toBeLessThan(0.011);
});
