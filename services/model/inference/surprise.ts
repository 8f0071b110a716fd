/** How far the last counts lay from what the members expected before they were read. */
import type { Shown } from '../observation/counts.ts';
import { bandLogLikelihood } from '../observation/likelihood.ts';
import { meanOfTrap } from '../observation/view.ts';
import type { Ensemble } from './ensemble.ts';
import { type Layout, shownParameters } from './prior.ts';

/**
 * Share of predictive mass at least as extreme as the last trap counts, all traps of that day together: twice the
 * smaller tail. The sum of n equal negative binomials has n times their k; traps differ little enough for that.
 * Undefined when the last day had no trap count.
 */
export function lastCountSurprise(ensemble: Ensemble, shown: Shown, layout: Layout): number | undefined {
  const last = ensemble.beforeLast;
  if (!last || last.day.traps.length === 0) return undefined;
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
