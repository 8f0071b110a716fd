/**
 * Temperature with its gaps: a line only where measured, filled stretches dotted in a ruled band,
 * crosses for what is not believed, hollow triangles with the figure for what is off the scale.
 */
import type { ChartConfiguration } from 'chart.js';
import { addDays, instantOf, localDay, shortWeekday } from '../words/dates.ts';
import { ownDegrees } from '../words/habits.ts';
import { stillOptions, xAxis, yAxis } from './axes.ts';
import { type Mark, marksPlugin } from './marks.ts';
import type { MixedDataset } from './nestedRanges.ts';
import type { Palette } from './palette.ts';

export interface TemperaturePoint {
  timeMs: number;
  temperatureC: number;
  filled: boolean;
}
export interface TemperatureFigureData {
  timeZone: string;
  fromMs: number;
  toMs: number;
  points: readonly TemperaturePoint[];
  doubted: readonly { timeMs: number; temperatureC: number }[];
  /** The enemy's "hunts above", when a release is near. */
  hunts?: { aboveC: number; text: string };
}

/** Axis bounds in steps of ten around what is believed. */
export function temperatureBounds(points: readonly TemperaturePoint[]): { low: number; high: number } {
  const values = points.map((point) => point.temperatureC);
  if (values.length === 0) return { low: 0, high: 30 };
  const low = Math.floor((Math.min(...values) - 1) / 10) * 10;
  return { low, high: Math.max(Math.ceil((Math.max(...values) + 1) / 10) * 10, low + 20) };
}

/** Runs of filled points, each with the measured points next to it. */
export function filledRuns(points: readonly TemperaturePoint[]): TemperaturePoint[][] {
  const runs: TemperaturePoint[][] = [];
  points.forEach((point, index) => {
    if (!point.filled) return;
    const before = points[index - 1];
    if (before?.filled) runs.at(-1)?.push(point);
    else runs.push(before ? [before, point] : [point]);
    const after = points[index + 1];
    if (after && !after.filled) runs.at(-1)?.push(after);
  });
  return runs;
}

const at = (point: { timeMs: number; temperatureC: number }) => ({ x: point.timeMs, y: point.temperatureC });

function lines(data: TemperatureFigureData, palette: Palette): MixedDataset[] {
  const measured = data.points.map((point) =>
    point.filled ? { x: point.timeMs, y: Number.NaN } : at(point),
  );
  const filled = filledRuns(data.points).flatMap((run) => [
    ...run.map(at),
    { x: run.at(-1)?.timeMs ?? 0, y: Number.NaN },
  ]);
  const shared = { type: 'line' as const, borderColor: palette.ink, pointRadius: 0, spanGaps: false };
  return [
    { ...shared, label: 'measured', data: measured, borderWidth: 2, borderJoinStyle: 'round' },
    {
      ...shared,
      label: 'filled in',
      data: filled,
      borderWidth: 2.5,
      borderDash: [1, 5],
      borderCapStyle: 'round',
    },
  ];
}

function crosses(data: TemperatureFigureData, palette: Palette): MixedDataset {
  const { low, high } = temperatureBounds(data.points);
  return {
    type: 'scatter',
    label: 'not believed',
    data: data.doubted.filter((each) => each.temperatureC >= low && each.temperatureC <= high).map(at),
    pointStyle: 'crossRot',
    pointRadius: 6,
    borderWidth: 2,
    borderColor: palette.ink,
  };
}

/** One triangle, at the reading farthest off, for a sixth of the chart: a stuck sensor would draw a wall of them. */
export function offScale(data: TemperatureFigureData): Mark[] {
  const { low, high } = temperatureBounds(data.points);
  const beyond = ({ temperatureC }: { temperatureC: number }) =>
    Math.max(low - temperatureC, temperatureC - high);
  const farthest = new Map<number, TemperatureFigureData['doubted'][number]>();
  for (const reading of data.doubted) {
    const part = Math.min(5, Math.floor((6 * (reading.timeMs - data.fromMs)) / (data.toMs - data.fromMs)));
    const known = farthest.get(part);
    if (beyond(reading) > Math.max(0, known ? beyond(known) : 0)) farthest.set(part, reading);
  }
  return [...farthest.values()].map(({ timeMs, temperatureC }) => ({
    kind: 'off-scale',
    x: timeMs,
    text: String(Math.round(ownDegrees(temperatureC))),
  }));
}

function marksOf(data: TemperatureFigureData): Mark[] {
  const marks = offScale(data);
  for (const run of filledRuns(data.points)) {
    const values = run.map((point) => point.temperatureC);
    const [first, last] = [run[0], run.at(-1)];
    if (!first || !last || last.timeMs === first.timeMs) continue;
    const [low, high] = [Math.min(...values), Math.max(...values)];
    marks.push({ kind: 'filled', fromX: first.timeMs, toX: last.timeMs, low, high });
  }
  if (data.hunts) marks.push({ kind: 'glazing-bar', y: data.hunts.aboveC, text: data.hunts.text });
  return marks;
}

function days(data: TemperatureFigureData): string[] {
  const found: string[] = [];
  const last = localDay(data.toMs, data.timeZone);
  for (let day = localDay(data.fromMs, data.timeZone); day <= last; day = addDays(day, 1)) found.push(day);
  return found;
}

export function temperatureFigure(data: TemperatureFigureData, palette: Palette): ChartConfiguration {
  const { low, high } = temperatureBounds(data.points);
  const noons = days(data)
    .map((day) => ({ day, ms: instantOf(day, 12, data.timeZone) }))
    .filter(({ ms }) => ms > data.fromMs && ms < data.toMs);
  const dayAt = new Map(noons.map(({ day, ms }) => [ms, `${shortWeekday(day)} ${Number(day.slice(8))}`]));
  const every = noons.length > 9 ? Math.ceil(noons.length / 7) : noons.length > 5 ? 2 : 1;
  return {
    type: 'scatter',
    data: { datasets: [...lines(data, palette), crosses(data, palette)] as never },
    plugins: [marksPlugin(marksOf(data), palette)],
    options: {
      ...stillOptions({ top: 28, bottom: 4 }),
      scales: {
        x: xAxis(palette, {
          min: data.fromMs,
          max: data.toMs,
          values: noons.filter((_, index) => (noons.length - 1 - index) % every === 0).map(({ ms }) => ms),
          words: (ms) => dayAt.get(ms) ?? '',
        }),
        y: yAxis(palette, {
          min: low,
          max: high,
          values: Array.from({ length: (high - low) / 10 + 1 }, (_, step) => low + step * 10),
          words: (temperatureC) => String(ownDegrees(temperatureC)),
        }),
      },
    },
  } as ChartConfiguration;
}
