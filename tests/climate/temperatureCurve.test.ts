/** From readings to a curve: what is joined, what is filled and from where, what is left out. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { degreeDaysBetween } from '../../services/model/climate/degreeDays.ts';
import {
  filledHoursBetween,
  hourlyMeans,
  temperatureAt,
  temperatureCurve,
} from '../../services/model/climate/temperatureCurve.ts';
import { type Reading, sensor } from '../../services/model/season.ts';
import { at, curveOf, day, every, hour, mild, seasonOf, start } from './curves.ts';

const end = start + 10 * day;
const whole = { fromMs: start, toMs: end };
const without = (readings: Reading[], fromMs: number, toMs: number) =>
  readings.filter(({ time }) => Date.parse(time) < fromMs || Date.parse(time) > toMs);
const law = { lowerC: 8.3, upperC: 30 };

describe('one sensor without gaps', () => {
  const curve = curveOf(every(15, whole), end);

  it('gives straight lines between its readings and nothing filled', () => {
    expect(curve.filled).toEqual([]);
    expect(curve.timesMs).toHaveLength(961);
    const quarter = (temperatureAt(curve, start) + 3 * temperatureAt(curve, start + hour / 4)) / 4;
    expect(temperatureAt(curve, start + (3 / 16) * hour)).toBeCloseTo(
      quarter + (mild(start) - mild(start)),
      9,
    );
  });

  it('holds the nearest end outside', () => {
    expect(temperatureAt(curve, start - day)).toBe(mild(start));
    expect(temperatureAt(curve, end + day)).toBeCloseTo(mild(end), 12);
  });

  it('does not read the future', () => {
    const early = curveOf(every(15, { fromMs: start, toMs: start + 4 * day }), start + 4 * day);
    const cut = curveOf(every(15, whole), start + 4 * day);
    expect(cut).toEqual(early);
  });

  it('has hourly means that are exact integrals', () => {
    const { startMs, meanC } = hourlyMeans(curve);
    expect(startMs).toBe(start);
    expect(meanC).toHaveLength(240);
    const byTrapezoids = [0, 1, 2, 3].map(
      (i) => (mild(start + (i * hour) / 4) + mild(start + ((i + 1) * hour) / 4)) / 8,
    );
    expect(meanC[0]).toBeCloseTo(
      byTrapezoids.reduce((sum, part) => sum + part, 0),
      9,
    );
  });

  it('has the same degree-days whatever the order of messages and repeats', () => {
    const readings = every(45, { fromMs: start, toMs: start + 2 * day });
    const expected = curveOf(readings, start + 2 * day);
    const orders = fc.shuffledSubarray([...readings, ...readings.slice(3, 9)], {
      minLength: readings.length + 6,
    });
    fc.assert(
      fc.property(orders, (shuffled) => {
        expect(curveOf(shuffled, start + 2 * day)).toEqual(expected);
      }),
      { numRuns: 20, seed: 11 },
    );
  });
});

describe('gaps of one sensor', () => {
  it('of two hours are a line, of more they are filled and marked', () => {
    const twoHours = curveOf(every(120, whole), end);
    expect(twoHours.filled).toEqual([]);
    const [fromMs, toMs] = [start + 5 * day, start + 5 * day + 3 * hour];
    const readings = without(every(60, whole), fromMs + 1, toMs - 1);
    expect(curveOf(readings, end).filled).toEqual([{ fromMs, toMs, by: 'diurnal-curve' }]);
  });

  it('follow the daily course of the days around, through day and night', () => {
    const [fromMs, toMs] = [start + 4 * day + 3 * hour, start + 5 * day + 9 * hour];
    const curve = curveOf(without(every(10, whole), fromMs + 1, toMs - 1), end);
    expect(filledHoursBetween(curve, start, end)).toBeCloseTo(30, 9);
    expect(filledHoursBetween(curve, start, fromMs + hour)).toBeCloseTo(1, 9);
    for (let timeMs = fromMs; timeMs <= toMs; timeMs += hour / 2) {
      expect(Math.abs(temperatureAt(curve, timeMs) - mild(timeMs))).toBeLessThan(1.5);
    }
    // A straight line across would miss by the whole swing.
    expect(temperatureAt(curve, start + 4 * day + 14.5 * hour)).toBeGreaterThan(25);
  });

  it('at the end are filled up to now and marked', () => {
    const curve = curveOf(every(15, { fromMs: start, toMs: start + 8 * day }), end);
    expect(curve.timesMs.at(-1)).toBe(end);
    expect(curve.filled).toEqual([{ fromMs: start + 8 * day, toMs: end, by: 'diurnal-curve' }]);
    const measured = degreeDaysBetween(curveOf(every(15, whole), end), law, start + 8 * day, end);
    expect(Math.abs(degreeDaysBetween(curve, law, start + 8 * day, end) / measured - 1)).toBeLessThan(0.08);
  });

  it('of minutes at the end are no gap', () => {
    const curve = curveOf(every(15, { fromMs: start, toMs: end - 20 * 60_000 }), end);
    expect(curve.timesMs.at(-1)).toBe(end);
    expect(curve.filled).toEqual([]);
  });
});

describe('several sensors', () => {
  const warmer = (timeMs: number) => mild(timeMs) + 2.5;

  it('the one with most believed hours leads, the other fills its gap shifted to it', () => {
    const [fromMs, toMs] = [start + 6 * day, start + 7 * day];
    const bench = without(every(15, whole), fromMs + 1, toMs - 1);
    const door = every(20, { fromMs: start + 3 * day, toMs: end, sensorId: 'door' }, warmer);
    const curve = curveOf([...door, ...bench], end);
    expect(curve.filled).toEqual([{ fromMs, toMs, by: 'other-sensor' }]);
    const noon = start + 6 * day + 12 * hour;
    expect(Math.abs(temperatureAt(curve, noon) - mild(noon))).toBeLessThan(0.1);
  });

  it('of two that cover alike, the one out of the sun leads, although it was silent for a few hours', () => {
    const sunny = (timeMs: number) =>
      mild(timeMs) + (Math.abs((timeMs % day) - 13 * hour) < 3 * hour ? 5 : 0);
    const vent = every(15, { ...whole, sensorId: 'a-vent' }, sunny);
    const bench = without(every(15, whole), start + 2 * day, start + 2 * day + 5 * hour);
    const noon = start + 6 * day + 13 * hour;
    expect(Math.abs(temperatureAt(curveOf([...vent, ...bench], end), noon) - mild(noon))).toBeLessThan(0.1);
  });

  it('two that disagree: the curve stays with the leading one', () => {
    const door = every(15, { fromMs: start + day, toMs: end, sensorId: 'door' }, warmer);
    const both = curveOf([...every(15, whole), ...door], end);
    const alone = curveOf(every(15, whole), end);
    expect(both.temperaturesC).toEqual(alone.temperaturesC);
  });

  it('one stuck at 85 moves nothing', () => {
    const good = every(15, { fromMs: start, toMs: start + 5 * day });
    const stuck = every(15, { fromMs: start + 5 * day + 1, toMs: end }, () => 85);
    const curve = curveOf([...good, ...stuck], end);
    expect(Math.max(...curve.temperaturesC)).toBeLessThan(30);
    expect(curve.filled.map(({ by }) => by)).toEqual(['diurnal-curve']);
    expect(curve.doubted).toHaveLength(stuck.length);
  });

  it('one in the sun by day moves nothing', () => {
    const roof = every(
      15,
      { ...whole, sensorId: 'roof' },
      (timeMs) => mild(timeMs) + (Math.abs((timeMs % day) - 12 * hour) < 3 * hour ? 12 : 0),
    );
    const curve = curveOf([...every(20, whole), ...roof], end);
    const alone = curveOf(every(20, whole), end);
    const total = (c: typeof curve) => degreeDaysBetween(c, law, start, end);
    expect(Math.abs(total(curve) - total(alone))).toBeLessThan(0.5);
    expect(new Set(curve.doubted.map(({ doubt }) => doubt))).toEqual(new Set(['sunlit']));
  });
});

describe('daily extremes typed in', () => {
  const extremes = (days: string[], minC: number, maxC: number) => days.map((d) => ({ day: d, minC, maxC }));
  const days = ['2026-05-01', '2026-05-02', '2026-05-03'];

  it('alone make a curve through them, all of it marked', () => {
    const season = seasonOf({ dailyExtremes: extremes(days, 11, 27) });
    const untilMs = Date.parse('2026-05-03T23:00:00Z');
    const curve = temperatureCurve(season, untilMs)!;
    expect(new Date(curve.timesMs[0]!).toISOString()).toBe('2026-04-30T23:00:00.000Z');
    expect(curve.filled).toEqual([{ fromMs: curve.timesMs[0], toMs: untilMs, by: 'daily-extremes' }]);
    // Campbell and Norman's day runs from 2.5 % to 100 % of the range.
    expect(Math.abs(Math.min(...curve.temperaturesC) - (11 + 0.025 * 16))).toBeLessThan(0.1);
    expect(Math.abs(Math.max(...curve.temperaturesC) - 27)).toBeLessThan(0.1);
  });

  it('of a day that is not over yet are not used', () => {
    const season = seasonOf({ dailyExtremes: extremes(days, 11, 27) });
    const until = Date.parse('2026-05-03T21:00:00Z');
    expect(temperatureCurve(season, until)!.filled.map(({ by }) => by)).toEqual([
      'daily-extremes',
      'diurnal-curve',
    ]);
    expect(temperatureCurve(season, Date.parse('2026-05-01T12:00:00Z'))).toBeUndefined();
  });

  it('fill the day a sensor was silent, before any diurnal curve does', () => {
    const [fromMs, toMs] = [Date.parse('2026-05-03T22:00:00Z'), Date.parse('2026-05-05T01:00:00Z')];
    const readings = without(every(15, whole), fromMs + 1, toMs - 1);
    const frost = { day: '2026-05-04', minC: -3, maxC: 9 };
    const curve = curveOf(readings, end, { dailyExtremes: [frost] });
    expect(curve.filled.map(({ by }) => by)).toContain('daily-extremes');
    expect(Math.min(...curve.temperaturesC)).toBeLessThan(-2);
    expect(
      degreeDaysBetween(curve, law, Date.parse('2026-05-04T03:00:00Z'), Date.parse('2026-05-04T05:00:00Z')),
    ).toBe(0);
  });
});

describe('a sensor its owner corrected', () => {
  const sensors = (corrections: { from: string; addC: number }[], id = 'bench') => [
    { id, name: id, unit: 'Cel' as const, corrections },
  ];
  const midnightOf5 = Date.parse('2026-05-05T00:00:00+01:00');
  const raised = { from: '2026-05-05', addC: 1.5 };

  it('reads so much warmer from the midnight of that day on, and as before until then', () => {
    const curve = curveOf(every(15, whole), end, { sensors: sensors([raised]) });
    for (const timeMs of [start, midnightOf5 - hour / 4])
      expect(temperatureAt(curve, timeMs)).toBe(mild(timeMs));
    for (const timeMs of [midnightOf5, end]) expect(temperatureAt(curve, timeMs)).toBe(mild(timeMs) + 1.5);
  });

  it('follows the correction begun last, whatever their order; 0 ends it', () => {
    const until8 = { from: '2026-05-08', addC: 0 };
    const curve = curveOf(every(15, whole), end, { sensors: sensors([until8, raised]) });
    expect(curve).toEqual(curveOf(every(15, whole), end, { sensors: sensors([raised, until8]) }));
    expect(temperatureAt(curve, start + 5 * day)).toBe(mild(start + 5 * day) + 1.5);
    expect(temperatureAt(curve, start + 8 * day)).toBe(mild(start + 8 * day));
  });

  it('is doubted by what came: 85 °C is no contact, also where a degree is taken off', () => {
    const readings = [...every(15, whole), at(start + 6 * day + 1, 85)];
    const curve = curveOf(readings, end, { sensors: sensors([{ from: '2026-05-01', addC: -1 }]) });
    expect(curve.doubted.map(({ doubt }) => doubt)).toEqual(['one-wire-power-up']);
    expect(temperatureAt(curve, start + 6 * day)).toBe(mild(start + 6 * day) - 1);
  });

  it('leads or not by what it reads corrected; the other sensor stays as it is', () => {
    const floor = every(15, { ...whole, sensorId: 'floor' }, (timeMs) => mild(timeMs) - 2);
    const readings = [...every(15, whole), ...floor];
    const curve = curveOf(readings, end, { sensors: sensors([{ from: '2026-05-01', addC: 3 }], 'floor') });
    expect(temperatureAt(curve, start + 6 * day)).toBe(mild(start + 6 * day));
  });

  it.each([
    ['more than ten degrees', [{ from: '2026-05-01', addC: 11 }]],
    ['two corrections of a day', [raised, { ...raised, addC: 1 }]],
    ['no day', [{ from: '5 May', addC: 1 }]],
  ])('is refused with %s', (_, corrections) => {
    expect(sensor.safeParse({ id: 'bench', name: 'Bench', corrections }).success).toBe(false);
    expect(sensor.safeParse({ id: 'bench', name: 'Bench', corrections: [raised] }).success).toBe(true);
  });
});

it('a frost gives no negative degree-days', () => {
  const curve = curveOf(
    every(15, whole, (timeMs) => mild(timeMs) - 22),
    end,
  );
  let previous = 0;
  for (let timeMs = start; timeMs <= end; timeMs += 6 * hour) {
    const total = degreeDaysBetween(curve, law, start, timeMs);
    expect(total).toBeGreaterThanOrEqual(previous);
    previous = total;
  }
});

it('a single reading is a curve of one level', () => {
  const curve = curveOf([at(start, 17)], start + day);
  expect(temperatureAt(curve, start + 9 * hour)).toBe(17);
  expect(filledHoursBetween(curve, start, start + day)).toBeCloseTo(24, 9);
});

it('no usable reading is no curve', () => {
  expect(temperatureCurve(seasonOf({}), end)).toBeUndefined();
  expect(temperatureCurve(seasonOf({ readings: [at(start, 85)] }), end)).toBeUndefined();
});
