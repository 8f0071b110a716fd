/**
 * What all members of an ensemble share for one pest: the temperature path as day tables, the stages, the
 * natural enemies that hunt it, what was released and sprayed, day by day.
 */
import type { PestId, Release, Treatment } from '../season.ts';
import { pestTraits, speciesById } from '../species/catalogue.ts';
import type { PestTraits, SpeciesRecord } from '../species/record.ts';
import { adultLife, clockRate } from './clock.ts';
import { type DayTable, factorAt, type HourlyPath, heatHazardPerHour, tabulateDays } from './dayTables.ts';
import { type EnemyWorld, enemiesOf, huntersOf } from './enemyWorld.ts';
import { type StageTable, stagesOf, tabulateStages, wholeCv } from './stages.ts';
import { type TakenByTreatment, treatmentsByDay } from './treatments.ts';

export interface World {
  pestId: PestId;
  hunters: readonly SpeciesRecord[];
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

export interface Course {
  startMs: number;
  areaM2: number;
  path: HourlyPath;
  releases: readonly Release[];
  treatments: readonly Treatment[];
}

export interface WorldOptions extends Course {
  pestId: PestId;
}

/** Builds the shared world of one pest of the catalogue. */
export function createWorld(options: WorldOptions): World {
  return worldOf(speciesById(options.pestId), huntersOf(options.pestId), options);
}

/** The same from records: a pest and the natural enemies whose attacks name its id. */
export function worldOf(record: SpeciesRecord, hunters: readonly SpeciesRecord[], course: Course): World {
  const { startMs, areaM2, path, releases, treatments } = course;
  const traits = pestTraits(record);
  const days = Math.floor(path.hourlyC.length / 24);
  const stages = stagesOf(record.development, traits.adult.preovipositionDegreeDays);
  const world: World = {
    pestId: record.id as PestId,
    hunters,
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
