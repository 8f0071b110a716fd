/**
 * Interval score of a central range, taken apart (Gneiting & Raftery 2007, equation 43): its width, and 2 / alpha
 * times how far the count lay outside. A count below the range means that too much was predicted.
 */
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
