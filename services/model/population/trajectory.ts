/** The course of one member, by day. Insects per m2 of ground. */
import { type Cohorts, inStage, standingNumber } from './cohorts.ts';
import { type EnemyState, hunting } from './enemy.ts';
import type { PestState } from './pest.ts';
import type { World } from './world.ts';

export interface Trajectory {
  /** Clock of the pest at the end of each day. */
  clock: Float64Array;
  /** At the end of each day; `young`, `scales` and enemies only on wanted days, else 0. */
  adults: Float64Array;
  young: Float64Array;
  scales: Float64Array;
  /** Flying adults exposed to traps: adults x winged share x flight, mean of the day. */
  flying: Float64Array;
  /** In the order of World.enemies; empty when none was released. */
  enemies: readonly EnemyTrajectory[];
  /** The cohorts at the end. */
  cohorts: Cohorts;
}

/** Hunters, and hosts with hidden and with visible young of the enemy. */
export interface EnemyTrajectory {
  hunters: Float64Array;
  hidden: Float64Array;
  visible: Float64Array;
}

/** Room for `days` days. */
export function emptyTrajectory(world: World, days: number, cohorts: Cohorts): Trajectory {
  const column = () => new Float64Array(days);
  const none = new Float64Array(0);
  return {
    clock: column(),
    adults: column(),
    young: column(),
    scales: column(),
    flying: column(),
    enemies: world.enemies.map((enemy) =>
      enemy.at
        ? { hunters: column(), hidden: column(), visible: column() }
        : { hunters: none, hidden: none, visible: none },
    ),
    cohorts,
  };
}

/** Adds up young and enemies at the end of a day. */
export function recordYoung(
  out: Trajectory,
  day: number,
  { world, cohorts, clock }: PestState,
  enemies: readonly (EnemyState | undefined)[],
): void {
  const { stages } = world.table;
  const young = standingNumber(cohorts, clock) - inStage(cohorts, stages.length - 1, clock);
  const eggs = stages[0]!.name === 'egg' ? inStage(cohorts, 0, clock) : 0;
  out.young[day] = young;
  out.scales[day] = young - eggs;
  enemies.forEach((enemy, i) => {
    if (!enemy) return;
    const at = out.enemies[i]!;
    at.hunters[day] = hunting(enemy);
    if (enemy.world.kind !== 'parasitoid') return;
    at.hidden[day] = inStage(enemy.young, 0, enemy.clock);
    at.visible[day] = inStage(enemy.young, 1, enemy.clock);
  });
}
