/** One ending of the key: a species, a stage or a group that a person can tell with a 10x lens. */
import type { LeafKind, SpeciesId, TrapKind } from '../season.ts';
import type { Values } from './characters.ts';
import type { SourceId } from './sources.ts';

/** `neither`: an empty shell, or a harmless guest. */
export type Side = 'pest' | 'friend' | 'neither';

/** Where it is met and what is seen of it there; each list holds every answer that leads to it. */
export interface Appearance {
  where: readonly Values['where'][];
  moves: readonly Values['moves'][];
  form: readonly Values['form'][];
  opening?: readonly Values['opening'][];
  setting?: readonly Values['setting'][];
}

export interface Kind {
  id: string;
  name: string;
  side: Side;
  /** The word of a sighting: the fixed vocabulary of `what`. */
  what: string;
  /** Published length of the body, mm. */
  sizeMm: readonly [from: number, to: number];
  /** Shape, colour and place, for who cannot see the picture. */
  look: string;
  /** What decides it under the lens. */
  test: string;
  means: string;
  /** Leave it, or what to count. */
  whatToDo: string;
  countAs?: { trap?: TrapKind; leaf?: LeafKind };
  /** Whom a sighting may speak of; several where the eye cannot choose. */
  species: readonly SpeciesId[];
  seen: readonly Appearance[];
  sources: readonly SourceId[];
}

/** Stuck to the trap, with this outline. */
export const onTrap = (...form: Values['form'][]): Appearance => ({
  where: ['trap'],
  moves: ['stuck'],
  form,
});
