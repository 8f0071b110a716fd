/**
 * A range as nested thickness: hairline 19 of 20, narrow hollow bar 8 of 10, wide bar half, cross
 * stroke in the middle. Filled for pests and "leave it", hollow for friends and "with release".
 */
import type { ChartDataset } from 'chart.js';
import type { Quantiles } from '../../services/model/index.ts';
import type { Palette } from './palette.ts';

export interface RangeSeries {
  label: string;
  points: readonly { x: number; range: Quantiles }[];
  colour: string;
  hollow: boolean;
  /** Width of the bar that holds half, in px. */
  thicknessPx: number;
}
export type MixedDataset = ChartDataset<'bar' | 'scatter' | 'line'>;

export function nestedRanges(
  series: RangeSeries,
  palette: Palette,
  scale: (y: number) => number,
): MixedDataset[] {
  /** Of two datasets the one with the higher order is drawn first, so lies below. */
  const bar = (
    low: keyof Quantiles,
    high: keyof Quantiles,
    thickness: number,
    look: { fill: string; order: number },
  ): MixedDataset => ({
    type: 'bar',
    label: series.label,
    data: series.points.map(({ x, range }) => ({ x, y: [scale(range[low]), scale(range[high])] })) as never,
    grouped: false,
    barThickness: thickness,
    borderSkipped: false,
    borderWidth: thickness > 2 ? 2 : 0,
    borderColor: series.colour,
    backgroundColor: look.fill,
    order: look.order,
  });
  return [
    {
      type: 'scatter',
      label: series.label,
      data: series.points.map(({ x, range }) => ({ x, y: scale(range.q50) })),
      pointStyle: 'line',
      pointRadius: 6.5,
      borderWidth: 2.5,
      borderColor: palette.ink,
      order: 1,
    },
    bar('q025', 'q975', 1.6, { fill: series.colour, order: 4 }),
    bar('q10', 'q90', 6, { fill: palette.glass, order: 3 }),
    bar('q25', 'q75', series.thicknessPx, { fill: series.hollow ? palette.glass : series.colour, order: 2 }),
  ];
}
