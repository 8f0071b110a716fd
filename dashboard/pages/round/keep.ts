/** Sends the answers of the round; what is refused stays on its screen, filled in. */
import type {
  DailyExtremes,
  LeafCheck,
  LeafKind,
  TrapCount,
  Treatment,
} from '../../../services/model/index.ts';
import type { Answer, Outcome, Recorded } from '../../api.ts';
import { enter, type Noun } from '../../entries.ts';
import { goToRefused, numberFrom } from '../../parts/field.tsx';
import { leafKindWords, trapKindNames, treatmentNames } from '../../words/names.ts';
import { countedWords } from '../../words/numbers.ts';
import {
  countedTraps,
  countVerdict,
  type KeptEntry,
  kept,
  kinds,
  type LeafDraft,
  refusedEntry,
  show,
  type TrapDraft,
  verdict,
} from './draft.ts';

type New<T> = Omit<T, 'id'>;

async function keep<T>(noun: Noun, data: T, name: string, value: string): Promise<boolean> {
  const answer: Answer<Recorded<T>> = await enter(noun, data, `${name}, ${value}`);
  if (!answer.ok) {
    refusedEntry.value = answer.refused;
    goToRefused();
    return false;
  }
  const entry: KeptEntry = { noun, id: answer.data.id, name, value, undone: false };
  kept.value = [...kept.value, entry];
  return true;
}

const gapWords = { lost: 'lost, a gap', down: 'down, a gap' } as const;

/** The words of a count on the kept page. */
export function countWords(counts: TrapCount['counts']): string {
  const parts = kinds.flatMap((kind) => {
    const counted = counts[kind];
    return counted === undefined ? [] : [`${trapKindNames[kind].toLowerCase()} ${countedWords(counted)}`];
  });
  return parts.join(', ') || 'nothing counted';
}

export async function keepTrap(draft: TrapDraft, outcome: Outcome | undefined, now: number): Promise<void> {
  const gap = draft.card === 'lost' || draft.card === 'down' ? gapWords[draft.card] : undefined;
  const data: New<TrapCount> = {
    trapId: draft.trap.id,
    time: new Date(now).toISOString(),
    exposureDays: numberFrom(draft.exposureDays) ?? 0,
    countedFraction: draft.countedFraction,
    card: draft.card,
    counts: gap ? {} : draft.counts,
  };
  if (!(await keep('trap-counts', data, draft.trap.name, gap ?? countWords(draft.counts)))) return;
  countedTraps.value = [...countedTraps.value, draft.trap.id];
  verdict.value = gap ? '' : countVerdict(draft, outcome);
  show({ at: 'start' });
}

export async function keepLeaves(draft: LeafDraft, now: number): Promise<void> {
  const looked = Object.entries(draft.infested) as [LeafKind, number][];
  const seen = looked.map(([kind, infestedLeaves]) => {
    const total = numberFrom(draft.totals[kind] ?? '');
    return { kind, infestedLeaves, ...(total !== undefined && infestedLeaves > 0 && { total }) };
  });
  const data: New<LeafCheck> = { time: new Date(now).toISOString(), leaves: draft.leaves, seen };
  const found = looked
    .filter(([, n]) => n > 0)
    .map(([kind, n]) => `${leafKindWords[kind].name.toLowerCase()} on ${n}`);
  const words = found.length > 0 ? found.join(', ') : 'none seen';
  if (await keep('leaf-checks', data, `${draft.leaves} leaves`, words)) show({ at: 'ticks' });
}

export interface Ticks {
  ants: 'yes' | 'no' | undefined;
  treated: Treatment['kind'] | 'no' | undefined;
  lowest: string;
  highest: string;
}

/** Each tick is an entry of its own, so each can be undone alone; the first refusal stops and shows. */
export async function keepTicks(ticks: Ticks, now: number, today: string): Promise<void> {
  const time = new Date(now).toISOString();
  if (ticks.ants === 'yes') {
    if (!(await keep('sightings', { time, what: 'ants', note: 'seen in the round' }, 'Ants', 'seen'))) return;
  }
  if (ticks.treated && ticks.treated !== 'no') {
    const data: New<Treatment> = { kind: ticks.treated, time, coveredShare: 0.8 };
    if (!(await keep('treatments', data, 'Washed or sprayed', treatmentNames[ticks.treated].toLowerCase())))
      return;
  }
  const [minC, maxC] = [numberFrom(ticks.lowest), numberFrom(ticks.highest)];
  if (minC !== undefined && maxC !== undefined) {
    const data: DailyExtremes = { day: today, minC, maxC };
    if (!(await keep('daily-extremes', data, 'Lowest and highest', `${minC} to ${maxC} °C`))) return;
  }
  show({ at: 'kept' });
}
