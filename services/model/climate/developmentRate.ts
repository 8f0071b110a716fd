/**
 * How fast an insect develops at a temperature. The laws of the degree-day ledger are piecewise linear, so each
 * is a sum of ramps slope * (T - at)+ and steps jump * [T > at]; every integral of them follows from two
 * primitives (dayShape.ts; dailyDegreeDays.ts for a day's minimum and maximum, degreeDays.ts for the measured curve).
 */
import { finite } from '../numerics/finite.ts';

/** What happens above the upper threshold: goes on, constant, slowing to zero at 2U - L, stops at once. */
export type Cutoff = 'none' | 'horizontal' | 'intermediate' | 'vertical';

/** Published thresholds; an upper threshold without a cut-off means the horizontal one, the usual reading. */
export interface Thresholds {
  lowerC: number;
  upperC?: number | undefined;
  cutoff?: Cutoff | undefined;
}

/** Linear from lowerC to plateauC, falling linearly to zero at zeroC (equal plateau and zero: stops at once). */
export interface LinearDevelopment {
  lowerC: number;
  plateauC: number;
  zeroC: number;
}

export type DegreeDayLaw = Thresholds | LinearDevelopment;

export interface RampSum {
  ramps: readonly (readonly [atC: number, slope: number])[];
  steps: readonly (readonly [atC: number, jump: number])[];
}

/** The law as ramps and steps; the rate is in degrees above the lower threshold, never negative. */
export function rampSum(law: DegreeDayLaw): RampSum {
  if ('plateauC' in law) return rampsToZero(law);
  const { lowerC, upperC } = law;
  const cutoff = upperC === undefined ? 'none' : (law.cutoff ?? 'horizontal');
  if (upperC === undefined || cutoff === 'none') return { ramps: [[lowerC, 1]], steps: [] };
  const range = finite(upperC - lowerC, 'upper minus lower threshold');
  if (range <= 0)
    throw new RangeError(`the upper threshold ${upperC} must lie above the lower one ${lowerC}`);
  if (cutoff === 'intermediate') return rampsToZero({ lowerC, plateauC: upperC, zeroC: upperC + range });
  const capped = [
    [lowerC, 1],
    [upperC, -1],
  ] as const;
  return { ramps: capped, steps: cutoff === 'vertical' ? [[upperC, -range]] : [] };
}

function rampsToZero({ lowerC, plateauC, zeroC }: LinearDevelopment): RampSum {
  if (!(lowerC < plateauC && plateauC <= zeroC)) {
    throw new RangeError(`development needs lower < plateau <= zero, not ${lowerC}, ${plateauC}, ${zeroC}`);
  }
  const top = plateauC - lowerC;
  if (plateauC === zeroC)
    return {
      ramps: [
        [lowerC, 1],
        [plateauC, -1],
      ],
      steps: [[plateauC, -top]],
    };
  const fall = top / (zeroC - plateauC);
  return {
    ramps: [
      [lowerC, 1],
      [plateauC, -1 - fall],
      [zeroC, fall],
    ],
    steps: [],
  };
}

/** Degree-days gained per day at a constant temperature, by any of the laws. */
export function degreeDayRate(law: DegreeDayLaw, temperatureC: number): number {
  const { ramps, steps } = rampSum(law);
  const ramped = ramps.reduce((sum, [at, slope]) => sum + slope * Math.max(0, temperatureC - at), 0);
  // Slopes that cancel leave rounding behind above the last threshold; a rate is never negative.
  return Math.max(
    0,
    steps.reduce((sum, [at, jump]) => sum + (temperatureC > at ? jump : 0), ramped),
  );
}
