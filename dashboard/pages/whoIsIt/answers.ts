/** Where the reader stands in the key. Each step is one of the browser's history: its own back goes a step back. */
import { signal } from '@preact/signals';
import { type KeyAnswer, type KeyKind, keyKinds } from '../../../services/model/index.ts';

interface Position {
  answers: readonly KeyAnswer[];
  /** Id of the kind that was chosen on the plates, or `none` of them. */
  chosen?: string;
  /** Steps since the page was opened. */
  depth: number;
}
const page = '/who-is-it';

export const answers = signal<readonly KeyAnswer[]>([]);
export const chosen = signal<KeyKind | 'none' | undefined>(undefined);
/** True once the sighting of what was chosen is kept. */
export const logged = signal(false);

const kept = (): Position | undefined => (history.state as { who?: Position } | null)?.who;

function show(position: Position): void {
  answers.value = position.answers;
  chosen.value = position.chosen === 'none' ? 'none' : keyKinds.find(({ id }) => id === position.chosen);
  logged.value = false;
}

/** Puts another position in the place of this one. */
function stand(position: Position): void {
  history.replaceState({ who: position }, '', page);
  show(position);
}

function step(to: Omit<Position, 'depth'>): void {
  const { depth } = kept() ?? { depth: 0 };
  if (!kept()) history.replaceState({ who: { answers: answers.value, depth } }, '', page);
  const position = { ...to, depth: depth + 1 };
  history.pushState({ who: position }, '', page);
  show(position);
}

addEventListener('popstate', () => {
  if (location.pathname === page) show(kept() ?? { answers: [], depth: 0 });
});
const first = kept();
if (first) show(first);

export const answer = (given: KeyAnswer): void => step({ answers: [...answers.value, given] });
/** To the question that was answered as number `to`, to answer it otherwise. */
export const backTo = (to: number): void => step({ answers: answers.value.slice(0, to) });
export const restart = (): void => backTo(0);
export const choose = (kind: KeyKind | 'none'): void =>
  step({ answers: answers.value, chosen: kind === 'none' ? kind : kind.id });
/** Opens a kind from elsewhere; call when the page of the key is shown. */
export const open = ({ id }: KeyKind): void => stand({ answers: answers.value, chosen: id, depth: 0 });

/** One step back: from what was chosen to the plates, from a question to the one before. */
export function back(): void {
  if ((kept()?.depth ?? 0) > 0) history.back();
  else stand({ answers: chosen.value ? answers.value : answers.value.slice(0, -1), depth: 0 });
}

/** Shape, colour, place and size for who cannot see the picture. */
export const altOf = ({ name, look, sizeMm: [from, to] }: KeyKind): string =>
  `${name}, ${from} to ${to} mm. ${look}`;

export const sides = { pest: 'pest', friend: 'friend', neither: 'neither' } as const;
export const ofSide = (side: KeyKind['side']): KeyKind[] => keyKinds.filter((kind) => kind.side === side);
