/** How far possible seasons lie over the person's limit in the weeks ahead, from few members: to weigh many plans. */

import type { World } from '../population/world.ts';
import { trajectoryOf } from './member.ts';
import { expectedCount, type Summary } from './summary.ts';

/** Members that stand for all: a plan of 60 ways takes seconds. */
export const fewMembers = 60;
/** A card or a leaf is full: more is not told apart. */
const mostInfested = 9.9;

/** Of each possible season, all alike in weight and in the same order for every plan. */
export type OverLimit = readonly { weeksOver: number; excess: number }[];

/**
 * Weeks over the limit up to the end of the look ahead, and their excess: the sum over weeks of (count - limit) / limit,
 * at most `mostExcess` a week. Of leaves the counts are pests a leaf, -ln of the share without any (Poisson).
 */
export function overLimit(summary: Summary, world: World, mostExcess: number): OverLimit {
  const { problem, ensemble, today, lastDay, counted } = summary;
  const own = { ...problem, world };
  const scale = counted.unit === 'ten-leaves' ? pestsALeaf : (count: number) => count;
  const limit = scale(counted.limit);
  const weeks = Math.floor((lastDay - today) / 7);
  return evenly(ensemble.weights, fewMembers).map((slot) => {
    const course = trajectoryOf(own, ensemble.vectors[slot]!, slot, Math.floor(lastDay) + 1);
    const season = { weeksOver: 0, excess: 0 };
    for (let week = 1; week <= weeks; week++) {
      const count = scale(expectedCount({ summary, world }, course, slot, today + 7 * week));
      if (count <= limit) continue;
      season.weeksOver += 1;
      season.excess += Math.min(mostExcess, (count - limit) / limit);
    }
    return season;
  });
}

const pestsALeaf = (infestedOfTen: number): number =>
  -Math.log1p(-Math.min(mostInfested, infestedOfTen) / 10);

/** Slots in proportion to their weights, at even steps. */
export function evenly(weights: ArrayLike<number>, wanted: number): number[] {
  const slots: number[] = [];
  let sum = 0;
  for (let slot = 0; slot < weights.length; slot++) {
    sum += weights[slot]!;
    while (slots.length < wanted && (slots.length + 0.5) / wanted <= sum + 1e-12) slots.push(slot);
  }
  return slots;
}
