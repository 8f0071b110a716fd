/** Writing and taking back entries of the chosen place, with the strip that tells it. */
import { type Answer, newKey, type Recorded, send } from './api.ts';
import { awaitOutcome } from './live.ts';
import { notice, tellRefused } from './notices.ts';
import { forget, sendOrKeep } from './offline/outbox.ts';
import { nowMs, placePath, refresh } from './state.ts';

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

function changed({ changedAt }: { changedAt: string }): void {
  awaitOutcome(changedAt);
  refresh(/\/api\/places/);
}

/** What was entered; `keptAs` is its key while it only lies on this phone, and `id` is then empty. */
export type Entered<T> = Recorded<T> & { keptAs?: string };

/** An entry without signal counts as kept: it lies on this phone and joins up by itself. */
export async function enter<T>(noun: Noun, data: T, words: string): Promise<Answer<Entered<T>>> {
  const key = newKey();
  const write = { method: 'POST' as const, path: placePath(noun), body: data, key };
  const answer = outdoorsNouns.includes(noun)
    ? await sendOrKeep<Recorded<T>>({ ...write, words, madeAtMs: nowMs.value })
    : await send<Recorded<T>>(write);
  if (answer === 'kept') {
    return { ok: true, data: { id: '', version: 0, changedAt: '', deleted: false, data, keptAs: key } };
  }
  if (answer.ok) changed(answer.data);
  return answer;
}

export async function change<T>(noun: Noun, id: string, data: T): Promise<Answer<Recorded<T>>> {
  const answer = await send<Recorded<T>>({ method: 'PUT', path: placePath(`${noun}/${id}`), body: data });
  if (answer.ok) changed(answer.data);
  return answer;
}

/** Takes an entry back and offers to put it back; undoing an undo is an undo. */
export async function undo(noun: Noun, id: string, words: string, back = false): Promise<boolean> {
  const answer = await send<Recorded<unknown>>({
    method: 'POST',
    path: placePath(`${noun}/${id}/undo`),
  });
  if (!answer.ok) {
    tellRefused(answer.refused, '', 'Not undone:');
    return false;
  }
  notice.value = {
    kind: 'undone',
    lead: back ? 'Put back:' : 'Undone:',
    text: `${words}.`,
    action: { label: back ? 'undo' : 'put back', run: () => void undo(noun, id, words, !back) },
  };
  changed(answer.data);
  return true;
}

/** Takes back what the house has not seen. */
async function takeOff(key: string, words: string): Promise<void> {
  await forget(key);
  notice.value = { kind: 'undone', lead: 'Undone:', text: `${words}.` };
}

function tellKept<T>(noun: Noun, answer: Answer<Entered<T>>, words: string): Answer<Entered<T>> {
  if (answer.ok) {
    const { id, keptAs } = answer.data;
    const run = keptAs ? () => void takeOff(keptAs, words) : () => void undo(noun, id, words);
    notice.value = {
      kind: 'kept',
      lead: keptAs ? 'Kept on this phone:' : 'Kept:',
      text: keptAs ? `${words}. It joins up by itself when there is signal.` : `${words}.`,
      action: { label: 'undo', run },
    };
  }
  return answer;
}

/** Enters and tells it in the strip with an undo; answers with the refusal when there is one. */
export const enterAndTell = async <T>(noun: Noun, data: T, words: string): Promise<Answer<Entered<T>>> =>
  tellKept(noun, await enter(noun, data, words), words);

/** The same for an entry that is changed. */
export const changeAndTell = async <T>(
  noun: Noun,
  id: string,
  data: T,
  words: string,
): Promise<Answer<Recorded<T>>> => tellKept(noun, await change(noun, id, data), words);
