/** What the figure of counts and forecast is drawn from. */
import type { PestForecast } from '../../services/model/index.ts';
import type { CountHistory } from './countWeeks.ts';

export type ForecastWeek = PestForecast['weeks'][number];
export const weekMs = 7 * 86_400_000;

export interface ForecastFigureData {
  asOfMs: number;
  timeZone: string;
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

/** The top of the axis. */
export function highestShown(data: ForecastFigureData): number {
  const tops = [
    100,
    data.limit * 1.3,
    ...data.history.weeks.map((week) => week.high),
    ...ahead(data, data.leave).map((week) => week.catchPerTrap.q90 * 1.2),
  ];
  return Math.min(5000, Math.max(...tops));
}
