/**
 * Continuous ranked probability score: how far a predictive distribution lay from what came, in the unit of the
 * count; for a single number it is the absolute error. Smaller is better. Gneiting & Raftery 2007, J Am Stat Assoc
 * 102:359.
 */

/** CRPS of weighted members: E|X - y| - E|X - X'| / 2 (their equation 21). */
export function crpsOfSample(
  members: ArrayLike<number>,
  observed: number,
  weights?: ArrayLike<number>,
): number {
  const order = Array.from(members, (_, i) => i).sort((a, b) => members[a]! - members[b]!);
  if (order.length === 0) throw new RangeError('a score needs at least one member');
  const total = order.reduce((sum, i) => sum + (weights?.[i] ?? 1), 0);
  let error = 0;
  let spread = 0;
  let below = 0;
  for (const i of order) {
    const share = (weights?.[i] ?? 1) / total;
    error += share * Math.abs(members[i]! - observed);
    // Half the mean difference of two members, in one pass over the sorted ones.
    spread += share * members[i]! * (2 * below + share - 1);
    below += share;
  }
  return error - spread;
}

/**
 * CRPS from quantiles: twice the mean pinball loss over the levels (Gneiting & Ranjan 2011, J Bus Econ Stat
 * 29:411, from memory), each level standing for the levels around it. Rough with few quantiles.
 */
export function crpsOfQuantiles(
  quantiles: readonly { level: number; value: number }[],
  observed: number,
): number {
  const inOrder = [...quantiles].sort((a, b) => a.level - b.level);
  return inOrder.reduce((sum, { level, value }, i) => {
    const from = i === 0 ? 0 : (inOrder[i - 1]!.level + level) / 2;
    const to = i === inOrder.length - 1 ? 1 : (level + inOrder[i + 1]!.level) / 2;
    return sum + 2 * (to - from) * pinball(level, value, observed);
  }, 0);
}

/** Pinball loss of one quantile. */
export function pinball(level: number, value: number, observed: number): number {
  return observed >= value ? level * (observed - value) : (1 - level) * (value - observed);
}
