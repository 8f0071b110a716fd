/** How far the last counts lay from what the members expected before they were read. */
import type { Shown } from '../observation/counts.ts';
import { bandLogLikelihood } from '../observation/likelihood.ts';
import { meanOfTrap, shareInfested } from '../observation/view.ts';
import { binomialPmf } from './binomialAt.ts';
import type { Ensemble } from './ensemble.ts';
import { type Layout, shownParameters } from './prior.ts';

/**
 * Share of predictive mass at least as extreme as the last trap counts, all traps of that day together: twice the
 * smaller tail. The sum of n equal negative binomials has n times their k; traps differ little enough for that.
 * Of a pest never trapped, the infested leaves of that day. Undefined when the last day had neither.
 */
export function lastCountSurprise(ensemble: Ensemble, shown: Shown, layout: Layout): number | undefined {
  const last = ensemble.beforeLast;
  if (!last) return undefined;
  if (last.day.traps.length === 0)
    return shown.traps.length === 0 ? leafSurprise(last, shown, layout) : undefined;
  const windows = last.day.traps.map((index) => ({ index, window: shown.traps[index]! }));
  const low = windows.reduce((sum, { window }) => sum + window.low, 0);
  const high = windows.reduce((sum, { window }) => sum + window.high, 0);
  let below = 0;
  let above = 0;
  last.members.forEach((member, i) => {
    const p = shownParameters(member.z, layout);
    const mean = windows.reduce(
      (sum, { index, window }) => sum + meanOfTrap(window, member.viewed.flyingDays[index]!, p),
      0,
    );
    const k = p.k * windows.length;
    below += last.weights[i]! * Math.exp(bandLogLikelihood({ low: 0, high }, mean, k));
    const less = low === 0 ? 0 : Math.exp(bandLogLikelihood({ low: 0, high: low - 1 }, mean, k));
    above += last.weights[i]! * (1 - less);
  });
  return Math.min(1, Math.max(0, 2 * Math.min(below, above)));
}

/** The same of infested leaves, all looks of the day together as one binomial of their mean share. */
function leafSurprise(
  last: NonNullable<Ensemble['beforeLast']>,
  shown: Shown,
  layout: Layout,
): number | undefined {
  const looks = last.day.leaves.flatMap((index) => {
    const { infestedLeaves, leaves } = shown.leaves[index]!;
    return infestedLeaves === undefined ? [] : [{ index, infestedLeaves, leaves }];
  });
  if (looks.length === 0) return undefined;
  const leaves = looks.reduce((sum, look) => sum + look.leaves, 0);
  const infested = looks.reduce((sum, look) => sum + look.infestedLeaves, 0);
  let below = 0;
  let above = 0;
  last.members.forEach((member, i) => {
    const p = shownParameters(member.z, layout);
    const share = looks.reduce(
      (sum, look) => sum + look.leaves * shareInfested(member.viewed.youngPerM2[look.index]!, p, look.leaves),
      0,
    );
    const chances = binomialPmf(leaves, share / leaves);
    const less = chances.subarray(0, infested).reduce((sum, chance) => sum + chance, 0);
    below += last.weights[i]! * (less + chances[infested]!);
    above += last.weights[i]! * (1 - less);
  });
  return Math.min(1, Math.max(0, 2 * Math.min(below, above)));
}
