/** Natural enemies as a season holds them: whom they hunt, their tables by day, and what was released when. */
import type { EnemyId, PestId, Release } from '../season.ts';
import { enemyRecords, enemyTraits } from '../species/catalogue.ts';
import type { Attack, Development, EnemyTraits, SpeciesRecord } from '../species/record.ts';
import { dayMs } from '../units.ts';
import { adultLife, clockRate } from './clock.ts';
import { type DayTable, factorAt, type HourlyPath, tabulateDays } from './dayTables.ts';
import { sachetDays, visibleFrom } from './judgements.ts';
import { type StageTable, stagesOf, tabulateStages, wholeCv } from './stages.ts';

/** What natural enemies need to know of the season. */
export interface Ground {
  pestId: PestId;
  /** Natural enemies that hunt it, always in the same order. */
  hunters: readonly SpeciesRecord[];
  startMs: number;
  days: number;
  areaM2: number;
  path: HourlyPath;
  table: StageTable;
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

/** Natural enemies in the catalogue that hunt this pest, always in the same order. */
export function huntersOf(pestId: PestId): SpeciesRecord[] {
  return enemyRecords.filter((record) => attacksOn(record, pestId).length > 0);
}

function attacksOn(record: SpeciesRecord, pestId: PestId): Attack[] {
  return enemyTraits(record).attacks.filter((attack) => attack.prey === pestId);
}

/** All that hunt this pest; tables only for those released. */
export function enemiesOf(season: Ground, releases: readonly Release[]): EnemyWorld[] {
  return season.hunters.map((record) => {
    const attacks = attacksOn(record, season.pestId);
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
      prey: Float64Array.from(season.table.stages, (stage) => preyMark(stage.name, main.stages)),
      huntsAdults: main.stages.includes('adult'),
    };
    return own.length === 0 ? enemy : { ...enemy, at: enemyTables(season, record, enemy, own) };
  });
}

/** Adults not yet laying count as adults. */
function preyMark(stage: string, hunted: readonly string[]): number {
  return hunted.includes(stage) || (stage === 'waiting' && hunted.includes('adult')) ? 1 : 0;
}

function enemyTables(
  season: Ground,
  record: SpeciesRecord,
  enemy: EnemyWorld,
  releases: readonly Release[],
): EnemyTables {
  const { traits, kind } = enemy;
  const { path } = season;
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
    ...added(season, enemy, releases),
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

function added(season: Ground, enemy: EnemyWorld, releases: readonly Release[]) {
  const adultsAdded = new Float64Array(season.days);
  const youngAdded = new Float64Array(season.days);
  for (const { time, number, aliveShare, form } of releases) {
    const first = Math.floor((Date.parse(time) - season.startMs) / dayMs);
    const spread = /sachet/i.test(form) ? sachetDays : 1;
    const asYoung = enemy.larvaeHunt || /pupa|mumm|card|scale/i.test(form);
    const into = asYoung ? youngAdded : adultsAdded;
    for (let day = Math.max(0, first); day < first + spread && day < season.days; day++) {
      into[day] = into[day]! + (number * aliveShare) / spread / season.areaM2;
    }
  }
  return { adultsAdded, youngAdded, youngAge: enemy.larvaeHunt ? 0.35 : 0.9 };
}
