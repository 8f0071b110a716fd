/** Entries made without signal: kept on this phone and sent again under the same key, in their order. */
import { signal } from '@preact/signals';
import { send, type Write } from './api.ts';
import { notice } from './notices.ts';

export interface Kept extends Write {
  key: string;
  words: string;
}
const shelf = 'glasstide.outbox';

function stored(): Kept[] {
  try {
    return JSON.parse(localStorage.getItem(shelf) ?? '[]') as Kept[];
  } catch {
    return [];
  }
}
export const outbox = signal<Kept[]>(stored());

function replace(entries: Kept[]): void {
  outbox.value = entries;
  localStorage.setItem(shelf, JSON.stringify(entries));
}

export const keepForLater = (entry: Kept): void => replace([...outbox.value, entry]);

let sending = false;
/** Stops at the first without an answer; a refused one is told and taken off the list. */
export async function sendOutbox(): Promise<void> {
  if (sending) return;
  sending = true;
  for (const entry of outbox.value) {
    const answer = await send(entry);
    if (!answer.ok && answer.refused.code === 'no-signal') break;
    if (!answer.ok)
      notice.value = { kind: 'refused', lead: 'Refused:', text: `${entry.words}. ${answer.refused.reason}` };
    replace(outbox.value.filter((other) => other.key !== entry.key));
  }
  sending = false;
}
