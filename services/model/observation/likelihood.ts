/** Log-likelihoods of counts. Every one is bounded below, so one odd count never rules out all members. */
import { logGamma, negativeBinomialLogPmf } from '../numerics/distributions.ts';
import type { Band } from './counts.ts';

/** Log of the smallest chance given to any count: typing errors happen. */
const leastLog = Math.log(1e-9);
/** Bands are added up term by term to here; wider ones are cut. */
const longestBand = 3000;

/** A card black with insects catches no more. Judgement. */
const cardHolds = 2000;

/** Mean catch of a trap: background + q x flying adults per m2 x days, as far as the card holds it, on the counted part. */
export function meanCatch(window: {
  backgroundPerDay: number;
  qM2PerDay: number;
  /** Flying adults per m2 times days, over the window. */
  flyingDays: number;
  exposureDays: number;
  countedFraction: number;
}): number {
  const { backgroundPerDay, qM2PerDay, flyingDays, exposureDays, countedFraction } = window;
  const caught = cardHolds * -Math.expm1((-qM2PerDay * flyingDays) / cardHolds);
  return countedFraction * (backgroundPerDay * exposureDays + caught);
}

/** Log-probability that a negative binomial count lies in a band (ends included). */
export function bandLogLikelihood({ low, high }: Band, mean: number, k: number): number {
  if (low === high) return Math.max(leastLog, negativeBinomialLogPmf({ count: low, mean, k }));
  if (low === 0 && high >= longestBand) return 0;
  if (high - low >= longestBand) return Math.max(leastLog, Math.log(1 - sumOfBand(0, low - 1, mean, k)));
  return Math.max(leastLog, Math.log(sumOfBand(low, high, mean, k)));
}

/** Probability of low..high, each term from the one before: p(y + 1) = p(y) (y + k) / (y + 1) mean / (mean + k). */
function sumOfBand(low: number, high: number, mean: number, k: number): number {
  if (mean <= 0) return low === 0 ? 1 : 0;
  let term = Math.exp(negativeBinomialLogPmf({ count: low, mean, k }));
  let sum = term;
  const ratio = mean / (mean + k);
  for (let count = low; count < high; count++) {
    term *= ((count + k) / (count + 1)) * ratio;
    sum += term;
  }
  return Math.min(1, sum);
}

/** Chance that a leaf has none, when the number on a leaf is negative binomial (Wilson & Room 1983, Environ Entomol 12:50, from memory: P(0) = (1 + m / k)^-k). */
export const chanceOfNone = (meanPerLeaf: number, k: number): number => (1 + meanPerLeaf / k) ** -k;

/** Log-probability of `infested` of `leaves` leaves, when the number on a leaf is negative binomial. */
export function infestedLogLikelihood(
  infested: number,
  leaves: number,
  meanPerLeaf: number,
  k: number,
): number {
  const none = chanceOfNone(meanPerLeaf, k);
  const ways = logGamma(leaves + 1) - logGamma(infested + 1) - logGamma(leaves - infested + 1);
  const hits = infested === 0 ? 0 : infested * Math.log(1 - none);
  const misses = leaves === infested ? 0 : (leaves - infested) * Math.log(none);
  return Math.max(leastLog, ways + hits + misses);
}

/**
 * Log-probability of the total on leaves of which `infested` have any: beyond one on each, a negative binomial with the
 * mean and variance of as many zero-truncated ones.
 */
export function totalOnInfestedLogLikelihood(
  { low, high }: Band,
  infested: number,
  meanPerLeaf: number,
  k: number,
): number {
  if (infested === 0) return low === 0 ? 0 : leastLog;
  if (high < infested) return leastLog;
  const some = 1 - chanceOfNone(meanPerLeaf, k);
  const onOne = meanPerLeaf / some;
  const square = (meanPerLeaf + meanPerLeaf ** 2 * (1 + 1 / k)) / some;
  const mean = infested * (onOne - 1);
  const more = Math.max(1e-6 * mean ** 2, infested * (square - onOne ** 2) - mean);
  const beyond = { low: Math.max(0, low - infested), high: high - infested };
  return bandLogLikelihood(beyond, mean, mean ** 2 / more);
}

/** Log-probability of `successes` of `trials`, beta-binomial with mean `share` and precision alpha + beta = `precision`. */
export function betaBinomialLogPmf(
  successes: number,
  trials: number,
  share: number,
  precision: number,
): number {
  const alpha = Math.max(1e-6, share * precision);
  const beta = Math.max(1e-6, (1 - share) * precision);
  const logBeta = (a: number, b: number) => logGamma(a) + logGamma(b) - logGamma(a + b);
  const ways = logGamma(trials + 1) - logGamma(successes + 1) - logGamma(trials - successes + 1);
  return Math.max(
    leastLog,
    ways + logBeta(successes + alpha, trials - successes + beta) - logBeta(alpha, beta),
  );
}
