/** Trap counts as the chart and the almanac lines show them: one figure a week, gaps left as gaps. */
import type { Counted, TrapCount, TrapKind } from '../../services/model/index.ts';

const weekMs = 7 * 86_400_000;

/** Per whole trap and seven days, the mean over the traps counted in that week. */
export interface CountWeek {
  endMs: number;
  middle: number;
  /** Differs from `middle` when a band was tapped. */
  low: number;
  high: number;
  /** Only part of a trap was counted. */
  part: boolean;
  traps: number;
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

function weekOf(
  counts: readonly TrapCount[],
  kind: TrapKind,
  all: readonly TrapCount[],
): CountWeek | undefined {
  const rows = counts.flatMap((count) => {
    const caught = newCatch(count, kind, all.slice(0, all.indexOf(count)));
    const perWeek = 7 / (count.exposureDays * count.countedFraction);
    return caught ? [{ low: caught.low * perWeek, high: caught.high * perWeek }] : [];
  });
  if (rows.length === 0) return undefined;
  const mean = (of: (row: { low: number; high: number }) => number) =>
    rows.reduce((sum, row) => sum + of(row), 0) / rows.length;
  return {
    endMs: Math.max(...counts.map((count) => Date.parse(count.time))),
    low: mean((row) => row.low),
    high: mean((row) => row.high),
    middle: mean((row) => (row.low === row.high ? row.low : middleOf(row.low, row.high))),
    part: counts.some((count) => count.countedFraction < 1),
    traps: rows.length,
  };
}

/** Weeks are reckoned back from the latest count, oldest first. */
export function countHistory(records: readonly TrapCount[], kind: TrapKind): CountHistory {
  const all = [...records].sort((a, b) => Date.parse(a.time) - Date.parse(b.time));
  const lastMs = Date.parse(all.at(-1)?.time ?? '');
  const slots = new Map<number, TrapCount[]>();
  for (const count of all) {
    const back = Math.round((lastMs - Date.parse(count.time)) / weekMs);
    slots.set(back, [...(slots.get(back) ?? []), count]);
  }
  const weeks: CountWeek[] = [];
  const gaps: CountHistory['gaps'] = [];
  for (let back = Math.max(0, ...slots.keys()); back >= 0 && all.length > 0; back -= 1) {
    const counts = slots.get(back) ?? [];
    const week = weekOf(counts, kind, all);
    if (week) weeks.push(week);
    else if (weeks.length > 0)
      gaps.push({ endMs: lastMs - back * weekMs, down: counts.some((c) => c.card === 'down') });
  }
  return { weeks, gaps };
}
