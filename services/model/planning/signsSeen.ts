/** Black scales and mummies in words. */
import type { PestId } from '../season.ts';
import { hostAndSignOf } from '../species/signs.ts';

/** `12 of 20 scales are black`, `1 of 9 aphids is a mummy`. */
export function signsSeen(pest: PestId, { signs, of }: { signs: number; of: number }): string {
  if (hostAndSignOf(pest).sign === 'black-scale') {
    return `${signs} of ${of} scales ${signs === 1 ? 'is' : 'are'} black`;
  }
  return `${signs} of ${of} aphids ${signs === 1 ? 'is a mummy' : 'are mummies'}`;
}
