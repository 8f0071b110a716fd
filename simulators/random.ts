/**
 * Chance for the virtual garden. Every part of it draws from a stream of its own, so that another
 * insect does not change the weather, and another plan does not change what is drawn elsewhere.
 */
import { randomGamma, randomPoisson } from 'd3-random';
import { uniformFloat64 } from 'pure-rand/distribution/uniformFloat64';
import { xoroshiro128plus } from 'pure-rand/generator/xoroshiro128plus';

/** Uniform in [0, 1). */
export type Random = () => number;

/** The same seed and name always give the same stream. */
export function stream(seed: number, name: string): Random {
  const generator = xoroshiro128plus(mix(seed, name));
  // The first value follows the seed too closely.
  uniformFloat64(generator);
  return () => uniformFloat64(generator);
}

/**
 * FNV-1a over seed and name, finished as MurmurHash3 does: without that the streams of neighbouring days begin
 * alike.
 */
function mix(seed: number, name: string): number {
  let hash = 2166136261;
  for (const letter of `${seed}/${name}`) hash = Math.imul(hash ^ letter.codePointAt(0)!, 16777619);
  hash = Math.imul(hash ^ (hash >>> 16), 0x85ebca6b);
  hash = Math.imul(hash ^ (hash >>> 13), 0xc2b2ae35);
  return hash ^ (hash >>> 16);
}

/** Box & Muller 1958: no closure a draw, for millions of them are made in a season. */
export const normal = (random: Random, mean: number, sd: number) =>
  mean + sd * Math.sqrt(-2 * Math.log(1 - random())) * Math.cos(2 * Math.PI * random());

/** Median 1 and the given standard deviation of the logarithm: a factor around a published value. */
export const factorAroundOne = (random: Random, sdOfLog: number) => Math.exp(normal(random, 0, sdOfLog));

/** Log-normal with the given mean and coefficient of variation; the mean itself when cv is 0. */
export function logNormalAround(random: Random, mean: number, cv: number): number {
  if (cv === 0) return mean;
  const variance = Math.log(1 + cv * cv);
  return mean * Math.exp(normal(random, -variance / 2, Math.sqrt(variance)));
}

/** Poisson: by Knuth's products while the mean is small. */
export function poisson(random: Random, mean: number): number {
  if (!(mean > 0)) return 0;
  if (mean > 20) return randomPoisson.source(random)(mean)();
  const limit = Math.exp(-mean);
  let number = 0;
  for (let product = random(); product > limit; product *= random()) number += 1;
  return number;
}

/** Poisson with a mean that is itself gamma: negative binomial with clumping k (small k = clumped). */
export const clumped = (random: Random, mean: number, k: number) =>
  mean > 0 ? poisson(random, randomGamma.source(random)(k, mean / k)()) : 0;

export const chance = (random: Random, probability: number) => random() < probability;

export const wholeNumber = (random: Random, below: number) => Math.floor(random() * below);

/** Rounds up or down at random so that the mean is kept: 2.3 becomes 3 in three of ten cases. */
export const roundAtRandom = (random: Random, amount: number) => Math.floor(amount + random());
