/**
 * What all members of an ensemble share for one pest: the temperature path as day tables, the stages, the
 * natural enemies that hunt it, what was released and sprayed, day by day.
 */
import { rampSum } from '../climate/developmentRate.ts';
import type { EnemyId, PestId, Release, Treatment } from '../season.ts';
import { enemyRecords, enemyTraits, pestTraits, speciesById } from '../species/catalogue.ts';
import type { Attack, Development, EnemyTraits, PestTraits, SpeciesRecord } from '../species/record.ts';
import { type DayTable, factorAt, type HourlyPath, heatHazardPerHour, tabulateDays } from './dayTables.ts';
import { sachetDays, visibleFrom } from './judgements.ts';
import { type StageTable, stagesOf, tabulateStages, totalDegreeDays, wholeCv } from './stages.ts';
import { type TakenByTreatment, treatmentsByDay } from './treatments.ts';

const dayMs = 86_400_000;

export interface World {
  pestId: PestId;
  startMs: number;
  days: number;
  areaM2: number;
  path: HourlyPath;
  traits: PestTraits;
  table: StageTable;
  /** Clock units (egg to adult = 1) of a mean adult life. */
  life: number;
  clockPerDay: DayTable;
  fecundity: DayTable;
  flight: DayTable;
  heatPerDay: DayTable;
  enemies: readonly EnemyWorld[];
  treatments: readonly (TakenByTreatment | undefined)[];
}

export interface EnemyWorld {
  id: EnemyId;
  traits: EnemyTraits;
  kind: 'predator' | 'parasitoid';
  /** Larvae hunt, adults fly off; otherwise the adults hunt. */
  larvaeHunt: boolean;
  ceilingPerDay: number;
  feedsOnHosts: boolean;
  /** 1 for each stage of the pest it attacks; `huntsAdults` for the laying adults. */
  prey: Float64Array;
  huntsAdults: boolean;
  /** Tables are built only for those released. */
  at?: EnemyTables;
}

export interface EnemyTables {
  table: StageTable;
  life: number;
  clockPerDay: DayTable;
  fecundity: DayTable;
  activity: DayTable;
  /** Animals per m2 added each day, as adults, or as young of age `youngAge`. */
  adultsAdded: Float64Array;
  youngAdded: Float64Array;
  youngAge: number;
}

export interface WorldOptions {
  pestId: PestId;
  startMs: number;
  areaM2: number;
  path: HourlyPath;
  releases: readonly Release[];
  treatments: readonly Treatment[];
}

/** Builds the shared world of one pest. */
export function createWorld(options: WorldOptions): World {
  const { pestId, startMs, areaM2, path, releases, treatments } = options;
  const record = speciesById(pestId);
  const traits = pestTraits(record);
  const days = Math.floor(path.hourlyC.length / 24);
  const stages = stagesOf(record.development, traits.adult.preovipositionDegreeDays);
  const world: World = {
    pestId,
    startMs,
    days,
    areaM2,
    path,
    traits,
    table: tabulateStages(stages, wholeCv(record.development)),
    life: adultLife(record.development, traits.adult.lifeDaysAt20C),
    clockPerDay: tabulateDays(path, clockRate(record.development), 'all-hours'),
    fecundity: tabulateDays(path, (t) => factorAt(traits.adult.fecundityByTemperature, t), 'all-hours'),
    flight: tabulateDays(path, (t) => factorAt(traits.flightByTemperature, t), 'daylight'),
    heatPerDay: tabulateDays(
      path,
      (t) => 24 * heatHazardPerHour(t, traits.heatFromC, traits.heatHazardAt39C),
      'all-hours',
    ),
    enemies: [],
    treatments: [],
  };
  return withInterventions(world, releases, treatments);
}

/** The same world with these releases and treatments instead of its own. */
export function withInterventions(
  world: World,
  releases: readonly Release[],
  treatments: readonly Treatment[],
): World {
  return {
    ...world,
    enemies: enemiesOf(world, releases),
    treatments: treatmentsByDay(treatments, world),
  };
}

/** Natural enemies in the catalogue that hunt this pest, always in the same order. */
export function huntersOf(pestId: PestId): SpeciesRecord[] {
  return enemyRecords.filter((record) => attacksOn(record, pestId).length > 0);
}

function attacksOn(record: SpeciesRecord, pestId: PestId): Attack[] {
  return enemyTraits(record).attacks.filter((attack) => attack.pest === pestId);
}

function enemiesOf(world: World, releases: readonly Release[]): EnemyWorld[] {
  return huntersOf(world.pestId).map((record) => {
    const attacks = attacksOn(record, world.pestId);
    const main = attacks.find((attack) => attack.kind !== 'host-feeding') ?? attacks[0]!;
    const traits = enemyTraits(record);
    const own = releases.filter((release) => release.enemy === record.id);
    const enemy: EnemyWorld = {
      id: record.id as EnemyId,
      traits,
      kind: main.kind === 'parasitism' ? 'parasitoid' : 'predator',
      larvaeHunt: main.kind === 'predation' && /larva/.test(traits.release.form),
      ceilingPerDay: attacks.reduce((sum, attack) => sum + attack.ceilingPerDay, 0),
      feedsOnHosts: main.kind === 'parasitism' && attacks.some((attack) => attack.kind === 'host-feeding'),
      prey: Float64Array.from(world.table.stages, (stage) => preyMark(stage.name, main.stages)),
      huntsAdults: main.stages.includes('adult'),
    };
    return own.length === 0 ? enemy : { ...enemy, at: enemyTables(world, record, enemy, own) };
  });
}

/** Adults not yet laying count as adults. */
function preyMark(stage: string, hunted: readonly string[]): number {
  return hunted.includes(stage) || (stage === 'waiting' && hunted.includes('adult')) ? 1 : 0;
}

function enemyTables(
  world: World,
  record: SpeciesRecord,
  enemy: EnemyWorld,
  releases: readonly Release[],
): EnemyTables {
  const { traits, kind } = enemy;
  const { path } = world;
  const { development } = record;
  return {
    table: enemyStages(development, enemy),
    life: adultLife(development, traits.adult.lifeDaysAt20C),
    clockPerDay: tabulateDays(path, clockRate(development), 'all-hours'),
    fecundity: tabulateDays(path, (t) => factorAt(traits.adult.fecundityByTemperature, t), 'all-hours'),
    activity: tabulateDays(
      path,
      (t) => factorAt(traits.activityByTemperature, t),
      kind === 'parasitoid' ? 'daylight' : 'all-hours',
    ),
    ...added(world, enemy, releases),
  };
}

/** Parasitoids: hidden in the host, then seen as black scale or mummy. Predators: the stages of the record. */
function enemyStages(development: Development, enemy: EnemyWorld): StageTable {
  const cv = wholeCv(development);
  if (enemy.kind === 'predator') return tabulateStages(stagesOf(development, 0), cv);
  const survival = Math.sqrt(development.stages.reduce((product, stage) => product * stage.survival, 1));
  const halves = [
    { name: 'hidden', exit: visibleFrom, survival },
    { name: 'visible', exit: 1, survival },
  ];
  return tabulateStages(halves, cv);
}

function added(world: World, enemy: EnemyWorld, releases: readonly Release[]) {
  const adultsAdded = new Float64Array(world.days);
  const youngAdded = new Float64Array(world.days);
  for (const { time, number, aliveShare, form } of releases) {
    const first = Math.floor((Date.parse(time) - world.startMs) / dayMs);
    const spread = /sachet/i.test(form) ? sachetDays : 1;
    const asYoung = enemy.larvaeHunt || /pupa|mumm|card|scale/i.test(form);
    const into = asYoung ? youngAdded : adultsAdded;
    for (let day = Math.max(0, first); day < first + spread && day < world.days; day++) {
      into[day] = into[day]! + (number * aliveShare) / spread / world.areaM2;
    }
  }
  return { adultsAdded, youngAdded, youngAge: enemy.larvaeHunt ? 0.35 : 0.9 };
}

/** Clock units per day as a function of temperature. */
function clockRate(development: Development): (temperatureC: number) => number {
  const total = totalDegreeDays(development);
  const { ramps, steps } = rampSum(development);
  return (temperatureC) => {
    let rate = 0;
    for (const [at, slope] of ramps) if (temperatureC > at) rate += slope * (temperatureC - at);
    for (const [at, jump] of steps) if (temperatureC > at) rate += jump;
    return Math.max(0, rate) / total;
  };
}

function adultLife(development: Development, lifeDaysAt20C: number): number {
  return lifeDaysAt20C * clockRate(development)(20);
}
