/**
 * What all members of an ensemble share: the temperature path as day tables, the pests followed and the natural enemies
 * that hunt them, what was released and sprayed, day by day.
 */
import type { PestId, Release, Treatment } from '../season.ts';
import { enemyRecords, enemyTraits, pestTraits, speciesById } from '../species/catalogue.ts';
import type { PestTraits, SpeciesRecord } from '../species/record.ts';
import { adultLife, clockRate } from './clock.ts';
import {
  type DayTable,
  dayLengthH,
  factorAt,
  type HourlyPath,
  heatHazardPerHour,
  tabulateDays,
} from './dayTables.ts';
import { type EnemyWorld, enemiesOf } from './enemyWorld.ts';
import { type StageTable, stagesOf, tabulateStages, wholeCv } from './stages.ts';
import { type TakenByTreatment, treatmentsByDay } from './treatments.ts';

export interface PestWorld {
  id: PestId;
  traits: PestTraits;
  table: StageTable;
  /** Clock units (egg to adult = 1) of a mean adult life. */
  life: number;
  clockPerDay: DayTable;
  fecundity: DayTable;
  flight: DayTable;
  heatPerDay: DayTable;
  /** Sticky cards that hang on each day, by area; absent: none, or it does not fly to them. */
  cardsPerM2?: Float64Array;
  /** 1 on days on which those that mature go to rest; absent: never. */
  resting?: Uint8Array;
}

export interface World {
  startMs: number;
  days: number;
  areaM2: number;
  path: HourlyPath;
  pests: readonly PestWorld[];
  /** Records of all that hunt one of the pests, always in the same order, and what they are in this season. */
  hunters: readonly SpeciesRecord[];
  enemies: readonly EnemyWorld[];
  treatments: readonly (TakenByTreatment | undefined)[];
  /** 1 on days when ants attend those pests that ants keep. */
  ants: Uint8Array;
}

export interface Course {
  startMs: number;
  areaM2: number;
  path: HourlyPath;
  releases: readonly Release[];
  treatments: readonly Treatment[];
  ants?: Uint8Array;
  /** Sticky cards hanging on each day. */
  cards?: Float64Array;
}

/** Natural enemies of the catalogue, sold and released, that hunt one of these pests, always in the same order. */
export function huntersOf(...pests: readonly string[]): SpeciesRecord[] {
  return enemyRecords.filter((record) =>
    enemyTraits(record).attacks.some((attack) => pests.includes(attack.prey)),
  );
}

/** Builds the shared world of these pests of the catalogue. */
export function createWorld(pests: readonly PestId[], course: Course): World {
  return worldOf(pests.map(speciesById), huntersOf(...pests), course);
}

/** The same from records: pests and the natural enemies whose attacks name them. */
export function worldOf(
  pests: readonly SpeciesRecord[],
  hunters: readonly SpeciesRecord[],
  course: Course,
): World {
  const { startMs, areaM2, path, releases, treatments } = course;
  const days = Math.floor(path.hourlyC.length / 24);
  const world: World = {
    startMs,
    days,
    areaM2,
    path,
    pests: pests.map((record) =>
      pestWorld(
        record,
        path,
        course.cards?.map((cards) => cards / areaM2),
      ),
    ),
    hunters,
    enemies: [],
    treatments: [],
    ants: course.ants ?? new Uint8Array(days),
  };
  return withInterventions(world, releases, treatments);
}

function pestWorld(record: SpeciesRecord, path: HourlyPath, cardsPerM2: Float64Array | undefined): PestWorld {
  const traits = pestTraits(record);
  const { development } = record;
  return {
    id: record.id as PestId,
    traits,
    table: tabulateStages(stagesOf(development, traits.adult.preovipositionDegreeDays), wholeCv(development)),
    life: adultLife(development, traits.adult.lifeDaysAt20C),
    clockPerDay: tabulateDays(path, clockRate(development), 'all-hours'),
    fecundity: tabulateDays(path, (t) => factorAt(traits.adult.fecundityByTemperature, t), 'all-hours'),
    flight: tabulateDays(path, (t) => factorAt(traits.flightByTemperature, t), 'daylight'),
    heatPerDay: tabulateDays(
      path,
      (t) => 24 * heatHazardPerHour(t, traits.heatFromC, traits.heatHazardAt39C),
      'all-hours',
    ),
    ...(cardsPerM2 && traits.seen.trap !== undefined && { cardsPerM2 }),
    ...(traits.restsBelowDayLengthH && { resting: autumnDays(path, traits.restsBelowDayLengthH) }),
  };
}

/** Where no day of the year is so much longer, animals do not tell seasons by it. Judgement. */
const longerInSummerH = 0.5;

/** Days shorter than that which get shorter still: in spring the young of those that wintered do not rest (from memory). */
function autumnDays(path: HourlyPath, belowDayLengthH: number): Uint8Array {
  const lengths = Array.from({ length: Math.floor(path.hourlyC.length / 24) }, (_, day) =>
    dayLengthH(path, day),
  );
  const longest = path.longestDayH ?? Math.max(...lengths);
  if (longest < belowDayLengthH + longerInSummerH) return new Uint8Array(lengths.length);
  return Uint8Array.from(lengths, (now, day) =>
    now < belowDayLengthH && now < lengths[Math.max(0, day - 7)]! ? 1 : 0,
  );
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
