/** One member's season: a pest and its natural enemies by daily steps whose rates are integrals over the hours. */
import { finite } from '../numerics/finite.ts';
import { adultsIn, thinAdults } from './adults.ts';
import { inStage, standAt, takeFromStages } from './cohorts.ts';
import { dayValue, gridPosition } from './dayTables.ts';
import {
  addReleased,
  atWork,
  type EnemyState,
  passEnemyDay,
  shareAttacked,
  startEnemy,
  treatEnemy,
} from './enemy.ts';
import { wingedShare } from './judgements.ts';
import { adultsOf, type PestParameters, type PestState, passPestDay, startPest, treatPest } from './pest.ts';
import { emptyTrajectory, recordYoung, type Trajectory } from './trajectory.ts';
import type { World } from './world.ts';

/** Runs the first `days` days. `wanted` marks the days on which young and enemies are added up. */
export function simulate(world: World, p: PestParameters, days: number, wanted: Uint8Array): Trajectory {
  const pest = startPest(world, p, days);
  const enemies = world.enemies.map((enemy, i) => startEnemy(enemy, p.enemies[i]!, days));
  const out = emptyTrajectory(world, days, pest.cohorts);
  let before = adultsIn(pest.boxes);
  for (let day = 0; day < days; day++) {
    const offsetC = p.offsetC[day]!;
    passPestDay(pest, day);
    for (const enemy of enemies) if (enemy) hunt(enemy, pest, day, offsetC);
    const taken = world.treatments[day];
    if (taken) {
      treatPest(pest, taken);
      for (const enemy of enemies) if (enemy) treatEnemy(enemy, taken.enemies);
    }
    const adults = adultsOf(pest);
    const winged = wingedShare(world.pestId, adults / p.crowdingPerM2);
    out.clock[day] = pest.clock;
    out.adults[day] = adults;
    out.flying[day] = ((adults + before) / 2) * winged * dayValue(world.flight, day, gridPosition(offsetC));
    before = adults;
    if (wanted[day] === 1) recordYoung(out, day, pest, enemies);
  }
  finite(before, 'adults per m2');
  return out;
}

/** One enemy's day: it takes from the stages it hunts, by what stands there at the end of the day. */
function hunt(enemy: EnemyState, { cohorts, boxes, clock }: PestState, day: number, offsetC: number): void {
  addReleased(enemy, day);
  if (!atWork(enemy)) return;
  const { prey, huntsAdults } = enemy.world;
  standAt(cohorts, clock);
  let exposed = huntsAdults ? adultsIn(boxes) : 0;
  for (let stage = 0; stage < prey.length; stage++) {
    if (prey[stage] === 1) exposed += inStage(cohorts, stage, clock);
  }
  const share = shareAttacked(enemy, day, offsetC, exposed);
  let attacked = 0;
  if (share > 0 && exposed > 0) {
    attacked = takeFromStages(cohorts, prey, clock, share);
    if (huntsAdults) attacked += thinAdults(boxes, 1 - share);
  }
  passEnemyDay(enemy, day, offsetC, attacked);
}
