/**
 * Counts as the chart and the almanac lines show them, the same numbers as in the reasons of the advice: one figure a
 * day of counting, gaps left as gaps.
 */
import {
  allTrapWindows,
  bandOf,
  type Counted,
  type CountedAs,
  type LeafCheck,
  type LeafKind,
  middleOf,
  type PestForecast,
  type TrapCount,
  type TrapKind,
  type TrapWindow,
} from '../../services/model/index.ts';
import { localDay } from '../words/dates.ts';
import { type PestGroup, pestWords } from '../words/pests.ts';

const weekMs = 7 * 86_400_000;

/**
 * Reckoned to one trap and seven days, all traps of the day together by how long and how much of them was counted; or
 * to ten leaves, all leaves of the day together.
 */
export interface CountWeek {
  endMs: number;
  middle: number;
  /** Differs from `middle` when a band was tapped. */
  low: number;
  high: number;
  /** Only part of a trap was counted. */
  part: boolean;
  /** What it was reckoned from, on traps: all that were counted, on how many, and over how many days on average. */
  from?: { insects: number; traps: number; days: number };
}
export interface CountHistory {
  weeks: CountWeek[];
  /** Weeks since the first count of this kind that have none; `down` = taken down on purpose. */
  gaps: { endMs: number; down: boolean }[];
}

const sumOf = <T>(items: readonly T[], of: (item: T) => number): number =>
  items.reduce((sum, item) => sum + of(item), 0);

/** Items by local day, both in time. */
function byDay<T extends { timeMs: number }>(items: readonly T[], timeZone: string): T[][] {
  const days = new Map<string, T[]>();
  for (const item of [...items].sort((a, b) => a.timeMs - b.timeMs)) {
    const day = localDay(item.timeMs, timeZone);
    days.set(day, [...(days.get(day) ?? []), item]);
  }
  return [...days.values()];
}

interface At {
  timeMs: number;
  down: boolean;
}
/** Weeks are reckoned back from the latest record, oldest first. */
function gapsOf(weeks: readonly CountWeek[], records: readonly At[]): CountHistory['gaps'] {
  const firstMs = weeks[0]?.endMs;
  if (firstMs === undefined) return [];
  const lastMs = Math.max(...records.map(({ timeMs }) => timeMs));
  const back = (ms: number) => Math.round((lastMs - ms) / weekMs);
  const counted = new Set(weeks.map(({ endMs }) => back(endMs)));
  const gaps: CountHistory['gaps'] = [];
  for (let slot = back(firstMs) - 1; slot >= 0; slot -= 1) {
    if (counted.has(slot)) continue;
    const down = records.some((record) => record.down && back(record.timeMs) === slot);
    gaps.push({ endMs: lastMs - slot * weekMs, down });
  }
  return gaps;
}

function onTraps(windows: readonly TrapWindow[]): CountWeek {
  const trapWeeks =
    sumOf(windows, ({ fromDay, toDay, countedFraction }) => (toDay - fromDay) * countedFraction) / 7;
  const insects = sumOf(windows, middleOf);
  return {
    endMs: Math.max(...windows.map(({ timeMs }) => timeMs)),
    low: sumOf(windows, ({ low }) => low) / trapWeeks,
    high: sumOf(windows, ({ high }) => high) / trapWeeks,
    middle: insects / trapWeeks,
    from: {
      insects,
      traps: windows.length,
      days: sumOf(windows, ({ fromDay, toDay }) => toDay - fromDay) / windows.length,
    },
    part: windows.some(({ countedFraction }) => countedFraction < 1),
  };
}

/** Counts of a kind on traps. */
export function countHistory(records: readonly TrapCount[], kind: TrapKind, timeZone: string): CountHistory {
  const windows = allTrapWindows({ traps: [], trapCounts: [...records], leafChecks: [] }, kind, 0);
  const weeks = byDay(windows, timeZone).map(onTraps);
  const all = records.map(({ time, card }) => ({ timeMs: Date.parse(time), down: card === 'down' }));
  return { weeks, gaps: gapsOf(weeks, all) };
}

interface Look {
  timeMs: number;
  leaves: number;
  /** Leaves with any: as counted, or as many as the total may sit on. */
  low: number;
  high: number;
}
function look({ time, seen, leaves }: LeafCheck, kind: LeafKind): Look[] {
  const found = seen.find((each) => each.kind === kind);
  const at = { timeMs: Date.parse(time), leaves };
  if (found?.infestedLeaves !== undefined)
    return [{ ...at, low: found.infestedLeaves, high: found.infestedLeaves }];
  if (found?.total === undefined) return [];
  const { low, high } = bandOf(found.total);
  return [{ ...at, low: Math.min(low, 1), high: Math.min(high, leaves) }];
}

function onLeaves(looks: readonly Look[]): CountWeek {
  const tens = sumOf(looks, ({ leaves }) => leaves) / 10;
  return {
    endMs: Math.max(...looks.map(({ timeMs }) => timeMs)),
    low: sumOf(looks, ({ low }) => low) / tens,
    high: sumOf(looks, ({ high }) => high) / tens,
    middle: sumOf(looks, ({ low, high }) => (low === high ? low : middleOf({ low, high }))) / tens,
    part: false,
  };
}

/** Leaves with any of a kind, of ten; where only a total was counted, as many as it may sit on. */
export function leafHistory(records: readonly LeafCheck[], kind: LeafKind, timeZone: string): CountHistory {
  const weeks = byDay(
    records.flatMap((check) => look(check, kind)),
    timeZone,
  ).map(onLeaves);
  const all = records.map(({ time }) => ({ timeMs: Date.parse(time), down: false }));
  return { weeks, gaps: gapsOf(weeks, all) };
}

/** Everything counted in a place. */
export interface Counts {
  traps: readonly TrapCount[];
  leaves: readonly LeafCheck[];
  timeZone: string;
}

const leafKindsOf: Record<PestGroup, readonly LeafKind[]> = {
  whitefly: ['whitefly-adult', 'whitefly-scale'],
  aphid: ['aphid'],
  thrips: ['thrips'],
  leaves: [],
};
/** Whether any of a pest was ever counted, on traps or under leaves; else a forecast is only what usually happens. */
export function isFound(
  { traps, leaves }: Counts,
  { pest, counted }: Pick<PestForecast, 'pest' | 'counted'>,
): boolean {
  const onLeaves = counted.unit === 'ten-leaves' ? [counted.kind] : leafKindsOf[pestWords[pest].group];
  const any = (n: Counted | undefined) => n !== undefined && bandOf(n).high > 0;
  return (
    (counted.unit === 'trap-week' && traps.some(({ counts }) => any(counts[counted.kind]))) ||
    leaves.some(({ seen }) =>
      seen.some((each) => onLeaves.includes(each.kind) && (any(each.infestedLeaves) || any(each.total))),
    )
  );
}

/** The counts of one pest in its own unit. */
export const historyOf = ({ traps, leaves, timeZone }: Counts, counted: CountedAs): CountHistory =>
  counted.unit === 'trap-week'
    ? countHistory(traps, counted.kind, timeZone)
    : leafHistory(leaves, counted.kind, timeZone);
