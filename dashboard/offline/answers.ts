/** The last answers of the house, so that a phone without signal opens with what it knew. */
import { effect } from '@preact/signals';
import { access } from '../access.ts';
import { type KeptAnswer, shelf } from './shelf.ts';

/** Figures of a house come along by the thousand; what is larger is fetched again. */
const largestCharacters = 400_000;

/** Keeping is a comfort: a full or missing shelf changes nothing on the page. */
export async function keepAnswer(path: string, data: unknown, atMs: number): Promise<void> {
  const locked = access.value?.you === 'nobody';
  if (locked || JSON.stringify(data).length > largestCharacters) return;
  try {
    await (await shelf()).put('answers', { data, atMs }, path);
  } catch {
    // The page stands; only a start without signal will know less.
  }
}

export async function keptAnswer(path: string): Promise<KeptAnswer | undefined> {
  try {
    return await (await shelf()).get('answers', path);
  } catch {
    return undefined;
  }
}

/** The next person at this phone reads nothing of it. */
export async function forgetAnswers(): Promise<void> {
  try {
    await (await shelf()).clear('answers');
  } catch {
    // Without a shelf nothing was kept.
  }
}

// A house that is locked to this browser, however it came to that, leaves nothing to read.
effect(() => {
  if (access.value?.you === 'nobody') void forgetAnswers();
});
