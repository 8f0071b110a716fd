/** Laws of development against their printed examples and exact properties. */
import { describe, expect, it } from 'vitest';
import { degreeDaysBetween, whenReached } from '../../services/model/climate/degreeDays.ts';
import {
  briere1,
  briere2,
  lactin2,
  linearFit,
  logan6,
  rateBy,
  sharpeSchoolfield,
  taylor,
} from '../../services/model/climate/rateLaws.ts';
import { gammaCdf } from '../../services/model/numerics/distributions.ts';
import { day, throughPoints } from '../climate/curves.ts';

const near = (value: number, expected: number, tolerance: number) =>
  expect(Math.abs(value - expected)).toBeLessThanOrEqual(tolerance);

const warmestOf = (rate: (temperatureC: number) => number) => {
  const temperatures = Array.from({ length: 40_001 }, (_, i) => i / 1000);
  return temperatures.reduce((best, t) => (rate(t) > rate(best) ? t : best));
};

// Oregon State University, Entomology 442/542 handout: 40, 20, 13 and 9 days at 50, 60, 70 and 80 °F. It prints
// 41.96 °F and 350.8 degree-days from rounded coefficients; the unrounded line gives 41.95 and 350.6.
it('check 32: the course’s line has its threshold at 41.95 °F and needs 350.6 degree-days', () => {
  const line = linearFit([
    { temperature: 50, days: 40 },
    { temperature: 60, days: 20 },
    { temperature: 70, days: 13 },
    { temperature: 80, days: 9 },
  ]);
  near(line.lowerThreshold, 41.95, 0.05);
  near(line.degreeDays, 350.6, 0.5);
  near(line.degreeDays, 350.8, 0.5);
});

// Brière et al. 1999, Environ Entomol 28:22: 1e-4 x 25 x 15 x sqrt(10), and the optimum by their equation.
it('check 33: Brière-1 with 1e-4, 10 and 35 °C gives 0.118585 at 25 and is fastest at 29.2066', () => {
  const law = { a: 1e-4, lowerC: 10, lethalC: 35 };
  near(briere1(law, 25), 0.118585, 1e-6);
  near(
    warmestOf((t) => briere1(law, t)),
    29.2066,
    1e-3,
  );
  expect([briere1(law, 10), briere1(law, 35), briere1(law, -5), briere1(law, 40)]).toEqual([0, 0, 0, 0]);
});

// Lactin et al. 1995: r(TL) = lambda; Logan et al. 1976: r(TM) = 0; Taylor 1981: r(Tm + To) = Rm exp(-1/2).
it('check 34: Lactin-2, Logan-6 and Taylor at their marked temperatures', () => {
  near(lactin2({ rho: 0.005, lethalC: 40, delta: 3, lambda: 0.02 }, 40), 0.02, 1e-9);
  near(logan6({ psi: 0.05, rho: 0.1, maximumC: 30, delta: 4 }, 30), 0, 1e-9);
  const bell = { greatestRate: 0.2, bestC: 27, widthC: 9 };
  for (const t of [18, 36]) near(taylor(bell, t) / 0.2, 0.606531, 1e-6);
  near(taylor(bell, 27), 0.2, 1e-12);
});

// By hand from the equation of Lactin et al. 1995 with rho 0.005, TL 40, D 3, lambda -1.05.
it('Lactin-2 by hand at five temperatures, and 0 where the equation turns negative', () => {
  const law = { rho: 0.005, lethalC: 40, delta: 3, lambda: -1.05 };
  const expected = [
    [10, 0.00122],
    [20, 0.05362],
    [25, 0.07492],
    [30, 0.06826],
  ] as const;
  for (const [t, rate] of expected) near(lactin2(law, t), rate, 1e-5);
  expect(lactin2(law, 35)).toBe(0);
});

// TM + ln(rho D) / (1/D - rho).
it('check 35: Logan-6 with 0.1, 30 and 4 is fastest at 23.8914 °C', () => {
  const law = { psi: 0.05, rho: 0.1, maximumC: 30, delta: 4 };
  near(
    warmestOf((t) => logan6(law, t)),
    23.8914,
    1e-3,
  );
  near(logan6(law, 20), 0.28702, 1e-5 / 0.05);
});

// Brière et al. 1999, the optimum by their equation with m = 4.
it('Brière-2 with 1e-4, 10, 35 °C and m 4 gives 0.066685 at 25 and is fastest at 31.7704', () => {
  const law = { a: 1e-4, lowerC: 10, lethalC: 35, m: 4 };
  near(briere2(law, 25), 0.066685, 1e-6);
  near(
    warmestOf((t) => briere2(law, t)),
    31.7704,
    1e-3,
  );
  near(briere2({ ...law, m: 2 }, 25), 0.118585, 1e-6);
  expect([briere2(law, 10), briere2(law, 35), briere2(law, 40)]).toEqual([0, 0, 0]);
});

// Schoolfield et al. 1981, J Theor Biol 88:719: r(298.15 K) = rho; at T(1/2) the inactivation term is exactly 1.
it('Sharpe-Schoolfield: the rate at 25 °C, halved where half is inactive, and by hand at 35 °C', () => {
  const law = { rateAt25C: 0.1, activationCal: 15_000 };
  near(sharpeSchoolfield(law, 25), 0.1, 1e-12);
  // 0.1 x 308.15 / 298.15 x exp(15000 / 1.987 x (1/298.15 - 1/308.15)).
  near(sharpeSchoolfield(law, 35), 0.235057, 1e-6);
  const heat = { halfC: 35, enthalpyCal: 60_000 };
  const cold = { halfC: 8, enthalpyCal: -50_000 };
  near(sharpeSchoolfield({ ...law, heat }, 35), 0.235057 / 2, 1e-6);
  near(sharpeSchoolfield({ ...law, cold }, 8) / sharpeSchoolfield(law, 8), 0.5, 1e-12);
});

// Taylor 1981, Am Nat 117:1, as collected: 0.129 a day at best, 24.7 °C, 9.3 °C wide.
it('the bell published for the peach-potato aphid gives the days of DeLoach 1974 within 10 %', () => {
  const law = { kind: 'taylor', greatestRate: 0.129, bestC: 24.7, widthC: 9.3 } as const;
  const deLoach = [
    [5, 68],
    [10, 26.2],
    [15, 13.9],
    [20, 8.8],
    [25, 7.7],
    [30, 9.2],
  ] as const;
  for (const [t, days] of deLoach) near(1 / rateBy(law, t) / days, 1, 0.1);
});

describe('check 36: 200 degree-days above 10 °C (rate summation, by hand)', () => {
  /** Half days of two temperatures, the first from midnight. */
  const halves = (firstC: number, secondC: number) =>
    throughPoints(
      Array.from({ length: 40 }, (_, d) => [
        [24 * d, firstC] as const,
        [24 * d + 12 - 1e-6, firstC] as const,
        [24 * d + 12, secondC] as const,
        [24 * d + 24 - 1e-6, secondC] as const,
      ]).flat(),
    );
  const daysNeeded = (curve: ReturnType<typeof throughPoints>) =>
    200 / (degreeDaysBetween(curve, { lowerC: 10 }, 0, 30 * day) / 30);

  it('takes 20 days at half days of 15 and 25 °C, as at a constant 20 °C', () => {
    near(daysNeeded(halves(15, 25)), 20, 1e-6);
    near(whenReached(halves(15, 25), { lowerC: 10 }, 0, 200)! / day, 20, 1e-6);
    near(
      whenReached(
        throughPoints([
          [0, 20],
          [960, 20],
        ]),
        { lowerC: 10 },
        0,
        200,
      )! / day,
      20,
      1e-9,
    );
  });

  it('takes 26.667 days at half days of 5 and 25 °C, though their mean of 15 °C says 40', () => {
    near(daysNeeded(halves(5, 25)), 26.6667, 5e-5);
    // 26 days give 195; the last 5 take a third of a day once it is warm.
    near(whenReached(halves(25, 5), { lowerC: 10 }, 0, 200)! / day, 26 + 1 / 3, 1e-6);
    near(whenReached(halves(5, 25), { lowerC: 10 }, 0, 200)! / day, 26 + 1 / 2 + 1 / 3, 1e-6);
  });
});

// Larson & Odoni 1981, Urban Operations Research, section 2.11.3 (Erlang); quantiles by the incomplete gamma function.
it('check 37: 25 sub-stages: 0.52660 done by the mean, 10 % at 0.7538, 90 % at 1.2633', () => {
  const done = (x: number) => gammaCdf({ x, shape: 25, rate: 25 });
  near(done(1), 0.5266, 1e-4);
  for (const [quantile, p] of [
    [0.7538, 0.1],
    [1.2633, 0.9],
  ] as const) {
    expect(done(quantile - 1e-4)).toBeLessThan(p);
    expect(done(quantile + 1e-4)).toBeGreaterThan(p);
  }
});
