/** Natural enemies as a season holds them: whom they hunt, their tables by day, and what was released when. */
import type { EnemyId, Release } from '../season.ts';
import { enemyTraits } from '../species/catalogue.ts';
import type { EnemyTraits, PestTraits, SpeciesRecord } from '../species/record.ts';
import { dayMs } from '../units.ts';
import { type AttackOn, attacksOn, isParasitoid, type PreyTable } from './attacks.ts';
import { adultLife, clockRate } from './clock.ts';
import {
  type DayTable,
  dayLengthH,
  factorAt,
  type HourlyPath,
  meanOfDay,
  tabulateDays,
  zeroWhere,
} from './dayTables.ts';
import { eggFailureWidthKPa, sachetDays, visibleFrom } from './judgements.ts';
import { type StageTable, stagesOf, tabulateStages, wholeCv } from './stages.ts';

/** What natural enemies need to know of the season and of the pests in it. */
interface Ground {
  startMs: number;
  days: number;
  areaM2: number;
  path: HourlyPath;
  pests: readonly { id: string; table: StageTable; traits: PestTraits }[];
  /** Records of all that may hunt here, always in the same order. */
  hunters: readonly SpeciesRecord[];
}

export interface EnemyWorld {
  id: EnemyId;
  record: SpeciesRecord;
  traits: EnemyTraits;
  kind: 'predator' | 'parasitoid';
  adultsHunt: boolean;
  released: boolean;
  /** Comes from outside too: the first of the world that does. */
  comes: boolean;
  /** Day from which all of it is gone at once, whatever is put in; absent: never. */
  failsFrom?: number;
  /** Built only for those released or coming. */
  at?: EnemyTables;
}

export interface EnemyTables {
  table: StageTable;
  life: number;
  /** Stages of the young that hunt; adults not yet laying count as adults. */
  huntingStages: readonly number[];
  attacks: readonly AttackOn[];
  clockPerDay: DayTable;
  fecundity: DayTable;
  activity: DayTable;
  /** Share of the eggs of a day that the air lets hatch. */
  hatching: Float64Array;
  /** Animals per m2 added each day, as laying adults or as young. */
  adultsAdded: Float64Array;
  youngAdded: Float64Array;
  /** Of those added on a day. */
  youngAge: Float64Array;
}

/** All that hunt here; tables only for those released, and for the one that comes from outside. */
export function enemiesOf(ground: Ground, releases: readonly Release[]): EnemyWorld[] {
  const wild = ground.hunters.find((record) => enemyTraits(record).alsoWild);
  const own = ground.hunters.map((record) => {
    const those = releases.filter((release) => release.enemy === record.id);
    const isHere = those.length > 0 || record === wild;
    return { record, releases: those, isHere, table: enemyStages(record) };
  });
  const preyTables: PreyTable[] = [
    ...ground.pests.map(({ id, table, traits }) => ({ id, table, attended: traits.antsAttend === true })),
    ...own.map(({ record, table, isHere }) => ({ id: record.id, table: isHere ? table : undefined })),
  ];
  return own.map(({ record, table, releases: those, isHere }) => {
    const traits = enemyTraits(record);
    const enemy: EnemyWorld = {
      id: record.id as EnemyId,
      record,
      traits,
      kind: isParasitoid(traits) ? 'parasitoid' : 'predator',
      adultsHunt: huntingStagesOf(traits).includes('adult'),
      released: those.length > 0,
      comes: record === wild,
    };
    return isHere ? { ...enemy, at: enemyTables(ground, enemy, table, preyTables, those) } : enemy;
  });
}

const huntingStagesOf = ({ huntingStages }: EnemyTraits): readonly string[] => huntingStages ?? ['adult'];

function enemyTables(
  ground: Ground,
  { record, traits, kind }: EnemyWorld,
  table: StageTable,
  prey: readonly PreyTable[],
  releases: readonly Release[],
): EnemyTables {
  return {
    table,
    life: adultLife(record.development, traits.adult.lifeDaysAt20C),
    huntingStages: kind === 'parasitoid' ? [] : marked(table, huntingStagesOf(traits)),
    attacks: prey.flatMap((each, at) => attacksOn(traits, each, at)),
    ...airOf(ground, record, traits),
    ...added(ground, traits, releases),
  };
}

type Air = Pick<EnemyTables, 'clockPerDay' | 'fecundity' | 'activity' | 'hatching'>;
/** Kept with their path: a plan weighs dozens of releases in the same air. */
const airs = new WeakMap<HourlyPath, Map<SpeciesRecord, Air>>();

function airOf({ path, days }: Ground, record: SpeciesRecord, traits: EnemyTraits): Air {
  const known = airs.get(path) ?? new Map<SpeciesRecord, Air>();
  airs.set(path, known);
  const air = known.get(record) ?? airAlong(path, days, record, traits);
  known.set(record, air);
  return air;
}

function airAlong(path: HourlyPath, days: number, { development }: SpeciesRecord, traits: EnemyTraits): Air {
  const resting = restingDays(traits, path);
  const fecundity = tabulateDays(path, (t) => factorAt(traits.adult.fecundityByTemperature, t), 'all-hours');
  const activity = tabulateDays(
    path,
    (t) => factorAt(traits.activityByTemperature, t),
    isParasitoid(traits) ? 'daylight' : 'all-hours',
  );
  return {
    clockPerDay: tabulateDays(path, clockRate(development), 'all-hours'),
    fecundity: resting ? zeroWhere(fecundity, resting) : fecundity,
    activity: resting ? zeroWhere(activity, resting) : activity,
    hatching: hatchingShares(traits, path, days),
  };
}

/** Places of the named stages; adults not yet laying count as adults. */
function marked({ stages }: StageTable, names: readonly string[]): number[] {
  return stages.flatMap(({ name }, i) => (names.includes(name === 'waiting' ? 'adult' : name) ? [i] : []));
}

/** Kept with their record, as it never changes. */
const stageTables = new WeakMap<SpeciesRecord, StageTable>();

function enemyStages(record: SpeciesRecord): StageTable {
  const table = stageTables.get(record) ?? stagesOfEnemy(record);
  stageTables.set(record, table);
  return table;
}

/** Parasitoids: hidden in the host, then seen as black scale or mummy. Predators: the stages of the record. */
function stagesOfEnemy({ development, traits }: SpeciesRecord): StageTable {
  const cv = wholeCv(development);
  const enemy = traits as EnemyTraits;
  const stages = stagesOf(development, enemy.adult.preovipositionDegreeDays);
  if (!isParasitoid(enemy)) return tabulateStages(stages, cv);
  const survival = Math.sqrt(development.stages.reduce((product, stage) => product * stage.survival, 1));
  const inHost = [
    { name: 'hidden', exit: visibleFrom, survival },
    { name: 'visible', exit: 1, survival },
  ];
  return tabulateStages([...inHost, stages.at(-1)!], cv);
}

/** Whether it rests on a day at an offset, where short days make it rest. */
function restingDays({ rests }: EnemyTraits, path: HourlyPath) {
  if (!rests) return undefined;
  const { belowDayLengthH, belowC = Number.POSITIVE_INFINITY } = rests;
  return (day: number, offsetC: number): boolean =>
    dayLengthH(path, day) < belowDayLengthH && meanOfDay(path.hourlyC, day) + offsetC < belowC;
}

/** Logistic about the deficit at which half of the eggs fail; all hatch where nothing is known. */
function hatchingShares(
  { eggHalfFailsAtVpdKPa: half }: EnemyTraits,
  path: HourlyPath,
  days: number,
): Float64Array {
  const { deficitKPa } = path;
  if (half === undefined || !deficitKPa) return new Float64Array(days).fill(1);
  // From nine in ten to one in ten the logistic takes 2 ln 9.
  const steepness = (2 * Math.log(9)) / eggFailureWidthKPa;
  return deficitKPa.map((deficit) =>
    Number.isNaN(deficit) ? 1 : 1 / (1 + Math.exp(steepness * (deficit - half))),
  );
}

function added(
  season: { days: number; startMs: number; areaM2: number },
  traits: EnemyTraits,
  releases: readonly Release[],
) {
  const adultsAdded = new Float64Array(season.days);
  const youngAdded = new Float64Array(season.days);
  const youngAge = new Float64Array(season.days);
  for (const { time, number, aliveShare, form } of releases) {
    const first = Math.floor((Date.parse(time) - season.startMs) / dayMs);
    const spread = /sachet/i.test(form) ? sachetDays : 1;
    const { youngShare, age } = asReleased(form);
    const perDay = (number * aliveShare) / spread / season.areaM2;
    for (let day = Math.max(0, first); day < first + spread && day < season.days; day++) {
      youngAdded[day] = youngAdded[day]! + youngShare * perDay;
      if (youngShare > 0) youngAge[day] = age;
      adultsAdded[day] = adultsAdded[day]! + (1 - youngShare) * traits.adult.femaleShare * perDay;
    }
  }
  return { adultsAdded, youngAdded, youngAge };
}

/** How much of what is sold in a form is young, and how old. Judgement. */
function asReleased(form: string): { youngShare: number; age: number } {
  if (/egg/i.test(form)) return { youngShare: 1, age: 0.1 };
  if (/larva/i.test(form)) return { youngShare: 1, age: 0.35 };
  if (/pupa|mumm|card|scale/i.test(form)) return { youngShare: 1, age: 0.9 };
  if (/mixed|nymph/i.test(form)) return { youngShare: 0.5, age: 0.5 };
  return { youngShare: 0, age: 0 };
}
