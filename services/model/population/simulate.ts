/** One member's season: pests and their natural enemies by daily steps whose rates are integrals over the hours. */
import { finite } from '../numerics/finite.ts';
import { dropCohorts } from './cohorts.ts';
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
import { type Running, type Standing, takeOver } from './standing.ts';
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
  return endOf(standAt(world, p, days, wanted));
}

/** The season run up to the beginning of `day`, for `carryOn`. */
export function standAt(world: World, p: MemberParameters, day: number, wanted: Uint8Array): Standing {
  const start = startOf(world, p, day);
  passDays(start, world, p, { from: 0, to: day, wanted });
  return { ...start, day };
}

/** The season from where it stands to the end of `days` days, bit for bit as `simulate` runs it in a world that `sharesPast`. */
export function carryOn(
  standing: Standing,
  world: World,
  p: MemberParameters,
  { days, wanted }: { days: number; wanted: Uint8Array },
): Trajectory {
  const season = startOf(world, p, days);
  takeOver(season, standing);
  passDays(season, world, p, { from: standing.day, to: days, wanted });
  return endOf(season);
}

/** What is written down of a season that is over. */
function endOf({ pests, enemies, out }: Running): Trajectory {
  for (const { cohorts } of pests) dropCohorts(cohorts);
  for (const enemy of enemies) if (enemy) dropCohorts(enemy.cohorts);
  return out;
}

/** The first day, with room for so many. */
function startOf(world: World, p: MemberParameters, days: number): Running {
  const pests = world.pests.map((pest, i) => startPest(pest, p.pests[i]!, days));
  const enemies = world.enemies.map((enemy, i) => startEnemy(enemy, p.enemies[i]!, days));
  const out = emptyTrajectory(world, days, pests);
  return { pests, enemies, adults: pests.map(adultsOf), out };
}

function passDays(
  { pests, enemies, adults, out }: Running,
  world: World,
  p: MemberParameters,
  { from, to, wanted }: { from: number; to: number; wanted: Uint8Array },
): void {
  const hunt = prepareHunt(pests, enemies);
  for (let day = from; day < to; day++) {
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
      adults[i] = recordAdults(out.pests[i]!, pests[i]!, { day, position, before: adults[i]! });
    }
    if (wanted[day] === 1) recordYoung(out, day, pests, enemies);
    if (hunted) takeHalf(hunt);
  }
  for (const number of adults) finite(number, 'adults per m2');
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
