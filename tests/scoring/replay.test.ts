/** A season played again: nothing later is known to a forecast, rounds find their forecast, baselines are what they say. */
import { describe, expect, it } from 'vitest';
import { type Season, seasonSchema } from '../../services/model/index.ts';
import { seeded } from '../../services/model/numerics/random.ts';
import { asLast, asTrend, drawnAbout } from '../../services/model/scoring/baselines.ts';
import { weightedIntervalScore } from '../../services/model/scoring/intervalScore.ts';
import { observedRounds } from '../../services/model/scoring/observed.ts';
import { replay } from '../../services/model/scoring/replay.ts';
import { scoresByPest } from '../../services/model/scoring/summary.ts';

const dayMs = 86_400_000;
const startMs = Date.parse('2026-04-06T09:00:00Z');
const at = (days: number) => new Date(startMs + days * dayMs).toISOString();

/** Weekly counts of one card, and four readings a day. */
function seasonOf(catches: readonly number[], more: Partial<Season> = {}): Season {
  return seasonSchema.parse({
    format: 'glasstide-season',
    version: 1,
    place: {
      id: 'hollow-lane',
      name: 'Hollow Lane',
      kind: 'glasshouse',
      areaM2: 12,
      latitudeDeg: 50,
      longitudeDeg: 5,
      timeZone: 'Europe/Brussels',
      pests: ['trialeurodes-vaporariorum'],
      limits: {},
      seasonEnd: '10-15',
    },
    sensors: [{ id: 'bench', name: 'Bench' }],
    readings: Array.from({ length: 4 * 7 * catches.length }, (_, i) => ({
      sensorId: 'bench',
      time: at(i / 4),
      temperatureC: 20 + 5 * Math.sin((2 * Math.PI * i) / 4),
    })),
    traps: [{ id: 'door', name: 'Door', hungAt: at(0) }],
    trapCounts: catches.map((whitefly, week) => ({
      id: `c${week}`,
      trapId: 'door',
      time: at(7 * (week + 1)),
      exposureDays: 7,
      counts: { whitefly },
    })),
    ...more,
  });
}

const options = { members: 40, seed: 3 };

describe('a season played again', () => {
  const season = seasonOf([0, 1, 1, 3, 4, 9, 14]);
  const scored = replay(season, options);

  it('holds each forecast from the fourth round on against the rounds of the next four weeks', () => {
    // Rounds 4, 5 and 6 of seven: three, two and one rounds follow.
    expect(scored.map(({ lead, observed }) => [lead, observed])).toEqual([
      [1, 4],
      [2, 9],
      [3, 14],
      [1, 9],
      [2, 14],
      [1, 14],
    ]);
    for (const { asOf, time, lead } of scored) {
      expect(Date.parse(time) - Date.parse(asOf)).toBe(7 * lead * dayMs);
    }
  });

  it('does not change when something else comes later', () => {
    const asOf = scored[0]!.asOf;
    const other = seasonOf([0, 1, 1, 3, 4, 9, 14]);
    for (const count of other.trapCounts.slice(4)) count.counts.whitefly = 80;
    for (const reading of other.readings) if (reading.time > asOf) reading.temperatureC = 33;
    other.releases.push({
      id: 'later',
      enemy: 'encarsia-formosa',
      form: 'pupa on card',
      number: 500,
      time: at(40),
      aliveShare: 1,
    });
    const later = replay(other, options).filter((each) => each.asOf === asOf);
    const first = scored.filter((each) => each.asOf === asOf);
    // The forecast was the same, so a count of 80 lies further away by the same distribution: its place says so.
    expect(later.map(({ last, observed }) => [last.length, observed])).toEqual(first.map(() => [8, 80]));
    const same = seasonOf([0, 1, 1, 3, 4, 9, 14, 90]);
    expect(replay(same, options).filter((each) => each.asOf === asOf && each.lead < 4)).toEqual(first);
  });

  it('is the same every time', () => {
    expect(replay(season, options)).toEqual(scored);
  });

  it('sums up: means by lead, shares of places inside, parts that add up', () => {
    const [score] = scoresByPest(scored);
    expect(score!.leads.map(({ lead, counts }) => [lead, counts])).toEqual([
      [1, 3],
      [2, 2],
      [3, 1],
    ]);
    const first = scored.filter(({ lead }) => lead === 1);
    expect(score!.leads[0]!.crps).toBeCloseTo(first.reduce((sum, { crps }) => sum + crps, 0) / 3, 12);
    const { total, spread, overprediction, underprediction } = score!.interval;
    expect(spread + overprediction + underprediction).toBeCloseTo(total, 12);
    const inHalf = scored.filter(({ place }) => place >= 0.25 && place <= 0.75).length / 6;
    expect(score!.coverage.share50).toBeCloseTo(inHalf, 12);
  });
});

describe('rounds of counts', () => {
  it('scale a card to seven whole days, leave out cards of less than four, and join one round', () => {
    const season = seasonOf([7, 4, 5], {
      traps: [
        { id: 'door', name: 'Door', hungAt: at(0) },
        { id: 'vine', name: 'Vine', hungAt: at(0) },
      ],
    });
    season.trapCounts[1] = { ...season.trapCounts[1]!, exposureDays: 5, countedFraction: 0.5 };
    season.trapCounts[2] = { ...season.trapCounts[2]!, exposureDays: 2 };
    season.trapCounts.push({
      ...season.trapCounts[0]!,
      id: 'v',
      trapId: 'vine',
      counts: { whitefly: 2 },
      time: at(7.1),
    });
    const rounds = observedRounds(season, 'trialeurodes-vaporariorum');
    // 4 x 7 / (5 x 0.5) = 11.2 (by hand).
    expect(rounds.map(({ counts }) => counts)).toEqual([[7, 2], [11]]);
  });
});

describe('baselines', () => {
  const round = (week: number, count: number) => ({ timeMs: startMs + 7 * week * dayMs, counts: [count] });

  it('the last count, and the line through the last three logs (by hand)', () => {
    const rounds = [round(0, 50), round(1, 1), round(2, 3), round(3, 9)];
    expect(asLast(rounds)).toBeCloseTo(Math.log(9.3), 12);
    const logs = [1, 3, 9].map((count) => Math.log(count + 0.3));
    // Least squares on three equal steps: slope half the whole rise, through the mean.
    const slope = (logs[2]! - logs[0]!) / 2;
    const mean = (logs[0]! + logs[1]! + logs[2]!) / 3;
    expect(asTrend(rounds, 2)).toBeCloseTo(mean + 3 * slope, 9);
  });

  it('spread about what they expect, wider further ahead', () => {
    const width = (lead: number) => {
      const draws = drawnAbout(Math.log(20), { lead, spread: 0.5, unit: 'trap-week' }, seeded(5));
      const sorted = draws.sort((a, b) => a - b);
      expect(sorted[200]).toBeGreaterThan(14);
      expect(sorted[200]).toBeLessThan(27);
      return sorted[360]! - sorted[40]!;
    };
    expect(width(4)).toBeGreaterThan(1.5 * width(1));
  });

  it('never expect more than ten leaves of ten', () => {
    const draws = drawnAbout(Math.log(9.5), { lead: 4, spread: 1.4, unit: 'ten-leaves' }, seeded(5));
    expect(Math.max(...draws)).toBeLessThanOrEqual(10);
    expect(Math.min(...draws)).toBeGreaterThanOrEqual(0);
  });
});

describe('weighted interval score', () => {
  it('of a single number is its error (Bracher et al. 2021: all ranges without width)', () => {
    // Each range adds its error whole (alpha / 2 x 2 / alpha), the middle half of it: (K + 1/2) / (K + 1/2).
    expect(weightedIntervalScore({ values: [3], weights: [1] }, 5).total).toBeCloseTo(2, 12);
    expect(weightedIntervalScore({ values: [3], weights: [1] }, 5).underprediction).toBeCloseTo(2, 12);
    expect(weightedIntervalScore({ values: [3], weights: [1] }, 1).overprediction).toBeCloseTo(2, 12);
  });

  it('of a count in the middle is width alone (by hand)', () => {
    const values = Array.from({ length: 1001 }, (_, i) => i / 1000);
    const weights = values.map(() => 1);
    const score = weightedIntervalScore({ values, weights }, 0.5);
    // (0.25 x 0.5 + 0.1 x 0.8 + 0.025 x 0.95) / 3.5.
    expect(score.total).toBeCloseTo((0.125 + 0.08 + 0.02375) / 3.5, 2);
    expect(score.total).toBeCloseTo(score.spread, 3);
  });
});
