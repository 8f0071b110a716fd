/**
 * Random numbers as an argument: a season, a forecast and a simulated grower are reproduced by their seed.
 * Thin over pure-rand (the generator) and d3-random (the distributions).
 */
import { randomBinomial, randomGamma, randomNormal, randomPoisson } from 'd3-random';
import { uniformFloat64 } from 'pure-rand/distribution/uniformFloat64';
import { mersenne } from 'pure-rand/generator/mersenne';
import { finite } from './finite.ts';

/** Uniform on [0, 1). */
export type Random = () => number;

/**
 * A stream of uniform numbers; the same whole-number seed gives the same stream on every machine. The Mersenne
 * twister, because it scatters its seed: the streams of neighbouring seeds of shift-register generators resemble
 * each other (tests/numerics/numerics.test.ts).
 */
export function seeded(seed: number): Random {
  const generator = mersenne(finite(seed, 'seed') | 0);
  return () => uniformFloat64(generator);
}

/** One draw from the normal distribution with mean 0 and variance 1. */
export function standardNormal(random: Random): number {
  return randomNormal.source(random)(0, 1)();
}

/** One draw from the Poisson distribution; 0 for a mean of 0. */
export function poisson(random: Random, mean: number): number {
  return finite(mean, 'Poisson mean') <= 0 ? 0 : randomPoisson.source(random)(mean)();
}

/** How many of `trials` succeed, each with `probability`. */
export function binomial(random: Random, law: { trials: number; probability: number }): number {
  const trials = finite(law.trials, 'binomial trials');
  const probability = finite(law.probability, 'binomial probability');
  if (trials <= 0 || probability <= 0) return 0;
  return probability >= 1 ? trials : randomBinomial.source(random)(trials, probability)();
}

/** One draw from the gamma distribution with mean shape * scale and variance shape * scale^2. */
export function gamma(random: Random, law: { shape: number; scale: number }): number {
  return randomGamma.source(random)(finite(law.shape, 'gamma shape'), finite(law.scale, 'gamma scale'))();
}
