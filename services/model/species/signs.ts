/** By which words of a count or a leaf check a pest is seen, from its record. */
import type { LeafKind, PestId } from '../season.ts';
import { pestTraits, speciesById } from './catalogue.ts';
import type { SeenAs } from './record.ts';

/** How the pest is seen on traps and leaves. */
export const seenAs = (pest: PestId): SeenAs => pestTraits(speciesById(pest)).seen;

/** Whether the pest is counted on traps; otherwise leaf checks alone tell. */
export const isTrapped = (pest: PestId): boolean => seenAs(pest).trap !== undefined;

/** Living stages of the pest; black scales and mummies are signs of its enemies. */
export const leafKindsOf = (pest: PestId): readonly LeafKind[] => seenAs(pest).leaves;

/** The kind counted on leaves: what wasps lay into where there are wasps, since adults may fly up. */
export function leafKindOf(pest: PestId): LeafKind {
  const { parasitised, leaves } = seenAs(pest);
  const kind = parasitised?.host ?? leaves[0];
  if (kind === undefined) throw new Error(`the record of ${pest} names no kind that is seen on leaves`);
  return kind;
}
