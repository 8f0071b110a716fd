/** The marks of the forecast figure: limit, border, counts, gaps, the label of the release. */
import { insects } from '../words/numbers.ts';
import { type ForecastFigureData, weeksFrom } from './forecastData.ts';
import type { Mark } from './marks.ts';
import type { Palette } from './palette.ts';

export function forecastMarks(data: ForecastFigureData, palette: Palette): Mark[] {
  const inView = (ms: number) => weeksFrom(data, ms) >= -data.pastWeeks;
  const marks: Mark[] = [
    { kind: 'glazing-bar', y: Math.log1p(data.limit), text: `your limit, ${Math.round(data.limit)}` },
    { kind: 'border', x: 0.15, before: 'counted', after: 'forecast' },
  ];
  for (const gap of data.history.gaps.filter((each) => inView(each.endMs))) {
    marks.push({ kind: 'gap', x: weeksFrom(data, gap.endMs), roofed: gap.down });
  }
  for (const week of data.history.weeks.filter((each) => inView(each.endMs))) {
    const x = weeksFrom(data, week.endMs);
    if (week.high > week.low)
      marks.push({ kind: 'band', x, low: Math.log1p(week.low), high: Math.log1p(week.high) });
    marks.push({
      kind: 'count',
      x,
      y: Math.log1p(week.middle),
      text: insects(week.middle),
      aside: week.high > week.low,
      part: week.part,
      zero: week.high === 0,
    });
  }
  const label = data.plan?.label;
  if (label)
    marks.push({ kind: 'soil-label', x: weeksFrom(data, label.ms), colour: palette.e1, text: label.text });
  return marks;
}
