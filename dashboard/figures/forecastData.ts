/** What the figure of counts and forecast is drawn from. */
import type { CountedAs, PestForecast } from '../../services/model/index.ts';
import { trapFull } from '../words/numbers.ts';
import type { CountHistory } from './countWeeks.ts';

export type ForecastWeek = PestForecast['weeks'][number];
export const weekMs = 7 * 86_400_000;

export interface ForecastFigureData {
  asOfMs: number;
  timeZone: string;
  unit: CountedAs['unit'];
  limit: number;
  history: CountHistory;
  leave: readonly ForecastWeek[];
  plan?: { words: string; weeks: readonly ForecastWeek[]; label?: { ms: number; text: string } };
  /** Weeks shown either side of today. */
  pastWeeks: number;
  aheadWeeks: number;
}

/** Weeks after (or before) the day of the forecast. */
export const weeksFrom = (data: ForecastFigureData, ms: number) => (ms - data.asOfMs) / weekMs;
/** The weeks that are shown. */
export const ahead = (data: ForecastFigureData, weeks: readonly ForecastWeek[]) =>
  weeks.slice(0, data.aheadWeeks);

/** Two forecasts of a week stand this far either side of it. */
export const sideWeeks = 0.25;

/** How a count stands on the axis, and back: insects as log(1 + count), leaves of ten as they are. */
export const scales: Record<
  CountedAs['unit'],
  { at: (count: number) => number; back: (y: number) => number; ticks: readonly number[] }
> = {
  'trap-week': { at: Math.log1p, back: Math.expm1, ticks: [0, 5, 20, 50, 100, 300, trapFull] },
  'ten-leaves': { at: (n) => n, back: (y) => y, ticks: [0, 2, 4, 6, 8, 10] },
};

/** The top of the axis. */
export function highestShown(data: ForecastFigureData): number {
  if (data.unit === 'ten-leaves') return 10;
  const tops = [
    100,
    data.limit * 1.3,
    ...data.history.weeks.map((week) => week.high),
    ...ahead(data, data.leave).map((week) => week.count.q90 * 1.2),
  ];
  return Math.min(trapFull, Math.max(...tops));
}
