/** Counts and what is ahead: counted weeks left, nested ranges right. */
import type { ChartConfiguration } from 'chart.js';
import { localDay, shortDay } from '../words/dates.ts';
import { stillOptions, xAxis, yAxis } from './axes.ts';
import {
  ahead,
  type ForecastFigureData,
  type ForecastWeek,
  highestShown,
  scales,
  sideWeeks,
  weekMs,
  weeksFrom,
} from './forecastData.ts';
import { forecastMarks } from './forecastMarks.ts';
import { marksPlugin } from './marks.ts';
import { type MixedDataset, nestedRanges } from './nestedRanges.ts';
import type { Palette } from './palette.ts';

/** The line joins neighbouring weeks only: a gap stays a gap. */
function countedLine(data: ForecastFigureData, palette: Palette): MixedDataset {
  const points: { x: number; y: number }[] = [];
  for (const week of data.history.weeks) {
    const x = weeksFrom(data, week.endMs);
    const last = points.at(-1);
    if (last && x - last.x > 1.6) points.push({ x: (x + last.x) / 2, y: Number.NaN });
    points.push({ x, y: scales[data.unit].at(week.middle) });
  }
  return {
    type: 'line',
    label: 'counted',
    data: points.filter((point) => point.x >= -data.pastWeeks),
    borderColor: palette.ink,
    borderWidth: 2,
    pointRadius: 0,
    spanGaps: false,
    order: 0,
  };
}

function datasets(data: ForecastFigureData, palette: Palette): MixedDataset[] {
  const { at } = scales[data.unit];
  const points = (weeks: readonly ForecastWeek[], aside: number) =>
    ahead(data, weeks).map((week) => ({
      x: weeksFrom(data, Date.parse(week.end)) + aside,
      range: week.count,
    }));
  const side = data.plan ? sideWeeks : 0;
  /** Two ranges share a week, and on a phone a week is about 28 px. */
  const thicknessPx = data.plan && data.pastWeeks < 6 ? 9 : 11;
  const leave = {
    label: 'leave it',
    points: points(data.leave, -side),
    colour: palette.p1,
    hollow: false,
    thicknessPx,
  };
  const plan = data.plan && {
    label: data.plan.words,
    points: points(data.plan.weeks, side),
    colour: palette.e1,
    hollow: true,
    thicknessPx,
  };
  return [
    countedLine(data, palette),
    ...nestedRanges(leave, palette, at),
    ...(plan ? nestedRanges(plan, palette, at) : []),
  ];
}

/** The month stands only where it changes. */
const tickWords = (day: string, before: string | undefined): string =>
  before?.slice(0, 7) === day.slice(0, 7) ? String(Number(day.slice(8))) : shortDay(day);

/** One label a fortnight, so that every one is readable at 360 px. */
function weekTicks(data: ForecastFigureData): number[] {
  const values: number[] = [];
  for (let x = -data.pastWeeks + (data.pastWeeks % 2); x <= data.aheadWeeks; x += 2) values.push(x);
  return values;
}

export function forecastFigure(data: ForecastFigureData, palette: Palette): ChartConfiguration {
  const { at, back, ticks } = scales[data.unit];
  const top = at(highestShown(data));
  const dayAt = (x: number) => localDay(data.asOfMs + x * weekMs, data.timeZone);
  return {
    type: 'scatter',
    data: { datasets: datasets(data, palette) as never },
    plugins: [marksPlugin(forecastMarks(data, palette), palette)],
    options: {
      ...stillOptions({ top: 28, bottom: data.plan?.label ? 36 : 4 }),
      scales: {
        x: xAxis(palette, {
          min: -data.pastWeeks - 0.4,
          max: data.aheadWeeks + 0.6,
          values: weekTicks(data),
          words: (x, before) => tickWords(dayAt(x), before === undefined ? undefined : dayAt(before)),
        }),
        y: yAxis(palette, {
          min: 0,
          max: top,
          values: ticks.map(at).filter((tick) => tick <= top),
          words: (y) => String(Math.round(back(y))),
        }),
      },
    },
  };
}
