/** By which words of a count or a leaf check a pest is seen. Winged aphids are not told apart on a trap. */
import type { LeafKind, PestId, TrapKind } from '../season.ts';

export function trapKindOf(pest: PestId): TrapKind {
  return pest === 'trialeurodes-vaporariorum' ? 'whitefly' : 'aphid';
}

/** Living stages of the pest; black scales and mummies are signs of its enemies. */
export function leafKindsOf(pest: PestId): readonly LeafKind[] {
  return pest === 'trialeurodes-vaporariorum' ? ['whitefly-adult', 'whitefly-scale'] : ['aphid'];
}

/** What wasps lay into, and what shows that they did. */
export function hostAndSignOf(pest: PestId): { host: LeafKind; sign: LeafKind } {
  return pest === 'trialeurodes-vaporariorum'
    ? { host: 'whitefly-scale', sign: 'black-scale' }
    : { host: 'aphid', sign: 'mummy' };
}
