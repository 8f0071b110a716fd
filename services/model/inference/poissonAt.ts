/**
 * The Poisson count that a uniform number stands for: the smallest count whose distribution function reaches
 * it, so that more insects never give a smaller catch for the same draw. Above a mean of 60 the normal
 * approximation with the square-root transform is used (Anscombe 1948, Biometrika 35:246, from memory).
 */
import { normalQuantile } from '../numerics/distributions.ts';

export function poissonAt(mean: number, uniform: number): number {
  const u = Math.min(Math.max(uniform, 1e-12), 1 - 1e-12);
  if (mean > 60) {
    const root = Math.sqrt(mean) + normalQuantile(u) / 2;
    return Math.max(0, Math.round(root * root - 0.25));
  }
  let term = Math.exp(-mean);
  let sum = term;
  let count = 0;
  while (sum < u && count < 1000) {
    count += 1;
    term *= mean / count;
    sum += term;
  }
  return count;
}
