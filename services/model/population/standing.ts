/** A season as it stands on a day, to be carried on in any world that shares its past. */
import { copyCohorts } from './cohorts.ts';
import type { EnemyState } from './enemy.ts';
import type { PestState } from './pest.ts';
import type { Trajectory } from './trajectory.ts';
import type { World } from './world.ts';

/** One member's season under way, and what was written down so far. */
export interface Running {
  pests: readonly PestState[];
  /** In the order of World.enemies; undefined where none was released and none comes by itself. */
  enemies: readonly (EnemyState | undefined)[];
  /** Adults of each pest at the end of the day before. */
  adults: number[];
  out: Trajectory;
}

/** The same at the beginning of a day. */
export interface Standing extends Running {
  day: number;
}

/** Makes a season that has only begun stand as `standing` does; enemies that it lacks are yet to come. */
export function takeOver(season: Running, standing: Standing): void {
  standing.pests.forEach(({ cohorts, boxes, hasArrived, isThere }, i) => {
    const pest = season.pests[i]!;
    copyCohorts(pest.cohorts, cohorts);
    pest.boxes.set(boxes);
    pest.hasArrived = hasArrived;
    pest.isThere = isThere;
    season.adults[i] = standing.adults[i]!;
    copyColumns(season.out.pests[i]!, standing.out.pests[i]!);
  });
  standing.enemies.forEach((enemy, i) => {
    const same = season.enemies[i];
    if (!enemy || !same) return;
    copyCohorts(same.cohorts, enemy.cohorts);
    same.boxes.set(enemy.boxes);
    same.fill = enemy.fill;
    copyColumns(season.out.enemies[i]!, standing.out.enemies[i]!);
  });
}

function copyColumns<Key extends string>(into: Record<Key, Float64Array>, from: Record<Key, Float64Array>) {
  for (const key of Object.keys(from) as Key[]) into[key].set(from[key]);
}

/** Whether two worlds are one but for what is put in or sprayed from `day` on. */
export function sharesPast(one: World, other: World, day: number): boolean {
  const sameHouse = (['path', 'pests', 'ants', 'hunters'] as const).every((key) => one[key] === other[key]);
  return (
    sameHouse &&
    sameTreatments(one, other, day) &&
    one.enemies.every((_, i) => samePutIn(one, other, { i, day }))
  );
}

function sameTreatments(one: World, other: World, day: number): boolean {
  for (let at = 0; at < day; at++) {
    const [a, b] = [one.treatments[at], other.treatments[at]];
    if (a === b) continue;
    if (!a || !b || a.eggs !== b.eggs || a.young !== b.young) return false;
    if (a.adults !== b.adults || a.enemies !== b.enemies) return false;
  }
  return true;
}

function samePutIn(one: World, other: World, { i, day }: { i: number; day: number }): boolean {
  const [a, b] = [one.enemies[i]!, other.enemies[i]!];
  for (const { failsFrom = day } of [a, b]) if (failsFrom < day) return false;
  for (let at = 0; at < day; at++) {
    if ((a.at?.adultsAdded[at] ?? 0) !== (b.at?.adultsAdded[at] ?? 0)) return false;
    if ((a.at?.youngAdded[at] ?? 0) !== (b.at?.youngAdded[at] ?? 0)) return false;
    if ((a.at?.youngAge[at] ?? 0) !== (b.at?.youngAge[at] ?? 0)) return false;
  }
  return true;
}
