/** The season: every round as counted, over the range that was given for it a week before. */
import type { ChartConfiguration } from 'chart.js';
import { localDay, shortDay } from '../words/dates.ts';
import { insects, trapFull } from '../words/numbers.ts';
import { stillOptions, xAxis, yAxis } from './axes.ts';
import { scales } from './forecastData.ts';
import type { HeldFigureData } from './heldWords.ts';
import { type Mark, marksPlugin } from './marks.ts';
import { type MixedDataset, nestedRanges } from './nestedRanges.ts';
import type { Palette } from './palette.ts';

const dayMs = 86_400_000;

function counted(data: HeldFigureData, palette: Palette): MixedDataset {
  return {
    type: 'line',
    label: 'counted',
    data: data.rounds.map(({ time, told }) => ({
      x: Date.parse(time),
      y: scales[data.unit].at(told),
    })),
    borderColor: palette.ink,
    borderWidth: 2,
    pointRadius: 0,
    order: 0,
  };
}

function marksOf(data: HeldFigureData): Mark[] {
  const { at } = scales[data.unit];
  return [
    { kind: 'glazing-bar', y: at(data.limit), text: `your limit, ${Math.round(data.limit)}` },
    ...data.rounds.map(
      ({ time, told, said }): Mark => ({
        kind: 'count',
        x: Date.parse(time),
        y: at(told),
        text: insects(told),
        aside: said !== undefined,
        part: false,
        zero: told === 0,
      }),
    ),
  ];
}

function highest(data: HeldFigureData): number {
  if (data.unit === 'ten-leaves') return 10;
  const tops = data.rounds.flatMap(({ counts, said }) => [...counts, (said?.count.q90 ?? 0) * 1.2]);
  return Math.min(trapFull, Math.max(50, data.limit * 1.3, ...tops));
}

export function heldFigure(data: HeldFigureData, palette: Palette): ChartConfiguration {
  const { at, back, ticks } = scales[data.unit];
  const top = at(highest(data));
  const days = data.rounds.map(({ time }) => Date.parse(time));
  const ranges = data.rounds.flatMap(({ time, said }) =>
    said ? [{ x: Date.parse(time), range: said.count }] : [],
  );
  const [first = 0, last = 0] = [days[0], days.at(-1)];
  return {
    type: 'scatter',
    data: {
      datasets: [
        counted(data, palette),
        ...nestedRanges(
          { label: 'said a week before', points: ranges, colour: palette.p1, hollow: false, thicknessPx: 9 },
          palette,
          at,
        ),
      ] as never,
    },
    plugins: [marksPlugin(marksOf(data), palette)],
    options: {
      ...stillOptions({ top: 28, bottom: 4 }),
      scales: {
        x: xAxis(palette, {
          min: first - 5 * dayMs,
          max: last + 5 * dayMs,
          values: days,
          words: (ms) => shortDay(localDay(ms, data.timeZone)),
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
