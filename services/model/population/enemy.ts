/** One natural enemy through one day: it lays, ages, dies. Densities per m2 of ground. */
import { adultsIn, ageAdults, boxCount, layingAdults, thinAdults } from './adults.ts';
import { addBirths, type Cohorts, growTo, inStage, noCohorts, takeFromStages, thinYoung } from './cohorts.ts';
import { dayValue } from './dayTables.ts';
import type { EnemyTables, EnemyWorld } from './enemyWorld.ts';
import type { Catch } from './hunt.ts';
import { halfFedAt, hungryLeavingPerDay, pollenKeepsPerM2, pollenOffered } from './judgements.ts';
import { shareAt, standingShares } from './stages.ts';

/** What differs between members about one natural enemy. */
export interface EnemyParameters {
  searchM2PerDay: number;
  /** Share of those released that settles. */
  establishes: number;
}

export interface EnemyState {
  world: EnemyWorld;
  at: EnemyTables;
  parameters: EnemyParameters;
  cohorts: Cohorts;
  /** Laying females of a wasp, laying adults of a predator. */
  boxes: Float64Array;
}

/** An enemy at work in this season, or undefined when none was released. */
export function startEnemy(
  world: EnemyWorld,
  parameters: EnemyParameters,
  days: number,
): EnemyState | undefined {
  const { at } = world;
  if (at === undefined) return undefined;
  const released = at.youngAdded.reduce((count, number) => count + (number > 0 ? 3 : 0), 0);
  const cohorts = noCohorts(at.table, standingShares(at.table.stages, 1), days + released);
  return { world, at, parameters, cohorts, boxes: new Float64Array(boxCount) };
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

/** Food of a hunter that filled itself to this share, 0 to 1: half at `halfFedAt`. */
export function fedShare(fill: number): number {
  return ((1 + halfFedAt) * fill) / (fill + halfFedAt);
}

/** Ages and renews the enemy over a day with this catch. */
export function passEnemyDay(
  enemy: EnemyState,
  day: number,
  position: number,
  { fill, laidInto, activity }: Catch,
): void {
  const { at, boxes, cohorts, world } = enemy;
  const { traits } = world;
  const step = dayValue(at.clockPerDay, day, position);
  const middle = cohorts.clock + step / 2;
  const food = Math.max(fedShare(fill), pollenFor(enemy));
  const recruits = growTo(cohorts, cohorts.clock + step) * traits.adult.femaleShare;
  if (!traits.adultsLeave) boxes[0] = boxes[0]! + recruits / 2;
  const births =
    world.kind === 'parasitoid'
      ? laidInto
      : layingAdults(boxes) *
        traits.adult.eggsPerDay *
        dayValue(at.fecundity, day, position) *
        food *
        at.hatching[day]!;
  ageAdults(boxes, step, at.life);
  if (!traits.adultsLeave) boxes[0] = boxes[0]! + recruits / 2;
  if (world.kind === 'predator') starve(enemy, Math.exp(-hungryLeavingPerDay * activity * (1 - food)));
  addBirths(cohorts, middle, births);
}

/** Keeps a share of all that hunt. */
function starve({ world, at, cohorts, boxes }: EnemyState, kept: number): void {
  if (world.adultsHunt) thinAdults(boxes, kept);
  if (kept === 1 || at.huntingStages.length === 0) return;
  const shares = new Float64Array(at.table.stages.length);
  for (const stage of at.huntingStages) shares[stage] = 1 - kept;
  takeFromStages(cohorts, shares);
}

/** Food from pollen or plant, shared by those who want it. */
function pollenFor({ world, boxes }: EnemyState): number {
  const { livesOnPollen } = world.traits;
  if (livesOnPollen === undefined) return 0;
  return (livesOnPollen * pollenOffered) / (1 + adultsIn(boxes) / pollenKeepsPerM2);
}

/** Puts in what was released on a day: adults at once, pupae and larvae at their age. */
export function addReleased({ at, world, boxes, cohorts, parameters }: EnemyState, day: number): void {
  boxes[0] = boxes[0]! + at.adultsAdded[day]! * parameters.establishes;
  const coming = at.youngAdded[day]! * parameters.establishes;
  if (coming === 0) return;
  const { table, youngAge } = at;
  for (const spread of [-0.05, 0, 0.05]) {
    // Born that long ago and alive so far; of pupae all emerge who settle.
    const alive =
      at.huntingStages.length > 0 && world.traits.huntingStages
        ? table.inStage.reduce(
            (sum, column, stage) =>
              sum + cohorts.standing[stage]! * shareAt(table, column, youngAge - spread),
            0,
          )
        : cohorts.standing.at(-1)!;
    addBirths(cohorts, cohorts.clock - youngAge + spread, coming / 3 / alive);
  }
}

/** Takes the share `taken` of hunters and of young in the open; young inside their host are spared. */
export function treatEnemy({ world, cohorts, boxes }: EnemyState, taken: number): void {
  thinAdults(boxes, 1 - taken);
  if (world.kind === 'predator') thinYoung(cohorts, 1 - taken);
}
