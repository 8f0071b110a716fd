/**
 * The equations of the population engine in the plainest way, for checking it: everybody is a packet born in one
 * step with one speed for life, moved stage by stage in fine steps of the hourly temperature; enemies hunt one after
 * the other in every step. Slow; shares with the engine only the laws of temperature, the numbers of the records as the
 * world lists them (search and ceiling of each attack among them), and the judgements.
 */

import type { AttackOn } from '../../services/model/population/attacks.ts';
import { clockRate } from '../../services/model/population/clock.ts';
import { factorAt, heatHazardPerHour } from '../../services/model/population/dayTables.ts';
import type { EnemyParameters } from '../../services/model/population/enemy.ts';
import type { EnemyTables, EnemyWorld } from '../../services/model/population/enemyWorld.ts';
import {
  escapeK,
  halfFedAt,
  leavingPerDay,
  pollenKeepsPerM2,
  pollenOffered,
  starvesInDays,
} from '../../services/model/population/judgements.ts';
import type { PestParameters } from '../../services/model/population/pest.ts';
import type { MemberParameters } from '../../services/model/population/simulate.ts';
import { wholeCv } from '../../services/model/population/stages.ts';
import type { PestWorld, World } from '../../services/model/population/world.ts';
import { speciesById } from '../../services/model/species/catalogue.ts';

export interface Fineness {
  stepsPerDay: number;
  /** Speeds of development told apart, each of the same share. */
  speeds: number;
}

interface Stage {
  name: string;
  exit: number;
  survival: number;
}

/** Young as packets: [birth * speeds + speed]. */
interface Packets {
  stages: readonly Stage[];
  pace: Float64Array;
  born: number[];
  stage: number[];
  number: number[];
  /** Packets before this one have all left. */
  first: number;
}

/** Slowness of equally many individuals, each the mean of its part of a gamma distribution of mean 1. */
export function slownesses(cv: number, speeds: number): Float64Array {
  const shape = 1 / (cv * cv);
  const cells = 40_000;
  const density = (x: number) => Math.exp((shape - 1) * Math.log(x) - shape * (x - 1));
  let total = 0;
  for (let i = 0; i < cells; i++) total += density((4 * (i + 0.5)) / cells);
  const shares = new Float64Array(speeds);
  const sums = new Float64Array(speeds);
  let passed = 0;
  for (let i = 0; i < cells; i++) {
    const x = (4 * (i + 0.5)) / cells;
    const share = density(x) / total;
    const part = Math.min(speeds - 1, Math.floor((passed + share / 2) * speeds));
    shares[part] = shares[part]! + share;
    sums[part] = sums[part]! + share * x;
    passed += share;
  }
  return sums.map((each, part) => each / shares[part]!);
}

export function packets(stages: readonly Stage[], cv: number, speeds: number): Packets {
  return { stages, pace: slownesses(cv, speeds), born: [], stage: [], number: [], first: 0 };
}

/** `number` young born when the clock stood at `clock`; half of the first stage's deaths come at once. */
export function bear(young: Packets, clock: number, number: number): void {
  const { pace, stages } = young;
  for (let speed = 0; speed < pace.length; speed++) {
    young.born.push(clock);
    young.stage.push(0);
    young.number.push((number / pace.length) * Math.sqrt(stages[0]!.survival));
  }
}

/** Moves everybody on to `clock`; returns those who become adult. */
export function growTo(young: Packets, clock: number): number {
  const { stages, pace, born, stage, number } = young;
  let grown = 0;
  for (let i = young.first; i < born.length; i++) {
    const age = (clock - born[i]!) / pace[i % pace.length]!;
    while (stage[i]! < stages.length && age >= stages[stage[i]!]!.exit) {
      const next = stages[stage[i]! + 1];
      number[i] = number[i]! * Math.sqrt(stages[stage[i]!]!.survival * (next?.survival ?? 1));
      stage[i] = stage[i]! + 1;
      if (!next) grown += number[i]!;
    }
    if (i === young.first && stage[i] === stages.length) young.first += 1;
  }
  return grown;
}

/** Number in one stage, or what is left of it after `kept`. */
function inStage({ stage, number, first }: Packets, wanted: number, kept = 1): number {
  let sum = 0;
  for (let i = first; i < number.length; i++) {
    if (stage[i]! !== wanted) continue;
    sum += number[i]!;
    if (kept !== 1) number[i] = number[i]! * kept;
  }
  return sum;
}

const boxes = 6;
const sum = (values: ArrayLike<number>) => Array.from(values).reduce((total, value) => total + value, 0);
const laying = (adults: Float64Array) =>
  adults.reduce((total, number, box) => total + number * (1 - box / boxes), 0);

function age(adults: Float64Array, part: number): void {
  const leaving = boxes * part;
  for (let box = boxes - 1; box >= 0; box--) {
    adults[box] = adults[box]! * (1 - leaving) + (box > 0 ? adults[box - 1]! * leaving : 0);
  }
}

function thin(adults: Float64Array, kept: number): void {
  for (let box = 0; box < boxes; box++) adults[box] = adults[box]! * kept;
}

export interface ReferenceCourse {
  /** At the end of each day. */
  adults: Float64Array;
  young: Float64Array;
}

export interface ReferenceSeason {
  /** In the order of World.pests. */
  pests: ReferenceCourse[];
  /** Hunters in the order of those released. */
  hunters: Float64Array[];
}

/** Anything that lives here. */
interface Living {
  young: Packets;
  adults: Float64Array;
  clock: number;
}

interface Pest extends Living {
  world: PestWorld;
  parameters: PestParameters;
  rate: (temperatureC: number) => number;
}

interface Hunter extends Living {
  world: EnemyWorld;
  at: EnemyTables;
  parameters: EnemyParameters;
  rate: (temperatureC: number) => number;
  /** Hazard of each attack so far today: escape from wasps is reckoned over a day. */
  risked: Float64Array;
}

interface Step {
  temperatureC: number;
  hour: number;
  dt: number;
  day: number;
}

/** A member of a world whose temperature is the sensor's, nobody arriving, no ants; densities per m2. */
export function referenceSeason(world: World, p: MemberParameters, fine: Fineness): ReferenceSeason {
  const pests = world.pests.map((pest, i) => pestOf(pest, p.pests[i]!, fine));
  const enemies = world.enemies.map((enemy, i) =>
    enemy.at ? hunterOf(enemy, enemy.at, p.enemies[i]!, fine) : undefined,
  );
  const hunters = enemies.filter((each) => each !== undefined);
  const prey = [...pests, ...enemies];
  const column = () => new Float64Array(world.days);
  const out: ReferenceSeason = {
    pests: pests.map(() => ({ adults: column(), young: column() })),
    hunters: hunters.map(column),
  };
  const dt = 1 / fine.stepsPerDay;
  for (let step = 0; step < world.days * fine.stepsPerDay; step++) {
    const day = Math.floor(step * dt + 1e-9);
    for (const hunter of hunters) beginStep(hunter, day, step % fine.stepsPerDay, fine.stepsPerDay);
    const now = { temperatureC: temperatureOver(world, step * dt, dt), hour: step * dt * 24, dt, day };
    for (const pest of pests) passPest(pest, now);
    for (const hunter of hunters) if (isHere(hunter)) passHunter(hunter, prey, world, now);
    if ((step + 1) % fine.stepsPerDay !== 0) continue;
    pests.forEach(({ young, adults }, i) => {
      const waiting = young.stages.length - 1;
      const all = young.stages.reduce((total, _, stage) => total + inStage(young, stage), 0);
      out.pests[i]!.adults[day] = sum(adults) + inStage(young, waiting);
      out.pests[i]!.young[day] = all - inStage(young, waiting);
    });
    hunters.forEach((hunter, i) => {
      out.hunters[i]![day] = huntersOf(hunter);
    });
  }
  return out;
}

/** Mean of the hourly temperatures over a step that begins at `day`, whole hours or a part of one. */
function temperatureOver(world: World, day: number, dt: number): number {
  const first = Math.floor(day * 24 + 1e-9);
  const hours = Math.max(1, Math.round(dt * 24));
  return sum(world.path.hourlyC.slice(first, first + hours)) / hours;
}

function pestOf(world: PestWorld, parameters: PestParameters, fine: Fineness): Pest {
  const { development } = speciesById(world.id);
  const young = packets(world.table.stages, wholeCv(development), fine.speeds);
  const { startingPerM2 } = parameters;
  for (const before of [0.9, 0.7, 0.5, 0.3, 0.1]) bear(young, -before, (0.7 * startingPerM2) / 5);
  growTo(young, 0);
  const adults = new Float64Array(boxes).fill((0.3 * startingPerM2) / boxes);
  return { world, parameters, young, adults, clock: 0, rate: clockRate(development) };
}

function passPest(pest: Pest, { temperatureC, dt }: Step): void {
  const { world, parameters: p, young, adults } = pest;
  const { traits } = world;
  const advance = pest.rate(temperatureC) * dt * p.speed;
  adults[0] = adults[0]! + growTo(young, pest.clock + advance);
  const crowding = sum(adults) / p.crowdingPerM2;
  const eggs = p.eggsPerDay * factorAt(traits.adult.fecundityByTemperature, temperatureC) * dt;
  bear(young, pest.clock + advance / 2, (laying(adults) * traits.adult.femaleShare * eggs) / (1 + crowding));
  age(adults, advance / (world.life * p.lifeFactor));
  pest.clock += advance;
  const heat = 24 * heatHazardPerHour(temperatureC, traits.heatFromC, traits.heatHazardAt39C) * p.heatFactor;
  const kept = Math.exp(-heat * dt);
  if (heat > 0) for (const stage of young.stages.keys()) inStage(young, stage, kept);
  thin(adults, Math.exp(-(heat + (leavingPerDay * crowding) / (1 + crowding)) * dt));
}

function hunterOf(world: EnemyWorld, at: EnemyTables, parameters: EnemyParameters, fine: Fineness): Hunter {
  const { development } = world.record;
  const young = packets(at.table.stages, wholeCv(development), fine.speeds);
  const risked = new Float64Array(at.attacks.length);
  const rate = clockRate(development);
  return { world, at, parameters, young, adults: new Float64Array(boxes), clock: 0, rate, risked };
}

const isHere = ({ adults, young }: Hunter) => sum(adults) > 0 || young.born.length > 0;

function huntersOf({ world, at, young, adults }: Hunter): number {
  const waiting = at.table.stages.length - 1;
  return at.huntingStages.reduce(
    (total, stage) =>
      total + inStage(young, stage) * (stage === waiting ? world.traits.adult.femaleShare : 1),
    world.adultsHunt ? sum(adults) : 0,
  );
}

/** A new day forgets what was risked; what is released comes at noon. */
function beginStep(hunter: Hunter, day: number, step: number, steps: number): void {
  if (step === 0) hunter.risked.fill(0);
  if (step === Math.floor(steps / 2)) release(hunter, day);
}

function release(hunter: Hunter, day: number): void {
  const { at, world, young, adults, clock, parameters } = hunter;
  adults[0] = adults[0]! + at.adultsAdded[day]! * parameters.establishes;
  const coming = at.youngAdded[day]! * parameters.establishes;
  if (coming === 0) return;
  for (const spread of [-0.05, 0, 0.05]) {
    const one = packets(young.stages, 0.1, young.pace.length);
    one.pace = young.pace;
    bear(one, clock - at.youngAge[day]! - spread, 1);
    growTo(one, clock);
    const here = one.stages.reduce((total, _, stage) => total + inStage(one, stage), 0);
    // Pupae are sold before they emerge, and all are counted who will.
    const unhatched = one.stage.filter((stage) => stage < one.stages.length).length / one.stage.length;
    const later = unhatched * at.table.stages.reduce((product, stage) => product * stage.survival, 1);
    bear(young, clock - at.youngAge[day]! - spread, coming / 3 / (world.traits.huntingStages ? here : later));
  }
  growTo(young, clock);
}

/** How many of a kind of prey stand there; with `kept`, what is left of them after it. */
function exposed({ young, adults }: Living, { stages }: AttackOn, kept = 1): number {
  return stages.reduce((total, stage) => {
    if (stage < young.stages.length) return total + inStage(young, stage, kept);
    const here = sum(adults);
    if (kept !== 1) thin(adults, kept);
    return total + here;
  }, 0);
}

/** One step: it hunts, lays, ages, leaves. */
function passHunter(hunter: Hunter, prey: readonly (Living | undefined)[], world: World, now: Step): void {
  const { at, adults, young, risked } = hunter;
  const { traits, kind } = hunter.world;
  const { temperatureC, dt } = now;
  const hunters = huntersOf(hunter);
  const activity =
    factorAt(traits.activityByTemperature, temperatureC) * (kind === 'parasitoid' ? light(world, now) : 1);
  const densities = at.attacks.map((attack) => exposed(prey[attack.prey]!, attack));
  const searches = at.attacks.map(({ preference, halfSearchPerM2: half }, i) => {
    const search = hunter.parameters.searchM2PerDay * preference;
    return half > 0 ? (search * densities[i]!) / (densities[i]! + half) : search;
  });
  const handling = at.attacks.reduce(
    (total, { ceilingPerDay }, i) => total + (searches[i]! * densities[i]!) / ceilingPerDay,
    0,
  );
  const busy = handling + (traits.interferencePerM2 === undefined ? 0 : hunters / traits.interferencePerM2);
  let [eatenShare, laidInto] = [0, 0];
  at.attacks.forEach((attack, i) => {
    const before = risked[i]!;
    risked[i] = before + (hunters * activity * searches[i]! * dt) / (1 + busy);
    const escaping = (hazard: number) =>
      attack.uneven ? (1 + hazard / escapeK) ** -escapeK : Math.exp(-hazard);
    const kept = escaping(risked[i]!) / escaping(before);
    const taken = exposed(prey[attack.prey]!, attack, kept) * (1 - kept);
    eatenShare += taken / attack.ceilingPerDay;
    laidInto += taken * attack.laidShare;
  });
  const most = hunters * activity * dt;
  const fill = most > 0 ? Math.min(1, eatenShare / most) : handling / (1 + handling);
  const pollen = ((traits.livesOnPollen ?? 0) * pollenOffered) / (1 + sum(adults) / pollenKeepsPerM2);
  const half = traits.halfFedAt ?? halfFedAt;
  const bend = half / (1 - 2 * half);
  const food = Math.max(pollen, ((1 + bend) * fill) / (fill + bend));
  const eggs = traits.adult.eggsPerDay * factorAt(traits.adult.fecundityByTemperature, temperatureC) * dt;
  const births = kind === 'parasitoid' ? laidInto : laying(adults) * eggs * food * at.hatching[now.day]!;
  const advance = hunter.rate(temperatureC) * dt;
  const grown = growTo(young, hunter.clock + advance) * traits.adult.femaleShare;
  age(adults, advance / at.life);
  if (!traits.adultsLeave) adults[0] = adults[0]! + grown;
  if (kind === 'predator') {
    const kept = Math.exp((-activity * (1 - food) * dt) / (traits.starvesInDays ?? starvesInDays));
    if (hunter.world.adultsHunt) thin(adults, kept);
    for (const stage of at.huntingStages) inStage(young, stage, kept);
  }
  if (births > 0) bear(young, hunter.clock + advance / 2, births);
  hunter.clock += advance;
}

/** Share of a step that is light, scaled so that a day's mean is 1. */
function light({ path }: World, { hour, dt }: Step): number {
  const mean = (from: number, hours: number) => sum(path.daylight.slice(from, from + hours)) / hours;
  const first = Math.floor(hour + 1e-9);
  return mean(first, Math.max(1, Math.round(dt * 24))) / mean(Math.floor(first / 24) * 24, 24);
}
