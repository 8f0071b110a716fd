/** What is begun and not yet sent, kept on this phone by place: the round goes on with it another time. */
import { effect, signal, untracked } from '@preact/signals';
import { place } from '../../state.ts';
import {
  chooseDay,
  countedOn,
  freshLeaves,
  freshTicks,
  type LeafDraft,
  leafDraft,
  restart,
  type Screen,
  screen,
  show,
  type Ticks,
  type TrapDraft,
  ticksDraft,
  trapDraft,
} from './draft.ts';

export interface BegunTrap {
  draft: TrapDraft;
  screen: Screen;
}
interface Note {
  traps: BegunTrap[];
  leaves: LeafDraft;
  ticks: Ticks;
  /** The day the leaves and ticks are of; a trap has its own time. */
  day: string;
}

export const begunTraps = signal<readonly BegunTrap[]>([]);

export function goOn(begun: BegunTrap): void {
  trapDraft.value = begun.draft;
  show(begun.screen);
}

/** Once it is kept, or when the person throws it away. */
export function forgetBegun(trapId: string): void {
  if (trapDraft.value?.trap.id === trapId) trapDraft.value = undefined;
  begunTraps.value = begunTraps.value.filter(({ draft }) => draft.trap.id !== trapId);
}

const answering: readonly Screen['at'][] = ['kind', 'part', 'trap'];
effect(() => {
  const draft = trapDraft.value;
  const at = screen.value;
  if (!draft || !answering.includes(at.at)) return;
  const others = begunTraps.peek().filter((each) => each.draft.trap.id !== draft.trap.id);
  begunTraps.value = [...others, { draft, screen: at }];
});

const shelfOf = (placeId: string) => `glasstide.round.${placeId}`;

function read(placeId: string): Partial<Note> {
  try {
    return JSON.parse(localStorage.getItem(shelfOf(placeId)) ?? '{}') as Partial<Note>;
  } catch {
    return {};
  }
}

function takeUp({ traps = [], leaves = freshLeaves, ticks = freshTicks, day }: Partial<Note>): void {
  restart();
  trapDraft.value = undefined;
  begunTraps.value = traps;
  leafDraft.value = leaves;
  ticksDraft.value = ticks;
  const answered = Object.keys(leaves.infested).length > 0 || Object.keys(ticks).length > 0;
  if (answered && day) chooseDay(day);
}

let taken: string | undefined;
effect(() => {
  const id = place.value?.id;
  if (!id) return;
  if (id !== taken) untracked(() => takeUp(read(id)));
  taken = id;
  const note: Note = {
    traps: [...begunTraps.value],
    leaves: leafDraft.value,
    ticks: ticksDraft.value,
    day: countedOn.value,
  };
  localStorage.setItem(shelfOf(id), JSON.stringify(note));
});
