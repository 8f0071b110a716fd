/**
 * Moves that leave the distribution of the members given the counts unchanged: differences of two members (ter
 * Braak & Vrugt 2008, Stat Comput 18:435) and preconditioned Crank-Nicolson steps in blocks (Neal 1998; Cotter et
 * al. 2013, Stat Sci 28:424), which keep the prior by themselves. From memory.
 */
import { type Random, standardNormal } from '../numerics/random.ts';
import type { Layout } from './prior.ts';

export interface Proposal {
  z: Float64Array;
  /** Log of prior(z') / prior(z), for moves that do not keep the prior. */
  logPriorRatio: number;
}

export type MoveKind = 'differences' | 'population' | 'weeks' | 'everything';
/** Kinds of moves that are made together, in turn: most often those of what decides where the population goes. */
export const moveTurns: readonly (readonly MoveKind[])[] = [
  ['differences', 'population'],
  ['weeks', 'population'],
  ['differences', 'everything'],
];

/** Step sizes, adapted between rounds. */
export type StepSizes = Record<MoveKind | 'shown', number>;
export const firstStepSizes = (): StepSizes => ({
  differences: 0.4,
  population: 0.4,
  weeks: 0.6,
  everything: 0.25,
  shown: 0.4,
});

/** Proposes a new vector; `others` is a copy of the ensemble, `weeksSoFar` the disturbances the counts can know. */
export function propose(
  kind: MoveKind | 'shown',
  z: Float64Array,
  others: readonly Float64Array[],
  context: { layout: Layout; weeksSoFar: number; size: number; random: Random },
): Proposal {
  const { layout, weeksSoFar, size, random } = context;
  if (kind === 'differences') return differences(z, others, context);
  if (kind === 'population') return crankNicolson(z, 0, layout.weeksAt, size, random);
  if (kind === 'shown') return crankNicolson(z, layout.shownAt, layout.length, size, random);
  if (kind === 'everything') return crankNicolson(z, 0, layout.length, size, random);
  const width = Math.min(8, weeksSoFar);
  const from = layout.weeksAt + Math.floor(random() * (weeksSoFar - width + 1));
  return crankNicolson(z, from, from + width, size, random);
}

function crankNicolson(z: Float64Array, from: number, to: number, size: number, random: Random): Proposal {
  const next = z.slice();
  const kept = Math.sqrt(1 - size * size);
  for (let i = from; i < to; i++) next[i] = kept * z[i]! + size * standardNormal(random);
  return { z: next, logPriorRatio: 0 };
}

/**
 * All places, or half or a quarter of them by lot, which may then go further (subspaces: Vrugt et al. 2009, Int J
 * Nonlinear Sci Numer Simul 10:273, from memory).
 */
const sharesMoved = [1, 0.5, 0.25];
const mostReach = 1.2;

function differences(
  z: Float64Array,
  others: readonly Float64Array[],
  { layout, weeksSoFar, size, random }: { layout: Layout; weeksSoFar: number; size: number; random: Random },
): Proposal {
  const one = others[Math.floor(random() * others.length)]!;
  const other = others[Math.floor(random() * others.length)]!;
  const share = sharesMoved[Math.floor(random() * sharesMoved.length)]!;
  const reach = Math.min(mostReach, size / Math.sqrt(share));
  const next = z.slice();
  let logPriorRatio = 0;
  for (let i = 0; i < layout.length; i++) {
    if (i >= layout.weeksAt + weeksSoFar && i < layout.shownAt) continue;
    if (share < 1 && random() >= share) continue;
    next[i] = z[i]! + reach * (one[i]! - other[i]!) + 0.02 * standardNormal(random);
    logPriorRatio += (z[i]! ** 2 - next[i]! ** 2) / 2;
  }
  return { z: next, logPriorRatio };
}

/** Size after a round in which `accepted` of the moves were taken: towards one in four. */
export function adaptedSize(size: number, accepted: number): number {
  return Math.min(0.95, Math.max(0.02, size * Math.exp(accepted - 0.25)));
}
