/** One member's season: a pest and its natural enemies by daily steps whose rates are integrals over the hours. */
import { finite } from '../numerics/finite.ts';
import { adultsIn, ageAdults, boxCount, layingAdults, thinAdults } from './adults.ts';
import {
  addBirths,
  type Cohorts,
  inStage,
  maturing,
  noCohorts,
  standAt,
  standingNumber,
  takeFromStages,
} from './cohorts.ts';
import { dayValue, gridPosition } from './dayTables.ts';
import {
  addReleased,
  atWork,
  type EnemyParameters,
  type EnemyState,
  hunting,
  passEnemyDay,
  shareAttacked,
  startEnemy,
  treatEnemy,
} from './enemy.ts';
import { leavingPerDay, wingedShare } from './judgements.ts';
import { standingShares } from './stages.ts';
import type { TakenByTreatment } from './treatments.ts';
import type { World } from './world.ts';

/** Everything that differs between members. Insects per m2 of ground. */
export interface PestParameters {
  speed: number;
  /** Canopy minus sensor, by day: constant so far, the member's own path ahead. */
  offsetC: Float64Array;
  eggsPerDay: number;
  /** On the hazards of the young, of age and of heat. */
  hazardFactor: number;
  lifeFactor: number;
  heatFactor: number;
  crowdingPerM2: number;
  /** Immigrants come from this day on; Infinity = never. */
  arrivalDay: number;
  startingPerM2: number;
  immigrantsPerDay: number;
  /** exp of it multiplies the recruits of that week. */
  weeklyDisturbance: Float64Array;
  /** In the order of World.enemies. */
  enemies: readonly EnemyParameters[];
}

export interface Trajectory {
  /** Clock of the pest at the end of each day. */
  clock: Float64Array;
  /** At the end of each day; `young`, `scales` and enemies only on wanted days, else 0. */
  adults: Float64Array;
  young: Float64Array;
  scales: Float64Array;
  /** Flying adults exposed to traps: adults x winged share x flight, mean of the day. */
  flying: Float64Array;
  /** By enemy of World.enemies: hunters, hosts with hidden and with visible parasitoids; empty when none was released. */
  enemies: readonly EnemyTrajectory[];
  /** The cohorts at the end. */
  cohorts: Cohorts;
}

export interface EnemyTrajectory {
  hunters: Float64Array;
  hidden: Float64Array;
  visible: Float64Array;
}

/** Runs the first `days` days. `wanted` marks the days on which young are added up. */
export function simulate(world: World, p: PestParameters, days: number, wanted: Uint8Array): Trajectory {
  const standing = standingShares(world.table.stages, p.hazardFactor);
  const cohorts = noCohorts(world.table, standing, days + 6);
  const boxes = new Float64Array(boxCount);
  const enemies = world.enemies.map((enemy, i) => startEnemy(enemy, p.enemies[i]!, days));
  const out = emptyTrajectory(world, days, cohorts);
  const waiting = world.table.stages.length - 1;
  settleStart(cohorts, boxes, p.startingPerM2);
  let clock = 0;
  let adultsBefore = adultsIn(boxes);
  for (let day = 0; day < days; day++) {
    const from = clock;
    const position = gridPosition(p.offsetC[day]!);
    clock += passDay(world, p, day, from, cohorts, boxes);
    for (const enemy of enemies) if (enemy) hunt(enemy, day, p.offsetC[day]!, cohorts, boxes, clock);
    const taken = world.treatments[day];
    if (taken) treat(world, taken, cohorts, boxes, enemies, clock);
    const adults = adultsIn(boxes) + inStage(cohorts, waiting, clock);
    const crowding = adults / p.crowdingPerM2;
    out.clock[day] = clock;
    out.adults[day] = adults;
    out.flying[day] =
      ((adults + adultsBefore) / 2) *
      wingedShare(world.pestId, crowding) *
      dayValue(world.flight, day, position);
    adultsBefore = adults;
    if (wanted[day] === 1) record(world, out, day, cohorts, enemies, clock);
  }
  finite(adultsBefore, 'adults per m2');
  return out;
}

/** The pest alone through a day; returns how far its clock went. */
function passDay(
  world: World,
  p: PestParameters,
  day: number,
  clock: number,
  cohorts: Cohorts,
  boxes: Float64Array,
): number {
  const position = gridPosition(p.offsetC[day]!);
  const step = dayValue(world.clockPerDay, day, position) * p.speed;
  const week = Math.min(Math.floor(day / 7), p.weeklyDisturbance.length - 1);
  const recruits = maturing(cohorts, clock, clock + step) * Math.exp(p.weeklyDisturbance[week]!);
  const immigrants = day >= p.arrivalDay ? p.immigrantsPerDay * dayValue(world.flight, day, position) : 0;
  // Those who come in a day come at its middle on average: half now, half after ageing and laying.
  boxes[0] = boxes[0]! + (recruits + immigrants) / 2;
  const crowding = adultsIn(boxes) / p.crowdingPerM2;
  const births =
    (layingAdults(boxes) *
      world.traits.adult.femaleShare *
      p.eggsPerDay *
      dayValue(world.fecundity, day, position)) /
    (1 + crowding);
  ageAdults(boxes, step, world.life * p.lifeFactor);
  boxes[0] = boxes[0]! + (recruits + immigrants) / 2;
  const heat = dayValue(world.heatPerDay, day, position) * p.heatFactor;
  thinAdults(boxes, Math.exp(-heat - (leavingPerDay * crowding) / (1 + crowding)));
  if (heat > 0) thinCohorts(cohorts, Math.exp(-heat));
  addBirths(cohorts, clock + step / 2, births);
  return step;
}

function hunt(
  enemy: EnemyState,
  day: number,
  offsetC: number,
  cohorts: Cohorts,
  boxes: Float64Array,
  clock: number,
): void {
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

function treat(
  world: World,
  taken: TakenByTreatment,
  cohorts: Cohorts,
  boxes: Float64Array,
  enemies: readonly (EnemyState | undefined)[],
  clock: number,
): void {
  const shares = Float64Array.from(world.table.stages, ({ name }) =>
    name === 'egg' ? taken.eggs : name === 'waiting' ? taken.adults : taken.young,
  );
  takeFromStages(cohorts, shares, clock);
  thinAdults(boxes, 1 - taken.adults);
  for (const enemy of enemies) if (enemy) treatEnemy(enemy, taken.enemies);
}

/** Insects there at the start: 0.3 of them adult, the rest of all ages (judgement: bought plants). */
function settleStart(cohorts: Cohorts, boxes: Float64Array, startingPerM2: number): void {
  if (startingPerM2 === 0) return;
  boxes.fill((0.3 * startingPerM2) / boxCount);
  for (const age of [0.9, 0.7, 0.5, 0.3, 0.1]) addBirths(cohorts, -age, (0.7 * startingPerM2) / 5);
}

function thinCohorts(cohorts: Cohorts, survival: number): void {
  for (let i = cohorts.first; i < cohorts.end; i++) cohorts.number[i] = cohorts.number[i]! * survival;
}

function record(
  world: World,
  out: Trajectory,
  day: number,
  cohorts: Cohorts,
  enemies: readonly (EnemyState | undefined)[],
  clock: number,
): void {
  const waiting = world.table.stages.length - 1;
  const all = standingNumber(cohorts, clock) - inStage(cohorts, waiting, clock);
  const eggs = world.table.stages[0]!.name === 'egg' ? inStage(cohorts, 0, clock) : 0;
  out.young[day] = all;
  out.scales[day] = all - eggs;
  enemies.forEach((enemy, i) => {
    if (!enemy) return;
    const at = out.enemies[i]!;
    at.hunters[day] = hunting(enemy);
    if (enemy.world.kind !== 'parasitoid') return;
    at.hidden[day] = inStage(enemy.young, 0, enemy.clock);
    at.visible[day] = inStage(enemy.young, 1, enemy.clock);
  });
}

function emptyTrajectory(world: World, days: number, cohorts: Cohorts): Trajectory {
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
