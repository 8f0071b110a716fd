/** The negative binomial is checked against @stdlib's, an independent implementation (probability of success k / (k + mean)). */
import negativeBinomial from '@stdlib/stats-base-dists-negative-binomial';
import { describe, expect, it } from 'vitest';
import {
  bandLogLikelihood,
  betaBinomialLogPmf,
  infestedLogLikelihood,
  meanCatch,
  totalOnInfestedLogLikelihood,
} from '../../services/model/observation/likelihood.ts';
import { flyingDays } from '../../services/model/observation/view.ts';

const cdf = (y: number, mean: number, k: number) => negativeBinomial.cdf(y, k, k / (k + mean));

describe('trap likelihood', () => {
  it.each([
    [0, 2, 1.3],
    [7, 4.5, 0.6],
    [40, 30, 2],
  ])('count %i at mean %f and k %f as in the reference library', (y, mean, k) => {
    const log = bandLogLikelihood({ low: y, high: y }, mean, k);
    expect(log).toBeCloseTo(Math.log(negativeBinomial.pmf(y, k, k / (k + mean))), 9);
  });

  it.each([
    [1, 5, 3, 1.3],
    [0, 0, 0.4, 1.3],
    [21, 50, 12, 0.8],
    [101, 100_000, 60, 1],
  ])('a band %i to %i is the difference of two distribution functions', (low, high, mean, k) => {
    const expected = cdf(high, mean, k) - (low > 0 ? cdf(low - 1, mean, k) : 0);
    expect(bandLogLikelihood({ low, high }, mean, k)).toBeCloseTo(Math.log(expected), 6);
  });

  it('empty traps at mean 2 and k 1 have chance 1/3, at k 0.5 0.447 (references/monitoring.md 6.3)', () => {
    expect(Math.exp(bandLogLikelihood({ low: 0, high: 0 }, 2, 1))).toBeCloseTo(0.333, 3);
    expect(Math.exp(bandLogLikelihood({ low: 0, high: 0 }, 2, 0.5))).toBeCloseTo(0.447, 3);
  });

  it('no count is impossible', () => {
    expect(bandLogLikelihood({ low: 99_999, high: 99_999 }, 0, 1.3)).toBeGreaterThan(-25);
  });

  it('the mean counts background and catch over the exposure, on the part that was counted', () => {
    const window = {
      backgroundPerDay: 0.02,
      qM2PerDay: 0.2,
      flyingDays: 30,
      exposureDays: 10,
      countedFraction: 0.5,
    };
    expect(meanCatch(window)).toBeCloseTo(0.5 * (0.2 + 2000 * (1 - Math.exp(-6 / 2000))), 10);
  });

  it('a card black with insects catches no more, however many fly', () => {
    const flown = (flyingDays: number) =>
      meanCatch({ backgroundPerDay: 0, qM2PerDay: 0.2, flyingDays, exposureDays: 7, countedFraction: 1 });
    expect(flown(100)).toBeCloseTo(20, 0);
    expect(flown(1e6)).toBeCloseTo(2000, 0);
    expect(flown(20_000) / flown(10_000)).toBeLessThan(1.6);
  });
});

describe('exposure', () => {
  it('is integrated over fractions of days', () => {
    const flying = Float64Array.of(1, 10, 100, 1000);
    expect(flyingDays(flying, 0.75, 2.5)).toBeCloseTo(0.25 + 10 + 50, 12);
    expect(flyingDays(flying, -3, 1)).toBeCloseTo(1, 12);
    expect(flyingDays(flying, 2, 2.25)).toBeCloseTo(25, 12);
  });
});

describe('leaf likelihoods', () => {
  it('infested leaves: binomial with the zero class (1 + m / k)^-k', () => {
    // m = 2, k = 1: a third of the leaves is clean; 2 of 3 infested: 3 x 4/9 x 1/3 = 4/9 (by hand).
    expect(Math.exp(infestedLogLikelihood(2, 3, 2, 1))).toBeCloseTo(4 / 9, 9);
    expect(Math.exp(infestedLogLikelihood(0, 3, 2, 1))).toBeCloseTo(1 / 27, 9);
    expect(Math.exp(infestedLogLikelihood(3, 3, 2, 1))).toBeCloseTo(8 / 27, 9);
  });

  it('a total on three infested leaves: as three zero-truncated counts added up, to a tenth of its spread', () => {
    const [mean, k] = [4, 0.8];
    const one = Array.from({ length: 300 }, (_, y) =>
      y === 0 ? 0 : negativeBinomial.pmf(y, k, k / (k + mean)) / (1 - (1 + mean / k) ** -k),
    );
    const add = (a: number[], b: number[]) =>
      a.map((_, y) => a.slice(0, y + 1).reduce((sum, p, i) => sum + p * b[y - i]!, 0));
    const exact = add(add(one, one), one);
    const ours = exact.map((_, y) => Math.exp(totalOnInfestedLogLikelihood({ low: y, high: y }, 3, mean, k)));
    const moments = (law: number[]) => {
      const first = law.reduce((sum, p, y) => sum + p * y, 0);
      return [first, Math.sqrt(law.reduce((sum, p, y) => sum + p * (y - first) ** 2, 0))] as const;
    };
    const [[m, sd], [ourM, ourSd]] = [moments(exact), moments(ours)];
    expect(Math.abs(ourM - m)).toBeLessThan(0.01 * sd);
    expect(Math.abs(ourSd / sd - 1)).toBeLessThan(0.01);
    const apart = exact.reduce((sum, p, y) => sum + Math.abs(p - ours[y]!), 0) / 2;
    expect(apart).toBeLessThan(0.1);
    expect(totalOnInfestedLogLikelihood({ low: 0, high: 0 }, 0, mean, k)).toBe(0);
  });

  it('share of black scales: beta-binomial; alpha = beta = 1 is uniform on 0..n (closed form)', () => {
    for (const y of [0, 3, 10]) expect(Math.exp(betaBinomialLogPmf(y, 10, 0.5, 2))).toBeCloseTo(1 / 11, 9);
    const sum = Array.from({ length: 13 }, (_, y) => Math.exp(betaBinomialLogPmf(y, 12, 0.3, 8)));
    expect(sum.reduce((a, b) => a + b, 0)).toBeCloseTo(1, 6);
  });
});
