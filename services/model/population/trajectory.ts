/** The course of one member, by day. Insects per m2 of ground. */
import { columns } from '../numerics/columns.ts';
import { inStage, meanAge, standingNumber } from './cohorts.ts';
import { type EnemyState, hunting } from './enemy.ts';
import type { PestState } from './pest.ts';
import type { World } from './world.ts';

export interface Trajectory {
  /** In the order of World.pests. */
  pests: readonly PestTrajectory[];
  /** In the order of World.enemies; columns are empty where none was released and none comes by itself. */
  enemies: readonly EnemyTrajectory[];
}

export interface PestTrajectory {
  /** Clock of the pest at the end of each day. */
  clock: Float64Array;
  /** At the end of each day; `young` and `scales` (young but eggs) only on wanted days, else 0. */
  adults: Float64Array;
  young: Float64Array;
  scales: Float64Array;
  /** Flying adults exposed to traps: adults x winged share x flight, mean of the day. */
  flying: Float64Array;
  /** Mean age of the young on wanted days (egg or birth to adult = 1), NaN without any. */
  youngAge: Float64Array;
}

/** Hunters, and hosts with hidden and with visible young of the enemy, on wanted days. */
export interface EnemyTrajectory {
  hunters: Float64Array;
  hidden: Float64Array;
  visible: Float64Array;
}

/** One pest of a trajectory, with the natural enemies. */
export interface PestCourse extends PestTrajectory {
  enemies: readonly EnemyTrajectory[];
}

/** The course of the pest at a place of World.pests. */
export function courseOf({ pests, enemies }: Trajectory, pest: number): PestCourse {
  return { ...pests[pest]!, enemies };
}

/** Room for `days` days. */
export function emptyTrajectory(world: World, days: number, pests: readonly PestState[]): Trajectory {
  return {
    pests: pests.map(() => {
      const [clock, adults, young, scales, flying, youngAge] = columns(6, days);
      return {
        clock: clock!,
        adults: adults!,
        young: young!,
        scales: scales!,
        flying: flying!,
        youngAge: youngAge!,
      };
    }),
    enemies: world.enemies.map((enemy) => {
      const [hunters, hidden, visible] = columns(3, enemy.at ? days : 0);
      return { hunters: hunters!, hidden: hidden!, visible: visible! };
    }),
  };
}

/** Adds up young and enemies at the end of a day. */
export function recordYoung(
  out: Trajectory,
  day: number,
  pests: readonly PestState[],
  enemies: readonly (EnemyState | undefined)[],
): void {
  pests.forEach(({ world, cohorts }, i) => {
    const { stages } = world.table;
    const young = standingNumber(cohorts) - inStage(cohorts, stages.length - 1);
    const eggs = stages[0]!.name === 'egg' ? inStage(cohorts, 0) : 0;
    out.pests[i]!.young[day] = young;
    out.pests[i]!.scales[day] = young - eggs;
    out.pests[i]!.youngAge[day] = meanAge(cohorts, stages.length - 1);
  });
  enemies.forEach((enemy, i) => {
    if (!enemy) return;
    const at = out.enemies[i]!;
    at.hunters[day] = hunting(enemy);
    if (enemy.world.kind !== 'parasitoid') return;
    at.hidden[day] = inStage(enemy.cohorts, 0);
    at.visible[day] = inStage(enemy.cohorts, 1);
  });
}
