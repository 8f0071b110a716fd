/**
 * A day's hunt of all natural enemies on all they eat, pests and each other. All see the same prey, so no order among
 * them matters; what the hazards take is shared out by hazard. The hunt stands between two days of growth, half of it
 * for either, and so errs with the square of the step. Prey falls meanwhile, so hunters are reckoned with its mean:
 * hazards are worked out twice.
 */
import { adultsIn, thinAdults } from './adults.ts';
import { type Cohorts, inStage, takeFromStages } from './cohorts.ts';
import { dayValue } from './dayTables.ts';
import { atWork, type EnemyState, hunting } from './enemy.ts';
import type { AttackOn } from './enemyWorld.ts';
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
  standing: Float64Array;
  /** Mean over the day of what stands, as far as it is known. */
  mean: Float64Array;
  hazard: Float64Array;
  taken: Float64Array;
}

/** A hunter's kinds of prey, and the hazard it is to each today. */
interface Hunter {
  enemy: EnemyState;
  kinds: readonly (PreyKind & { attack: AttackOn; larder: Larder })[];
  hazards: Float64Array;
  /** Its number times its activity. */
  effort: number;
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
  const larders = [...pests, ...enemies].map((population) => population && larderOf(population));
  const hunters = enemies.flatMap((enemy) => (enemy ? [hunterOf(enemy, larders)] : []));
  const eaten = new Set(hunters.flatMap(({ kinds }) => kinds.map(({ larder }) => larder)));
  return { larders: [...eaten], hunters };
}

function larderOf({ cohorts, boxes }: { cohorts: Cohorts; boxes: Float64Array }): Larder {
  const column = () => new Float64Array(cohorts.here.length + 1);
  return { cohorts, boxes, standing: column(), mean: column(), hazard: column(), taken: column() };
}

function hunterOf(enemy: EnemyState, larders: readonly (Larder | undefined)[]): Hunter {
  const kinds = enemy.at.attacks.map((attack) => ({
    attack,
    larder: larders[attack.prey]!,
    searchM2PerDay: enemy.parameters.searchM2PerDay * attack.preference,
    ceilingPerDay: attack.ceilingPerDay,
    halfSearchPerM2: attack.halfSearchPerM2,
  }));
  return { enemy, kinds, hazards: new Float64Array(kinds.length), effort: 0, busy: 0 };
}

/** Hunts through a day; each enemy's `fill` and `laidInto` then hold what came of it. */
export function huntDay({ larders, hunters }: Hunt, day: number, position: number, ants: boolean): void {
  for (const larder of larders) lookInto(larder);
  for (const hunter of hunters) if (atWork(hunter.enemy)) search(hunter, day, position, ants);
  for (const larder of larders) thinMean(larder);
  for (const hunter of hunters) if (atWork(hunter.enemy)) search(hunter, day, position, ants);
  for (const larder of larders) take(larder);
  for (const hunter of hunters) shareOut(hunter);
}

function lookInto({ cohorts, boxes, standing, mean, hazard }: Larder): void {
  const adults = cohorts.here.length;
  for (let stage = 0; stage < adults; stage++) standing[stage] = inStage(cohorts, stage);
  standing[adults] = adultsIn(boxes);
  mean.set(standing);
  hazard.fill(0);
}

/** Works out the hazard of a hunter to each kind of its prey (first its search), and adds it to that of the prey. */
function search(hunter: Hunter, day: number, position: number, ants: boolean): void {
  const { enemy, kinds, hazards } = hunter;
  const hunters = hunting(enemy);
  const activity = dayValue(enemy.at.activity, day, position);
  const { interferencePerM2 } = enemy.world.traits;
  let busy = interferencePerM2 === undefined ? 0 : hunters / interferencePerM2;
  for (let i = 0; i < kinds.length; i++) {
    const kind = kinds[i]!;
    const density = densityOf(kind);
    const kept = ants ? 1 - kind.attack.antsTake : 1;
    hazards[i] = kept * searchAt(kind, density);
    busy += handlingTime(hazards[i]!, density, kind.ceilingPerDay);
  }
  hunter.effort = hunters * activity;
  hunter.busy = busy;
  for (let i = 0; i < kinds.length; i++) {
    const { attack, larder } = kinds[i]!;
    const hazard = attackHazard(hunter.effort, hazards[i]!, busy);
    hazards[i] = attack.kind === 'predation' ? hazard : evenHazard(hazard, escapeK);
    for (const stage of attack.stages) larder.hazard[stage] = larder.hazard[stage]! + hazards[i]!;
  }
}

function densityOf({ attack, larder }: { attack: AttackOn; larder: Larder }): number {
  let sum = 0;
  for (const stage of attack.stages) sum += larder.mean[stage]!;
  return sum;
}

function thinMean({ mean, hazard }: Larder): void {
  for (let stage = 0; stage < mean.length; stage++) mean[stage] = mean[stage]! * meanLeft(hazard[stage]!);
  hazard.fill(0);
}

function take({ cohorts, boxes, hazard, taken }: Larder): void {
  let any = false;
  for (let stage = 0; stage < taken.length; stage++) {
    taken[stage] = shareTaken(hazard[stage]!);
    if (taken[stage]! > 0) any = true;
  }
  if (!any) return;
  takeFromStages(cohorts, taken);
  thinAdults(boxes, 1 - taken[taken.length - 1]!);
}

/** Each hunter's part of what was taken, by its hazard. */
function shareOut(hunter: Hunter): void {
  const { enemy, kinds, hazards, effort, busy } = hunter;
  let [fill, laidInto] = [0, 0];
  for (let i = 0; i < kinds.length; i++) {
    const { attack, larder, ceilingPerDay } = kinds[i]!;
    let own = 0;
    for (const stage of attack.stages) {
      const hazard = larder.hazard[stage]!;
      if (hazard > 0) own += (larder.standing[stage]! * larder.taken[stage]! * hazards[i]!) / hazard;
    }
    fill += own / ceilingPerDay;
    if (attack.kind === 'parasitism') laidInto += own;
  }
  // Where nobody hunts yet, laying follows from what a first hunter would find.
  enemy.fill = effort > 0 ? Math.min(1, fill / effort) : busy / (1 + busy);
  enemy.laidInto = laidInto;
}
