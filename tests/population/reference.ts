/**
 * The equations of the population engine in the plainest way, for checking it: everybody is a packet born in one
 * step with one speed for life, moved stage by stage in fine steps of the hourly temperature; hunters hunt in every
 * step. Slow; shares with the engine only the
 * laws of temperature and the judgements. Enemies whose larvae hunt are left out.
 */
import { clockRate } from '../../services/model/population/clock.ts';
import { factorAt, heatHazardPerHour } from '../../services/model/population/dayTables.ts';
import type { EnemyTables, EnemyWorld } from '../../services/model/population/enemyWorld.ts';
import {
  escapeK,
  fedOnShare,
  hungryLeavingPerDay,
  leavingPerDay,
  pollenFood,
  pollenKeepsPerM2,
} from '../../services/model/population/judgements.ts';
import type { PestParameters } from '../../services/model/population/pest.ts';
import { wholeCv } from '../../services/model/population/stages.ts';
import type { World } from '../../services/model/population/world.ts';
import { speciesById } from '../../services/model/species/catalogue.ts';
import type { Development } from '../../services/model/species/record.ts';

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

/** Number in the stages marked 1, or what is left of them after `kept`. */
function inStages({ stages, stage, number, first }: Packets, marks: ArrayLike<number>, kept = 1): number {
  let sum = 0;
  for (let i = first; i < number.length; i++) {
    if (stage[i]! === stages.length || marks[stage[i]!] !== 1) continue;
    sum += number[i]!;
    if (kept !== 1) number[i] = number[i]! * kept;
  }
  return sum;
}

const boxes = 6;
const sum = (values: Float64Array) => values.reduce((total, value) => total + value, 0);
const laying = (adults: Float64Array) =>
  adults.reduce((total, number, box) => total + number * (1 - box / boxes), 0);

function age(adults: Float64Array, part: number): void {
  const leaving = boxes * part;
  for (let box = boxes - 1; box >= 0; box--) {
    adults[box] = adults[box]! * (1 - leaving) + (box > 0 ? adults[box - 1]! * leaving : 0);
  }
}

export interface ReferenceCourse {
  /** At the end of each day. */
  adults: Float64Array;
  young: Float64Array;
  hunters: Float64Array[];
}

interface Hunter {
  world: EnemyWorld;
  at: EnemyTables;
  development: Development;
  search: number;
  establishes: number;
  young: Packets;
  adults: Float64Array;
  clock: number;
  /** Attacks risked today so far by one exposed. */
  hazard: number;
}

/** A member of a world whose temperature is the sensor's, nobody arriving; densities per m2. */
export function referenceSeason(world: World, p: PestParameters, fine: Fineness): ReferenceCourse {
  const { development } = speciesById(world.pestId);
  const { traits, days } = world;
  const stages = world.table.stages;
  const rate = clockRate(development);
  const young = packets(stages, wholeCv(development), fine.speeds);
  const adults = new Float64Array(boxes).fill((0.3 * p.startingPerM2) / boxes);
  for (const before of [0.9, 0.7, 0.5, 0.3, 0.1]) bear(young, -before, (0.7 * p.startingPerM2) / 5);
  growTo(young, 0);
  const hunters = world.enemies.flatMap((enemy, i) =>
    enemy.at ? [hunterOf(enemy, enemy.at, p, i, fine)] : [],
  );
  const everywhere = new Uint8Array(stages.length).fill(1);
  const immature = everywhere.map((_, stage) => (stage < stages.length - 1 ? 1 : 0));
  const waiting = immature.map((mark) => 1 - mark);
  const dt = 1 / fine.stepsPerDay;
  const out: ReferenceCourse = {
    adults: new Float64Array(days),
    young: new Float64Array(days),
    hunters: hunters.map(() => new Float64Array(days)),
  };
  let clock = 0;
  for (let step = 0; step < days * fine.stepsPerDay; step++) {
    const day = Math.floor(step * dt + 1e-9);
    if (step % fine.stepsPerDay === 0) for (const hunter of hunters) release(hunter, day);
    const temperatureC = temperatureOver(world, step * dt, dt);
    const advance = rate(temperatureC) * dt * p.speed;
    adults[0] = adults[0]! + growTo(young, clock + advance);
    const crowding = sum(adults) / p.crowdingPerM2;
    const eggs = p.eggsPerDay * factorAt(traits.adult.fecundityByTemperature, temperatureC) * dt;
    bear(young, clock + advance / 2, (laying(adults) * traits.adult.femaleShare * eggs) / (1 + crowding));
    age(adults, advance / (world.life * p.lifeFactor));
    clock += advance;
    const heat =
      24 * heatHazardPerHour(temperatureC, traits.heatFromC, traits.heatHazardAt39C) * p.heatFactor;
    if (heat > 0) inStages(young, everywhere, Math.exp(-heat * dt));
    thin(adults, Math.exp(-(heat + (leavingPerDay * crowding) / (1 + crowding)) * dt));
    for (const hunter of hunters)
      hunt(hunter, { young, adults, world, temperatureC, hour: step * dt * 24, dt });
    if ((step + 1) % fine.stepsPerDay !== 0) continue;
    out.adults[day] = sum(adults) + inStages(young, waiting);
    out.young[day] = inStages(young, immature);
    hunters.forEach((hunter, i) => {
      out.hunters[i]![day] = sum(hunter.adults);
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

function hunterOf(world: EnemyWorld, at: EnemyTables, p: PestParameters, i: number, fine: Fineness): Hunter {
  const { development } = speciesById(world.id);
  const { searchM2PerDay: search, establishes } = p.enemies[i]!;
  const young = packets(at.table.stages, wholeCv(development), fine.speeds);
  return {
    world,
    at,
    development,
    search,
    establishes,
    young,
    adults: new Float64Array(boxes),
    clock: 0,
    hazard: 0,
  };
}

function release(hunter: Hunter, day: number): void {
  const { at, young, adults, clock, establishes } = hunter;
  hunter.hazard = 0;
  adults[0] = adults[0]! + at.adultsAdded[day]! * establishes;
  const coming = at.youngAdded[day]! * establishes;
  if (coming === 0) return;
  const alive = at.table.stages.reduce((product, stage) => product * stage.survival, 1);
  for (const spread of [-0.05, 0, 0.05]) bear(young, clock - at.youngAge + spread, coming / 3 / alive);
  growTo(young, clock);
}

interface Field {
  young: Packets;
  adults: Float64Array;
  world: World;
  temperatureC: number;
  hour: number;
  dt: number;
}

/** One step of an enemy whose adults hunt: predators, and parasitoids that search by day. */
function hunt(hunter: Hunter, { young, adults, world, temperatureC, hour, dt }: Field): void {
  const { world: own, at, development, search } = hunter;
  const { traits, ceilingPerDay, prey, huntsAdults } = own;
  const here = sum(hunter.adults);
  if (here === 0 && hunter.young.born.length === 0) return;
  const exposed = inStages(young, prey) + (huntsAdults ? sum(adults) : 0);
  const activity =
    factorAt(traits.activityByTemperature, temperatureC) *
    (own.kind === 'parasitoid' ? light(world, hour, dt) : 1);
  const before = hunter.hazard;
  hunter.hazard += (here * activity * search * dt) / (1 + (search * exposed) / ceilingPerDay);
  const escaping = (hazard: number) =>
    own.kind === 'parasitoid' ? (1 + hazard / escapeK) ** -escapeK : Math.exp(-hazard);
  const kept = escaping(hunter.hazard) / escaping(before);
  inStages(young, prey, kept);
  if (huntsAdults) thin(adults, kept);
  const attacked = exposed * (1 - kept);
  const eaten = here === 0 ? 0 : attacked / here / dt;
  const food = Math.max(pollenFood / (1 + here / pollenKeepsPerM2), eaten / (eaten + ceilingPerDay / 4));
  const eggs = traits.adult.eggsPerDay * factorAt(traits.adult.fecundityByTemperature, temperatureC) * dt;
  const births =
    own.kind === 'parasitoid'
      ? attacked * (own.feedsOnHosts ? 1 - fedOnShare : 1)
      : laying(hunter.adults) * eggs * food;
  const advance = clockRate(development)(temperatureC) * dt;
  const grown = growTo(hunter.young, hunter.clock + advance) * traits.adult.femaleShare;
  age(hunter.adults, advance / at.life);
  if (own.kind === 'predator') thin(hunter.adults, Math.exp(-hungryLeavingPerDay * (1 - food) * dt));
  hunter.adults[0] = hunter.adults[0]! + grown;
  if (births > 0) bear(hunter.young, hunter.clock + advance / 2, births);
  hunter.clock += advance;
}

/** Share of a step that is light, scaled so that a day's mean is 1. */
function light({ path }: World, hour: number, dt: number): number {
  const mean = (from: number, hours: number) =>
    path.daylight.slice(from, from + hours).reduce((total, each) => total + each, 0) / hours;
  const first = Math.floor(hour + 1e-9);
  return mean(first, Math.max(1, Math.round(dt * 24))) / mean(Math.floor(first / 24) * 24, 24);
}

function thin(adults: Float64Array, kept: number): void {
  for (let box = 0; box < boxes; box++) adults[box] = adults[box]! * kept;
}
