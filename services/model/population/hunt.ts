/**
 * A day's hunt of all natural enemies on all they eat, pests and each other. All see the same prey, so no order among
 * them matters; what the hazards take is shared out by hazard. The hunt stands between two days of growth, half of it
 * for either, and so errs with the square of the step: the day ends, and is written down, when half is taken. Prey falls
 * meanwhile, so hunters are reckoned with its mean: hazards are worked out twice.
 */
import { columns } from '../numerics/columns.ts';
import { adultsIn, thinAdults } from './adults.ts';
import type { AttackOn } from './attacks.ts';
import { type Cohorts, inStage, takeFromStages } from './cohorts.ts';
import { dayValue } from './dayTables.ts';
import { type EnemyState, hunting, layIntoHosts } from './enemy.ts';
import {
  attackHazard,
  evenHazard,
  handlingTime,
  meanLeft,
  type PreyKind,
  searchAt,
  shareTaken,
} from './functionalResponse.ts';
import { escapeK } from './judgements.ts';

/** Prey of the day: by stage of the young, then its adults. */
interface Larder {
  cohorts: Cohorts;
  boxes: Float64Array;
  /** Those that anybody hunts. */
  hunted: readonly number[];
  standing: Float64Array;
  /** Mean over the day of what stands, as far as it is known. */
  mean: Float64Array;
  hazard: Float64Array;
  /** Share that half of the hunt takes, and the number it took last. */
  half: Float64Array;
  taken: Float64Array;
}

/** A hunter's kinds of prey, and the hazard it is to each today. */
interface Hunter {
  enemy: EnemyState;
  kinds: readonly (PreyKind & { attack: AttackOn; larder: Larder })[];
  hazards: Float64Array;
  /** Its number times its activity. */
  effort: number;
  /** Searching time lost to others of its kind, and all time lost, against the time left for searching. */
  disturbed: number;
  busy: number;
}

export interface Hunt {
  larders: readonly Larder[];
  hunters: readonly Hunter[];
}

/** Populations that can be eaten, in the order of the world: pests, then natural enemies. */
export function prepareHunt(
  pests: readonly { cohorts: Cohorts; boxes: Float64Array }[],
  enemies: readonly (EnemyState | undefined)[],
): Hunt {
  const attacks = enemies.flatMap((enemy) => enemy?.at.attacks ?? []);
  const larders = [...pests, ...enemies].map((population, at) => {
    const hunted = new Set(attacks.flatMap(({ prey, stages }) => (prey === at ? stages : [])));
    return population && hunted.size > 0 ? larderOf(population, [...hunted]) : undefined;
  });
  return {
    larders: larders.filter((larder) => larder !== undefined),
    hunters: enemies.flatMap((enemy) => (enemy ? [hunterOf(enemy, larders)] : [])),
  };
}

function larderOf(
  { cohorts, boxes }: { cohorts: Cohorts; boxes: Float64Array },
  hunted: readonly number[],
): Larder {
  const [standing, mean, hazard, half, taken] = columns(5, cohorts.table.stages.length + 1);
  return {
    cohorts,
    boxes,
    hunted,
    standing: standing!,
    mean: mean!,
    hazard: hazard!,
    half: half!,
    taken: taken!,
  };
}

function hunterOf(enemy: EnemyState, larders: readonly (Larder | undefined)[]): Hunter {
  const kinds = enemy.at.attacks.map((attack) => ({
    attack,
    larder: larders[attack.prey]!,
    searchM2PerDay: enemy.parameters.searchM2PerDay * attack.preference,
    ceilingPerDay: attack.ceilingPerDay,
    halfSearchPerM2: attack.halfSearchPerM2,
  }));
  return { enemy, kinds, hazards: new Float64Array(kinds.length), effort: 0, disturbed: 0, busy: 0 };
}

/** Works out the hunt of a day: what half of it takes, and the `fill` of each enemy. `takeHalf` then takes, twice. */
export function huntDay({ larders, hunters }: Hunt, day: number, position: number, ants: boolean): void {
  for (const larder of larders) lookInto(larder);
  for (const hunter of hunters) setOut(hunter, day, position);
  for (const hunter of hunters) search(hunter, ants);
  for (const larder of larders) thinMean(larder);
  for (const hunter of hunters) search(hunter, ants);
  for (const hunter of hunters) shareOut(hunter);
  for (const { hunted, hazard, half } of larders) {
    for (const stage of hunted) half[stage] = shareTaken(hazard[stage]! / 2);
  }
}

/** Takes what half of the hunt takes of those who stand there now; wasps lay into their part of it. */
export function takeHalf({ larders, hunters }: Hunt): void {
  for (const larder of larders) take(larder);
  for (const hunter of hunters) {
    if (hunter.enemy.world.kind === 'parasitoid') layIntoHosts(hunter.enemy, laidInto(hunter));
  }
}

function take({ cohorts, boxes, hunted, half, taken }: Larder): void {
  const adults = cohorts.table.stages.length;
  for (const stage of hunted) {
    taken[stage] = half[stage]! * (stage < adults ? inStage(cohorts, stage) : adultsIn(boxes));
  }
  takeFromStages(cohorts, half);
  if (half[adults]! > 0) thinAdults(boxes, 1 - half[adults]!);
}

function laidInto({ kinds, hazards }: Hunter): number {
  let sum = 0;
  for (let i = 0; i < kinds.length; i++) {
    const { attack, larder } = kinds[i]!;
    if (attack.laidShare === 0) continue;
    for (const stage of attack.stages) {
      const hazard = larder.hazard[stage]!;
      if (hazard > 0) sum += (attack.laidShare * larder.taken[stage]! * hazards[i]!) / hazard;
    }
  }
  return sum;
}

function lookInto({ cohorts, boxes, hunted, standing, mean, hazard }: Larder): void {
  for (const stage of hunted) {
    standing[stage] = stage < cohorts.table.stages.length ? inStage(cohorts, stage) : adultsIn(boxes);
    mean[stage] = standing[stage]!;
    hazard[stage] = 0;
  }
}

function setOut(hunter: Hunter, day: number, position: number): void {
  const { enemy } = hunter;
  const { interferencePerM2 } = enemy.world.traits;
  const hunters = hunting(enemy);
  hunter.effort = hunters * dayValue(enemy.at.activity, day, position);
  hunter.disturbed = interferencePerM2 === undefined ? 0 : hunters / interferencePerM2;
}

/** Works out the hazard of a hunter to each kind of its prey (first its search), and adds it to that of the prey. */
function search(hunter: Hunter, ants: boolean): void {
  const { kinds, hazards } = hunter;
  let busy = hunter.disturbed;
  for (let i = 0; i < kinds.length; i++) {
    const kind = kinds[i]!;
    const density = densityOf(kind);
    const kept = ants ? 1 - kind.attack.antsTake : 1;
    hazards[i] = kept * searchAt(kind, density);
    busy += handlingTime(hazards[i]!, density, kind.ceilingPerDay);
  }
  hunter.busy = busy;
  if (hunter.effort === 0) {
    hazards.fill(0);
    return;
  }
  for (let i = 0; i < kinds.length; i++) {
    const { attack, larder } = kinds[i]!;
    const hazard = attackHazard(hunter.effort, hazards[i]!, busy);
    hazards[i] = attack.uneven ? evenHazard(hazard, escapeK) : hazard;
    for (const stage of attack.stages) larder.hazard[stage] = larder.hazard[stage]! + hazards[i]!;
  }
}

function densityOf({ attack, larder }: { attack: AttackOn; larder: Larder }): number {
  let sum = 0;
  for (const stage of attack.stages) sum += larder.mean[stage]!;
  return sum;
}

function thinMean({ hunted, mean, hazard }: Larder): void {
  for (const stage of hunted) {
    mean[stage] = mean[stage]! * meanLeft(hazard[stage]!);
    hazard[stage] = 0;
  }
}

/** How full each hunter gets: its part, by its hazard, of all that is taken. */
function shareOut(hunter: Hunter): void {
  const { enemy, kinds, hazards, effort, busy, disturbed } = hunter;
  let fill = 0;
  for (let i = 0; i < kinds.length; i++) {
    const { attack, larder, ceilingPerDay } = kinds[i]!;
    let own = 0;
    for (const stage of attack.stages) {
      const hazard = larder.hazard[stage]!;
      if (hazard > 0) own += (larder.standing[stage]! * shareTaken(hazard) * hazards[i]!) / hazard;
    }
    fill += own / ceilingPerDay;
  }
  // Where nobody hunts, as before a release or in the cold, laying follows from what a first hunter would find.
  const handling = busy - disturbed;
  enemy.fill = effort > 0 ? Math.min(1, fill / effort) : handling / (1 + handling);
}
