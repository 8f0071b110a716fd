/**
 * Degree-days of the measured curve. The curve is piecewise linear and so is every law, so the integral is
 * exact: no daily means, no sampling step.
 */
import { finite } from '../numerics/finite.ts';
import { dayMs } from '../units.ts';
import { triangle } from './dayShape.ts';
import { type DegreeDayLaw, degreeDayRate, type RampSum, rampSum } from './developmentRate.ts';
import { segmentAt, type TemperatureCurve, temperatureAt } from './temperatureCurve.ts';

/** Degree-days from one instant to a later one, in degC days; the curve's ends are held constant outside it. */
export function degreeDaysBetween(
  curve: TemperatureCurve,
  law: DegreeDayLaw,
  fromMs: number,
  toMs: number,
): number {
  const sum = rampSum(law);
  let total = 0;
  for (const piece of pieces(curve, fromMs, toMs)) total += pieceDegreeDays(sum, piece);
  return finite(total, 'degree-days');
}

/** The instant at which `needed` degree-days are reached, or undefined when the curve ends before. */
export function whenReached(
  curve: TemperatureCurve,
  law: DegreeDayLaw,
  fromMs: number,
  needed: number,
): number | undefined {
  if (needed <= 0) return fromMs;
  const sum = rampSum(law);
  let left = needed;
  for (const piece of pieces(curve, fromMs, curve.timesMs.at(-1)!)) {
    const gained = pieceDegreeDays(sum, piece);
    if (gained >= left) return invert(law, sum, piece, left);
    left -= gained;
  }
  return undefined;
}

/** A stretch of time over which temperature is linear. */
interface Piece {
  fromMs: number;
  toMs: number;
  startC: number;
  endC: number;
}

function* pieces(curve: TemperatureCurve, fromMs: number, toMs: number): Generator<Piece> {
  let startMs = fromMs;
  let startC = temperatureAt(curve, fromMs);
  for (let i = segmentAt(curve, fromMs) + 1; startMs < toMs; i += 1) {
    const knotMs = i < curve.timesMs.length ? curve.timesMs[i]! : Number.POSITIVE_INFINITY;
    if (knotMs <= startMs) continue;
    const endMs = Math.min(knotMs, toMs);
    const endC = endMs === knotMs ? curve.temperaturesC[i]! : temperatureAt(curve, endMs);
    yield { fromMs: startMs, toMs: endMs, startC, endC };
    startMs = endMs;
    startC = endC;
  }
}

/** A straight line spends equal time at every temperature between its ends, like half a triangle day. */
function pieceDegreeDays({ ramps, steps }: RampSum, { fromMs, toMs, startC, endC }: Piece): number {
  const ends = { minC: Math.min(startC, endC), maxC: Math.max(startC, endC) };
  let rate = 0;
  for (const [at, slope] of ramps) rate += slope * triangle.degreesAbove(ends, at);
  for (const [at, jump] of steps) rate += jump * triangle.shareAbove(ends, at);
  return (Math.max(0, rate) * (toMs - fromMs)) / dayMs;
}

/** Between two thresholds the rate is linear in time, so the sum is a quadratic with one rising root. */
function invert(law: DegreeDayLaw, sum: RampSum, whole: Piece, needed: number): number {
  let left = needed;
  for (const part of splitAtThresholds(sum, whole)) {
    const gained = pieceDegreeDays(sum, part);
    if (gained < left) {
      left -= gained;
      continue;
    }
    const [first, last] = endRates(law, part);
    const lengthDays = (part.toMs - part.fromMs) / dayMs;
    const slope = (last - first) / lengthDays;
    const days = (2 * left) / (first + Math.sqrt(Math.max(0, first * first + 2 * slope * left)));
    return part.fromMs + Math.min(days, lengthDays) * dayMs;
  }
  return whole.toMs;
}

/** Rates just inside both ends: at a vertical cut-off the rate of the threshold itself belongs to one side only. */
function endRates(law: DegreeDayLaw, { startC, endC }: Piece): [number, number] {
  const middle = degreeDayRate(law, (startC + endC) / 2);
  const quarter = degreeDayRate(law, (3 * startC + endC) / 4);
  const halfStep = middle - quarter;
  return [Math.max(0, middle - 2 * halfStep), Math.max(0, middle + 2 * halfStep)];
}

function splitAtThresholds({ ramps, steps }: RampSum, { fromMs, toMs, startC, endC }: Piece): Piece[] {
  const shares = [...ramps, ...steps]
    .map(([at]) => (at - startC) / (endC - startC))
    .filter((share) => share > 0 && share < 1)
    .sort((a, b) => a - b);
  const cuts = [0, ...shares, 1];
  return cuts.slice(1).map((share, i) => ({
    fromMs: fromMs + cuts[i]! * (toMs - fromMs),
    toMs: fromMs + share * (toMs - fromMs),
    startC: startC + cuts[i]! * (endC - startC),
    endC: startC + share * (endC - startC),
  }));
}
