/**
 * Interval score of a central range, taken apart (Gneiting & Raftery 2007, equation 43): its width, and 2 / alpha
 * times how far the count lay outside. A count below the range means that too much was predicted.
 */
import { type WeightedSample, weightedQuantile } from '../numerics/quantiles.ts';

export interface IntervalScore {
  total: number;
  spread: number;
  overprediction: number;
  underprediction: number;
}

/** `share` is what the range promises to hold, such as 0.8 for 8 of 10. */
export function intervalScore(
  range: { low: number; high: number; share: number },
  observed: number,
): IntervalScore {
  const { low, high, share } = range;
  if (!(share > 0 && share < 1)) throw new RangeError(`a range holds a share between 0 and 1, not ${share}`);
  if (low > high) throw new RangeError(`the low end ${low} must not exceed the high end ${high}`);
  const penalty = 2 / (1 - share);
  const spread = high - low;
  const overprediction = penalty * Math.max(0, low - observed);
  const underprediction = penalty * Math.max(0, observed - high);
  return { total: spread + overprediction + underprediction, spread, overprediction, underprediction };
}

/** Central ranges that are scored together. */
const scoredShares = [0.5, 0.8, 0.95] as const;

/**
 * Weighted interval score of a sample: half the error of its middle and the interval scores of its central ranges,
 * each by half its alpha, divided by the number of ranges and a half (Bracher, Ray, Gneiting & Reich 2021, PLoS Comput
 * Biol 17:e1008618, equation 2). The error of the middle counts as over- or underprediction.
 */
export function weightedIntervalScore(sample: WeightedSample, observed: number): IntervalScore {
  const at = (p: number) => weightedQuantile(sample.values, sample.weights, p);
  const error = observed - at(0.5);
  const sum = { spread: 0, overprediction: Math.max(0, -error) / 2, underprediction: Math.max(0, error) / 2 };
  for (const share of scoredShares) {
    const alpha = 1 - share;
    const score = intervalScore({ low: at(alpha / 2), high: at(1 - alpha / 2), share }, observed);
    sum.spread += (alpha / 2) * score.spread;
    sum.overprediction += (alpha / 2) * score.overprediction;
    sum.underprediction += (alpha / 2) * score.underprediction;
  }
  const parts = scoredShares.length + 0.5;
  const [spread, overprediction, underprediction] = [sum.spread, sum.overprediction, sum.underprediction].map(
    (each) => each / parts,
  );
  return {
    total: spread! + overprediction! + underprediction!,
    spread: spread!,
    overprediction: overprediction!,
    underprediction: underprediction!,
  };
}
