/** The marks of the forecast figure: limit, border, counts, gaps, the label of the release. */
import { insects, trapFull } from '../words/numbers.ts';
import {
  ahead,
  type ForecastFigureData,
  highestShown,
  scales,
  sideWeeks,
  weeksFrom,
} from './forecastData.ts';
import type { Mark } from './marks.ts';
import type { Palette } from './palette.ts';

/** A figure stands left of its triangle, so only the first of a run has room for one. */
const roomWeeks = 2;

/** A hollow triangle on each range that goes on above the axis; the figure is its upper end, 19 of 20; no trap holds more than a full one. */
export function offScale(data: ForecastFigureData): Mark[] {
  const top = highestShown(data);
  const side = data.plan ? sideWeeks : 0;
  const ends = [
    ...ahead(data, data.leave).map((week) => ({ week, aside: -side })),
    ...ahead(data, data.plan?.weeks ?? []).map((week) => ({ week, aside: side })),
  ]
    .map(({ week, aside }) => ({
      x: weeksFrom(data, Date.parse(week.end)) + aside,
      end: week.count.q975,
    }))
    .filter(({ end }) => end > top)
    .sort((a, b) => a.x - b.x);
  return ends.map(({ x, end }, i) => {
    const hasRoom = x - (ends[i - 1]?.x ?? Number.NEGATIVE_INFINITY) >= roomWeeks;
    const text = end >= trapFull ? 'full' : insects(end);
    return { kind: 'off-scale', x, text: hasRoom ? text : '', inside: true };
  });
}

export function forecastMarks(data: ForecastFigureData, palette: Palette): Mark[] {
  const { at } = scales[data.unit];
  const inView = (ms: number) => weeksFrom(data, ms) >= -data.pastWeeks;
  const marks: Mark[] = [
    { kind: 'glazing-bar', y: at(data.limit), text: `your limit, ${Math.round(data.limit)}` },
    { kind: 'border', x: 0.15, before: 'counted', after: 'forecast' },
  ];
  for (const gap of data.history.gaps.filter((each) => inView(each.endMs))) {
    marks.push({ kind: 'gap', x: weeksFrom(data, gap.endMs), roofed: gap.down });
  }
  for (const week of data.history.weeks.filter((each) => inView(each.endMs))) {
    const x = weeksFrom(data, week.endMs);
    if (week.high > week.low) marks.push({ kind: 'band', x, low: at(week.low), high: at(week.high) });
    marks.push({
      kind: 'count',
      x,
      y: at(week.middle),
      text: insects(week.middle),
      aside: week.high > week.low,
      part: week.part,
      zero: week.high === 0,
    });
  }
  const label = data.plan?.label;
  if (label)
    marks.push({ kind: 'soil-label', x: weeksFrom(data, label.ms), colour: palette.e1, text: label.text });
  return [...marks, ...offScale(data)];
}
