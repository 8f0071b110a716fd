/** Distribution functions, thin over @stdlib. */
import gammaln from '@stdlib/math-base-special-gammaln';
import gammaDistribution from '@stdlib/stats-base-dists-gamma-cdf';
import standardNormalQuantile from '@stdlib/stats-base-dists-normal-quantile';
import { finite } from './finite.ts';

/** Natural logarithm of the gamma function, for x > 0. */
export function logGamma(x: number): number {
  return finite(gammaln(x), 'logarithm of the gamma function');
}

/** Chance that a gamma variable with mean shape / rate is at most x; 0 for x <= 0. */
export function gammaCdf({ x, shape, rate }: { x: number; shape: number; rate: number }): number {
  return x <= 0 ? 0 : finite(gammaDistribution(x, shape, rate), 'gamma distribution function');
}

/**
 * Log-probability of a count under the negative binomial with mean `mean` and variance mean + mean^2 / k
 * (Anscombe 1949, Biometrics 5:165, from memory). A mean of 0 allows only the count 0.
 */
export function negativeBinomialLogPmf({
  count,
  mean,
  k,
}: {
  count: number;
  mean: number;
  k: number;
}): number {
  if (mean <= 0) return count === 0 ? 0 : Number.NEGATIVE_INFINITY;
  const ways = logGamma(count + k) - logGamma(k) - logGamma(count + 1);
  return finite(ways - k * Math.log1p(mean / k) - count * Math.log1p(k / mean), 'log-probability of a count');
}

/** The value a standard normal variable stays below with chance p, 0 < p < 1. */
export function normalQuantile(p: number): number {
  return finite(standardNormalQuantile(p, 0, 1), 'normal quantile');
}
