/** Regularised least squares by its normal equations: for a handful of unknowns. */
import { finite } from './finite.ts';

export interface RidgeProblem {
  /** One row of features an observation. */
  features: readonly (readonly number[])[];
  observed: readonly number[];
  /** How much each observation counts. */
  weights: readonly number[];
  /** What each slope is drawn towards, and how firmly: variance of an observation over that of the slope. */
  priorSlopes: readonly number[];
  priorPrecisions: readonly number[];
}

/**
 * The slopes that minimise sum w (y - x b)^2 + sum precision (b - prior)^2 (Hoerl & Kennard 1970, Technometrics
 * 12:55, from memory, with a prior other than zero). Without an observation they are the prior.
 */
export function ridge({ features, observed, weights, priorSlopes, priorPrecisions }: RidgeProblem): number[] {
  const left = priorPrecisions.map((precision, i) =>
    priorPrecisions.map((_, j) => (i === j ? precision : 0)),
  );
  const right = priorPrecisions.map((precision, i) => precision * priorSlopes[i]!);
  features.forEach((row, n) => {
    const weight = weights[n]!;
    row.forEach((x, i) => {
      right[i]! += weight * x * observed[n]!;
      row.forEach((other, j) => {
        left[i]![j]! += weight * x * other;
      });
    });
  });
  return solvePositive(left, right);
}

/** Solves A x = b for a symmetric positive definite A by elimination; both are used up. */
function solvePositive(a: number[][], b: number[]): number[] {
  for (let i = 0; i < b.length; i += 1) {
    for (let row = i + 1; row < b.length; row += 1) {
      const factor = a[row]![i]! / a[i]![i]!;
      for (let j = i; j < b.length; j += 1) a[row]![j]! -= factor * a[i]![j]!;
      b[row]! -= factor * b[i]!;
    }
  }
  const x = b.map(() => 0);
  for (let i = b.length - 1; i >= 0; i -= 1) {
    const known = x.reduce((sum, value, j) => (j > i ? sum + a[i]![j]! * value : sum), 0);
    x[i] = finite((b[i]! - known) / a[i]![i]!, 'slope of a least-squares fit');
  }
  return x;
}
