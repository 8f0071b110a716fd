/** The thin numerics against the libraries and papers they rest on. */
import negativeBinomial from '@stdlib/stats-base-dists-negative-binomial';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  gammaCdf,
  logGamma,
  negativeBinomialLogPmf,
  normalQuantile,
} from '../../services/model/numerics/distributions.ts';
import { finite } from '../../services/model/numerics/finite.ts';
import { quantileRange, weightedQuantile } from '../../services/model/numerics/quantiles.ts';
import { binomial, gamma, poisson, seeded, standardNormal } from '../../services/model/numerics/random.ts';

const near = (value: number, expected: number, tolerance: number) =>
  expect(Math.abs(value - expected)).toBeLessThanOrEqual(tolerance);

describe('distributions', () => {
  // Abramowitz & Stegun 1972, 6.1.8 and 6.1.15: gamma(1/2) = sqrt(pi), gamma(n) = (n - 1)!.
  it('log gamma of one half and of whole numbers', () => {
    near(logGamma(0.5), Math.log(Math.sqrt(Math.PI)), 1e-14);
    near(logGamma(11), Math.log(3_628_800), 1e-12);
  });

  // Abramowitz & Stegun 1972, table 26.1 and 26.2.
  it('normal quantiles of 0.975 and 0.9', () => {
    near(normalQuantile(0.975), 1.959964, 1e-6);
    near(normalQuantile(0.9), 1.281552, 1e-6);
    near(normalQuantile(0.5), 0, 1e-15);
  });

  // A gamma of shape 1 is the exponential; of whole shape n, it is a Poisson tail.
  it('gamma distribution function of shapes 1 and 3', () => {
    near(gammaCdf({ x: 0.7, shape: 1, rate: 2 }), 1 - Math.exp(-1.4), 1e-14);
    near(gammaCdf({ x: 2, shape: 3, rate: 1 }), 1 - 5 * Math.exp(-2), 1e-14);
    expect(gammaCdf({ x: -1, shape: 3, rate: 1 })).toBe(0);
  });

  it('negative binomial equals @stdlib’s with p = k / (k + mean)', () => {
    for (const count of [0, 1, 4, 17, 240]) {
      for (const mean of [0.05, 3, 60]) {
        for (const k of [0.3, 1.3, 12]) {
          const reference = negativeBinomial.logpmf(count, k, k / (k + mean));
          near(negativeBinomialLogPmf({ count, mean, k }) - reference, 0, 1e-9 * Math.abs(reference));
        }
      }
    }
  });

  it('a mean of nothing allows only a count of nothing', () => {
    expect(negativeBinomialLogPmf({ count: 0, mean: 0, k: 1 })).toBe(0);
    expect(negativeBinomialLogPmf({ count: 2, mean: 0, k: 1 })).toBe(Number.NEGATIVE_INFINITY);
  });

  it('a number that is none is an error naming the quantity', () => {
    expect(() => negativeBinomialLogPmf({ count: 2, mean: Number.NaN, k: 1 })).toThrow(
      /log-probability of a count/,
    );
    expect(() => finite(Number.NaN, 'leaf area')).toThrow(/leaf area/);
  });
});

describe('quantiles', () => {
  // Hyndman & Fan 1996, Am Stat 50:361, definition 1: x(ceil(n p)) of the sorted sample.
  it('equal definition 1 of Hyndman and Fan for equal weights', () => {
    const samples = fc.array(fc.double({ min: -50, max: 50, noNaN: true }), { minLength: 1, maxLength: 60 });
    fc.assert(
      fc.property(samples, fc.integer({ min: 1, max: 999 }), (values, permille) => {
        const sorted = [...values].sort((a, b) => a - b);
        const rank = Math.ceil((values.length * permille) / 1000);
        expect(
          weightedQuantile(
            values,
            values.map(() => 0.37),
            permille / 1000,
          ),
        ).toBe(sorted[rank - 1]);
      }),
      { seed: 3 },
    );
  });

  it('a member of weight 3 counts as three members, one of weight 0 as none', () => {
    const p = [0.05, 0.3, 0.5, 0.77, 0.95];
    const byWeight = p.map((level) => weightedQuantile([9, 4, 7, -100], [1, 3, 2, 0], level));
    expect(byWeight).toEqual(
      p.map((level) => weightedQuantile([9, 4, 4, 4, 7, 7], [1, 1, 1, 1, 1, 1], level)),
    );
  });

  it('the range of 1 to 1000 ends where 19 of 20, 8 of 10 and half of them end', () => {
    const values = Float64Array.from({ length: 1000 }, (_, i) => 1000 - i);
    expect(quantileRange(values)).toEqual({
      q025: 25,
      q10: 100,
      q25: 250,
      q50: 500,
      q75: 750,
      q90: 900,
      q975: 975,
    });
    expect(quantileRange([6], [0.2])).toEqual({ q025: 6, q10: 6, q25: 6, q50: 6, q75: 6, q90: 6, q975: 6 });
  });

  it('nothing to rank is an error', () => {
    expect(() => quantileRange([])).toThrow(/at least one value/);
    expect(() => weightedQuantile([1, 2], [0, 0], 0.5)).toThrow(/weights/);
  });
});

describe('random numbers', () => {
  const draws = (draw: () => number, n = 20_000) => Array.from({ length: n }, draw);
  const mean = (values: number[]) => values.reduce((sum, value) => sum + value, 0) / values.length;
  const variance = (values: number[]) => {
    const middle = mean(values);
    return mean(values.map((value) => (value - middle) ** 2));
  };

  it('repeat for a seed, differ between seeds, and stay in [0, 1)', () => {
    const stream = (seed: number) => draws(seeded(seed), 1000);
    expect(stream(42)).toEqual(stream(42));
    expect(stream(42)).not.toEqual(stream(43));
    for (const value of stream(0)) expect(value >= 0 && value < 1).toBe(true);
  });

  it('of neighbouring seeds are not related', () => {
    const first = draws(() => 0, 4000).map((_, seed) => seeded(seed)());
    near(mean(first), 0.5, 0.02);
    near(variance(first), 1 / 12, 0.005);
    const products = first.slice(1).map((value, i) => (value - 0.5) * (first[i]! - 0.5));
    near(mean(products), 0, 0.006);
  });

  // Means and variances of the textbook; tolerances are about four standard errors of 20,000 draws.
  it('have the mean and variance of their law', () => {
    const random = seeded(2026);
    const laws: [() => number, number, number][] = [
      [() => standardNormal(random), 0, 1],
      [() => poisson(random, 3.7), 3.7, 3.7],
      [() => poisson(random, 240), 240, 240],
      [() => binomial(random, { trials: 60, probability: 0.15 }), 9, 7.65],
      [() => gamma(random, { shape: 2.5, scale: 1.6 }), 4, 6.4],
      [() => gamma(random, { shape: 0.4, scale: 5 }), 2, 10],
    ];
    for (const [draw, expectedMean, expectedVariance] of laws) {
      const values = draws(draw);
      near(mean(values), expectedMean, 4 * Math.sqrt(expectedVariance / values.length));
      near(variance(values) / expectedVariance, 1, 0.12);
    }
  });

  it('know certain outcomes', () => {
    const random = seeded(1);
    expect(poisson(random, 0)).toBe(0);
    expect(binomial(random, { trials: 7, probability: 1 })).toBe(7);
    expect(binomial(random, { trials: 7, probability: 0 })).toBe(0);
    expect(() => poisson(random, Number.NaN)).toThrow(/Poisson mean/);
  });
});
