/** The two axes and the options that all figures share: nothing moves, no legend box, no tooltip. */
import type { ChartOptions } from 'chart.js';
import { figureFont, type Palette } from './palette.ts';

export interface AxisPlan {
  min: number;
  max: number;
  /** Where labels stand. */
  values: readonly number[];
  /** `before` is the label to the left, if any. */
  words: (value: number, before?: number) => string;
}

export const stillOptions = (padding: { top: number; bottom: number }): ChartOptions => ({
  animation: false,
  responsive: true,
  maintainAspectRatio: false,
  events: [],
  layout: { padding: { ...padding, right: 8 } },
  plugins: { legend: { display: false }, tooltip: { enabled: false } },
});

function axis(plan: AxisPlan, palette: Palette) {
  return {
    type: 'linear' as const,
    min: plan.min,
    max: plan.max,
    afterBuildTicks: (scale: { ticks: { value: number }[] }) => {
      scale.ticks = plan.values.map((value) => ({ value }));
    },
    ticks: {
      color: palette.ink,
      font: figureFont,
      maxRotation: 0,
      autoSkip: false,
      padding: 8,
      callback: (value: string | number, index: number) => plan.words(Number(value), plan.values[index - 1]),
    },
  };
}

export const xAxis = (palette: Palette, plan: AxisPlan) => ({
  ...axis(plan, palette),
  border: { color: palette.ink, width: 2 },
  grid: { drawOnChartArea: false, tickColor: palette.ink, tickLength: 5 },
});

export const yAxis = (palette: Palette, plan: AxisPlan) => ({
  ...axis(plan, palette),
  border: { display: false },
  grid: { color: palette.rule, tickLength: 0 },
});
