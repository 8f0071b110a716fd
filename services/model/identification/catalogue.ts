/** Every ending of the key, and the fixed vocabulary of a sighting. */
import type { SpeciesId } from '../season.ts';
import type { Kind, Side } from './kind.ts';
import { aphidKinds } from './kinds/aphids.ts';
import { flyKinds } from './kinds/flies.ts';
import { hunterKinds } from './kinds/hunters.ts';
import { mealybugKinds } from './kinds/mealybugs.ts';
import { miteKinds } from './kinds/mites.ts';
import { bugKinds, slenderKinds } from './kinds/slenderOnes.ts';
import { whiteflyKinds } from './kinds/whitefly.ts';

export const kinds: readonly Kind[] = [
  ...whiteflyKinds,
  ...aphidKinds,
  ...hunterKinds,
  ...miteKinds,
  ...slenderKinds,
  ...bugKinds,
  ...flyKinds,
  ...mealybugKinds,
];

/** A word that a sighting's `what` may hold, and of whom it speaks. */
export interface SightingWord {
  what: string;
  side: Side | 'unknown';
  species: readonly SpeciesId[];
}
/** Said where the key ends without a name; the note then names what it may be. */
export const notKnown = 'not known';
/** Said in the round when the stems were looked at. */
export const noAnts = 'no ants';

export const sightingWords: readonly SightingWord[] = [
  ...kinds.map(({ what, side, species }) => ({ what, side, species })),
  { what: noAnts, side: 'neither', species: [] },
  { what: notKnown, side: 'unknown', species: [] },
];

/** Of whom a sighting speaks; undefined for words of the person's own. */
export const sightingWord = (what: string): SightingWord | undefined =>
  sightingWords.find((each) => each.what.toLowerCase() === what.toLowerCase());
