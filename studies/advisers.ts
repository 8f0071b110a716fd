/** Growers with a habit or a rule: what each does after the round of a week, from what is written down. */
import {
  type EnemyId,
  type LeafCheck,
  type PestId,
  type Place,
  type Season,
  soldAs,
  type TrapKind,
} from '../services/model/index.ts';

/** A parcel ordered now for all that is in it. */
export interface Parcel {
  enemy: EnemyId;
  number: number;
}
export interface Choice {
  parcels: readonly Parcel[];
  wash?: boolean;
}
export type Adviser = (season: Season, nowMs: number) => Choice;

const dayMs = 86_400_000;
const nothing: Choice = { parcels: [] };

interface Dose {
  enemy: EnemyId;
  perM2: number;
}

/** The friend a grower would name first, and a usual dose per m2: common practice, no source. */
const friend: Partial<Record<PestId, Dose>> = {
  'trialeurodes-vaporariorum': { enemy: 'encarsia-formosa', perM2: 6 },
  'aphis-gossypii': { enemy: 'aphidius-colemani', perM2: 4 },
  'myzus-persicae': { enemy: 'aphidius-colemani', perM2: 4 },
  'frankliniella-occidentalis': { enemy: 'neoseiulus-cucumeris', perM2: 100 },
  'tetranychus-urticae': { enemy: 'phytoseiulus-persimilis', perM2: 25 },
};
const onCard: Partial<Record<PestId, TrapKind>> = {
  'trialeurodes-vaporariorum': 'whitefly',
  'aphis-gossypii': 'aphid',
  'myzus-persicae': 'aphid',
  'frankliniella-occidentalis': 'thrips',
};
const underLeaf: Partial<Record<PestId, LeafCheck['seen'][number]['kind']>> = {
  'aphis-gossypii': 'aphid',
  'tetranychus-urticae': 'spider-mite',
};

/** Every two weeks a parcel against each pest that is followed, from a month after the start until two months before the end. */
export const byTheCalendar =
  (firstWeek = 4, weeks = 26): Adviser =>
  (season, nowMs) => {
    const week = Math.round((nowMs - startOf(season)) / (7 * dayMs));
    const due = week >= firstWeek && week <= weeks - 8 && (week - firstWeek) % 2 === 0;
    return due ? { parcels: season.place.pests.flatMap((pest) => parcelFor(season, pest)) } : nothing;
  };

/** When a count passes the person's own limit. */
export const whenItIsBad: Adviser = (season, nowMs) => ({
  parcels: season.place.pests.flatMap((pest) =>
    rateOf(season, pest, nowMs, 8) >= (season.place.limits[pest] ?? 10) ? parcelFor(season, pest) : [],
  ),
});

interface Rule {
  dose: Dose;
  /** Counted on leaves, not on cards. */
  onLeaves?: true;
  /** Least on a trap and week, or leaves with any of ten, pooled over 16 days. */
  rate: number;
  /** Of the last 28, days on which it was seen. */
  daysSeen: number;
  /** Since the last parcel against it. */
  silentDays: number;
}

/** For whitefly as the rule was found; for the others the best of some hundred on gardens 101 to 104, there with any number of animals. */
const rules: Partial<Record<PestId, Rule>> = {
  'trialeurodes-vaporariorum': {
    dose: { enemy: 'encarsia-formosa', perM2: 6 },
    rate: 1,
    daysSeen: 2,
    silentDays: 28,
  },
  'aphis-gossypii': {
    dose: { enemy: 'aphidius-colemani', perM2: 12 },
    onLeaves: true,
    rate: 1,
    daysSeen: 1,
    silentDays: 42,
  },
  'frankliniella-occidentalis': {
    dose: { enemy: 'orius-laevigatus', perM2: 8 },
    rate: 1,
    daysSeen: 2,
    silentDays: 42,
  },
  'tetranychus-urticae': {
    dose: { enemy: 'neoseiulus-californicus', perM2: 100 },
    onLeaves: true,
    rate: 0.5,
    daysSeen: 2,
    silentDays: 42,
  },
};

/** The plain rule of each pest: one parcel; none later than 60 days before the end, nor while wasps on cards are 0.3 of the pest. */
export const byTheRule: Adviser = (season, nowMs) => ({
  parcels: season.place.pests.flatMap((pest) => {
    const rule = rules[pest];
    if (!rule || rateOf(season, pest, nowMs, 16, rule.onLeaves) < rule.rate) return [];
    const daysLeft = (endOf(season, nowMs) - nowMs) / dayMs;
    if (daysLeft < 60 || daysSeen(season, pest, nowMs, rule.onLeaves) < rule.daysSeen) return [];
    if (sinceLastDays(season, rule.dose.enemy, nowMs) < rule.silentDays) return [];
    return waspsPerPest(season, pest, nowMs) >= 0.3 ? [] : [parcelOf(season, rule.dose)];
  }),
});

const parcelFor = (season: Season, pest: PestId): Parcel[] => {
  const named = friend[pest];
  return named ? [parcelOf(season, named)] : [];
};

/** In whole pieces, as they are sold: nobody gets a fifth of a bottle. */
export function parcelOf({ place }: { place: Pick<Place, 'areaM2'> }, { enemy, perM2 }: Dose): Parcel {
  const { perPiece } = soldAs(enemy);
  return { enemy, number: perPiece * Math.max(1, Math.round((perM2 * place.areaM2) / perPiece)) };
}

const startOf = (season: Season) =>
  Math.min(...season.readings.slice(0, 1).map(({ time }) => Date.parse(time)), Number.POSITIVE_INFINITY);
const endOf = ({ place }: Season, nowMs: number) =>
  Date.parse(`${new Date(nowMs).getUTCFullYear()}-${place.seasonEnd}T00:00:00Z`);

const low = (counted: number | { low: number } | undefined) =>
  counted === undefined ? 0 : typeof counted === 'number' ? counted : counted.low;

/** Looks of the last days: cards, or leaves where it is asked so or no card tells of the pest. */
function looks(season: Season, pest: PestId, lately: { nowMs: number; days: number; onLeaves: boolean }) {
  const { nowMs, days, onLeaves } = lately;
  const recent = ({ time }: { time: string }) => nowMs - Date.parse(time) <= days * dayMs;
  const kind = onCard[pest];
  if (!kind || onLeaves)
    return season.leafChecks.filter(recent).map(({ time, leaves, seen }) => {
      const infested = seen.find((one) => one.kind === underLeaf[pest])?.infestedLeaves ?? 0;
      return { time, rate: infested, weight: leaves / 10 };
    });
  return season.trapCounts
    .filter((count) => recent(count) && count.counts[kind] !== undefined)
    .map(({ time, counts, exposureDays, countedFraction }) => ({
      time,
      rate: low(counts[kind]),
      weight: (exposureDays * countedFraction) / 7,
    }));
}

/** Per trap and week, or leaves of ten, pooled over the last days. */
function rateOf(season: Season, pest: PestId, nowMs: number, days: number, onLeaves = false): number {
  const all = looks(season, pest, { nowMs, days, onLeaves });
  const weight = all.reduce((sum, look) => sum + look.weight, 0);
  return weight === 0 ? 0 : all.reduce((sum, look) => sum + look.rate, 0) / weight;
}

const daysSeen = (season: Season, pest: PestId, nowMs: number, onLeaves = false) => {
  const seen = looks(season, pest, { nowMs, days: 28, onLeaves }).filter(({ rate }) => rate > 0);
  return new Set(seen.map(({ time }) => time)).size;
};

function sinceLastDays(season: Season, friendOrdered: EnemyId, nowMs: number): number {
  const times = season.orders
    .filter(({ enemy }) => enemy === friendOrdered)
    .map((o) => Date.parse(o.orderedAt));
  return (nowMs - Math.max(...times, Number.NEGATIVE_INFINITY)) / dayMs;
}

function waspsPerPest(season: Season, pest: PestId, nowMs: number): number {
  const kind = onCard[pest];
  if (!kind || kind === 'thrips') return 0;
  const recent = season.trapCounts.filter(({ time }) => nowMs - Date.parse(time) <= 16 * dayMs);
  const total = (of: TrapKind) => recent.reduce((sum, { counts }) => sum + low(counts[of]), 0);
  return total(kind) === 0 ? 0 : total('small-wasp') / total(kind);
}
