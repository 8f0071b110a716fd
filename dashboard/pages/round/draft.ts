/** The round under way: where it is, what was answered, what is kept. Lives until the page is reloaded. */
import { signal } from '@preact/signals';
import type {
  Counted,
  LeafKind,
  PestForecast,
  Trap,
  TrapCount,
  TrapKind,
} from '../../../services/model/index.ts';
import type { Outcome, Recorded, Refused } from '../../api.ts';
import type { Noun } from '../../entries.ts';

export const kinds: readonly TrapKind[] = ['whitefly', 'aphid', 'thrips', 'small-wasp', 'unknown'];

export type Screen =
  | { at: 'start' }
  | { at: 'hanging' }
  | { at: 'kind'; kind: TrapKind; exact: boolean }
  | { at: 'part'; back: Screen }
  | { at: 'trap' }
  | { at: 'leaves' }
  | { at: 'ticks' }
  | { at: 'kept' };

export interface TrapDraft {
  trap: Trap;
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
export interface KeptEntry {
  noun: Noun;
  id: string;
  name: string;
  value: string;
  undone: boolean;
}

export const screen = signal<Screen>({ at: 'start' });
export const trapDraft = signal<TrapDraft | undefined>(undefined);
export const countedTraps = signal<readonly string[]>([]);
const freshLeaves: LeafDraft = { leaves: 10, infested: {}, totals: {} };
export const leafDraft = signal<LeafDraft>(freshLeaves);
export const kept = signal<readonly KeptEntry[]>([]);
/** What the last kept count says against the forecast. */
export const verdict = signal('');
export const refusedEntry = signal<Refused | undefined>(undefined);

export function show(next: Screen): void {
  refusedEntry.value = undefined;
  screen.value = next;
  scrollTo(0, 0);
}

export function restart(): void {
  countedTraps.value = [];
  leafDraft.value = freshLeaves;
  kept.value = [];
  verdict.value = '';
  show({ at: 'start' });
}

const dayMs = 86_400_000;

/** Days this card has hung: since the last count of the trap, else since it was hung. */
export function daysHung(trap: Trap, counts: readonly Recorded<TrapCount>[], now: number): number {
  const earlier = counts
    .filter((each) => each.data.trapId === trap.id)
    .map((each) => Date.parse(each.data.time));
  const sinceMs = now - Math.max(Date.parse(trap.hungAt), ...earlier);
  return Math.max(0.5, Math.round((sinceMs / dayMs) * 2) / 2);
}

export function beginTrap(trap: Trap, counts: readonly Recorded<TrapCount>[], now: number): void {
  trapDraft.value = {
    trap,
    card: 'new',
    exposureDays: String(daysHung(trap, counts, now)),
    countedFraction: 1,
    counts: {},
  };
  show({ at: 'hanging' });
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

/** The forecast for the week just counted, as it stood before this count. */
const expected = (outcome: Outcome | undefined, kind: TrapKind): PestForecast | undefined =>
  outcome?.forecast.pests.find((each) => each.trapKind === kind);

/** One sentence: the count against the forecast. */
export function countVerdict(draft: TrapDraft, outcome: Outcome | undefined): string {
  for (const kind of ['whitefly', 'aphid'] as const) {
    const counted = draft.counts[kind];
    const week = expected(outcome, kind)?.weeks[0];
    if (typeof counted !== 'number' || !week || draft.countedFraction < 1) continue;
    const { q025, q10, q90, q975 } = week.catchPerTrap;
    const range = `${Math.round(q10)} to ${Math.round(q90)}`;
    if (counted > q975)
      return `${counted} is far more than the ${range} we expected. Is it right? Undo it if not.`;
    if (counted < q025)
      return `${counted} is far fewer than the ${range} we expected. Is it right? Undo it if not.`;
    if (counted > q90) return `We expected ${range}: more than we thought.`;
    if (counted < q10) return `We expected ${range}: fewer than we thought.`;
    return `We expected ${range}, so the forecast holds.`;
  }
  return '';
}
