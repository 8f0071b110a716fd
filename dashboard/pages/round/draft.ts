/** The round under way: where it is, what was answered, what is kept. */
import { computed, signal } from '@preact/signals';
import type {
  Counted,
  LeafKind,
  Trap,
  TrapCount,
  TrapKind,
  Treatment,
} from '../../../services/model/index.ts';
import type { Outcome, Recorded, Refused } from '../../api.ts';
import type { Noun } from '../../entries.ts';
import { nowMs, today, zone } from '../../state.ts';
import { entryTime, localDay } from '../../words/dates.ts';
import { leafVerdict, trapVerdict } from './verdict.ts';

export const kinds: readonly TrapKind[] = ['whitefly', 'aphid', 'thrips', 'small-wasp', 'unknown'];

export type Screen =
  | { at: 'start' }
  | { at: 'hanging' }
  | { at: 'kind'; kind: TrapKind; exact: boolean; typed?: string }
  | { at: 'part'; back: Screen }
  | { at: 'trap' }
  | { at: 'leaves' }
  | { at: 'ticks' }
  | { at: 'kept' };

export interface TrapDraft {
  trap: Trap;
  /** When it was counted. */
  timeMs: number;
  /** The kept count that is mended here. */
  mends?: Recorded<TrapCount>;
  card: TrapCount['card'];
  /** As typed. */
  exposureDays: string;
  countedFraction: number;
  counts: Partial<Record<TrapKind, Counted>>;
}
export interface LeafDraft {
  leaves: number;
  /** Leaves with at least one; 0 = none; a kind left out was not looked for. */
  infested: Partial<Record<LeafKind, number>>;
  /** All of a kind on all leaves, as typed; optional. */
  totals: Partial<Record<LeafKind, string>>;
}
/** As tapped and typed; what is left out was not answered. */
export interface Ticks {
  ants?: 'yes' | 'no';
  treated?: Treatment['kind'] | 'no';
  lowest?: string;
  highest?: string;
}
export interface KeptEntry {
  noun: Noun;
  id: string;
  name: string;
  value: string;
  undone: boolean;
}

/** The day the person chose as the day of counting; none chosen = today. */
const chosenDay = signal<string | undefined>(undefined);
export const countedOn = computed(() => chosenDay.value ?? today.value);
export const roundTime = computed(() => entryTime(countedOn.value, nowMs.value, zone.value));

export const screen = signal<Screen>({ at: 'start' });
export const trapDraft = signal<TrapDraft | undefined>(undefined);
export const countedTraps = signal<readonly string[]>([]);
export const freshLeaves: LeafDraft = { leaves: 10, infested: {}, totals: {} };
export const leafDraft = signal<LeafDraft>(freshLeaves);
export const freshTicks: Ticks = {};
export const ticksDraft = signal<Ticks>(freshTicks);
export const kept = signal<readonly KeptEntry[]>([]);
/** What the last kept count says against the forecast. */
export const verdict = signal('');
export const refusedEntry = signal<Refused | undefined>(undefined);

export function show(next: Screen): void {
  refusedEntry.value = undefined;
  screen.value = next;
}

/** Another day of counting is another round: each trap may be counted on it. */
export function chooseDay(day: string): void {
  chosenDay.value = day === '' || day >= today.value ? undefined : day;
  countedTraps.value = [];
  verdict.value = '';
}

export function restart(): void {
  chosenDay.value = undefined;
  countedTraps.value = [];
  leafDraft.value = freshLeaves;
  ticksDraft.value = freshTicks;
  kept.value = [];
  verdict.value = '';
  show({ at: 'start' });
}

const dayMs = 86_400_000;

export const countsOf = (trap: Trap, counts: readonly Recorded<TrapCount>[]): Recorded<TrapCount>[] =>
  counts
    .filter((each) => each.data.trapId === trap.id)
    .sort((one, other) => Date.parse(one.data.time) - Date.parse(other.data.time));

/**
 * Days this card has hung, in halves: since the count before, else since it was hung. Undefined when
 * it was hung on the day of counting: only the person knows.
 */
export function daysHung(
  trap: Trap,
  counts: readonly Recorded<TrapCount>[],
  timeMs: number,
): number | undefined {
  const earlier = countsOf(trap, counts)
    .map((each) => Date.parse(each.data.time))
    .filter((each) => each < timeMs);
  const sinceMs = Math.max(Date.parse(trap.hungAt), ...earlier);
  if (localDay(sinceMs, zone.value) === localDay(timeMs, zone.value)) return undefined;
  return Math.max(0.5, Math.round(((timeMs - sinceMs) / dayMs) * 2) / 2);
}

export function beginTrap(trap: Trap, counts: readonly Recorded<TrapCount>[]): void {
  const timeMs = Math.max(Date.parse(roundTime.value), Date.parse(trap.hungAt));
  const exposureDays = String(daysHung(trap, counts, timeMs) ?? '');
  trapDraft.value = { trap, timeMs, card: 'new', exposureDays, countedFraction: 1, counts: {} };
  show({ at: 'hanging' });
}

/** Opens a kept count with its answers filled in. */
export function mendCount(trap: Trap, mends: Recorded<TrapCount>): void {
  const { time, card, exposureDays, countedFraction, counts } = mends.data;
  const timeMs = Date.parse(time);
  trapDraft.value = {
    trap,
    timeMs,
    mends,
    card,
    exposureDays: String(exposureDays),
    countedFraction,
    counts,
  };
  show({ at: 'trap' });
}

export function changeTrap(part: Partial<TrapDraft>): void {
  if (trapDraft.value) trapDraft.value = { ...trapDraft.value, ...part };
}

/** Answers a kind and goes on to the next one that has no answer. */
export function answerKind(kind: TrapKind, counted: Counted | undefined): void {
  const counts = { ...trapDraft.value?.counts };
  if (counted === undefined) delete counts[kind];
  else counts[kind] = counted;
  changeTrap({ counts });
  const next = kinds[kinds.indexOf(kind) + 1];
  show(next ? { at: 'kind', kind: next, exact: false } : { at: 'trap' });
}

/** The rest of the kinds are 0: they were looked for and are not there. */
export function restIsZero(kind: TrapKind): void {
  const rest = kinds.slice(kinds.indexOf(kind)).map((each) => [each, 0] as const);
  changeTrap({ counts: { ...Object.fromEntries(rest), ...trapDraft.value?.counts } });
  show({ at: 'trap' });
}

/** What kept counts say against the forecast as it stood before them; silent of another day's. */
export function countVerdict(draft: TrapDraft, outcome: Outcome | undefined): string {
  if (!outcome || draft.mends || localDay(draft.timeMs, zone.value) !== today.value) return '';
  return trapVerdict(draft, outcome.forecast);
}
export function leavesVerdict(draft: LeafDraft, outcome: Outcome | undefined): string {
  return outcome && countedOn.value === today.value ? leafVerdict(draft, outcome.forecast) : '';
}
