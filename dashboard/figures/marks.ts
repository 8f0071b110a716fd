/**
 * The marks Chart.js has no element for, as one plugin: glazing bars, the border between counted and
 * forecast, counts, gaps, bands of counts, labels in the soil, ruled stretches. Positions are data values.
 */
import type { Chart, Plugin } from 'chart.js';
import { drawFigures } from './countFigures.ts';
import { draw, type Mark, type Sheet } from './markStrokes.ts';
import type { Palette } from './palette.ts';

export type { Mark };

const behind: readonly Mark['kind'][] = ['glazing-bar', 'border', 'filled'];

/** Marks behind the series first, those of counts and labels over them. */
export function marksPlugin(marks: readonly Mark[], palette: Palette): Plugin {
  const sheetOf = (chart: Chart): Sheet | undefined => {
    const { x, y } = chart.scales;
    if (!x || !y) return undefined;
    return {
      context: chart.ctx,
      palette,
      area: chart.chartArea,
      x: (value) => x.getPixelForValue(value),
      y: (value) => y.getPixelForValue(value),
    };
  };
  const drawSome = (chart: Chart, wanted: (mark: Mark) => boolean) => {
    const sheet = sheetOf(chart);
    if (!sheet) return;
    for (const mark of marks) if (wanted(mark)) draw(sheet, mark);
  };
  return {
    id: 'marks',
    beforeDatasetsDraw: (chart) => drawSome(chart, (mark) => behind.includes(mark.kind)),
    afterDatasetsDraw: (chart) => {
      const sheet = sheetOf(chart);
      if (sheet) drawFigures(sheet, marks);
      drawSome(chart, (mark) => !behind.includes(mark.kind));
    },
  };
}
