/** Growers with a habit or a rule: what each does after the round of a week, from what is written down. */
import type { EnemyId, PestId, Season, TrapKind } from '../services/model/index.ts';

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

/** The friend a grower would name first, and a usual dose per m2: common practice, no source. */
const friend: Partial<Record<PestId, { enemy: EnemyId; perM2: number }>> = {
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

/**
 * The plain rule: one parcel when at least 1 a trap and week over 16 days (of leaves 1 of ten), seen on two days of the
 * last 28, 60 days left, 28 days since the last parcel against it, and wasps on cards less than 0.3 of the pest.
 */
export const byTheRule: Adviser = (season, nowMs) => ({
  parcels: season.place.pests.flatMap((pest) => {
    const rate = rateOf(season, pest, nowMs, 16);
    const daysLeft = (endOf(season, nowMs) - nowMs) / dayMs;
    if (rate < 1 || daysLeft < 60 || daysSeen(season, pest, nowMs) < 2) return [];
    if (sinceLastDays(season, pest, nowMs) < 28 || waspsPerPest(season, pest, nowMs) >= 0.3) return [];
    return parcelFor(season, pest);
  }),
});

function parcelFor({ place }: Season, pest: PestId): Parcel[] {
  const named = friend[pest];
  return named ? [{ enemy: named.enemy, number: Math.round(named.perM2 * place.areaM2) }] : [];
}

const startOf = (season: Season) =>
  Math.min(...season.readings.slice(0, 1).map(({ time }) => Date.parse(time)), Number.POSITIVE_INFINITY);
const endOf = ({ place }: Season, nowMs: number) =>
  Date.parse(`${new Date(nowMs).getUTCFullYear()}-${place.seasonEnd}T00:00:00Z`);

const low = (counted: number | { low: number } | undefined) =>
  counted === undefined ? 0 : typeof counted === 'number' ? counted : counted.low;

function looks(
  season: Season,
  pest: PestId,
  nowMs: number,
  days: number,
): { time: string; rate: number; weight: number }[] {
  const recent = ({ time }: { time: string }) => nowMs - Date.parse(time) <= days * dayMs;
  const kind = onCard[pest];
  if (!kind)
    return season.leafChecks.filter(recent).map(({ time, leaves, seen }) => {
      const infested = seen.find((one) => one.kind === 'spider-mite')?.infestedLeaves ?? 0;
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
function rateOf(season: Season, pest: PestId, nowMs: number, days: number): number {
  const all = looks(season, pest, nowMs, days);
  const weight = all.reduce((sum, look) => sum + look.weight, 0);
  return weight === 0 ? 0 : all.reduce((sum, look) => sum + look.rate, 0) / weight;
}

const daysSeen = (season: Season, pest: PestId, nowMs: number) =>
  new Set(looks(season, pest, nowMs, 28).flatMap(({ time, rate }) => (rate > 0 ? [time] : []))).size;

function sinceLastDays(season: Season, pest: PestId, nowMs: number): number {
  const times = season.orders
    .filter(({ enemy }) => enemy === friend[pest]?.enemy)
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
