/** Local calendar days of a place, right across clock changes. A day is text: YYYY-MM-DD. */
import { TZDate } from '@date-fns/tz';
import { addDays as addCalendarDays, format, getISODay } from 'date-fns';
import { dayMs } from '../units.ts';

const isoDay = 'yyyy-MM-dd';

/** The local day an instant falls on. */
export function localDay(ms: number, timeZone: string): string {
  return format(new TZDate(ms, timeZone), isoDay);
}

/** The first instant of a local day; 01:00 on days whose midnight is skipped by a clock change. */
export function startOfLocalDay(day: string, timeZone: string): number {
  const { year, month, date } = partsOf(day);
  return new TZDate(year, month - 1, date, timeZone).getTime();
}

/** A local hour of a day, 0 to 24; an hour that a clock change skips is the one after it. */
export function atLocalHour(day: string, hour: number, timeZone: string): number {
  const { year, month, date } = partsOf(day);
  return new TZDate(year, month - 1, date, hour, timeZone).getTime();
}

/** The calendar day n days later (earlier when negative). */
export function addDays(day: string, n: number): string {
  return format(addCalendarDays(plainDate(day), n), isoDay);
}

/** Calendar days from one day to another; negative when the other came before. */
export function daysBetween(from: string, to: string): number {
  return (plainDate(to).getTime() - plainDate(from).getTime()) / dayMs;
}

/** ISO weekday, 1 = Monday to 7 = Sunday. */
export function isoWeekday(day: string): number {
  return getISODay(plainDate(day));
}

/** A day as written in sentences: Thu 21 May. */
export function formatDay(day: string): string {
  return format(plainDate(day), 'EEE d MMMM');
}

/** Calendar arithmetic needs no time zone; UTC has no clock changes to trip over. */
function plainDate(day: string): TZDate {
  const { year, month, date } = partsOf(day);
  return new TZDate(year, month - 1, date, 'UTC');
}

function partsOf(day: string): { year: number; month: number; date: number } {
  const [year, month, date] = day.split('-').map(Number);
  if (!year || !month || !date) throw new RangeError(`write a day as YYYY-MM-DD, not ${day}`);
  return { year, month, date };
}
