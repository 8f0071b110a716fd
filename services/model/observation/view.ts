/** What a member's trajectory shows in the windows of the counts, and how likely the counts then are. */
import type { PestCourse } from '../population/trajectory.ts';
import type { World } from '../population/world.ts';
import { type Band, type LeafLook, middleOf, type Shown, type TrapWindow } from './counts.ts';
import {
  bandLogLikelihood,
  betaBinomialLogPmf,
  chanceOfNone,
  infestedLogLikelihood,
  meanCatch,
  totalOnInfestedLogLikelihood,
} from './likelihood.ts';

/** Traps: flying adults per m2 times days. Leaves: young per m2 that can be seen, and those visibly parasitised. */
export interface Viewed {
  flyingDays: Float64Array;
  youngPerM2: Float64Array;
  visiblePerM2: Float64Array;
}

export interface CountParameters {
  qM2PerDay: number;
  k: number;
  backgroundPerDay: number;
  /** Leaf area against ground and eyesight in one: young seen on a leaf per young a m2. */
  leafM2: number;
  leafK: number;
  trapFactor: Float64Array;
}

/** Precision (alpha + beta) of the share of black scales or mummies: parasitised hosts sit together. Judgement. */
const visiblePrecision = 8;
/** A few always look black, or are missed. */
const mistaken = 0.01;

/** Reads the windows as far as the trajectory goes; leaf checks beyond it are 0. */
export function view(world: World, trajectory: PestCourse, shown: Shown): Viewed {
  const { traps, leaves } = shown;
  const viewed: Viewed = {
    flyingDays: new Float64Array(traps.length),
    youngPerM2: new Float64Array(leaves.length),
    visiblePerM2: new Float64Array(leaves.length),
  };
  for (let i = 0; i < traps.length; i++) {
    viewed.flyingDays[i] = flyingDays(trajectory.flying, traps[i]!.fromDay, traps[i]!.toDay);
  }
  for (let i = 0; i < leaves.length; i++) {
    const day = Math.max(0, Math.floor(leaves[i]!.day));
    if (day >= trajectory.adults.length) continue;
    viewed.youngPerM2[i] = seenYoung(world, trajectory, day);
    viewed.visiblePerM2[i] = visibleHosts(trajectory, day);
  }
  return viewed;
}

/** Integral over a window with fractions of days. */
export function flyingDays(flying: Float64Array, fromDay: number, toDay: number): number {
  let sum = 0;
  for (let day = Math.max(0, Math.floor(fromDay)); day < toDay && day < flying.length; day++) {
    sum += flying[day]! * (Math.min(toDay, day + 1) - Math.max(fromDay, day));
  }
  return sum;
}

/** Young a m2 that can be seen, those with a hidden wasp included; adults too where they are not told apart. */
export function seenYoung(world: World, trajectory: PestCourse, day: number): number {
  const hidden = trajectory.enemies.reduce((sum, enemy) => sum + (enemy.hidden[day] ?? 0), 0);
  const adultsApart = world.pests[0]!.traits.seen.leaves.length > 1;
  const adults = adultsApart ? 0 : trajectory.adults[day]!;
  return trajectory.scales[day]! + hidden + adults;
}

/** Black scales or mummies. */
const visibleHosts = (trajectory: PestCourse, day: number): number =>
  trajectory.enemies.reduce((sum, enemy) => sum + (enemy.visible[day] ?? 0), 0);

/** Mean catch of one trap over its window. */
export function meanOfTrap(window: TrapWindow, flying: number, p: CountParameters): number {
  return meanCatch({
    backgroundPerDay: p.backgroundPerDay,
    qM2PerDay: p.qM2PerDay * p.trapFactor[window.trap]!,
    flyingDays: flying,
    exposureDays: window.toDay - window.fromDay,
    countedFraction: window.countedFraction,
  });
}

/** Log-likelihood of one trap count. */
export function trapLogLikelihood(window: TrapWindow, flying: number, p: CountParameters): number {
  return bandLogLikelihood(window, meanOfTrap(window, flying, p), p.k);
}

/** Mean number on one leaf; a few are mistaken for it even where there are none. */
export const meanOfLeaf = (youngPerM2: number, p: CountParameters): number => p.leafM2 * youngPerM2 + 0.002;

/** Share of leaves with at least one, when `leaves` are looked under. */
export const shareInfested = (youngPerM2: number, p: CountParameters, leaves: number): number =>
  1 - chanceOfNone(meanOfLeaf(youngPerM2, p), p.leafK / leaves);

/**
 * Log-likelihood of one leaf check: a total (of young, with black scales or mummies where those were counted too, and
 * then the share of them), infested leaves, or both.
 */
export function leafLogLikelihood(
  look: LeafLook,
  seen: { youngPerM2: number; visiblePerM2: number },
  p: CountParameters,
): number {
  if (look.young && look.visible) {
    const { youngPerM2, visiblePerM2 } = seen;
    const all = { low: look.young.low + look.visible.low, high: look.young.high + look.visible.high };
    const number = bandLogLikelihood(all, meanOfLeaf(youngPerM2 + visiblePerM2, p) * look.leaves, p.leafK);
    const share = visiblePerM2 > 0 ? visiblePerM2 / (youngPerM2 + visiblePerM2) : 0;
    return number + visibleLogLikelihood(look.visible, look.young, share);
  }
  const perLeaf = meanOfLeaf(seen.youngPerM2, p);
  const { young, infestedLeaves, leaves } = look;
  if (infestedLeaves === undefined) return young ? bandLogLikelihood(young, perLeaf * leaves, p.leafK) : 0;
  const k = p.leafK / leaves;
  const infested = infestedLogLikelihood(infestedLeaves, leaves, perLeaf, k);
  return young ? infested + totalOnInfestedLogLikelihood(young, infestedLeaves, perLeaf, k) : infested;
}

/** Bands by their middle: the share is known no better than that. */
function visibleLogLikelihood(visible: Band, young: Band, share: number): number {
  const middle = (band: Band) => Math.round(middleOf(band));
  const trials = middle(visible) + middle(young);
  if (trials === 0) return 0;
  return betaBinomialLogPmf(middle(visible), trials, mistaken + (1 - 2 * mistaken) * share, visiblePrecision);
}
