/** Which limit counts, in words, and the keys that offer one. */
import { numberFrom } from '../../parts/field.tsx';

/** What counts now, and what would count with the field left empty. */
export function limitHint(kept: number | undefined, usual: number): string {
  return kept === undefined
    ? `No limit of your own yet: the usual one, ${usual}, counts.`
    : `Your own limit, ${kept}, counts now. Empty the field, and the usual one, ${usual}, counts.`;
}

interface Leaning {
  words: string;
  limit: number;
}
/** The starting points, and the person's own number where it is none of them: as typed, else as kept. */
export function leaningsFor(
  leanings: readonly Leaning[],
  [typed = '', kept]: readonly [typed: string | undefined, kept: number | undefined],
): readonly Leaning[] {
  const own = [numberFrom(typed), kept].find(
    (limit) => limit !== undefined && limit > 0 && leanings.every((each) => each.limit !== limit),
  );
  return own === undefined ? leanings : [...leanings, { words: 'your own number', limit: own }];
}
