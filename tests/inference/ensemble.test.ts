/**
 * The ensemble against plain importance sampling from the prior, which is exact in the limit and shares no code
 * with resampling, tempering and moves: 60,000 prior draws weighted by the likelihood of four weekly counts.
 */
import { describe, expect, it } from 'vitest';
import { sampleEnsemble } from '../../services/model/inference/ensemble.ts';
import { countDays, type Problem, trajectoryOf, weigh } from '../../services/model/inference/member.ts';
import { layoutOf, shownParameters } from '../../services/model/inference/prior.ts';
import { weightedQuantile } from '../../services/model/numerics/quantiles.ts';
import { seeded, standardNormal } from '../../services/model/numerics/random.ts';
import { houseAt } from '../population/house.ts';

const days = 29;

function problemOf(counts: readonly number[]): Problem {
  const world = houseAt('trialeurodes-vaporariorum', 22, days);
  const traps = counts.map((caught, i) => ({
    timeMs: 0,
    trap: 0,
    fromDay: 7 * i,
    toDay: 7 * (i + 1),
    countedFraction: 1,
    low: caught,
    high: caught,
  }));
  return {
    world,
    layout: layoutOf(world, 1),
    shown: { traps, trapIds: ['a'], leaves: [] },
    hostFactor: 1,
    anomalyFromDay: days,
    anomalyC: [],
    wanted: new Uint8Array(days),
  };
}

/** log(1 + adults in 10 m2) at the end, and log of the catch per adult. */
function features(problem: Problem, vectors: readonly Float64Array[]) {
  const adults = vectors.map((z) => Math.log1p(10 * trajectoryOf(problem, z, 0, days).adults[days - 1]!));
  const q = vectors.map((z) => Math.log(shownParameters(z, problem.layout).qM2PerDay));
  return { adults, q };
}

describe('members given the counts', () => {
  it.each([
    { name: 'rising counts', counts: [0, 2, 3, 6] },
    { name: 'empty traps', counts: [0, 0, 0, 0] },
    { name: 'a jump', counts: [0, 0, 0, 25] },
  ])('$name: agree with plain importance sampling', ({ counts }) => {
    const problem = problemOf(counts);
    const random = seeded(21);
    const prior = Array.from({ length: 60_000 }, () =>
      Float64Array.from({ length: problem.layout.length }, () => standardNormal(random)),
    );
    const dayList = countDays(problem.shown);
    const logs = prior.map((z) => {
      const member = weigh(problem, z, dayList, dayList.length - 1);
      return member.before + member.now;
    });
    const top = Math.max(...logs.slice(0, 30_000), ...logs.slice(30_000));
    const kept = logs
      .map((log, i) => ({ i, weight: Math.exp(log - top) }))
      .filter(({ weight }) => weight > 1e-7);
    const exact = features(
      problem,
      kept.map(({ i }) => prior[i]!),
    );
    const exactWeights = kept.map(({ weight }) => weight);

    const { vectors, weights } = sampleEnsemble(problem, { members: 2500, seed: 4 });
    const found = features(problem, vectors);
    for (const key of ['adults', 'q'] as const) {
      const spread =
        weightedQuantile(exact[key], exactWeights, 0.9) - weightedQuantile(exact[key], exactWeights, 0.1);
      for (const p of [0.1, 0.5, 0.9]) {
        const gap = weightedQuantile(found[key], weights, p) - weightedQuantile(exact[key], exactWeights, p);
        expect(Math.abs(gap), `${key} at ${p}`).toBeLessThan(0.15 * spread);
      }
    }
  });
});
