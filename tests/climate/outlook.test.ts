/** The temperature ahead: its shared course and its spread. */
import { describe, expect, it } from 'vitest';
import { temperatureOutlook } from '../../services/model/climate/outlook.ts';
import { seeded } from '../../services/model/numerics/random.ts';
import { curveOf, day, every, hour, mild, seasonOf, start } from './curves.ts';

const now = start + 20 * day;
const season = seasonOf({});
const measured = curveOf(every(30, { fromMs: start, toMs: now }), now);
const span = (members: number, seed = 1) => ({ fromMs: now, days: 28, members, random: seeded(seed) });
const mean = (values: ArrayLike<number>) => Array.from(values).reduce((sum, v) => sum + v, 0) / values.length;
const sd = (values: number[]) => {
  const middle = mean(values);
  return Math.sqrt(mean(values.map((v) => (v - middle) ** 2)));
};

describe('the shared course', () => {
  const { startMs, hourlyC } = temperatureOutlook(measured, season, span(1));

  it('covers every hour asked for, from now on', () => {
    expect(startMs).toBe(now);
    expect(hourlyC).toHaveLength(28 * 24);
  });

  it('carries on the house’s own daily course', () => {
    for (let i = 0; i < 48; i += 1) {
      expect(Math.abs(hourlyC[i]! - mild(now + (i + 0.5) * hour))).toBeLessThan(2);
    }
  });

  it('lets a warm spell die away', () => {
    const spell = curveOf(
      every(30, { fromMs: start, toMs: now }, (t) => mild(t) + (t > now - 2 * day ? 4 : 0)),
      now,
    );
    const warm = temperatureOutlook(spell, season, span(1)).hourlyC.map((value, i) => value - hourlyC[i]!);
    const [first, third, last] = [
      mean(warm.subarray(0, 24)),
      mean(warm.subarray(48, 72)),
      mean(warm.subarray(-24)),
    ];
    expect(first).toBeGreaterThan(2.5);
    expect(first).toBeGreaterThan(third);
    expect(third).toBeGreaterThan(last);
    // What stays is the spell's share of the two weeks.
    expect(last).toBeLessThan(1);
  });

  it('warms towards summer in the north and cools towards winter in the south', () => {
    const south = seasonOf({ place: { ...season.place, latitudeDeg: -51.5 } });
    const trend = (hourly: Float64Array) => mean(hourly.subarray(-72)) - mean(hourly.subarray(0, 72));
    const flat = curveOf(
      every(30, { fromMs: start, toMs: now }, (t) => 20 + 5 * Math.sin((2 * Math.PI * t) / day)),
      now,
    );
    expect(trend(temperatureOutlook(flat, season, span(1)).hourlyC)).toBeGreaterThan(0.5);
    expect(trend(temperatureOutlook(flat, south, span(1)).hourlyC)).toBeLessThan(-0.5);
  });

  it('does not read the curve after now', () => {
    const longer = curveOf(
      every(30, { fromMs: start, toMs: now + 9 * day }, (t) => mild(t) + (t > now ? 15 : 0)),
      now + 9 * day,
    );
    const onlyPast = temperatureOutlook(longer, season, span(2));
    expect(onlyPast.hourlyC).toEqual(temperatureOutlook(measured, season, span(2)).hourlyC);
  });

  it('takes temperatures somebody supplied, where they are close enough together', () => {
    const outlook = [0, 3, 6, 48].map((h) => ({
      time: new Date(now + h * hour).toISOString(),
      temperatureC: 11 + h,
    }));
    const given = temperatureOutlook(measured, seasonOf({ outlook }), span(1)).hourlyC;
    expect(given[0]).toBeCloseTo(11.5, 9);
    expect(given[5]).toBeCloseTo(16.5, 9);
    expect(given[20]).toBe(hourlyC[20]);
  });
});

describe('the members', () => {
  const { anomalyC } = temperatureOutlook(measured, season, span(4000));
  const blind = temperatureOutlook(undefined, season, span(4000));
  const onDay = (d: number, paths = anomalyC) => paths.map((path) => path[d]!);

  // The law stated in docs/forecast.md: sd 2.6 °C x min(1, 0.6 + 0.055 x lead), twice that without any reading.
  it('spread by 3.4 °C on the first day and 5.2 °C from the eighth on without any reading', () => {
    expect(Math.abs(sd(onDay(0, blind.anomalyC)) - 3.41)).toBeLessThan(0.13);
    expect(Math.abs(sd(onDay(9, blind.anomalyC)) - 5.2)).toBeLessThan(0.2);
    expect(Math.abs(sd(onDay(27, blind.anomalyC)) - 5.2)).toBeLessThan(0.2);
    expect(Math.abs(mean(onDay(27, blind.anomalyC)))).toBeLessThan(0.35);
    expect(mean(blind.hourlyC)).toBeGreaterThan(10);
    expect(mean(blind.hourlyC)).toBeLessThan(28);
  });

  it('spread further in a house that was fitful than in one that kept its habit', () => {
    // A spell of three warm days, then three cold ones, by turns.
    const fitful = curveOf(
      every(30, { fromMs: start, toMs: now }, (t) => mild(t) + (Math.floor(t / (3 * day)) % 2 ? 5 : -5)),
      now,
    );
    const wide = temperatureOutlook(fitful, season, span(2000)).anomalyC;
    expect(sd(onDay(6, wide))).toBeGreaterThan(2 * sd(onDay(6)));
    expect(sd(onDay(6))).toBeLessThan(sd(onDay(6, blind.anomalyC)) / 2);
  });

  it('remember the day before', () => {
    const [a, b] = [onDay(20), onDay(21)];
    const [middleA, middleB] = [mean(a), mean(b)];
    const covariance = mean(a.map((value, i) => (value - middleA) * (b[i]! - middleB)));
    expect(Math.abs(covariance / (sd(a) * sd(b)) - 0.8)).toBeLessThan(0.02);
  });

  it('are the same for the same seed and others for another', () => {
    const path = (seed: number) => temperatureOutlook(measured, season, span(3, seed)).anomalyC;
    expect(path(5)).toEqual(path(5));
    expect(path(5)).not.toEqual(path(6));
  });
});
