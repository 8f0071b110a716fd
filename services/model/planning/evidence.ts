/**
 * What the counts of the last weeks say by themselves, before any forecast: the evidence of the plain
 * rule (docs/decisions/0003-first-trigger.md). Counts are read as the forecast reads them (observation/counts.ts).
 */
import { localDay } from '../climate/calendar.ts';
import { allTrapWindows, bandOf, infestedOf, middleOf, shownOf } from '../observation/counts.ts';
import { isCountedOnLeaves, type LeafCheck, type LeafKind, type PestId, type Season } from '../season.ts';
import { leafKindOf, leafKindsOf, seenAs } from '../species/signs.ts';
import { dayMs } from '../units.ts';

export interface Evidence {
  /** Whether traps or leaves were counted for this pest in the last 16 days. */
  countedLately: boolean;
  /** Catch per trap and week pooled over 16 days by exposure and counted fraction; absent without a count. */
  catchPerTrapWeek?: number;
  /** Local days with this pest on a trap or leaf within 28 days. */
  daysSeen: number;
  /** This pest on leaves in the last 16 days. */
  onLeaves: number;
  /** Small wasps per pest on the traps of 16 days. */
  waspsPerPest: number;
  /** Newest count on traps or leaves. */
  lastCountMs?: number;
  /** On the trap counted last, new ones only. */
  lastCatch?: number;
  /** Of a pest counted on leaves: leaves with any at the last check that noted them, and leaves looked under. */
  lastInfested?: { leaves: number; of: number };
  /** The newest count in the unit of the forecast: a trap and week, or leaves with any of ten. */
  lastCount?: number;
  everSeen: boolean;
  /** Signs of parasitism among scales or aphids in the last 28 days. */
  parasitised?: { signs: number; of: number };
}

const pooledDays = 16;
const seenDays = 28;

export function evidence(season: Season, pest: PestId, asOfMs: number): Evidence {
  const lately = (days: number) => (at: { timeMs: number }) =>
    at.timeMs <= asOfMs && asOfMs - at.timeMs < days * dayMs;
  const catches = trapCatches(season, pest, asOfMs);
  const looks = leafLooks(season, pest, asOfMs);
  const recent = catches.filter(lately(pooledDays));
  const recentLooks = looks.filter(lately(pooledDays)).filter((look) => look.looked);
  const caught = sum(recent.map((one) => one.number));
  const wasps = sum(recent.map((one) => one.wasps));
  const trapWeeks = sum(recent.map((one) => one.trapWeeks));
  const counts = [...catches, ...looks.filter((look) => look.looked)];
  const seen = counts.filter(({ number }) => number > 0);
  const seenOn = seen.filter(lately(seenDays)).map((one) => localDay(one.timeMs, season.place.timeZone));
  const last = catches.at(-1);
  const lastInfested = isCountedOnLeaves(season.place, pest)
    ? infestedByCheck(season, pest, asOfMs).at(-1)
    : undefined;
  const count = lastCount(season, pest, asOfMs);
  return {
    countedLately: recent.length + recentLooks.length > 0,
    ...(trapWeeks > 0 ? { catchPerTrapWeek: caught / trapWeeks } : {}),
    daysSeen: new Set(seenOn).size,
    onLeaves: sum(recentLooks.map((look) => look.number)),
    waspsPerPest: caught > 0 ? wasps / caught : 0,
    ...(counts.length > 0 ? { lastCountMs: Math.max(...counts.map((one) => one.timeMs)) } : {}),
    ...(last ? { lastCatch: last.number } : {}),
    ...(lastInfested ? { lastInfested: { leaves: lastInfested.infested, of: lastInfested.leaves } } : {}),
    ...(count !== undefined ? { lastCount: count } : {}),
    everSeen: seen.length > 0,
    ...(seenAs(pest).parasitised ? parasitism(looks.filter(lately(seenDays))) : {}),
  };
}

/** New catches of the pest in time, a card that hung on without its earlier total. */
export function trapCatches(season: Season, pest: PestId, asOfMs: number) {
  const { trap: kind, parasitised } = seenAs(pest);
  if (kind === undefined) return [];
  // Small wasps say nothing of a pest that no wasp lays into.
  const wasps = parasitised ? allTrapWindows(season, 'small-wasp', asOfMs) : [];
  return allTrapWindows(season, kind, asOfMs)
    .filter(({ timeMs }) => timeMs <= asOfMs)
    .map((window) => {
      const { timeMs, trap, fromDay, toDay, countedFraction } = window;
      const beside = wasps.find((other) => other.timeMs === timeMs && other.trap === trap);
      return {
        timeMs,
        number: middleOf(window),
        wasps: beside ? middleOf(beside) : 0,
        trapWeeks: ((toDay - fromDay) * countedFraction) / 7,
      };
    });
}

/** Catch per whole trap and week on each local day of counting, all traps of the day together, in time. */
export function catchesByDay(season: Season, pest: PestId, asOfMs: number) {
  const days = new Map<string, { number: number; trapWeeks: number }>();
  for (const { timeMs, number, trapWeeks } of trapCatches(season, pest, asOfMs)) {
    const day = localDay(timeMs, season.place.timeZone);
    const before = days.get(day) ?? { number: 0, trapWeeks: 0 };
    days.set(day, { number: before.number + number, trapWeeks: before.trapWeeks + trapWeeks });
  }
  return [...days]
    .sort(([a], [b]) => a.localeCompare(b))
    .map(([day, { number, trapWeeks }]) => ({ day, perTrapWeek: number / trapWeeks }));
}

/** Leaves with any at each leaf check that noted the pest, in time. */
export function infestedByCheck(season: Season, pest: PestId, asOfMs: number) {
  return shownOf(season, pest, 0).leaves.flatMap((look) => {
    const infested = infestedOf(look);
    return infested === undefined || look.timeMs > asOfMs
      ? []
      : [{ timeMs: look.timeMs, infested: Math.round(infested), leaves: look.leaves }];
  });
}

/** The newest count of the last days as the forecast counts: of a trap and week, or leaves with any of ten. */
export function lastCount(season: Season, pest: PestId, asOfMs: number): number | undefined {
  const fromMs = asOfMs - pooledDays * dayMs;
  if (!isCountedOnLeaves(season.place, pest)) {
    const last = catchesByDay(season, pest, asOfMs).at(-1);
    return last && last.day >= localDay(fromMs, season.place.timeZone) ? last.perTrapWeek : undefined;
  }
  const look = infestedByCheck(season, pest, asOfMs).at(-1);
  return look && look.timeMs >= fromMs ? (10 * look.infested) / look.leaves : undefined;
}

/** Local days on which the pest was counted, be it as none, or seen; in time. */
export function countDaysOf(
  season: Season,
  pest: PestId,
  asOfMs: number,
  which: 'counted' | 'seen',
): string[] {
  const counts = [
    ...trapCatches(season, pest, asOfMs),
    ...leafLooks(season, pest, asOfMs).filter(({ looked }) => looked),
  ];
  const wanted = which === 'seen' ? counts.filter(({ number }) => number > 0) : counts;
  return [...new Set(wanted.map(({ timeMs }) => localDay(timeMs, season.place.timeZone)))].sort();
}

/** What each leaf check says of the pest; `looked` when it was among the kinds noted, be it as none. */
function leafLooks(season: Season, pest: PestId, asOfMs: number) {
  const kinds = leafKindsOf(pest);
  const host = leafKindOf(pest);
  const sign = seenAs(pest).parasitised?.sign;
  return season.leafChecks
    .map((check) => ({
      timeMs: Date.parse(check.time),
      looked: check.seen.some((seen) => kinds.includes(seen.kind)),
      number: onLeaves(check, kinds),
      hosts: onLeaves(check, [host]),
      signs: sign ? onLeaves(check, [sign]) : 0,
    }))
    .filter(({ timeMs }) => timeMs <= asOfMs);
}

function onLeaves({ seen }: LeafCheck, kinds: readonly LeafKind[]): number {
  const ofKind = seen.filter((one) => kinds.includes(one.kind));
  return sum(ofKind.map(({ total, infestedLeaves }) => middleOf(bandOf(total ?? infestedLeaves ?? 0))));
}

function parasitism(looks: readonly { hosts: number; signs: number }[]): Pick<Evidence, 'parasitised'> {
  const signs = Math.round(sum(looks.map((look) => look.signs)));
  const of = signs + Math.round(sum(looks.map((look) => look.hosts)));
  return of > 0 ? { parasitised: { signs, of } } : {};
}

const sum = (values: readonly number[]): number => values.reduce((total, value) => total + value, 0);
