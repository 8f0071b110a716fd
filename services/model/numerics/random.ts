/**
 * Random numbers as an argument: a season, a forecast and a simulated grower are reproduced by their seed.
 * Thin over pure-rand (the generator) and d3-random (the distributions).
 */
import { randomBinomial, randomGamma, randomNormal, randomPoisson } from 'd3-random';
import { uniformFloat64 } from 'pure-rand/distribution/uniformFloat64';
import { xoroshiro128plus } from 'pure-rand/generator/xoroshiro128plus';
import { skipN } from 'pure-rand/utils/skipN';
import { finite } from './finite.ts';

/** Uniform on [0, 1). */
export type Random = () => number;

/** The first numbers of neighbouring seeds of xoroshiro128+ resemble each other; they are thrown away. */
const warmUp = 64;

/** A stream of uniform numbers; the same whole-number seed gives the same stream on every machine. */
export function seeded(seed: number): Random {
  const generator = xoroshiro128plus(finite(seed, 'seed') | 0);
  skipN(generator, warmUp);
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
