/** One natural enemy through one day: it hunts, lays, ages, dies. Densities per m2 of ground. */
import { adultsIn, ageAdults, boxCount, layingAdults, thinAdults } from './adults.ts';
import { addBirths, type Cohorts, inStage, maturing, noCohorts } from './cohorts.ts';
import { dayValue, gridPosition } from './dayTables.ts';
import type { EnemyTables, EnemyWorld } from './enemyWorld.ts';
import { attackHazard, shareEaten, shareParasitised } from './functionalResponse.ts';
import { escapeK, fedOnShare, hungryLeavingPerDay, pollenFood, pollenKeepsPerM2 } from './judgements.ts';
import { standingShares } from './stages.ts';

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
  young: Cohorts;
  /** Hunting females (or all hunting adults of a predator). */
  boxes: Float64Array;
  clock: number;
}

/** An enemy at work in this season, or undefined when none was released. */
export function startEnemy(
  world: EnemyWorld,
  parameters: EnemyParameters,
  days: number,
): EnemyState | undefined {
  if (world.at === undefined) return undefined;
  const standing = standingShares(world.at.table.stages, 1);
  const released = world.at.youngAdded.reduce((count, number) => count + (number > 0 ? 3 : 0), 0);
  const young = noCohorts(world.at.table, standing, days + released);
  return { world, at: world.at, parameters, young, boxes: new Float64Array(boxCount), clock: 0 };
}

/** Whether any has been put in yet; its clock runs from then on. */
export function atWork(enemy: EnemyState): boolean {
  return enemy.young.end > 0 || adultsIn(enemy.boxes) > 0;
}

/** Animals that hunt now. */
export function hunting(enemy: EnemyState): number {
  if (!enemy.world.larvaeHunt) return adultsIn(enemy.boxes);
  let sum = 0;
  enemy.at.table.stages.forEach((stage, i) => {
    if (!/^egg|pupa|waiting/.test(stage.name)) sum += inStage(enemy.young, i, enemy.clock);
  });
  return sum;
}

/**
 * Share of the exposed hosts or prey attacked on a day; never above 1, never falling when there are more hunters.
 */
export function shareAttacked(enemy: EnemyState, day: number, offsetC: number, exposed: number): number {
  const hazard = attackHazard({
    hunters: hunting(enemy),
    activity: dayValue(enemy.at.activity, day, gridPosition(offsetC)),
    searchM2PerDay: enemy.parameters.searchM2PerDay,
    ceilingPerDay: enemy.world.ceilingPerDay,
    exposed,
  });
  return enemy.world.kind === 'parasitoid' ? shareParasitised(hazard, escapeK) : shareEaten(hazard);
}

/** Ages and renews the enemy over a day in which it attacked `attacked` per m2. */
export function passEnemyDay(enemy: EnemyState, day: number, offsetC: number, attacked: number): void {
  const { at, boxes, young, world } = enemy;
  const position = gridPosition(offsetC);
  const step = dayValue(at.clockPerDay, day, position);
  const middle = enemy.clock + step / 2;
  const food = foodOf(enemy, attacked);
  const births = newYoung(enemy, attacked, food, dayValue(at.fecundity, day, position));
  const emerged = maturing(young, enemy.clock, enemy.clock + step) * world.traits.adult.femaleShare;
  ageAdults(boxes, step, at.life);
  if (world.kind === 'predator') thinAdults(boxes, Math.exp(-hungryLeavingPerDay * (1 - food)));
  if (!world.larvaeHunt) boxes[0] = boxes[0]! + emerged;
  addBirths(young, middle, births);
  enemy.clock += step;
}

/** Puts in what was released on a day: adults at once, pupae and larvae at their age. */
export function addReleased(enemy: EnemyState, day: number): void {
  const { at, young, parameters } = enemy;
  enemy.boxes[0] = enemy.boxes[0]! + at.adultsAdded[day]! * parameters.establishes;
  const coming = at.youngAdded[day]! * parameters.establishes;
  if (coming === 0) return;
  // Born at that age and alive so far: divided by what would have lived to it.
  const alive = enemy.world.larvaeHunt ? 1 : young.standing.at(-1)!;
  for (const spread of [-0.05, 0, 0.05]) {
    addBirths(young, enemy.clock - at.youngAge + spread, coming / 3 / alive);
  }
}

/** Takes the share `taken` of hunters and of young in the open; young inside their host are spared. */
export function treatEnemy(enemy: EnemyState, taken: number): void {
  thinAdults(enemy.boxes, 1 - taken);
  if (enemy.world.kind === 'parasitoid') return;
  for (let i = enemy.young.first; i < enemy.young.end; i++) {
    enemy.young.number[i] = enemy.young.number[i]! * (1 - taken);
  }
}

/** Laying of a hunter that eats `eatenPerDay`, against the most it could lay: half at a quarter of its ceiling. */
export function fedShare(eatenPerDay: number, ceilingPerDay: number): number {
  return eatenPerDay / (eatenPerDay + ceilingPerDay / 4);
}

/** How well fed the hunters are, 0 to 1: prey eaten, else their share of the pollen. */
function foodOf({ world, boxes }: EnemyState, attacked: number): number {
  const hunters = adultsIn(boxes);
  if (hunters === 0) return 0;
  const eaten = attacked / hunters;
  const pollen = pollenFood / (1 + hunters / pollenKeepsPerM2);
  return Math.max(pollen, fedShare(eaten, world.ceilingPerDay));
}

function newYoung({ world, boxes }: EnemyState, attacked: number, food: number, fecundity: number): number {
  if (world.kind === 'parasitoid') return attacked * (world.feedsOnHosts ? 1 - fedOnShare : 1);
  if (world.larvaeHunt) return 0;
  return layingAdults(boxes) * world.traits.adult.eggsPerDay * fecundity * food;
}
