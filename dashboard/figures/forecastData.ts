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
