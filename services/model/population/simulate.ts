/** One member's season: pests and their natural enemies by daily steps whose rates are integrals over the hours. */
import { finite } from '../numerics/finite.ts';
import { dayValue, gridPosition } from './dayTables.ts';
import {
  addReleased,
  atWork,
  type EnemyParameters,
  endEnemy,
  passEnemyDay,
  startEnemy,
  treatEnemy,
} from './enemy.ts';
import { type Hunt, huntDay, prepareHunt, takeHalf } from './hunt.ts';
import {
  adultsOf,
  endIfGone,
  type PestParameters,
  type PestState,
  passPestDay,
  startPest,
  treatPest,
  wingedShare,
} from './pest.ts';
import { emptyTrajectory, type PestTrajectory, recordYoung, type Trajectory } from './trajectory.ts';
import type { World } from './world.ts';

/** Everything that differs between members. */
export interface MemberParameters {
  /** Canopy minus sensor, by day: constant so far, the member's own path ahead. */
  offsetC: Float64Array;
  /** In the order of World.pests and World.enemies. */
  pests: readonly PestParameters[];
  enemies: readonly EnemyParameters[];
}

/** Runs the first `days` days. `wanted` marks the days on which young and enemies are added up. */
export function simulate(world: World, p: MemberParameters, days: number, wanted: Uint8Array): Trajectory {
  const pests = world.pests.map((pest, i) => startPest(pest, p.pests[i]!, days));
  const enemies = world.enemies.map((enemy, i) => startEnemy(enemy, p.enemies[i]!, days));
  const hunt = prepareHunt(pests, enemies);
  const out = emptyTrajectory(world, days, pests);
  const before = pests.map(adultsOf);
  for (let day = 0; day < days; day++) {
    const position = gridPosition(p.offsetC[day]!);
    for (const pest of pests) passPestDay(pest, day, position);
    const hunted = passEnemies(hunt, day, position, world.ants[day] === 1);
    if (hunted) takeHalf(hunt);
    const taken = world.treatments[day];
    if (taken) {
      for (const pest of pests) treatPest(pest, taken);
      for (const { enemy } of hunt.hunters) treatEnemy(enemy, taken.enemies);
    }
    for (const pest of pests) endIfGone(pest);
    for (let i = 0; i < pests.length; i++) {
      before[i] = recordAdults(out.pests[i]!, pests[i]!, { day, position, before: before[i]! });
    }
    if (wanted[day] === 1) recordYoung(out, day, pests, enemies);
    if (hunted) takeHalf(hunt);
  }
  for (const adults of before) finite(adults, 'adults per m2');
  return out;
}

/** A day of all natural enemies: they grow, lay and age, those put in join them, and their hunt is worked out; whether any is there. */
function passEnemies(hunt: Hunt, day: number, position: number, ants: boolean): boolean {
  if (hunt.hunters.length === 0) return false;
  let any = false;
  for (const { enemy } of hunt.hunters) {
    if (atWork(enemy)) passEnemyDay(enemy, day, position);
    addReleased(enemy, day, position);
    if (day >= (enemy.world.failsFrom ?? Number.POSITIVE_INFINITY)) endEnemy(enemy);
    any ||= atWork(enemy);
  }
  if (!any) return false;
  huntDay(hunt, day, position, ants);
  return true;
}

/** Writes a day's adults and flying adults; returns the adults. */
function recordAdults(
  out: PestTrajectory,
  pest: PestState,
  { day, position, before }: { day: number; position: number; before: number },
): number {
  const { world, parameters, cohorts } = pest;
  const adults = adultsOf(pest);
  const winged = wingedShare(world, adults / parameters.crowdingPerM2);
  out.clock[day] = cohorts.clock;
  out.adults[day] = adults;
  out.flying[day] = ((adults + before) / 2) * winged * dayValue(world.flight, day, position);
  return adults;
}
