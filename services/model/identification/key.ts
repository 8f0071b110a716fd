/**
 * The key as a pure function of the answers so far. Each answer leaves out the appearances that do not show it;
 * `not-sure` leaves out none. It asks only what can still decide, and never more than `mostQuestions`: then, or
 * when at most `fewest` kinds are left, it shows what is left side by side.
 */
import { kinds } from './catalogue.ts';
import {
  askingOrder,
  type CharacterId,
  characters,
  sizes,
  sizesMm,
  type Value,
  type Values,
} from './characters.ts';
import type { Appearance, Kind } from './kind.ts';

export const notSure = 'not-sure';
export interface KeyAnswer {
  character: CharacterId;
  value: Value | typeof notSure;
}
export interface KeyOption {
  value: Value;
  /** Kinds this answer leads to. */
  kinds: readonly Kind[];
}
export type KeyStep =
  | { ask: CharacterId; options: readonly KeyOption[]; left: readonly Kind[] }
  | { left: readonly Kind[] };

/** Choosing on the plates is one decision more. */
export const mostQuestions = 4;
const fewest = 4;

interface Row {
  kind: Kind;
  shows: (character: CharacterId) => readonly Value[] | undefined;
}

/** Every size band that the published range of lengths touches. */
export function sizesOf({ sizeMm: [shortest, longest] }: Kind): Values['size'][] {
  return sizes.filter((band) => shortest < sizesMm[band][1] && longest > sizesMm[band][0]);
}
const rowOf = (kind: Kind, seen: Appearance): Row => ({
  kind,
  shows: (character) => (character === 'size' ? sizesOf(kind) : seen[character]),
});
const rows: readonly Row[] = kinds.flatMap((kind) => kind.seen.map((seen) => rowOf(kind, seen)));

const kindsOf = (some: readonly Row[]): Kind[] => [...new Set(some.map(({ kind }) => kind))];

function keeping(some: readonly Row[], { character, value }: KeyAnswer): readonly Row[] {
  return value === notSure ? some : some.filter((row) => row.shows(character)?.includes(value) ?? false);
}

/** The answers to a question that still lead somewhere, in the order of the character's own list. */
function optionsOf(some: readonly Row[], character: CharacterId): KeyOption[] {
  const shown = new Set(some.flatMap((row) => row.shows(character) ?? []));
  const values = (Object.keys(characters[character].values) as Value[]).filter((value) => shown.has(value));
  return values.map((value) => ({ value, kinds: kindsOf(keeping(some, { character, value })) }));
}

/** A question is worth asking when every appearance left can answer it, and some answer leaves fewer kinds. */
function decides(some: readonly Row[], character: CharacterId): boolean {
  const all = kindsOf(some).length;
  return (
    some.every((row) => row.shows(character) !== undefined) &&
    optionsOf(some, character).some((option) => option.kinds.length < all)
  );
}

/** What the key does after these answers: asks the next question, or shows what is left. */
export function keyStep(answers: readonly KeyAnswer[]): KeyStep {
  const some = answers.reduce(keeping, rows);
  const left = kindsOf(some);
  const asked = new Set(answers.map(({ character }) => character));
  const ask = askingOrder.find((character) => !asked.has(character) && decides(some, character));
  if (left.length <= fewest || answers.length >= mostQuestions || ask === undefined) return { left };
  return { ask, options: optionsOf(some, ask), left };
}
