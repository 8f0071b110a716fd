/**
 * The forecaster nobody can beat: it knows how many insects of each age sit on which plant at the end of the week
 * and how the cards draw them, and only the luck of the count is left to it.
 */
import type { PestId } from '../services/model/index.ts';
import { chance, clumped, poisson, type Random, stream } from '../simulators/random.ts';
import type { CardKind, LeafKind, Truth } from '../simulators/truth.ts';

const draws = 600;

const cardKind: Partial<Record<PestId, Exclude<CardKind, 'unknown' | 'small-wasp'>>> = {
  'trialeurodes-vaporariorum': 'whitefly',
  'aphis-gossypii': 'aphid',
  'myzus-persicae': 'aphid',
  'frankliniella-occidentalis': 'thrips',
};
const leafKind: Partial<Record<PestId, LeafKind>> = { 'tetranychus-urticae': 'spider-mite' };

/** What could have been counted at a round: on any one of the cards, or leaves with any of ten. */
export function limitSample(truth: Truth, pest: PestId, timeMs: number): number[] {
  const random = stream(Math.round(timeMs / 86_400_000), `limit ${pest}`);
  const kind = cardKind[pest];
  if (!kind) return leafSample(truth, leafKind[pest], timeMs, random);
  const means = truth.cards.filter(({ endMs }) => endMs === timeMs).map(({ mean }) => mean[kind]!);
  if (means.length === 0)
    throw new RangeError(`no round of the garden ended at ${new Date(timeMs).toISOString()}`);
  return Array.from({ length: draws }, (_, n) => {
    const caught = means[n % means.length]! - truth.wrongPerWeek;
    return clumped(random, caught, truth.cardK) + poisson(random, truth.wrongPerWeek);
  });
}

function leafSample(truth: Truth, kind: LeafKind | undefined, timeMs: number, random: Random): number[] {
  const share = kind && truth.leaves.find(({ endMs }) => endMs === timeMs)?.share[kind];
  if (share === undefined)
    throw new RangeError('the virtual garden does not look under leaves for this pest');
  return Array.from({ length: draws }, () => {
    let infested = 0;
    for (let leaf = 0; leaf < 10; leaf += 1) if (chance(random, share)) infested += 1;
    return infested;
  });
}
