/** Natural enemies as a season holds them: whom they hunt, their tables by day, and what was released when. */
import type { EnemyId, Release } from '../season.ts';
import { enemyTraits } from '../species/catalogue.ts';
import type { Attack, EnemyTraits, PestTraits, SpeciesRecord } from '../species/record.ts';
import { dayMs } from '../units.ts';
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

/** Stages of one kind of prey that meet the same attacks. */
export interface AttackOn {
  /** Of a wasp: its risk is uneven, so some hosts escape. */
  uneven: boolean;
  /** Share of the attacks that lay an egg; the others feed. */
  laidShare: number;
  /** Place among the pests, then the natural enemies of the world. */
  prey: number;
  /** Places of its stages, those waiting to lay included where adults are attacked; then, its laying adults. */
  stages: readonly number[];
  preference: number;
  ceilingPerDay: number;
  halfSearchPerM2: number;
  /** Share of the search that is lost while ants attend the prey. */
  antsTake: number;
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

interface PreyTable {
  id: string;
  table: StageTable | undefined;
  /** By ants. */
  attended?: boolean;
}

export const isParasitoid = ({ attacks }: EnemyTraits): boolean =>
  attacks.some((attack) => attack.kind === 'parasitism');

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

/**
 * Attacks of one animal on one prey, brought together by stage: a wasp that lays into a stage and also feeds on it does
 * one or the other at each encounter, and either takes the same time.
 */
function attacksOn(traits: EnemyTraits, { id, table, attended }: PreyTable, prey: number): AttackOn[] {
  const attacks = traits.attacks.filter((attack) => attack.prey === id);
  if (!table || attacks.length === 0) return [];
  const byStage = new Map<string, { own: Attack[]; stages: number[] }>();
  const places = [...table.stages.map(({ name }) => (name === 'waiting' ? 'adult' : name)), 'adult'];
  for (const [place, name] of places.entries()) {
    const own = attacks.filter(({ stages }) => stages.includes(name));
    const key = own.map((attack) => attacks.indexOf(attack)).join();
    const same = byStage.get(key) ?? { own, stages: [] };
    same.stages.push(place);
    byStage.set(key, same);
  }
  return [...byStage.values()]
    .filter(({ own }) => own.length > 0)
    .map(({ own, stages }) => ({
      prey,
      stages,
      uneven: isParasitoid(traits),
      ...together(own),
      antsTake: attended ? (traits.antsTake ?? 0) : 0,
    }));
}

/** Several kinds of attack on the same stages as one: ceilings add up, each is tried as often as it is preferred. */
function together(attacks: readonly Attack[]) {
  let [ceilingPerDay, tried, laid] = [0, 0, 0];
  for (const { kind, ceilingPerDay: most, preference = 1 } of attacks) {
    ceilingPerDay += most;
    tried += preference * most;
    if (kind === 'parasitism') laid += preference * most;
  }
  const { halfSearchPerM2 = 0 } = attacks[0]!;
  return { preference: tried / ceilingPerDay, ceilingPerDay, laidShare: laid / tried, halfSearchPerM2 };
}

/** Most attacks of a kind a day on this prey. */
export function mostPerDay({ attacks }: EnemyTraits, kind: Attack['kind'], prey: string): number {
  return attacks.reduce(
    (most, attack) =>
      attack.kind === kind && attack.prey === prey ? Math.max(most, attack.ceilingPerDay) : most,
    0,
  );
}

/** Places of the named stages; adults not yet laying count as adults. */
function marked({ stages }: StageTable, names: readonly string[]): number[] {
  return stages.flatMap(({ name }, i) => (names.includes(name === 'waiting' ? 'adult' : name) ? [i] : []));
}

/** Parasitoids: hidden in the host, then seen as black scale or mummy. Predators: the stages of the record. */
function enemyStages({ development, traits }: SpeciesRecord): StageTable {
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
