/** Sends the answers of the round; what is refused stays on its screen, filled in. */

import type { DailyExtremes, LeafCheck, LeafKind, TrapCount } from '../../../services/model/index.ts';
import type { Answer, Outcome, Recorded } from '../../api.ts';
import { change, enter, type Noun } from '../../entries.ts';
import { goToRefused, numberFrom, numberMissing, numberOdd, refusedHere } from '../../parts/field.tsx';
import { celsiusTyped, degreeSign } from '../../words/habits.ts';
import { leafKindWords, trapKindNames, treatmentNames } from '../../words/names.ts';
import { countedWords } from '../../words/numbers.ts';
import { forgetBegun } from './begun.ts';
import {
  countedTraps,
  countVerdict,
  freshLeaves,
  freshTicks,
  type KeptEntry,
  kept,
  kinds,
  type LeafDraft,
  leafDraft,
  leavesVerdict,
  refusedEntry,
  show,
  type Ticks,
  type TrapDraft,
  ticksDraft,
  verdict,
} from './draft.ts';
import { onPart } from './part.tsx';

type New<T> = Omit<T, 'id'>;

/** Shows what is missing on the page; true when something is. */
function stopped(...issues: Parameters<typeof refusedHere>): boolean {
  refusedEntry.value = refusedHere(...issues);
  if (refusedEntry.value) goToRefused();
  return refusedEntry.value !== undefined;
}

interface Entry<T> {
  noun: Noun;
  data: T;
  name: string;
  value: string;
  /** The entry that is mended; otherwise it is a new one. */
  mends?: string | undefined;
}
async function keep<T>({ noun, data, name, value, mends }: Entry<T>): Promise<boolean> {
  const answer: Answer<Recorded<T>> = mends
    ? await change(noun, mends, data)
    : await enter(noun, data, `${name}, ${value}`);
  if (!answer.ok) {
    refusedEntry.value = answer.refused;
    goToRefused();
    return false;
  }
  const entry: KeptEntry = { noun, id: answer.data.id, name, value, undone: false };
  kept.value = [...kept.value.filter((each) => each.id === '' || each.id !== entry.id), entry];
  return true;
}

const gapWords = { lost: 'lost, a gap', down: 'down, a gap' } as const;

/** The words of a count, such as `whitefly 2 on half, thrips 0 on half`. */
export function countWords({
  counts,
  countedFraction,
}: Pick<TrapCount, 'counts' | 'countedFraction'>): string {
  const parts = kinds.flatMap((kind) => {
    const counted = counts[kind];
    if (counted === undefined) return [];
    return [`${trapKindNames[kind].toLowerCase()} ${countedWords(counted)}${onPart(countedFraction)}`];
  });
  return parts.join(', ') || 'nothing counted';
}

export async function keepTrap(draft: TrapDraft, outcome: Outcome | undefined): Promise<void> {
  const days = 'type how many days it hung, such as 7';
  if (stopped(numberMissing('exposureDays', draft.exposureDays, days, 0))) return;
  const gap = draft.card === 'lost' || draft.card === 'down' ? gapWords[draft.card] : undefined;
  const data: New<TrapCount> = {
    ...draft.mends?.data,
    trapId: draft.trap.id,
    time: new Date(draft.timeMs).toISOString(),
    exposureDays: numberFrom(draft.exposureDays) ?? 0,
    countedFraction: draft.countedFraction,
    card: draft.card,
    counts: gap ? {} : draft.counts,
  };
  const value = gap ?? countWords(draft);
  const { name } = draft.trap;
  if (!(await keep({ noun: 'trap-counts', data, name, value, mends: draft.mends?.id }))) return;
  countedTraps.value = [...countedTraps.value, draft.trap.id];
  verdict.value = gap ? '' : countVerdict(draft, outcome);
  show({ at: 'start' });
  forgetBegun(draft.trap.id);
}

export async function keepLeaves(
  draft: LeafDraft,
  time: string,
  outcome: Outcome | undefined,
): Promise<void> {
  const looked = Object.entries(draft.infested) as [LeafKind, number][];
  const all = 'type how many in all, or leave it empty';
  if (stopped(...looked.map(([kind]) => numberOdd(`totals.${kind}`, draft.totals[kind] ?? '', all)))) return;
  const seen = looked.map(([kind, infestedLeaves]) => {
    const total = numberFrom(draft.totals[kind] ?? '');
    return { kind, infestedLeaves, ...(total !== undefined && infestedLeaves > 0 && { total }) };
  });
  const data: New<LeafCheck> = { time, leaves: draft.leaves, seen };
  const found = looked
    .filter(([, n]) => n > 0)
    .map(([kind, n]) => `${leafKindWords[kind].name.toLowerCase()} on ${n}`);
  const value = found.length > 0 ? found.join(', ') : 'none seen';
  const name = draft.leaves === 1 ? '1 leaf' : `${draft.leaves} leaves`;
  if (!(await keep({ noun: 'leaf-checks', data, name, value }))) return;
  verdict.value = [verdict.value, leavesVerdict(draft, outcome)].filter(Boolean).join(' ');
  leafDraft.value = freshLeaves;
  show({ at: 'ticks' });
}

/** Each tick is an entry of its own, so each can be undone alone; the first refusal stops and shows. */
export async function keepTicks(ticks: Ticks, time: string, day: string): Promise<void> {
  const { lowest = '', highest = '' } = ticks;
  const warmth = lowest.trim() !== '' || highest.trim() !== '';
  const both = 'type both lowest and highest, or leave both empty';
  const odd = warmth && [numberMissing('minC', lowest, both), numberMissing('maxC', highest, both)];
  if (odd && stopped(...odd)) return;
  if (ticks.ants === 'yes') {
    const data = { time, what: 'ants', note: 'seen in the round' };
    if (!(await keep({ noun: 'sightings', data, name: 'Ants', value: 'seen' }))) return;
  }
  if (ticks.treated && ticks.treated !== 'no') {
    const data = { kind: ticks.treated, time };
    const value = treatmentNames[ticks.treated].toLowerCase();
    if (!(await keep({ noun: 'treatments', data, name: 'Washed or sprayed', value }))) return;
  }
  const [minC, maxC] = [numberFrom(lowest), numberFrom(highest)];
  if (minC !== undefined && maxC !== undefined) {
    const data: DailyExtremes = { day, minC: celsiusTyped(minC), maxC: celsiusTyped(maxC) };
    const value = `${minC} to ${maxC} ${degreeSign()}`;
    if (!(await keep({ noun: 'daily-extremes', data, name: 'Lowest and highest', value }))) return;
  }
  ticksDraft.value = freshTicks;
  show({ at: 'kept' });
}
