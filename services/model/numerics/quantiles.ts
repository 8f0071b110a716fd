/**
 * Quantiles of weighted members: the smallest value whose share of weight at or below it reaches p
 * (the inverse of the distribution function; definition 1 of Hyndman & Fan 1996, Am Stat 50:361). It keeps
 * whole counts whole, and a member of weight 2 is the same as two members.
 */

const levels = [
  ['q025', 0.025],
  ['q10', 0.1],
  ['q25', 0.25],
  ['q50', 0.5],
  ['q75', 0.75],
  ['q90', 0.9],
  ['q975', 0.975],
] as const;
type Level = (typeof levels)[number][0];

/** Values of members and how much each counts; weights of any positive total. */
export interface WeightedSample {
  values: ArrayLike<number>;
  weights: ArrayLike<number>;
}

/** Rounding in a sum of weights must not push a quantile to the next member. */
const tolerance = 1e-12;

/** Quantile of `values` with `weights` (any positive total) at 0 <= p <= 1. */
export function weightedQuantile(values: ArrayLike<number>, weights: ArrayLike<number>, p: number): number {
  return quantilesAt(values, weights, [p])[0]!;
}

/** The seven bounds of a range (19 of 20, 8 of 10, half, middle); equal weights when none are given. */
export function quantileRange(values: ArrayLike<number>, weights?: ArrayLike<number>): Record<Level, number> {
  const all = quantilesAt(
    values,
    weights,
    levels.map(([, p]) => p),
  );
  return Object.fromEntries(levels.map(([name], i) => [name, all[i]!])) as Record<Level, number>;
}

/** Quantiles at ascending levels, sorting once. */
function quantilesAt(
  values: ArrayLike<number>,
  weights: ArrayLike<number> | undefined,
  ascending: readonly number[],
): number[] {
  if (values.length === 0) throw new RangeError('a quantile needs at least one value');
  const weightOf = (i: number) => (weights === undefined ? 1 : weights[i]!);
  const order = Array.from(values, (_, i) => i).sort((i, j) => values[i]! - values[j]!);
  const total = order.reduce((sum, i) => sum + weightOf(i), 0);
  if (!(total > 0)) throw new RangeError(`weights must add up to more than 0, but add up to ${total}`);
  let next = 0;
  let reached = weightOf(order[0]!);
  return ascending.map((p) => {
    while (next < order.length - 1 && (reached === 0 || reached < (p - tolerance) * total)) {
      next += 1;
      reached += weightOf(order[next]!);
    }
    return values[order[next]!]!;
  });
}
