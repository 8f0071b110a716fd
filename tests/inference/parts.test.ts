import { describe, expect, it } from 'vitest';
import { effectiveSize } from '../../services/model/inference/ensemble.ts';
import { propose } from '../../services/model/inference/moves.ts';
import { normalCdf } from '../../services/model/inference/normalCdf.ts';
import { poissonAt } from '../../services/model/inference/poissonAt.ts';
import { layoutOf, memberParameters, shownParameters } from '../../services/model/inference/prior.ts';
import { normalQuantile } from '../../services/model/numerics/distributions.ts';
import { seeded, standardNormal } from '../../services/model/numerics/random.ts';
import { houseAt } from '../population/house.ts';

const world = houseAt('trialeurodes-vaporariorum', 20, 70);
const layout = layoutOf(world, 2);
const random = seeded(11);
const draws = Array.from({ length: 4000 }, () =>
  Float64Array.from({ length: layout.length }, () => standardNormal(random)),
);
const ahead = { hostFactor: 1, anomalyFromDay: world.days, anomalyC: new Float64Array(0) };
const members = draws.map((z) => {
  const { offsetC, pests } = memberParameters(z, layout, world, ahead);
  return { offsetC, ...pests[0]! };
});
const share = (test: (member: (typeof members)[number]) => boolean) =>
  members.filter(test).length / members.length;
const median = (values: number[]) => values.sort((a, b) => a - b)[values.length >> 1]!;

describe('the prior (inference.md section 2; binomial error of 4000 draws is 0.008)', () => {
  it('never arrives in 0.2, else around day 40 with sd 40', () => {
    expect(Math.abs(share((m) => m.arrivalDay === Number.POSITIVE_INFINITY) - 0.2)).toBeLessThan(0.025);
    expect(Math.abs(share((m) => m.arrivalDay < 40) - 0.4)).toBeLessThan(0.03);
    expect(Math.abs(share((m) => m.arrivalDay < 0) - 0.8 * 0.1587)).toBeLessThan(0.02);
  });

  it('there at the start in 0.3, about 5 insects in the house', () => {
    expect(Math.abs(share((m) => m.startingPerM2 > 0) - 0.3)).toBeLessThan(0.03);
    const there = members.filter((m) => m.startingPerM2 > 0).map((m) => m.startingPerM2 * world.areaM2);
    expect(Math.abs(median(there) / 5 - 1)).toBeLessThan(0.15);
  });

  it('spreads eggs by 0.5 and development by 0.08 in the log, the offset by 0.7 degC', () => {
    const sd = (values: number[]) => {
      const mean = values.reduce((a, b) => a + b, 0) / values.length;
      return Math.sqrt(values.reduce((a, b) => a + (b - mean) ** 2, 0) / values.length);
    };
    expect(sd(members.map((m) => Math.log(m.eggsPerDay)))).toBeCloseTo(0.5, 1);
    expect(sd(members.map((m) => Math.log(m.speed)))).toBeCloseTo(0.08, 2);
    expect(sd(members.map((m) => m.offsetC[0]!))).toBeCloseTo(0.7, 1);
    expect(sd(members.map((m) => m.weeklyDisturbance[3]!))).toBeCloseTo(0.25, 2);
  });

  it('background of 0.12 a card and week, k of 1.3', () => {
    const shown = draws.map((z) => shownParameters(z, layout));
    expect(Math.abs(median(shown.map((p) => 7 * p.backgroundPerDay)) / 0.12 - 1)).toBeLessThan(0.08);
    expect(Math.abs(median(shown.map((p) => p.k)) / 1.3 - 1)).toBeLessThan(0.05);
  });

  it('is gone with the Poisson chance of none, exp(-m) where m insects are expected', () => {
    const gone = (expected: number) => share((m) => m.goneBelowPerM2 * world.areaM2 > expected);
    for (const expected of [0.2, 1, 3])
      expect(Math.abs(gone(expected) - Math.exp(-expected))).toBeLessThan(0.025);
  });

  it('half of the pests cease to come, in the middle after 40 days', () => {
    const lasting = (m: (typeof members)[number]) => m.lastArrivalDay - m.arrivalDay;
    const coming = members.filter((m) => m.arrivalDay < Number.POSITIVE_INFINITY);
    const ceasing = coming.filter((m) => lasting(m) < Number.POSITIVE_INFINITY);
    expect(Math.abs(ceasing.length / coming.length - 0.5)).toBeLessThan(0.03);
    expect(Math.abs(median(ceasing.map(lasting)) / 40 - 1)).toBeLessThan(0.1);
  });

  it('the own path of a member begins on its day', () => {
    const { offsetC } = memberParameters(new Float64Array(layout.length), layout, world, {
      hostFactor: 1,
      anomalyFromDay: 68,
      anomalyC: Float64Array.of(2, -1, 9),
    });
    expect([...offsetC.slice(66)]).toEqual([0, 0, 2, -1]);
  });
});

describe('small parts', () => {
  it('the normal distribution function is the inverse of the quantile', () => {
    for (const p of [0.001, 0.1587, 0.5, 0.8, 0.975]) expect(normalCdf(normalQuantile(p))).toBeCloseTo(p, 6);
  });

  it('Poisson counts have the mean and variance of their law, small or large', () => {
    for (const mean of [0.3, 5, 59, 61, 400]) {
      const counts = Array.from({ length: 4000 }, (_, i) => poissonAt(mean, (i + 0.5) / 4000));
      const average = counts.reduce((a, b) => a + b, 0) / counts.length;
      const variance = counts.reduce((a, b) => a + (b - average) ** 2, 0) / counts.length;
      expect(Math.abs(average / mean - 1)).toBeLessThan(0.02);
      expect(Math.abs(variance / mean - 1)).toBeLessThan(0.05);
    }
  });

  it('the same draw gives no fewer from more (one less at most where the approximation takes over)', () => {
    for (const u of [0.01, 0.3, 0.9, 0.999]) {
      let before = 0;
      for (let mean = 0; mean < 200; mean += 0.5) {
        const now = poissonAt(mean, u);
        expect(now).toBeGreaterThanOrEqual(before - 1);
        before = now;
      }
    }
  });

  it('effective sample size: n when equal, 1 when one has all', () => {
    expect(effectiveSize(Float64Array.of(0.25, 0.25, 0.25, 0.25))).toBeCloseTo(4, 12);
    expect(effectiveSize(Float64Array.of(1, 0, 0, 0))).toBe(1);
  });

  it('Crank-Nicolson moves keep the standard normal, differences state the ratio of the priors', () => {
    const moves = seeded(3);
    const context = { layout, weeksSoFar: 6, size: 0.5, random: moves };
    const moved = draws.map((z) => propose('everything', z, draws, context));
    const values = moved.flatMap(({ z }) => [...z]);
    const second = values.reduce((sum, v) => sum + v * v, 0) / values.length;
    expect(second).toBeCloseTo(1, 1);
    const from = draws[0]!;
    const { z, logPriorRatio } = propose('differences', from, draws, context);
    const logPrior = (v: Float64Array) => v.reduce((sum, x) => sum - (x * x) / 2, 0);
    expect(logPriorRatio).toBeCloseTo(logPrior(z) - logPrior(from), 9);
  });
});
