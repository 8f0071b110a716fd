/** How far the last counts lay from what the members expected before they were read. */
import type { Shown } from '../observation/counts.ts';
import { bandLogLikelihood, meanCatch } from '../observation/likelihood.ts';
import type { Ensemble } from './ensemble.ts';
import { type Layout, shownParameters } from './prior.ts';

/**
 * Share of predictive mass at least as extreme as the last trap counts: twice the smaller tail, the least of the
 * traps of that day times their number. Undefined when the last day had no trap count.
 */
export function lastCountSurprise(ensemble: Ensemble, shown: Shown, layout: Layout): number | undefined {
  const last = ensemble.beforeLast;
  if (!last || last.day.traps.length === 0) return undefined;
  const tails = last.day.traps.map((index) => {
    const window = shown.traps[index]!;
    let below = 0;
    let above = 0;
    last.members.forEach((member, i) => {
      const p = shownParameters(member.z, layout);
      const mean = meanCatch({
        backgroundPerDay: p.backgroundPerDay,
        qM2PerDay: p.qM2PerDay * p.trapFactor[window.trap]!,
        flyingDays: member.viewed.flyingDays[index]!,
        exposureDays: window.toDay - window.fromDay,
        countedFraction: window.countedFraction,
      });
      const weight = last.weights[i]!;
      below += weight * Math.exp(bandLogLikelihood({ low: 0, high: window.high }, mean, p.k));
      const less =
        window.low === 0 ? 0 : Math.exp(bandLogLikelihood({ low: 0, high: window.low - 1 }, mean, p.k));
      above += weight * (1 - less);
    });
    return 2 * Math.min(below, above);
  });
  return Math.min(1, Math.max(0, Math.min(...tails) * tails.length));
}
