/** Counts as the chart and the almanac lines show them: one figure a week, gaps left as gaps. */
import type {
  Counted,
  CountedAs,
  LeafCheck,
  LeafKind,
  TrapCount,
  TrapKind,
} from '../../services/model/index.ts';

const weekMs = 7 * 86_400_000;

/** Per whole trap and seven days, or of ten leaves: the mean over the traps or leaf checks of that week. */
export interface CountWeek {
  endMs: number;
  middle: number;
  /** Differs from `middle` when a band was tapped. */
  low: number;
  high: number;
  /** Only part of a trap was counted. */
  part: boolean;
}
export interface CountHistory {
  weeks: CountWeek[];
  /** Weeks since the first count of this kind that have none; `down` = taken down on purpose. */
  gaps: { endMs: number; down: boolean }[];
}

const bounds = (counted: Counted): { low: number; high: number } =>
  typeof counted === 'number' ? { low: counted, high: counted } : counted;

/** The middle of a band as the advice reads it; "101 or more" has no upper end worth a mean. */
const middleOf = (low: number, high: number): number => (low + Math.min(high, 2 * low + 10)) / 2;

/** The last count of this kind on the same card: a new, lost or taken down one ends the card's chain. */
function onThatCard(count: TrapCount, kind: TrapKind, earlier: readonly TrapCount[]): Counted | undefined {
  const before = earlier.findLast((e) => e.trapId === count.trapId);
  if (count.card !== 'same' || !before || before.card === 'lost' || before.card === 'down') return undefined;
  return before.counts[kind] ?? onThatCard(before, kind, earlier.slice(0, earlier.indexOf(before)));
}

/** A card that hung on is a difference: its earlier total comes off. */
function newCatch(count: TrapCount, kind: TrapKind, earlier: readonly TrapCount[]) {
  const counted = count.counts[kind];
  if (counted === undefined) return undefined;
  const seen = bounds(counted);
  const off = bounds(onThatCard(count, kind, earlier) ?? 0);
  const low = Math.max(0, seen.low - off.high);
  return { low, high: Math.max(low, seen.high - off.low) };
}

interface Row {
  low: number;
  high: number;
}

function weekOf(rows: readonly Row[], endMs: number, part: boolean): CountWeek | undefined {
  if (rows.length === 0) return undefined;
  const mean = (of: (row: Row) => number) => rows.reduce((sum, row) => sum + of(row), 0) / rows.length;
  return {
    endMs,
    low: mean((row) => row.low),
    high: mean((row) => row.high),
    middle: mean((row) => (row.low === row.high ? row.low : middleOf(row.low, row.high))),
    part,
  };
}

const lastOf = (records: readonly { time: string }[]): number =>
  Math.max(...records.map(({ time }) => Date.parse(time)));

/** Weeks are reckoned back from the latest record, oldest first. */
function history<T extends { time: string }>(
  records: readonly T[],
  read: (week: readonly T[], all: readonly T[]) => CountWeek | undefined,
  isDown: (record: T) => boolean,
): CountHistory {
  const all = [...records].sort((a, b) => Date.parse(a.time) - Date.parse(b.time));
  const lastMs = Date.parse(all.at(-1)?.time ?? '');
  const slots = new Map<number, T[]>();
  for (const record of all) {
    const back = Math.round((lastMs - Date.parse(record.time)) / weekMs);
    slots.set(back, [...(slots.get(back) ?? []), record]);
  }
  const weeks: CountWeek[] = [];
  const gaps: CountHistory['gaps'] = [];
  for (let back = Math.max(0, ...slots.keys()); back >= 0 && all.length > 0; back -= 1) {
    const slot = slots.get(back) ?? [];
    const week = read(slot, all);
    if (week) weeks.push(week);
    else if (weeks.length > 0) gaps.push({ endMs: lastMs - back * weekMs, down: slot.some(isDown) });
  }
  return { weeks, gaps };
}

/** Counts of a kind on traps. */
export function countHistory(records: readonly TrapCount[], kind: TrapKind): CountHistory {
  const read = (counts: readonly TrapCount[], all: readonly TrapCount[]) => {
    const rows = counts.flatMap((count) => {
      const caught = newCatch(count, kind, all.slice(0, all.indexOf(count)));
      const perWeek = 7 / (count.exposureDays * count.countedFraction);
      return caught ? [{ low: caught.low * perWeek, high: caught.high * perWeek }] : [];
    });
    const part = counts.some((count) => count.countedFraction < 1);
    return weekOf(rows, lastOf(counts), part);
  };
  return history(records, read, (count) => count.card === 'down');
}

/** Leaves with any of a kind, of ten; where only a total was counted, as many as it may sit on. */
export function leafHistory(records: readonly LeafCheck[], kind: LeafKind): CountHistory {
  const read = (checks: readonly LeafCheck[]) => {
    const rows = checks.flatMap((check) => infestedOfTen(check, kind));
    return weekOf(rows, lastOf(checks), false);
  };
  return history(records, read, () => false);
}

function infestedOfTen({ seen, leaves }: LeafCheck, kind: LeafKind): Row[] {
  const found = seen.find((each) => each.kind === kind);
  if (found?.infestedLeaves !== undefined) {
    const ofTen = (10 * found.infestedLeaves) / leaves;
    return [{ low: ofTen, high: ofTen }];
  }
  if (found?.total === undefined) return [];
  const { low, high } = bounds(found.total);
  return [{ low: low > 0 ? 10 / leaves : 0, high: (10 * Math.min(high, leaves)) / leaves }];
}

/** Everything counted in a place. */
export interface Counts {
  traps: readonly TrapCount[];
  leaves: readonly LeafCheck[];
}

/** The counts of one pest in its own unit. */
export const historyOf = ({ traps, leaves }: Counts, counted: CountedAs): CountHistory =>
  counted.unit === 'trap-week' ? countHistory(traps, counted.kind) : leafHistory(leaves, counted.kind);
