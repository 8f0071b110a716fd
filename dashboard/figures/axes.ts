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

/** Labels nearer than this run together. */
const leastLabelPx = 58;
/** Beside the drawing: the labels of the upright axis and the padding. */
const besidePx = 56;

/** The values whose labels have room at a width of the whole figure; the last one stays. */
export function roomy({ min, max, values }: AxisPlan, widthPx: number): number[] {
  const leastApart = (leastLabelPx * (max - min)) / Math.max(1, widthPx - besidePx);
  const kept: number[] = [];
  for (const value of [...values].reverse()) {
    const next = kept.at(-1);
    if (next === undefined || next - value >= leastApart) kept.push(value);
  }
  return kept.reverse();
}

interface Ticked {
  ticks: { value: number }[];
  chart: { width: number };
}

function axis(plan: AxisPlan, palette: Palette, valuesAt: (widthPx: number) => readonly number[]) {
  return {
    type: 'linear' as const,
    min: plan.min,
    max: plan.max,
    afterBuildTicks: (scale: Ticked) => {
      scale.ticks = valuesAt(scale.chart.width).map((value) => ({ value }));
    },
    ticks: {
      color: palette.ink,
      font: figureFont,
      maxRotation: 0,
      autoSkip: false,
      padding: 8,
      callback: (value: string | number, index: number, ticks: readonly { value: number }[]) =>
        plan.words(Number(value), ticks[index - 1]?.value),
    },
  };
}

export const xAxis = (palette: Palette, plan: AxisPlan) => ({
  ...axis(plan, palette, (widthPx) => roomy(plan, widthPx)),
  border: { color: palette.ink, width: 2 },
  grid: { drawOnChartArea: false, tickColor: palette.ink, tickLength: 5 },
});

export const yAxis = (palette: Palette, plan: AxisPlan) => ({
  ...axis(plan, palette, () => plan.values),
  border: { display: false },
  grid: { color: palette.rule, tickLength: 0 },
});
