/** The house's answer to the air outdoors, learned from houses whose answer is known because they were made up. */
import { describe, expect, it } from 'vitest';
import { temperatureOutlook } from '../../services/model/climate/outlook.ts';
import { outdoorDoubts } from '../../services/model/inference/doubts.ts';
import { ridge } from '../../services/model/numerics/leastSquares.ts';
import { seeded } from '../../services/model/numerics/random.ts';
import type { OutdoorPoint } from '../../services/model/season.ts';
import { curveOf, day, every, hour, seasonOf, start } from './curves.ts';

const days = 40;
const now = start + days * day;

/** Spells without a season: sunny and dull, warm and cold, none of them in step with another. */
const spell = (timeMs: number) =>
  4 * Math.sin(Math.floor(timeMs / day) * 1.3) + 2 * Math.sin(Math.floor(timeMs / day) * 0.37);
const swing = (timeMs: number) => 4 + 2 * Math.sin(Math.floor(timeMs / day) * 2.1);
const daily = (timeMs: number) => Math.cos(2 * Math.PI * (timeMs / day - 15 / 24));
const outside = (timeMs: number) => 8 + spell(timeMs) + swing(timeMs) * daily(timeMs);
/** Follows the spells by 0.7 and gains with the swing, which stands for sun. */
const inside = (timeMs: number) => 14 + 0.7 * spell(timeMs) + (2 + 1.5 * swing(timeMs)) * daily(timeMs);

const iso = (timeMs: number) => new Date(timeMs).toISOString();
const measured = (fromMs: number, toMs: number): OutdoorPoint[] =>
  Array.from({ length: Math.round((toMs - fromMs) / hour) }, (_, i) => {
    const timeMs = fromMs + (i + 0.5) * hour;
    return { time: iso(timeMs), temperatureC: outside(timeMs) };
  });
const ahead = (course: (timeMs: number) => number, issuedMs = now): OutdoorPoint[] =>
  Array.from({ length: 81 }, (_, i) => {
    const timeMs = issuedMs + i * 3 * hour;
    return { time: iso(timeMs), temperatureC: course(timeMs), issuedAt: iso(issuedMs) };
  });

const curve = curveOf(every(30, { fromMs: start, toMs: now }, inside), now);
const outlookWith = (outdoor: OutdoorPoint[], members = 1) =>
  temperatureOutlook(curve, seasonOf({ outdoor }), { fromMs: now, days: 14, members, random: seeded(1) });
const mean = (values: ArrayLike<number>) => Array.from(values).reduce((sum, v) => sum + v, 0) / values.length;
const onDay = (hourlyC: Float64Array, d: number) => hourlyC.subarray(24 * d, 24 * d + 24);
const past = measured(start, now);

describe('a house with the air outdoors', () => {
  const { hourlyC } = outlookWith([...past, ...ahead(outside)]);

  it('is foretold day by day, in mean, hottest and coldest hour, far better than by its habit', () => {
    const habit = outlookWith([]).hourlyC;
    const cameOn = (d: number) =>
      Float64Array.from({ length: 24 }, (_, h) => inside(now + d * day + (h + 0.5) * hour));
    const hottest = (hours: Float64Array) => Math.max(...hours);
    const coldest = (hours: Float64Array) => Math.min(...hours);
    for (const part of [mean, hottest, coldest]) {
      const missed = (said: Float64Array) =>
        Math.sqrt(mean(Array.from({ length: 10 }, (_, d) => (part(onDay(said, d)) - part(cameOn(d))) ** 2)));
      expect(missed(hourlyC)).toBeLessThan(missed(habit) / 2);
    }
  });

  it('takes about its own share of a warm spell, not that of an average house', () => {
    const warmer = outlookWith([...past, ...ahead((t) => outside(t) + 4)]).hourlyC;
    const share = (mean(onDay(warmer, 4)) - mean(onDay(hourlyC, 4))) / 4;
    expect(share).toBeGreaterThan(0.6);
    expect(share).toBeLessThan(0.8);
  });

  it('falls back on what is usual where the forecast ends', () => {
    const warm = outlookWith([...past, ...ahead((t) => outside(t) + 8)]).hourlyC;
    expect(mean(onDay(warm, 9)) - mean(onDay(hourlyC, 9))).toBeGreaterThan(3);
    expect(Math.abs(mean(onDay(warm, 13)) - mean(onDay(hourlyC, 13)))).toBeLessThan(3);
  });

  it('does not read what was issued or measured later', () => {
    const later = [...ahead((t) => outside(t) + 9, now + hour), ...measured(now, now + 5 * day)];
    expect(outlookWith([...past, ...ahead(outside), ...later]).hourlyC).toEqual(hourlyC);
  });

  it('believes what was measured above any forecast, and the newest forecast above older ones', () => {
    const wrong = ahead((t) => outside(t) - 6, now - 9 * day);
    expect(outlookWith([...wrong, ...past, ...ahead(outside)]).hourlyC).toEqual(hourlyC);
  });

  it('narrows with a forecast, less so with an old one', () => {
    const sdOn = (outdoor: OutdoorPoint[]) => {
      const values = outlookWith(outdoor, 2000).anomalyC.map((path) => path[2]!);
      return Math.sqrt(mean(values.map((value) => value ** 2)));
    };
    const fresh = sdOn([...past, ...ahead(outside)]);
    const old = sdOn([...past, ...ahead(outside, now - 4 * day)]);
    expect(fresh).toBeLessThan(old);
    expect(old).toBeLessThan(sdOn([]) + 0.1);
  });

  it('needs no past outdoors to take a forecast: a steady one changes little', () => {
    const alone = outlookWith(ahead((t) => 8 + 4 * daily(t))).hourlyC;
    expect(Math.abs(mean(alone.subarray(0, 240)) - 14)).toBeLessThan(2.5);
  });
});

describe('slopes by least squares', () => {
  const prior = { priorSlopes: [0.5, -1], priorPrecisions: [4, 4] };

  it('are the prior without an observation', () => {
    expect(ridge({ features: [], observed: [], weights: [], ...prior })).toEqual([0.5, -1]);
  });

  it('are found again from exact data, whatever the prior, where it is weak', () => {
    const features = [
      [1, 2],
      [3, -1],
      [0, 4],
      [2, 2],
    ];
    const observed = features.map(([a, b]) => 3 * a! - 2 * b!);
    const weak = { priorSlopes: [9, 9], priorPrecisions: [1e-9, 1e-9] };
    const [a, b] = ridge({ features, observed, weights: [1, 1, 1, 1], ...weak });
    expect(a).toBeCloseTo(3, 6);
    expect(b).toBeCloseTo(-2, 6);
  });

  it('of one feature are the weighted mean of data and prior', () => {
    // (2 x 3 x 5 + 4 x 0.5) / (2 x 9 + 4) = 32 / 22, by hand.
    const one = { features: [[3]], observed: [5], weights: [2], priorSlopes: [0.5], priorPrecisions: [4] };
    expect(ridge(one)[0]).toBeCloseTo(32 / 22, 12);
  });
});

describe('an old forecast', () => {
  const doubtsAt = (asOfMs: number) => outdoorDoubts(seasonOf({ outdoor: ahead(outside) }), asOfMs);

  it('is told after a day, and forgotten after a month', () => {
    expect(doubtsAt(now + 20 * hour)).toEqual([]);
    const text = 'The weather forecast is 2 days old, so warmth ahead is less sure.';
    expect(doubtsAt(now + 50 * hour)).toEqual([{ code: 'outdoor-forecast-old', text }]);
    expect(doubtsAt(now + 31 * day)).toEqual([]);
  });

  it('that was issued later is none', () => {
    expect(doubtsAt(now - day)).toEqual([]);
  });
});
