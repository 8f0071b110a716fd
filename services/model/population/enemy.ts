/** One natural enemy through one day: it lays, ages, dies. Densities per m2 of ground. */
import { adultsIn, ageAdults, boxCount, layingAdults, thinAdults } from './adults.ts';
import { addBirths, type Cohorts, growTo, inStage, noCohorts, takeFromStages, thinYoung } from './cohorts.ts';
import { dayValue } from './dayTables.ts';
import type { EnemyTables, EnemyWorld } from './enemyWorld.ts';
import { halfFedAt, pollenKeepsPerM2, pollenOffered, starvesInDays } from './judgements.ts';
import { type StageTable, shareAt, standingShares } from './stages.ts';

/** What differs between members about one natural enemy. */
export interface EnemyParameters {
  searchM2PerDay: number;
  /** Share of those released that settles. */
  establishes: number;
  /** Females a m2 that come from outside on each warm day from `fromDay` on; absent: none. */
  coming?: { fromDay: number; perM2AndDay: number };
}

export interface EnemyState {
  world: EnemyWorld;
  at: EnemyTables;
  parameters: EnemyParameters;
  cohorts: Cohorts;
  /** Laying females of a wasp, laying adults of a predator. */
  boxes: Float64Array;
  /** Eaten in the last hunt, against the most its hunters could eat at that temperature; 0 to 1. */
  fill: number;
  /** Scratch: shares of the young that leave, by stage. */
  hungry: Float64Array;
}

/** An enemy at work in this season, or undefined when none was released and none comes by itself. */
export function startEnemy(
  world: EnemyWorld,
  parameters: EnemyParameters,
  days: number,
): EnemyState | undefined {
  const { at } = world;
  if (at === undefined) return undefined;
  const released = at.youngAdded.reduce((count, number) => count + (number > 0 ? 3 : 0), 0);
  const cohorts = noCohorts(at.table, standingShares(at.table.stages, 1), days + released + 1);
  return {
    world,
    at,
    parameters,
    cohorts,
    boxes: new Float64Array(boxCount),
    fill: 0,
    hungry: new Float64Array(at.table.stages.length),
  };
}

/** Whether any has been put in yet; its clock runs from then on. */
export function atWork({ cohorts, boxes }: EnemyState): boolean {
  return cohorts.end > 0 || adultsIn(boxes) > 0;
}

/** Animals that hunt now: those adults of whom a female would lay, and hunting young. */
export function hunting({ world, at, cohorts, boxes }: EnemyState): number {
  let sum = world.adultsHunt ? adultsIn(boxes) : 0;
  const last = at.table.stages.length - 1;
  for (const stage of at.huntingStages) {
    sum += inStage(cohorts, stage) * (stage === last ? world.traits.adult.femaleShare : 1);
  }
  return sum;
}

/** Laying of a hunter that filled itself to this share, against the most: a half at `half`, one at its fill. */
function fedShare(fill: number, half = halfFedAt): number {
  const bend = half / (1 - 2 * half);
  return ((1 + bend) * fill) / (fill + bend);
}

/** Grows, lays by what the last hunt caught, ages, and leaves when hungry. */
export function passEnemyDay(enemy: EnemyState, day: number, position: number): void {
  const { at, boxes, cohorts, world } = enemy;
  const { traits } = world;
  const step = dayValue(at.clockPerDay, day, position);
  const food = Math.max(fedShare(enemy.fill, traits.halfFedAt), pollenFor(enemy));
  const matured = growTo(cohorts, cohorts.clock + step) * traits.adult.femaleShare;
  const recruits = traits.adultsLeave ? 0 : matured;
  // Half before laying and ageing, half after, as with the pest.
  boxes[0] = boxes[0]! + recruits / 2;
  ageAdults(boxes, step / 2, at.life);
  const eggsPerDay = traits.adult.eggsPerDay * dayValue(at.fecundity, day, position) * at.hatching[day]!;
  const births = world.kind === 'parasitoid' ? 0 : layingAdults(boxes) * eggsPerDay * food;
  ageAdults(boxes, step / 2, at.life);
  boxes[0] = boxes[0]! + recruits / 2;
  if (world.kind === 'predator') {
    const activity = dayValue(at.activity, day, position);
    starve(enemy, Math.exp((-activity * (1 - food)) / (traits.starvesInDays ?? starvesInDays)));
  }
  addBirths(cohorts, cohorts.clock - step / 2, births);
}

/** Hosts a m2 that were laid into hold young from now on. */
export function layIntoHosts({ cohorts }: EnemyState, hostsPerM2: number): void {
  addBirths(cohorts, cohorts.clock, hostsPerM2);
}

/** Keeps a share of all that hunt. */
function starve({ world, at, cohorts, boxes, hungry }: EnemyState, kept: number): void {
  if (world.adultsHunt) thinAdults(boxes, kept);
  if (kept === 1 || at.huntingStages.length === 0) return;
  for (const stage of at.huntingStages) hungry[stage] = 1 - kept;
  takeFromStages(cohorts, hungry);
}

/** Food from pollen or plant, shared by those who want it. */
function pollenFor({ world, boxes }: EnemyState): number {
  const { livesOnPollen } = world.traits;
  if (livesOnPollen === undefined) return 0;
  return (livesOnPollen * pollenOffered) / (1 + adultsIn(boxes) / pollenKeepsPerM2);
}

/** Puts in who comes by itself, and what was released in the middle of a day: adults at once, pupae and larvae at their age. */
export function addReleased(enemy: EnemyState, day: number, position: number): void {
  const { at, boxes, cohorts, parameters } = enemy;
  const { coming: wild } = parameters;
  if (wild && day >= wild.fromDay) {
    boxes[0] = boxes[0]! + wild.perM2AndDay * dayValue(at.activity, day, position);
  }
  boxes[0] = boxes[0]! + at.adultsAdded[day]! * parameters.establishes;
  const coming = at.youngAdded[day]! * parameters.establishes;
  if (coming === 0) return;
  const { standing, table } = cohorts;
  const { adultsLeave, adult } = enemy.world.traits;
  const sinceNoon = dayValue(at.clockPerDay, day, position) / 2;
  for (const spread of [-0.05, 0, 0.05]) {
    const age = at.youngAge[day]! + spread;
    const born = coming / 3 / standingAt(enemy, age);
    addBirths(cohorts, cohorts.clock - sinceNoon - age, born);
    const emerged = born * standing.at(-1)! * (pastAll(table, age + sinceNoon) - pastAll(table, age));
    if (!adultsLeave) boxes[0] = boxes[0]! + emerged * adult.femaleShare;
  }
}

/** Share of those born who stand there as young at an age, alive; of pupae all are counted who will emerge. */
function standingAt({ world, at: { table }, cohorts: { standing } }: EnemyState, age: number): number {
  if (!world.traits.huntingStages) return standing.at(-1)! * (1 - pastAll(table, age));
  return table.inStage.reduce((sum, column, i) => sum + standing[i]! * shareAt(table, column, age), 0);
}

/** Share of a cohort past its last stage at an age, had nobody died. */
function pastAll({ paces }: StageTable, age: number): number {
  return paces.reduce((sum, pace) => sum + shareAt(pace, pace.past.at(-1)!, age), 0) / paces.length;
}

/** Takes the share `taken` of hunters and of young in the open; young inside their host are spared. */
export function treatEnemy({ world, cohorts, boxes }: EnemyState, taken: number): void {
  thinAdults(boxes, 1 - taken);
  if (world.kind === 'predator') thinYoung(cohorts, 1 - taken);
}

/** Takes all of them, young inside their host too. */
export function endEnemy({ cohorts, boxes }: EnemyState): void {
  thinAdults(boxes, 0);
  thinYoung(cohorts, 0);
}
