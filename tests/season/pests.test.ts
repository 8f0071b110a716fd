/** Which pests one place can follow, and by what they are counted: the rules of the season against the records. */
import { describe, expect, it } from 'vitest';
import {
  isCountedOnLeaves,
  isLeavesOnly,
  lookAlikes,
  neverOnTraps,
  type PestId,
  pestIds,
  place,
} from '../../services/model/season.ts';
import { isTrapped, leafKindsOf, seenAs } from '../../services/model/species/signs.ts';

const garden = (
  pests: readonly PestId[],
  limits: Partial<Record<PestId, number>> = {},
  kind = 'glasshouse',
) =>
  place.safeParse({
    id: 'pear-yard',
    name: 'Pear yard',
    kind,
    areaM2: 12,
    latitudeDeg: 51,
    longitudeDeg: 0,
    timeZone: 'Europe/London',
    pests,
    limits,
    seasonEnd: '10-15',
  });
const messages = (answer: ReturnType<typeof garden>) =>
  answer.success ? [] : answer.error.issues.map(({ path, message }) => `${path.join('.')}: ${message}`);

describe('pests of one place', () => {
  it('no two that share a trap kind or a leaf kind by their records', () => {
    const pairs = pestIds.flatMap((one, i) => pestIds.slice(i + 1).map((other) => [one, other] as const));
    expect(pairs).toHaveLength(55);
    for (const [one, other] of pairs) {
      const sameTrap = isTrapped(one) && seenAs(one).trap === seenAs(other).trap;
      const sameLeaf = leafKindsOf(one).some((kind) => leafKindsOf(other).includes(kind));
      expect(garden([one, other]).success, `${one} with ${other}`).toBe(!sameTrap && !sameLeaf);
    }
  });

  it('says which to choose between', () => {
    expect(messages(garden(['bemisia-tabaci', 'trialeurodes-vaporariorum']))).toEqual([
      'pests: choose one whitefly: the two cannot be told apart on a trap by eye',
    ]);
    expect(messages(garden(['aphis-gossypii', 'myzus-cerasi']))).toEqual([
      'pests: choose one aphid species: winged aphids on a trap cannot be told apart by eye',
    ]);
  });

  it('one of each group at once is fine', () => {
    const others = pestIds.filter((pest) => lookAlikes.every(({ pests }) => !pests.includes(pest)));
    expect(garden([...others, ...lookAlikes.map(({ pests }) => pests[0]!)]).success).toBe(true);
  });
});

describe('pests counted on leaves', () => {
  it('are those whose record names no trap', () => {
    expect(pestIds.filter((pest) => !isTrapped(pest))).toEqual([...neverOnTraps]);
  });

  it('have a limit below ten leaves of ten: it could never be passed', () => {
    expect(garden(['tetranychus-urticae'], { 'tetranychus-urticae': 9 }).success).toBe(true);
    expect(messages(garden(['tetranychus-urticae'], { 'tetranychus-urticae': 10 }))).toEqual([
      'limits.tetranychus-urticae: send fewer than 10: the limit is in leaves with any, of ten looked under',
    ]);
    expect(garden(['frankliniella-occidentalis'], { 'frankliniella-occidentalis': 40 }).success).toBe(true);
  });

  it('alone make a place without traps to count', () => {
    expect(isLeavesOnly({ kind: 'room', pests: ['tetranychus-urticae', 'planococcus-citri'] })).toBe(true);
    expect(isLeavesOnly({ kind: 'room', pests: ['tetranychus-urticae', 'myzus-persicae'] })).toBe(false);
    expect(isLeavesOnly({ kind: 'room', pests: [] })).toBe(false);
  });

  it('outdoors are all of them: no sticky trap hangs in the open', () => {
    expect(pestIds.every((pest) => isCountedOnLeaves({ kind: 'outdoors' }, pest))).toBe(true);
    expect(isCountedOnLeaves({ kind: 'glasshouse' }, 'macrosiphum-rosae')).toBe(false);
    const roses = { pests: ['macrosiphum-rosae'], limits: { 'macrosiphum-rosae': 20 } } as const;
    expect(messages(garden(roses.pests, roses.limits, 'outdoors'))).toHaveLength(1);
    expect(garden(roses.pests, roses.limits).success).toBe(true);
  });
});
