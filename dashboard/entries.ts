/** Writing and taking back entries of the chosen place, with the strip that tells it. */
import { type Answer, newKey, type Recorded, send } from './api.ts';
import { awaitOutcome } from './live.ts';
import { notice } from './notices.ts';
import { keepForLater } from './outbox.ts';
import { placePath, refresh } from './state.ts';

export type Noun =
  | 'plantings'
  | 'sensors'
  | 'traps'
  | 'trap-counts'
  | 'leaf-checks'
  | 'sightings'
  | 'releases'
  | 'orders'
  | 'treatments'
  | 'daily-extremes';

/** Nouns a person enters among the plants, perhaps without signal. */
const outdoorsNouns: readonly Noun[] = [
  'trap-counts',
  'leaf-checks',
  'sightings',
  'treatments',
  'daily-extremes',
];

function changed(noun: Noun, { changedAt }: { changedAt: string }): void {
  if (!['sensors', 'orders', 'sightings'].includes(noun)) awaitOutcome(changedAt);
  refresh(/\/api\/places/);
}

/** An entry without signal counts as kept: `id` is then empty and cannot be undone before it joins up. */
export async function enter<T>(noun: Noun, data: T, words: string): Promise<Answer<Recorded<T>>> {
  const write = { method: 'POST' as const, path: placePath(noun), body: data, key: newKey() };
  const answer = await send<Recorded<T>>(write);
  if (answer.ok) changed(noun, answer.data);
  if (!answer.ok && answer.refused.code === 'no-signal' && outdoorsNouns.includes(noun)) {
    keepForLater({ ...write, words });
    return { ok: true, data: { id: '', version: 0, changedAt: '', deleted: false, data } };
  }
  return answer;
}

export async function change<T>(noun: Noun, id: string, data: T): Promise<Answer<Recorded<T>>> {
  const answer = await send<Recorded<T>>({ method: 'PUT', path: placePath(`${noun}/${id}`), body: data });
  if (answer.ok) changed(noun, answer.data);
  return answer;
}

/** Takes an entry back and offers to put it back; undoing an undo is an undo. */
export async function undo(noun: Noun, id: string, words: string, back = false): Promise<boolean> {
  const answer = await send<Recorded<unknown>>({
    method: 'POST',
    path: placePath(`${noun}/${id}/undo`),
  });
  if (!answer.ok) {
    notice.value = {
      kind: 'refused',
      lead: 'Not undone:',
      text: `${answer.refused.reason} ${answer.refused.whatToDo}`,
    };
    return false;
  }
  notice.value = {
    kind: 'undone',
    lead: back ? 'Put back:' : 'Undone:',
    text: `${words}.`,
    action: { label: back ? 'undo' : 'put back', run: () => void undo(noun, id, words, !back) },
  };
  changed(noun, answer.data);
  return true;
}

function tellKept<T>(noun: Noun, answer: Answer<Recorded<T>>, words: string): Answer<Recorded<T>> {
  if (answer.ok) {
    const { id } = answer.data;
    notice.value = {
      kind: 'kept',
      lead: 'Kept:',
      text: `${words}.`,
      ...(id && { action: { label: 'undo', run: () => void undo(noun, id, words) } }),
    };
  }
  return answer;
}

/** Enters and tells it in the strip with an undo; answers with the refusal when there is one. */
export const enterAndTell = async <T>(noun: Noun, data: T, words: string): Promise<Answer<Recorded<T>>> =>
  tellKept(noun, await enter(noun, data, words), words);

/** The same for an entry that is changed. */
export const changeAndTell = async <T>(
  noun: Noun,
  id: string,
  data: T,
  words: string,
): Promise<Answer<Recorded<T>>> => tellKept(noun, await change(noun, id, data), words);
