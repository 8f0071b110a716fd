/** How far possible seasons lie over the person's limit in the weeks ahead and what they cost, from few members: to weigh many plans. */
import type { World } from '../population/world.ts';
import type { EnemyId } from '../season.ts';
import { friendsFail } from './friendsInDoubt.ts';
import { expectedCount, type Summary } from './summary.ts';

/** Members that stand for all: a plan of 60 ways takes seconds. */
export const fewMembers = 60;
/** For the ways between which it is decided. Judgement. */
export const decidingMembers = 180;
/** Of pests whose harm was not read: as greenhouse whitefly. Judgement. */
const usualHarm = { bornePerM2: 60, pestDaysPerM2: 200_000 };

/**
 * Of each possible season, all alike in weight and in the same order for every plan on as many members: weeks over the limit up to the end
 * of the season, and what the pest-days until then cost the plants (1: 1/e of the crop is left).
 */
export type OverLimit = readonly { weeksOver: number; damage: number }[];

interface Weighing {
  /** Multiplies what the plants bear: the person's own limit against the usual one. */
  tolerance: number;
  /** Days since the start. */
  weighedTo: number;
  /** Kinds that fail in some seasons. */
  inDoubt: readonly EnemyId[];
  members: number;
}

export function overLimit(
  summary: Summary,
  world: World,
  { tolerance, weighedTo, inDoubt, members }: Weighing,
): OverLimit {
  const { ensemble, today, counted, coursesIn } = summary;
  const days = Math.floor(weighedTo) + 1;
  const own = coursesIn(world, days);
  const withoutFriends = coursesIn(failing(world, inDoubt, Math.floor(today) + 1), days);
  const { bornePerM2, pestDaysPerM2 } = world.pests[0]!.traits.harm ?? usualHarm;
  const weeks = Math.floor((weighedTo - today) / 7);
  return evenly(ensemble.weights, Math.min(members, ensemble.weights.length)).map((slot, i) => {
    const fails = Math.floor((i + 1) * friendsFail) > Math.floor(i * friendsFail);
    const course = (fails ? withoutFriends : own)(slot);
    const season = { weeksOver: 0, damage: 0 };
    for (let week = 1; week <= weeks; week++) {
      const end = today + 7 * week;
      if (expectedCount({ summary, world }, course, slot, end) > counted.limit) season.weeksOver += 1;
      const perM2 = course.adults[Math.floor(end)]! + course.young[Math.floor(end)]!;
      season.damage += (7 * Math.max(0, perM2 - tolerance * bornePerM2)) / (tolerance * pestDaysPerM2);
    }
    return season;
  });
}

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

/** The world in which these kinds of friends do nothing from a day on. */
const failing = (world: World, kinds: readonly EnemyId[], day: number): World =>
  kinds.length === 0
    ? world
    : {
        ...world,
        enemies: world.enemies.map((enemy) =>
          kinds.includes(enemy.id) ? { ...enemy, failsFrom: day } : enemy,
        ),
      };
