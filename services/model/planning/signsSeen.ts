/** Black scales and mummies in words. */
import type { LeafKind, PestId } from '../season.ts';
import { seenAs } from '../species/signs.ts';

const hosts: Partial<Record<LeafKind, string>> = { 'whitefly-scale': 'scales', aphid: 'aphids' };

/** `12 of 20 scales are black`, `1 of 9 aphids is a mummy`. */
export function signsSeen(pest: PestId, { signs, of }: { signs: number; of: number }): string {
  const { parasitised } = seenAs(pest);
  const host = (parasitised && hosts[parasitised.host]) ?? 'insects';
  if (parasitised?.sign === 'black-scale')
    return `${signs} of ${of} ${host} ${signs === 1 ? 'is' : 'are'} black`;
  return `${signs} of ${of} ${host} ${signs === 1 ? 'is a mummy' : 'are mummies'}`;
}
