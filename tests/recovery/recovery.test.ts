/**
 * The truth found again from simulated counts. The same model stands on both sides here, so this tests the
 * inference, not the biology: the simulated glasshouse of simulators/ is another model and tests that.
 */
import { describe, expect, it } from 'vitest';
import { forecast } from '../../services/model/forecast.ts';
import { sampleEnsemble } from '../../services/model/inference/ensemble.ts';
import { type Problem, trajectoryOf } from '../../services/model/inference/member.ts';
import { layoutOf, shownParameters } from '../../services/model/inference/prior.ts';
import { gamma, poisson, seeded, standardNormal } from '../../services/model/numerics/random.ts';
import { meanCatch } from '../../services/model/observation/likelihood.ts';
import { flyingDays } from '../../services/model/observation/view.ts';
import { coverage, randomisedPlace } from '../../services/model/scoring/coverage.ts';
import { onDay, sampleSeason } from '../forecast/sample.ts';
import { houseAt } from '../population/house.ts';

const countWeeks = 8;
const days = 7 * (countWeeks + 2) + 1;

/** A season drawn from the prior with its weekly counts on two traps, and the catch two weeks later. */
function drawnSeason(seed: number) {
  const random = seeded(seed);
  const world = houseAt('trialeurodes-vaporariorum', 21, days);
  const layout = layoutOf(world, 2);
  const truth = Float64Array.from({ length: layout.length }, () => standardNormal(random));
  const empty: Problem = {
    world,
    layout,
    shown: { traps: [], trapIds: ['a', 'b'], leaves: [] },
    hostFactor: 1,
    anomalyFromDay: days,
    anomalyC: [],
    wanted: new Uint8Array(days),
  };
  const trajectory = trajectoryOf(empty, truth, 0, days);
  const p = shownParameters(truth, layout);
  const traps = Array.from({ length: 2 * countWeeks }, (_, i) => {
    const toDay = 7 * (Math.floor(i / 2) + 1);
    const mean = meanCatch({
      backgroundPerDay: p.backgroundPerDay,
      qM2PerDay: p.qM2PerDay * p.trapFactor[i % 2]!,
      flyingDays: flyingDays(trajectory.flying, toDay - 7, toDay),
      exposureDays: 7,
      countedFraction: 1,
    });
    const caught = poisson(random, mean * gamma(random, { shape: p.k, scale: 1 / p.k }));
    return {
      timeMs: 0,
      trap: i % 2,
      fromDay: toDay - 7,
      toDay,
      countedFraction: 1,
      low: caught,
      high: caught,
    };
  });
  return { problem: { ...empty, shown: { ...empty.shown, traps } }, truth, trajectory };
}

describe('parameters found again (same model on both sides)', () => {
  it('true values lie inside 8 of 10 about 8 times of 10, over 24 seasons', () => {
    const places: Record<'adults' | 'q' | 'ahead', number[]> = { adults: [], q: [], ahead: [] };
    for (let seed = 1; seed <= 24; seed++) {
      const { problem, truth, trajectory } = drawnSeason(seed);
      const { vectors, weights } = sampleEnsemble(problem, { members: 150, seed: seed + 500 });
      const found = vectors.map((z) => trajectoryOf(problem, z, 0, days).adults);
      const random = seeded(seed + 900);
      const place = (values: number[], real: number) => randomisedPlace(values, real, random, weights);
      const now = 7 * countWeeks;
      places.adults.push(
        place(
          found.map((adults) => adults[now]!),
          trajectory.adults[now]!,
        ),
      );
      places.ahead.push(
        place(
          found.map((adults) => adults[now + 14]!),
          trajectory.adults[now + 14]!,
        ),
      );
      const qOf = (z: Float64Array) => shownParameters(z, problem.layout).qM2PerDay;
      places.q.push(place(vectors.map(qOf), qOf(truth)));
    }
    // 24 seasons at 0.8: between 15 and 23 with chance 0.98 (binomial).
    for (const found of Object.values(places)) {
      expect(coverage(found, 0.8)).toBeGreaterThanOrEqual(15 / 24);
      expect(coverage(found, 0.8)).toBeLessThanOrEqual(23.5 / 24);
    }
  });
});

describe('one wrong insect', () => {
  it('in ten weeks of empty traps is not read as an invasion', () => {
    const clean = Array.from({ length: 10 }, () => 0);
    const once = clean.map((_, week) => (week === 6 ? 1 : 0));
    const present = (whitefly: number[]) => {
      const result = forecast(sampleSeason({ weeks: 10, whitefly }), onDay(70), { members: 250 });
      return result.pests[0]!;
    };
    expect(present(clean).probabilityPresent).toBeLessThan(0.5);
    expect(present(once).probabilityPresent).toBeLessThan(0.65);
    expect(present(once).weeks[0]!.count.q90).toBeLessThanOrEqual(2);
    expect(present(once).weeks[0]!.probabilityOverLimit).toBeLessThan(0.05);
  });
});
