/**
 * Entries that the house has not answered yet. Each lies on the shelf before it is sent and leaves it with the
 * answer, under one key all the while: closing the page, a lost answer or two open pages cost and double nothing.
 */
import { signal } from '@preact/signals';
import { type Answer, type Refused, send } from '../api.ts';
import { notice } from '../notices.ts';
import { type KeptEntry, shelf } from './shelf.ts';

const onTheirWay = new Set<string>();
/** What lies here and is not on its way this moment, in the order of entry. */
export const outbox = signal<readonly KeptEntry[]>([]);

const otherPages = new BroadcastChannel('glasstide entries');
/** Weak signal in a glasshouse: after this the entry is safe on the phone and the person goes on. */
const giveUpMs = 12_000;

async function reload(): Promise<void> {
  const all = await (await shelf()).getAll('entries');
  outbox.value = all.filter(({ key }) => !onTheirWay.has(key));
}
otherPages.addEventListener('message', () => void reload());
reload().catch(() => {
  // Without a shelf nothing was kept.
});

async function changed(): Promise<void> {
  await reload();
  otherPages.postMessage('changed');
}

/** Lays an entry on the shelf; false where the browser keeps nothing. */
export async function keep(entry: KeptEntry): Promise<boolean> {
  try {
    await (await shelf()).put('entries', entry);
    await changed();
    return true;
  } catch {
    return false;
  }
}

/** Asks the browser not to clear the shelf when the phone grows full; only asked where something lies on it. */
async function protect(): Promise<void> {
  // Over plain http there is nobody to ask.
  if ('storage' in navigator) await navigator.storage.persist().catch(() => false);
}

/** Takes an entry off the shelf before the house has it, or after. */
export async function forget(key: string): Promise<void> {
  const database = await shelf();
  const found = (await database.getAll('entries')).find((entry) => entry.key === key);
  if (found?.order === undefined) return;
  await database.delete('entries', found.order);
  await changed();
}

/** The house did not say no: the same entry may be taken later. */
const laterCodes = ['no-signal', 'sign-in-needed', 'too-many-requests', 'fault'];
export const comesLater = ({ code }: Refused): boolean => laterCodes.includes(code);

/** Sends an entry and keeps it until it is answered. `kept`: it lies on this phone and is sent by itself. */
export async function sendOrKeep<T>(entry: KeptEntry): Promise<Answer<T> | 'kept'> {
  onTheirWay.add(entry.key);
  const lies = await keep(entry);
  const answer = await send<T>(entry, giveUpMs);
  onTheirWay.delete(entry.key);
  if (!lies) return answer;
  if (!answer.ok && comesLater(answer.refused)) {
    void protect();
    await changed();
    return 'kept';
  }
  await forget(entry.key);
  return answer;
}

async function resend(entry: KeptEntry): Promise<boolean> {
  const answer = await send(entry, giveUpMs);
  if (answer.ok) await forget(entry.key);
  else if (comesLater(answer.refused)) return false;
  else {
    await keep({ ...entry, refused: answer.refused });
    const text = `${entry.words}. ${answer.refused.reason} It stays on this phone.`;
    notice.value = { kind: 'refused', lead: 'Refused:', text };
  }
  return true;
}

let sending = false;
/** Sends what waits, in its order, and stops at the first that the house cannot take now. */
export async function sendOutbox(): Promise<void> {
  if (sending) return;
  sending = true;
  try {
    await reload();
    for (const entry of outbox.value) {
      if (!entry.refused && !(await resend(entry))) break;
    }
  } catch {
    // Without a shelf there is nothing to send.
  }
  sending = false;
}

/** Sends a refused one once more, as when a trap has been entered meanwhile. */
export async function sendAgain({ refused, ...entry }: KeptEntry): Promise<void> {
  if (refused && (await keep(entry))) await sendOutbox();
}
