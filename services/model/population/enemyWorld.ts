/** Natural enemies as a season holds them: whom they hunt, their tables by day, and what was released when. */
import type { EnemyId, Release } from '../season.ts';
import { enemyTraits } from '../species/catalogue.ts';
import type { Attack, EnemyTraits, PestTraits, SpeciesRecord } from '../species/record.ts';
import { dayMs } from '../units.ts';
import { adultLife, clockRate } from './clock.ts';
import { type DayTable, factorAt, type HourlyPath, tabulateDays, zeroWhere } from './dayTables.ts';
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
  /** Animals per m2 added each day, as adults, or as young of age `youngAge`. */
  adultsAdded: Float64Array;
  youngAdded: Float64Array;
  youngAge: number;
}

/** One kind of prey in this world. */
export interface AttackOn {
  kind: Attack['kind'];
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
  { path, days, startMs, areaM2 }: Ground,
  { record, traits, kind }: EnemyWorld,
  table: StageTable,
  prey: readonly PreyTable[],
  releases: readonly Release[],
): EnemyTables {
  const { development } = record;
  const resting = restingDays(traits, path);
  const fecundity = tabulateDays(path, (t) => factorAt(traits.adult.fecundityByTemperature, t), 'all-hours');
  const activity = tabulateDays(
    path,
    (t) => factorAt(traits.activityByTemperature, t),
    kind === 'parasitoid' ? 'daylight' : 'all-hours',
  );
  return {
    table,
    life: adultLife(development, traits.adult.lifeDaysAt20C),
    huntingStages: kind === 'parasitoid' ? [] : marked(table, huntingStagesOf(traits)),
    attacks: traits.attacks.flatMap((attack) => attackOn(attack, traits, prey)),
    clockPerDay: tabulateDays(path, clockRate(development), 'all-hours'),
    fecundity: resting ? zeroWhere(fecundity, resting) : fecundity,
    activity: resting ? zeroWhere(activity, resting) : activity,
    hatching: hatchingShares(traits, path, days),
    ...added({ days, startMs, areaM2 }, traits, releases),
  };
}

function attackOn(attack: Attack, traits: EnemyTraits, prey: readonly PreyTable[]): AttackOn[] {
  const at = prey.findIndex(({ id }) => id === attack.prey);
  const { table, attended = false } = prey[at] ?? {};
  if (!table) return [];
  return [
    {
      kind: attack.kind,
      prey: at,
      stages: [
        ...marked(table, attack.stages),
        ...(attack.stages.includes('adult') ? [table.stages.length] : []),
      ],
      ...searchAndCeiling(attack, traits),
      halfSearchPerM2: attack.halfSearchPerM2 ?? 0,
      antsTake: attended ? (traits.antsTake ?? 0) : 0,
    },
  ];
}

/**
 * Of one attack alone. A wasp that also feeds on hosts lays or feeds in the proportion of its ceilings, and an attack
 * of either kind takes the same time.
 */
function searchAndCeiling({ prey, kind, preference = 1, ceilingPerDay }: Attack, traits: EnemyTraits) {
  if (kind === 'predation') return { preference, ceilingPerDay };
  const of = (each: Attack['kind']) => mostPerDay(traits, each, prey);
  const all = of('parasitism') + of('host-feeding');
  return { preference: (preference * ceilingPerDay) / all, ceilingPerDay: all };
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
  const meanOf = (hours: ArrayLike<number>, day: number) => {
    let sum = 0;
    for (let hour = day * 24; hour < day * 24 + 24; hour++) sum += hours[hour]!;
    return sum / 24;
  };
  return (day: number, offsetC: number): boolean => {
    const lengthH = path.dayLengthH ? path.dayLengthH[day]! : 24 * meanOf(path.daylight, day);
    return lengthH < belowDayLengthH && meanOf(path.hourlyC, day) + offsetC < belowC;
  };
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
  const larvae = traits.release !== undefined && /larva/.test(traits.release.form);
  for (const { time, number, aliveShare, form } of releases) {
    const first = Math.floor((Date.parse(time) - season.startMs) / dayMs);
    const spread = /sachet/i.test(form) ? sachetDays : 1;
    const into = larvae || /pupa|mumm|card|scale/i.test(form) ? youngAdded : adultsAdded;
    for (let day = Math.max(0, first); day < first + spread && day < season.days; day++) {
      into[day] = into[day]! + (number * aliveShare) / spread / season.areaM2;
    }
  }
  return { adultsAdded, youngAdded, youngAge: larvae ? 0.35 : 0.9 };
}
