/** Figures are data in, configuration out: no browser, no drawing. */
import type { Chart } from 'chart.js';
import { describe, expect, it } from 'vitest';
import { roomy } from '../../dashboard/figures/axes.ts';
import { countHistory } from '../../dashboard/figures/countWeeks.ts';
import type { ForecastFigureData } from '../../dashboard/figures/forecastData.ts';
import { forecastFigure } from '../../dashboard/figures/forecastFigure.ts';
import { forecastMarks } from '../../dashboard/figures/forecastMarks.ts';
import { forecastAloud, forecastTable } from '../../dashboard/figures/forecastWords.ts';
import { marksPlugin } from '../../dashboard/figures/marks.ts';
import type { Palette } from '../../dashboard/figures/palette.ts';
import { paletteNames } from '../../dashboard/figures/palette.ts';
import {
  filledRuns,
  temperatureBounds,
  temperatureFigure,
  offScale as triangles,
} from '../../dashboard/figures/temperatureFigure.ts';
import { temperatureAloud, temperatureTable } from '../../dashboard/figures/temperatureWords.ts';
import type { TrapCount } from '../../services/model/index.ts';
import { catchesByDay } from '../../services/model/planning/evidence.ts';
import { smallSeason } from '../fixtures/smallSeason.ts';

/** The drawn heights of a series. */
const ys = (dataset: { data: unknown } | undefined): unknown[] =>
  ((dataset?.data ?? []) as { y: unknown }[]).map((point) => point.y);

const palette = Object.fromEntries(paletteNames.map((name) => [name, `#${name}`])) as unknown as Palette;
const dayMs = 86_400_000;
const now = Date.parse('2026-05-13T09:00:00Z');
const iso = (daysAgo: number) => new Date(now - daysAgo * dayMs).toISOString();

const count = (
  daysAgo: number,
  whitefly: TrapCount['counts']['whitefly'],
  extra: Partial<TrapCount> = {},
): TrapCount => ({
  id: `c${daysAgo}`,
  trapId: 'door',
  time: iso(daysAgo),
  exposureDays: 7,
  countedFraction: 1,
  card: 'new',
  counts: whitefly === undefined ? {} : { whitefly },
  ...extra,
});

describe('counted weeks', () => {
  it('are per whole trap and seven days, all traps of a day together', () => {
    const { weeks } = countHistory(
      [count(0, 8, { exposureDays: 14 }), count(0.1, 3, { countedFraction: 0.5, trapId: 'mid' })],
      'whitefly',
      'UTC',
    );
    // 11 in all, on two weeks of one trap and on half a week of another.
    expect(weeks).toHaveLength(1);
    expect(weeks[0]).toMatchObject({ middle: 11 / 2.5, part: true });
  });

  it('a card that hung on gives only what is new; a lost card ends the chain, a kind not counted does not', () => {
    const same = { card: 'same' } as const;
    const middles = (...counts: TrapCount[]) =>
      countHistory(counts, 'whitefly', 'UTC').weeks.map((week) => week.middle);
    expect(middles(count(14, 4), count(7, 9, same))).toEqual([4, 5]);
    // 5 more in the two weeks since it was last counted.
    expect(middles(count(14, 4), count(7, undefined, same), count(0, 9, same))).toEqual([4, 2.5]);
    expect(middles(count(14, 4), count(7, undefined, { card: 'lost' }), count(0, 9, same))).toEqual([4, 9]);
  });

  it('are the same numbers as in the reasons of the advice', () => {
    const trapCounts = [
      count(14, 4),
      count(13.9, { low: 21, high: 50 }, { trapId: 'mid', exposureDays: 3 }),
      count(7, { low: 6, high: 20 }, { card: 'same' }),
      count(6.8, 3, { trapId: 'mid', countedFraction: 0.25, exposureDays: 6 }),
      count(0, { low: 101, high: 2000 }),
    ];
    const season = { ...smallSeason(), trapCounts };
    const advised = catchesByDay(season, 'trialeurodes-vaporariorum', now);
    const drawn = countHistory(trapCounts, 'whitefly', season.place.timeZone).weeks;
    expect(advised.length).toBe(3);
    advised.forEach(({ perTrapWeek }, i) => {
      expect(drawn[i]?.middle).toBeCloseTo(perTrapWeek, 9);
    });
  });

  it('a week without a count is a gap, one with the trap down says so, neither is a zero', () => {
    const down = count(14, undefined, { card: 'down' });
    const { weeks, gaps } = countHistory([count(28, 2), down, count(0, 9)], 'whitefly', 'UTC');
    expect(weeks.map((week) => week.middle)).toEqual([2, 9]);
    expect(gaps.map((gap) => gap.down)).toEqual([false, true, false]);
  });

  it('a card that hung on shows the difference, never less than nothing', () => {
    const { weeks } = countHistory(
      [count(14, 9), count(7, 14, { card: 'same' }), count(0, 3, { card: 'same' })],
      'whitefly',
      'UTC',
    );
    expect(weeks.map((week) => week.middle)).toEqual([9, 5, 0]);
  });

  it('a kind never counted has neither weeks nor gaps', () => {
    expect(countHistory([count(7, 2), count(0, 3)], 'aphid', 'UTC')).toEqual({ weeks: [], gaps: [] });
    expect(countHistory([], 'whitefly', 'UTC')).toEqual({ weeks: [], gaps: [] });
  });
});

const range = (q50: number) => ({
  q025: q50 / 3,
  q10: q50 / 2,
  q25: q50 / 1.4,
  q50,
  q75: q50 * 1.4,
  q90: q50 * 2,
  q975: q50 * 3,
});
const week = (index: number, q50: number) => ({
  end: iso(-7 * index),
  count: range(q50),
  adultsPerM2: range(q50),
  youngPerM2: range(q50),
  probabilityOverLimit: 0.5,
});
const data: ForecastFigureData = {
  asOfMs: now,
  timeZone: 'UTC',
  unit: 'trap-week',
  limit: 30,
  history: countHistory(
    [count(28, 1), count(14, { low: 1, high: 5 }), count(7, 9), count(0, 14)],
    'whitefly',
    'UTC',
  ),
  leave: [week(1, 18), week(2, 24), week(3, 34)],
  plan: { words: 'with Encarsia', weeks: [week(1, 18), week(2, 22), week(3, 26)] },
  pastWeeks: 5,
  aheadWeeks: 5,
};

describe('the forecast figure', () => {
  it('draws each range as nested bars on log(1 + count), hollow with a release', () => {
    const { datasets } = forecastFigure(data, palette).data;
    const bars = datasets.filter((each) => (each as { type?: string }).type === 'bar');
    expect(bars).toHaveLength(6);
    const half = bars.filter((each) => (each as { barThickness?: number }).barThickness === 9);
    expect(half.map((each) => each.backgroundColor)).toEqual(['#p1', '#glass']);
    expect(ys(half[0])[0]).toEqual([Math.log1p(18 / 1.4), Math.log1p(18 * 1.4)]);
  });

  it('never moves and needs no tooltip', () => {
    expect(forecastFigure(data, palette).options).toMatchObject({
      animation: false,
      plugins: { legend: { display: false }, tooltip: { enabled: false } },
    });
  });

  it('the line of counts breaks at a gap', () => {
    const line = forecastFigure(data, palette).data.datasets[0]?.data as unknown as { y: number }[];
    expect(line.map((point) => Number.isNaN(point.y))).toEqual([false, true, false, false, false]);
  });

  it('marks the limit, the border, gaps, bands and counts', () => {
    const kinds = forecastMarks(data, palette).map((mark) => mark.kind);
    expect(kinds).toEqual([
      ...['glazing-bar', 'border', 'gap', 'count', 'band', 'count', 'count', 'count'],
      // The last week may reach 102, the axis ends at 100.
      'off-scale',
    ]);
  });

  it('a range that goes on above the axis has a hollow triangle, and the first of a run its upper end', () => {
    const high = [week(1, 30), week(2, 3000), week(3, 4000), week(4, 4000)];
    const offScale = (weeks: typeof high) =>
      forecastMarks({ ...data, leave: weeks, plan: data.plan! }, palette).flatMap((mark) =>
        mark.kind === 'off-scale' ? [[Math.round(mark.x), mark.text]] : [],
      );
    expect(offScale(high)).toEqual([
      [2, 'full'],
      [3, ''],
      [4, ''],
    ]);
    expect(offScale([week(1, 18)])).toEqual([]);
  });

  it('labels nearer than 52 px are dropped from the left, the last one stays', () => {
    const plan = { min: -4, max: 6, values: [-4, -2, 0, 2, 4, 6], words: String };
    expect(roomy(plan, 1000)).toEqual(plan.values);
    expect(roomy(plan, 300)).toEqual([-2, 2, 6]);
  });

  it('is read aloud with the same numbers as drawn', () => {
    expect(forecastAloud(data)).toBe(
      'From 3 to 14 a trap in 2 weeks. If left, about 34 on 3 June, half of the time 24 to 48. With Encarsia, about 26.',
    );
  });

  it('says so when none were caught', () => {
    const none = countHistory([count(14, 0), count(7, 0), count(0, 0)], 'whitefly', 'UTC');
    expect(forecastAloud({ ...data, history: none, leave: [] })).toBe('None caught in 2 weeks.');
  });

  it('says so when nothing was counted', () => {
    expect(forecastAloud({ ...data, history: { weeks: [], gaps: [] }, leave: [] })).toBe('Not counted yet.');
  });

  it('stands as a table, every row as wide as its head', () => {
    const { head, rows } = forecastTable(data);
    expect(rows).toHaveLength(4 + 3);
    expect(rows.every((row) => row.length === head.length)).toBe(true);
    expect(rows.at(-1)).toEqual(['3 June', '', '34', '24 to 48', '17 to 68', '11 to 102', '26']);
  });
});

describe('the temperature figure', () => {
  const at = (hour: number, temperatureC: number, filled = false) => ({
    timeMs: now - (48 - hour) * 3_600_000,
    temperatureC,
    filled,
  });
  const points = [at(0, 12), at(1, 13), at(2, 15, true), at(3, 16, true), at(4, 17), at(5, 18)];
  const figure = {
    timeZone: 'UTC',
    fromMs: now - 2 * dayMs,
    toMs: now,
    points,
    doubted: [
      { timeMs: now - 3_600_000 * 20, temperatureC: 85 },
      { timeMs: now - 3_600_000 * 8, temperatureC: 11 },
    ],
  };

  it('a filled run reaches to its measured neighbours', () => {
    expect(filledRuns(points).map((run) => run.map((point) => point.temperatureC))).toEqual([
      [13, 15, 16, 17],
    ]);
  });

  it('draws the measured line with a hole where it was filled, crosses inside the scale only', () => {
    const [measured, filled, crosses] = temperatureFigure(figure, palette).data.datasets;
    expect(ys(measured)).toEqual([12, 13, Number.NaN, Number.NaN, 17, 18]);
    expect(ys(filled).slice(0, 4)).toEqual([13, 15, 16, 17]);
    expect(crosses?.data).toEqual([{ x: now - 3_600_000 * 8, y: 11 }]);
  });

  it('off the scale one triangle a part of the chart, at the reading farthest off', () => {
    const hoursAgo = (hours: number, temperatureC: number) => ({
      timeMs: now - 3_600_000 * hours,
      temperatureC,
    });
    const doubted = [hoursAgo(22, 85), hoursAgo(20, 95), hoursAgo(18, 31), hoursAgo(12, 29), hoursAgo(3, -4)];
    expect(triangles({ ...figure, doubted })).toEqual([
      { kind: 'off-scale', x: now - 3_600_000 * 20, text: '95' },
      { kind: 'off-scale', x: now - 3_600_000 * 3, text: '-4' },
    ]);
  });

  it('its axis is in steps of ten around what is believed', () => {
    expect(temperatureBounds(points)).toEqual({ low: 10, high: 30 });
    expect(temperatureBounds([])).toEqual({ low: 0, high: 30 });
  });

  it('says what was filled and what was not believed', () => {
    expect(temperatureAloud(figure)).toBe(
      '12 to 18 °C since Mon 11 May. 3 hours filled in. 2 readings not believed.',
    );
    expect(temperatureAloud({ ...figure, points: [at(0, 19.2), at(1, 18.8)] })).toMatch(/^19 °C since/);
    expect(temperatureTable(figure).rows[0]).toEqual(['Mon 11 May', '12.0', '18.0', '3', '0']);
  });
});

describe('the marks', () => {
  it('without axes draw nothing instead of failing', () => {
    const plugin = marksPlugin([{ kind: 'gap', x: 0, roofed: true }], palette);
    const bare = { scales: {}, ctx: undefined } as unknown as Chart;
    expect(() => plugin.afterDatasetsDraw?.(bare, {}, {}, false as never)).not.toThrow();
  });
});
