/**
 * Counts as the model reads them: each a window of exposure with the smallest and largest number it may mean.
 * Days are counted from the start of the season, with fractions.
 */
import type { Counted, LeafCheck, PestId, Season, TrapCount, TrapKind } from '../season.ts';
import { leafKindOf, seenAs } from '../species/signs.ts';
import { dayMs } from '../units.ts';

export interface TrapWindow {
  timeMs: number;
  /** Index of the trap among all traps, by id. */
  trap: number;
  fromDay: number;
  toDay: number;
  countedFraction: number;
  low: number;
  high: number;
}

export interface LeafLook {
  timeMs: number;
  day: number;
  leaves: number;
  /** Young seen in all (whitefly: scales; where adults are not told apart, all on the leaf). */
  young?: Band;
  infestedLeaves?: number;
  /** Black scales or mummies seen in all. */
  visible?: Band;
}

export interface Band {
  low: number;
  high: number;
}

export interface Shown {
  traps: readonly TrapWindow[];
  trapIds: readonly string[];
  leaves: readonly LeafLook[];
}

/** Number a band stands for; an open band ("101 or more") is read near its low end. */
export const middleOf = ({ low, high }: Band): number => (low + Math.min(high, 2 * low + 10)) / 2;

/**
 * Leaves with at least one; where only a total was counted, half of the leaves it may sit on. Undefined when the kind
 * was not looked for.
 */
export function infestedOf({ infestedLeaves, young, leaves }: LeafLook): number | undefined {
  if (infestedLeaves !== undefined || young === undefined) return infestedLeaves;
  const total = middleOf(young);
  return total === 0 ? 0 : Math.max(1, Math.min(total, leaves) / 2);
}

/** What counts are read from. */
export type Counts = Pick<Season, 'traps' | 'trapCounts' | 'leafChecks'>;

/**
 * All that the counts up to now say of one pest; of one that never comes to traps, leaf checks alone. Small wasps on
 * traps are not used: how many of them fly to a trap is not known.
 */
export function shownOf(season: Counts, pest: PestId, startMs: number): Shown {
  const { trap } = seenAs(pest);
  const leaves = season.leafChecks.map((check) => leafLook(check, pest, startMs));
  return {
    traps: trap ? allTrapWindows(season, trap, startMs) : [],
    trapIds: trapIdsOf(season),
    leaves: leaves
      .filter(
        (look) => look.young !== undefined || look.visible !== undefined || look.infestedLeaves !== undefined,
      )
      .sort((a, b) => a.timeMs - b.timeMs),
  };
}

/** By id: the order in which records came must not matter. */
const trapIdsOf = ({ traps, trapCounts }: Counts): string[] =>
  [...new Set([...traps.map((trap) => trap.id), ...trapCounts.map((count) => count.trapId)])].sort();

/** Windows of all traps for one kind, in time. */
export function allTrapWindows(season: Counts, kind: TrapKind, startMs: number): TrapWindow[] {
  return trapIdsOf(season)
    .flatMap((id, trap) => {
      const counts = season.trapCounts.filter((count) => count.trapId === id);
      return trapWindows(counts, kind, startMs).map((window) => ({ ...window, trap }));
    })
    .sort((a, b) => a.timeMs - b.timeMs || a.trap - b.trap);
}

/**
 * Windows of one trap. A card that hung on (`same`) shows the total since it was hung: the earlier total is taken
 * off and the window begins at the earlier count. Lost and taken-down traps are gaps; so is a kind not counted.
 */
export function trapWindows(
  counts: readonly TrapCount[],
  kind: TrapKind,
  startMs: number,
): Omit<TrapWindow, 'trap'>[] {
  const inOrder = [...counts].sort((a, b) => Date.parse(a.time) - Date.parse(b.time));
  let before: (TrapCount & { band: Band }) | undefined;
  const windows: Omit<TrapWindow, 'trap'>[] = [];
  for (const count of inOrder) {
    const counted = count.counts[kind];
    const timeMs = Date.parse(count.time);
    // Another card, even one not counted for this kind, ends the chain of totals.
    if (count.card !== 'same') before = undefined;
    if (counted === undefined || count.card === 'lost' || count.card === 'down') continue;
    const band = bandOf(counted);
    const hungOn = before;
    const exposureMs = hungOn ? timeMs - Date.parse(hungOn.time) : count.exposureDays * dayMs;
    windows.push({
      timeMs,
      fromDay: (timeMs - exposureMs - startMs) / dayMs,
      toDay: (timeMs - startMs) / dayMs,
      countedFraction: count.countedFraction,
      ...(hungOn ? takenOff(band, hungOn, count.countedFraction) : band),
    });
    before = { ...count, band };
  }
  return windows;
}

/** The difference of two totals; a smaller later total (insects fall off) counts as none added. */
function takenOff(now: Band, before: TrapCount & { band: Band }, countedFraction: number): Band {
  const scale = countedFraction / before.countedFraction;
  return {
    low: Math.max(0, now.low - Math.round(before.band.high * scale)),
    high: Math.max(0, now.high - Math.round(before.band.low * scale)),
  };
}

function leafLook(check: LeafCheck, pest: PestId, startMs: number): LeafLook {
  const kind = leafKindOf(pest);
  const sign = seenAs(pest).parasitised?.sign;
  const timeMs = Date.parse(check.time);
  const young = check.seen.find((seen) => seen.kind === kind);
  const visible = check.seen.find((seen) => seen.kind === sign);
  return {
    timeMs,
    day: (timeMs - startMs) / dayMs,
    leaves: check.leaves,
    ...(young?.total === undefined ? {} : { young: bandOf(young.total) }),
    ...(young?.infestedLeaves === undefined ? {} : { infestedLeaves: young.infestedLeaves }),
    ...(visible?.total === undefined ? {} : { visible: bandOf(visible.total) }),
  };
}

export function bandOf(counted: Counted): Band {
  return typeof counted === 'number' ? { low: counted, high: counted } : counted;
}
