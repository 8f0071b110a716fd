/** What leaf checks ahead would count in all, as distributions: for scoring counts of every insect on some leaves. */
import type { WeightedSample } from '../numerics/quantiles.ts';
import { gamma, type Random } from '../numerics/random.ts';
import { middleOf, type Shown } from '../observation/counts.ts';
import { meanOfLeaf, seenYoung } from '../observation/view.ts';
import { dayMs } from '../units.ts';
import { drawPersistence, insuranceWeight, mixed } from './chances.ts';
import { trajectoryOf } from './member.ts';
import { poissonAt } from './poissonAt.ts';
import { shownParameters } from './prior.ts';
import type { Summary } from './summary.ts';

export interface LeavesAhead {
  timeMs: number;
  leaves: number;
}

/** One sample a check, in their order; "as last time" is mixed in as it is for other counts. */
export function leafTotals(
  summary: Summary,
  checks: readonly LeavesAhead[],
  random: Random,
): WeightedSample[] {
  const { problem, ensemble, startMs, today } = summary;
  const { world, layout, shown } = problem;
  const days = checks.map(({ timeMs }) => (timeMs - startMs) / dayMs);
  const wanted = new Uint8Array(world.days);
  for (const day of days) wanted[Math.floor(day)] = 1;
  const length = Math.floor(Math.max(...days)) + 1;
  const members = ensemble.vectors.map((z, slot) => ({
    shows: shownParameters(z, layout),
    course: trajectoryOf({ ...problem, wanted }, z, slot, length),
  }));
  const lastPerLeaf = lastTotalPerLeaf(shown);
  const insured = lastPerLeaf === undefined ? 0 : insuranceWeight(world);
  return checks.map(({ leaves }, i) => {
    const counts = members.map(({ shows, course }) => {
      const mean = leaves * meanOfLeaf(seenYoung(world, course, Math.floor(days[i]!)), shows);
      return poissonAt(mean * gamma(random, { shape: shows.leafK, scale: 1 / shows.leafK }), random());
    });
    const asLast = drawPersistence(insured, leaves * (lastPerLeaf ?? 0), random);
    // A total has no upper end: drawn as a catch is.
    return mixed(counts, ensemble.weights, asLast, { index: (days[i]! - today) / 7, unit: 'trap-week' });
  });
}

function lastTotalPerLeaf({ leaves }: Shown): number | undefined {
  const last = leaves.findLast(({ young }) => young !== undefined);
  return last?.young && middleOf(last.young) / last.leaves;
}
