/**
 * The binomial count that a uniform number stands for: the smallest count whose distribution function reaches it,
 * so that a larger share never gives a smaller count for the same draw.
 */
export function binomialAt(trials: number, share: number, uniform: number): number {
  const chances = binomialPmf(trials, share);
  let sum = 0;
  for (let count = 0; count < trials; count++) {
    sum += chances[count]!;
    if (sum >= uniform) return count;
  }
  return trials;
}

/** Chances of 0 to `trials`, each term from the one before; beyond a half from the other end, so that none underflows. */
export function binomialPmf(trials: number, share: number): Float64Array {
  if (share > 0.5) return binomialPmf(trials, 1 - share).reverse();
  const chances = new Float64Array(trials + 1);
  chances[0] = (1 - share) ** trials;
  for (let count = 1; count <= trials; count++) {
    chances[count] = (chances[count - 1]! * (trials - count + 1) * share) / (count * (1 - share));
  }
  return chances;
}
