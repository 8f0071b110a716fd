import { describe, expect, it } from 'vitest';
import { normalQuantile } from '../../services/model/numerics/distributions.ts';
import { seeded } from '../../services/model/numerics/random.ts';
import { coverage, randomisedPlace } from '../../services/model/scoring/coverage.ts';
import { crpsOfQuantiles, crpsOfSample, pinball } from '../../services/model/scoring/crps.ts';
import { intervalScore } from '../../services/model/scoring/intervalScore.ts';

/** Evenly spaced quantiles of the standard normal. */
const normalMembers = Array.from({ length: 4000 }, (_, i) => normalQuantile((i + 0.5) / 4000));

/**
 * CRPS of a normal forecast (Gneiting & Raftery 2007, section 4.2): sigma [z (2 Phi(z) - 1) + 2 phi(z) - 1 / sqrt(pi)].
 * Phi from tables (Abramowitz & Stegun 1964, table 26.1): Phi(0) = .5, Phi(1) = .841344746, Phi(2) = .977249868.
 */
const normalCrps = (z: number, phi: number) =>
  z * (2 * phi - 1) + (2 * Math.exp((-z * z) / 2)) / Math.sqrt(2 * Math.PI) - 1 / Math.sqrt(Math.PI);

describe('CRPS', () => {
  it.each([
    [0, 0.5],
    [1, 0.841344746],
    [2, 0.977249868],
    [-2, 1 - 0.977249868],
  ])('of a standard normal at %f is the published closed form', (z, phi) => {
    expect(crpsOfSample(normalMembers, z)).toBeCloseTo(normalCrps(z, phi), 3);
  });

  it('of a uniform forecast on [0, 1] is y^2 - y + 1/3 (its integral, by hand)', () => {
    const uniform = Array.from({ length: 1000 }, (_, i) => (i + 0.5) / 1000);
    for (const y of [0, 0.3, 1]) expect(crpsOfSample(uniform, y)).toBeCloseTo(y * y - y + 1 / 3, 5);
  });

  it('of a single number is the absolute error, and equal pairs change nothing', () => {
    expect(crpsOfSample([7], 3)).toBe(4);
    expect(crpsOfSample([1, 5], 2)).toBeCloseTo(crpsOfSample([1, 1, 5, 5], 2), 12);
  });

  it('counts a member of weight 3 as three members', () => {
    expect(crpsOfSample([1, 4, 9], 5, [1, 3, 2])).toBeCloseTo(crpsOfSample([1, 4, 4, 4, 9, 9], 5), 12);
  });

  it('from many quantiles agrees with the normal closed form', () => {
    const quantiles = Array.from({ length: 199 }, (_, i) => ({
      level: (i + 1) / 200,
      value: normalQuantile((i + 1) / 200),
    }));
    expect(crpsOfQuantiles(quantiles, 1)).toBeCloseTo(normalCrps(1, 0.841344746), 2);
  });

  it('rests on the pinball loss: 1 too low at 0.9 costs 0.9, 1 too high costs 0.1', () => {
    expect(pinball(0.9, 4, 5)).toBeCloseTo(0.9, 12);
    expect(pinball(0.9, 5, 4)).toBeCloseTo(0.1, 12);
  });
});

describe('interval score (Gneiting & Raftery 2007, equation 43, worked by hand)', () => {
  const range = { low: 4, high: 10, share: 0.8 };

  it('is the width when the count lies inside', () => {
    expect(intervalScore(range, 7)).toEqual({ total: 6, spread: 6, overprediction: 0, underprediction: 0 });
  });

  it('calls a count below the range overprediction, ten times the distance for 8 of 10', () => {
    const score = intervalScore(range, 1);
    expect(score.overprediction).toBeCloseTo(30, 9);
    expect(score.underprediction).toBe(0);
    expect(score.total).toBeCloseTo(36, 9);
  });

  it('calls a count above the range underprediction', () => {
    expect(intervalScore(range, 12).underprediction).toBeCloseTo(20, 9);
  });

  it('refuses 80 for 8 of 10', () => {
    expect(() => intervalScore({ ...range, share: 80 }, 1)).toThrow(/between 0 and 1, not 80/);
  });
});

describe('coverage with randomised places', () => {
  /** Poisson with mean 0.7 as 10,000 members in exact shares. */
  const shares = [0, 1, 2, 3, 4, 5].map((n) => (Math.exp(-0.7) * 0.7 ** n) / [1, 1, 2, 6, 24, 120][n]!);

  it('is nominal for small counts where closed ranges would flatter', () => {
    const random = seeded(5);
    const draw = () => {
      let u = random() * shares.reduce((a, b) => a + b, 0);
      return shares.findIndex((share) => {
        u -= share;
        return u < 0;
      });
    };
    const places = Array.from({ length: 4000 }, () =>
      randomisedPlace([0, 1, 2, 3, 4, 5], draw(), random, shares),
    );
    // Binomial standard error of 4000: at most 0.008.
    expect(Math.abs(coverage(places, 0.5) - 0.5)).toBeLessThan(0.03);
    expect(Math.abs(coverage(places, 0.8) - 0.8)).toBeLessThan(0.03);
  });

  it('puts a count outside all members at the end', () => {
    expect(randomisedPlace([1, 2], 5, () => 0.5)).toBe(1);
    expect(randomisedPlace([1, 2], 0, () => 0.5)).toBe(0);
  });
});
