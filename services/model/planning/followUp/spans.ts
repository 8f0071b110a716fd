/** Ranges over possible seasons, as numbers and words. */
import type { Span } from '../../followUps.ts';
import type { Courses } from '../../inference/courses.ts';
import { quantileRange } from '../../numerics/quantiles.ts';

/** The courses of a pest as they were, and had something not been released. */
export interface Pair {
  with: Courses;
  without: Courses;
}

/** A count above it is not told apart in words. */
const manyInsects = 1000;

export function spanOf(values: readonly number[]): Span {
  const { q10, q50, q90 } = quantileRange(values);
  return { q10: tenth(q10), q50: tenth(q50), q90: tenth(q90) };
}

const tenth = (value: number): number => Math.round(10 * value) / 10;

/** `12`, or `8 to 15`: whole insects and weeks, since nobody counts halves. */
export function spanWords({ q10, q90 }: Span): string {
  const [low, high] = [Math.round(q10), Math.round(q90)];
  if (low === high) return `${low}`;
  if (low >= manyInsects) return `more than ${manyInsects}`;
  return high > manyInsects ? `${low} or many more` : `${low} to ${high}`;
}

/** The same possible season, both ways. */
export const seasonsOf = (
  pair: Pair,
  what: 'counts' | 'numbers',
): { with: readonly number[]; without: readonly number[] }[] =>
  pair.with[what].map((season, member) => ({ with: season, without: pair.without[what][member]! }));
