/** Bounded least squares by Levenberg and Marquardt, from several starts, on top of ml-levenberg-marquardt. */
import { levenbergMarquardt } from 'ml-levenberg-marquardt';

const startCount = 20;
const pointsPerStart = 1500;
/** A walk that a small damping throws off its ridge goes on with a larger one. */
const dampings = [0.01, 1, 1e-5] as const;

export interface Bounds {
  low: number;
  high: number;
}

export interface Problem {
  x: readonly number[];
  y: readonly number[];
  bounds: readonly Bounds[];
  /** The curve for parameter values inside the bounds. */
  curve(parameters: readonly number[]): (x: number) => number;
}

export interface Solution {
  parameters: number[];
  sumOfSquares: number;
}

/**
 * Parameters with the least sum of squares. Points are spread evenly over the ranges, and the best of each block of them is a start; the
 * library keeps the best of each walk, and each walk resumes from its end until nothing is gained. Inside, parameters run from 0 to 1 and y up to 1: the library damps all alike.
 */
export function leastSquares({ x, y, bounds, curve }: Problem): Solution {
  const scale = Math.max(...y.map(Math.abs));
  const inUnits = (shares: readonly number[]) =>
    bounds.map(({ low, high }, i) => low + shares[i]! * (high - low));
  const walk = (shares: readonly number[], damping: number) =>
    levenbergMarquardt(
      { x, y: y.map((value) => value / scale) },
      (at) => {
        const at01 = curve(inUnits(at));
        return (value) => at01(value) / scale;
      },
      {
        initialValues: shares,
        minValues: bounds.map(() => 0),
        maxValues: bounds.map(() => 1),
        damping,
        maxIterations: 50,
        errorTolerance: 0,
        centralDifference: true,
        gradientDifference: 1e-6,
      },
    );
  const settle = (shares: readonly number[]) => {
    let best = walk(shares, dampings[0]);
    for (let stuck = 0, round = 0; stuck < dampings.length && round < 60; round++) {
      const next = walk(best.parameterValues, dampings[round % dampings.length]!);
      stuck = next.parameterError < best.parameterError * (1 - 1e-9) ? 0 : stuck + 1;
      if (next.parameterError < best.parameterError) best = next;
    }
    return best;
  };
  const misfit = (shares: readonly number[]) => {
    const rate = curve(inUnits(shares));
    return x.reduce((sum, value, i) => sum + (rate(value) - y[i]!) ** 2, 0);
  };
  const points = spread(bounds.length).map((shares) => ({ shares, misfit: misfit(shares) }));
  const ends = Array.from({ length: startCount }, (_, i) => {
    const block = points.slice(i * pointsPerStart, (i + 1) * pointsPerStart);
    return settle(block.reduce((a, b) => (b.misfit < a.misfit ? b : a)).shares);
  });
  const best = ends.reduce((a, b) => (b.parameterError < a.parameterError ? b : a));
  return {
    parameters: inUnits(best.parameterValues),
    sumOfSquares: best.parameterError * scale ** 2,
  };
}

/** Halton's points: even without a generator. Halton 1960, Numerische Mathematik 2:84. */
function spread(dimensions: number): number[][] {
  const bases = [2, 3, 5, 7, 11, 13].slice(0, dimensions);
  return Array.from({ length: startCount * pointsPerStart }, (_, i) =>
    bases.map((base) => mirrored(i + 1, base)),
  );
}

/** The digits of a number in a base, mirrored behind the point. */
function mirrored(index: number, base: number): number {
  let share = 0;
  for (let [rest, weight] = [index, 1 / base]; rest > 0; rest = Math.floor(rest / base), weight /= base) {
    share += (rest % base) * weight;
  }
  return share;
}
