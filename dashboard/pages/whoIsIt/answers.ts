/** What was answered so far; it stays while other pages are read. */
import { signal } from '@preact/signals';
import { type KeyAnswer, type KeyKind, keyKinds } from '../../../services/model/index.ts';

export const answers = signal<readonly KeyAnswer[]>([]);
/** The kind that was chosen on the plates, or that none of them was. */
export const chosen = signal<KeyKind | 'none' | undefined>(undefined);
/** True once the sighting of what was chosen is kept. */
export const logged = signal(false);

export function answer(given: KeyAnswer): void {
  answers.value = [...answers.value, given];
}
/** Back to the question that was answered as number `to`. */
export function backTo(to: number): void {
  answers.value = answers.value.slice(0, to);
  choose(undefined);
}
export function choose(kind: KeyKind | 'none' | undefined): void {
  chosen.value = kind;
  logged.value = false;
}
/** One step back: from what was chosen to the plates, from a question to the one before. */
export function back(): void {
  if (chosen.value) choose(undefined);
  else backTo(answers.value.length - 1);
}
export const restart = (): void => backTo(0);

/** Shape, colour, place and size for who cannot see the picture. */
export const altOf = ({ name, look, sizeMm: [from, to] }: KeyKind): string =>
  `${name}, ${from} to ${to} mm. ${look}`;

export const sides = { pest: 'pest', friend: 'friend', neither: 'neither' } as const;
export const ofSide = (side: KeyKind['side']): KeyKind[] => keyKinds.filter((kind) => kind.side === side);
