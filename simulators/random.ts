/**
 * Chance for the virtual garden. Every part of it draws from a stream of its own, so that another
 * insect does not change the weather.
 */
import { randomGamma, randomLogNormal, randomNormal, randomPoisson } from 'd3-random';
import { uniformFloat64 } from 'pure-rand/distribution/uniformFloat64';
import { xoroshiro128plus } from 'pure-rand/generator/xoroshiro128plus';

/** Uniform in [0, 1). */
export type Random = () => number;

/** The same seed and name always give the same stream. */
export function stream(seed: number, name: string): Random {
  const generator = xoroshiro128plus(mix(seed, name));
  return () => uniformFloat64(generator);
}

/** FNV-1a over seed and name: 32 bits that differ for every stream. */
function mix(seed: number, name: string): number {
  let hash = 2166136261;
  for (const letter of `${seed}/${name}`) hash = Math.imul(hash ^ letter.codePointAt(0)!, 16777619);
  return hash | 0;
}

export const normal = (random: Random, mean: number, sd: number) => randomNormal.source(random)(mean, sd)();

/** Median 1 and the given standard deviation of the logarithm: a factor around a published value. */
export const factorAroundOne = (random: Random, sdOfLog: number) =>
  randomLogNormal.source(random)(0, sdOfLog)();

/** Gamma with the given mean and coefficient of variation; the mean itself when cv is 0. */
export const gammaAround = (random: Random, mean: number, cv: number) =>
  cv === 0 ? mean : randomGamma.source(random)(1 / cv ** 2, mean * cv ** 2)();

export const poisson = (random: Random, mean: number) =>
  mean > 0 ? randomPoisson.source(random)(mean)() : 0;

/** Poisson with a mean that is itself gamma: negative binomial with clumping k (small k = clumped). */
export const clumped = (random: Random, mean: number, k: number) =>
  poisson(random, mean > 0 ? gammaAround(random, mean, 1 / Math.sqrt(k)) : 0);

export const chance = (random: Random, probability: number) => random() < probability;

export const wholeNumber = (random: Random, below: number) => Math.floor(random() * below);

/** Rounds up or down at random so that the mean is kept: 2.3 becomes 3 in three of ten cases. */
export const roundAtRandom = (random: Random, amount: number) => Math.floor(amount + random());
