/**
 * Published degree-day methods for a day of which only the lowest and highest temperature are known, in degC
 * days (or any unit, if all arguments share it). A constant K belongs to the method it was fitted with.
 */
import type { DayShape, Extremes } from './dayShape.ts';
import { type DegreeDayLaw, rampSum } from './developmentRate.ts';

/** Mean of both minus the threshold, at least 0; method 1 of McMaster & Wilhelm 1997, Agric For Meteorol 87:291. */
export function averageDegreeDays({ minC, maxC }: Extremes, lowerC: number): number {
  return Math.max(0, (minC + maxC) / 2 - lowerC);
}

/** Each extreme is first moved between the thresholds; method 2 of McMaster & Wilhelm 1997 ("modified"). */
export function modifiedDegreeDays(
  { minC, maxC }: Extremes,
  { lowerC, upperC = Number.POSITIVE_INFINITY }: { lowerC: number; upperC?: number },
): number {
  const between = (temperatureC: number) => Math.min(upperC, Math.max(lowerC, temperatureC));
  return averageDegreeDays({ minC: between(minC), maxC: between(maxC) }, lowerC);
}

/**
 * Single sine or single triangle with any cut-off. Zalom, Goodell, Wilson, Barnett & Bentley 1983, University
 * of California leaflet 21373 (from memory).
 */
export function shapedDegreeDays(shape: DayShape, day: Extremes, law: DegreeDayLaw): number {
  const { ramps, steps } = rampSum(law);
  const ramped = ramps.reduce((sum, [atC, slope]) => sum + slope * shape.degreesAbove(day, atC), 0);
  return Math.max(
    0,
    steps.reduce((sum, [atC, jump]) => sum + jump * shape.shareAbove(day, atC), ramped),
  );
}

/** Double sine or triangle: half the day from its own lowest, half towards the next; Allen 1976, Environ Entomol 5:388. */
export function doubleDegreeDays(
  shape: DayShape,
  { minC, maxC, nextMinC }: Extremes & { nextMinC: number },
  law: DegreeDayLaw,
): number {
  const morning = shapedDegreeDays(shape, { minC, maxC }, law);
  const evening = shapedDegreeDays(shape, { minC: nextMinC, maxC }, law);
  return (morning + evening) / 2;
}

/** The four cases by which weather services count degree-days above a base (Met Éireann, description of its data). */
export function fourCaseDegreeDays({ minC, maxC }: Extremes, baseC: number): number {
  const meanC = (minC + maxC) / 2;
  if (minC >= baseC) return meanC - baseC;
  if (maxC <= baseC) return 0;
  return meanC > baseC ? (maxC - baseC) / 2 - (baseC - minC) / 4 : (maxC - baseC) / 4;
}
