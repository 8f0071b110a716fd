/**
 * Days and times in the words of the pages. Days are `YYYY-MM-DD` in the place's own time zone,
 * instants are UTC milliseconds. No words break inside a date: see `unbroken`.
 */
import { habits } from './habits.ts';

const weekdays = ['Sunday', 'Monday', 'Tuesday', 'Wednesday', 'Thursday', 'Friday', 'Saturday'] as const;
const months = [
  'January',
  'February',
  'March',
  'April',
  'May',
  'June',
  'July',
  'August',
  'September',
  'October',
  'November',
  'December',
] as const;
const dayMs = 86_400_000;

const formats = new Map<string, Intl.DateTimeFormat>();

function zoned(ms: number, timeZone: string): string {
  let format = formats.get(timeZone);
  if (!format) {
    format = new Intl.DateTimeFormat('sv-SE', { timeZone, dateStyle: 'short', timeStyle: 'medium' });
    formats.set(timeZone, format);
  }
  return format.format(ms);
}

/** Whether the name of a time zone, such as `Europe/Paris`, is known here. */
export function isTimeZone(name: string): boolean {
  try {
    zoned(0, name);
    return true;
  } catch {
    return false;
  }
}

/** The local calendar day of an instant. */
export const localDay = (ms: number, timeZone: string): string => zoned(ms, timeZone).slice(0, 10);

/** The local time of day, `06:10`. */
export const localClock = (ms: number, timeZone: string): string => zoned(ms, timeZone).slice(11, 16);

/** The instant of a local day and hour; around a clock change it may be an hour off, never a day. */
export function instantOf(day: string, hour: number, timeZone: string): number {
  const guess = Date.parse(`${day}T00:00:00Z`) + hour * 3_600_000;
  const shown = Date.parse(`${zoned(guess, timeZone).replace(' ', 'T')}Z`);
  return guess - (shown - guess);
}

/** A day typed in becomes an instant: now if it is today, else noon of that day; '' without a day. */
export function entryTime(day: string, nowMs: number, timeZone: string): string {
  if (day === '') return '';
  return new Date(day === localDay(nowMs, timeZone) ? nowMs : instantOf(day, 12, timeZone)).toISOString();
}

const utc = (day: string) => new Date(`${day}T00:00:00Z`);
const monthOf = (day: string) => months[utc(day).getUTCMonth()] ?? '';
const weekdayOf = (day: string) => weekdays[utc(day).getUTCDay()] ?? '';

/** Calendar arithmetic. */
export const addDays = (day: string, days: number): string =>
  new Date(utc(day).getTime() + days * dayMs).toISOString().slice(0, 10);
export const daysBetween = (from: string, to: string): number =>
  Math.round((utc(to).getTime() - utc(from).getTime()) / dayMs);

const inOrder = (date: number, month: string): string =>
  habits.value.dayFirst ? `${date} ${month}` : `${month} ${date}`;
/** `21 May`, or `May 21`. */
export const dayAndMonth = (day: string): string => inOrder(utc(day).getUTCDate(), monthOf(day));
/** `21 May`, months cut to three letters, for chart axes. */
export const shortDay = (day: string): string => inOrder(utc(day).getUTCDate(), monthOf(day).slice(0, 3));
/** `Thu`. */
export const shortWeekday = (day: string): string => weekdayOf(day).slice(0, 3);
/** `Thu 21 May`. */
export const dayWords = (day: string): string => `${shortWeekday(day)} ${dayAndMonth(day)}`;
/** `Thursday 21 May`. */
export const longDayWords = (day: string): string => `${weekdayOf(day)} ${dayAndMonth(day)}`;

/** `30 May to 8 June`, `4 to 11 June`, or one day when both are the same; across a year it names both years. */
export function rangeWords(from: string, to: string): string {
  if (from === to) return dayAndMonth(from);
  const years = [from, to].map((day) => day.slice(0, 4));
  if (years[0] !== years[1]) return `${dayAndMonth(from)} ${years[0]} to ${dayAndMonth(to)} ${years[1]}`;
  const sameMonth = from.slice(0, 7) === to.slice(0, 7);
  if (!habits.value.dayFirst)
    return `${dayAndMonth(from)} to ${sameMonth ? utc(to).getUTCDate() : dayAndMonth(to)}`;
  return `${sameMonth ? utc(from).getUTCDate() : dayAndMonth(from)} to ${dayAndMonth(to)}`;
}

/** The day a season ends next, from its `MM-DD` and the present day. */
export function nextSeasonEnd(monthAndDay: string, today: string): string {
  const year = Number(today.slice(0, 4)) + (monthAndDay < today.slice(5) ? 1 : 0);
  return `${year}-${monthAndDay}`;
}

/** A range of days that something is expected in: `on Mon 1 June`, `4 to 11 June`, `after the season`. */
export function expectedWords(from: string, to: string, seasonEnd: string): string {
  if (from > seasonEnd) return 'after the season';
  if (to > seasonEnd) return `${dayAndMonth(from)} or later, perhaps after the season`;
  return from === to ? `on ${dayWords(from)}` : rangeWords(from, to);
}

/** ISO 8601 week number: weeks begin on Monday, week 1 holds the first Thursday. */
export function isoWeek(day: string): number {
  const thursday = addDays(day, 3 - ((utc(day).getUTCDay() + 6) % 7));
  return 1 + Math.floor(daysBetween(`${thursday.slice(0, 4)}-01-01`, thursday) / 7);
}

/** The number of the week as the person's calendar has it: by ISO, or from Sunday with week 1 holding 1 January. */
export function weekNumber(day: string): number {
  if (habits.value.weekStart === 1) return isoWeek(day);
  const first = `${day.slice(0, 4)}-01-01`;
  const nextYear = `${Number(day.slice(0, 4)) + 1}-01-01`;
  // The last days of a year belong to week 1 of the next when its 1 January is in their week.
  if (daysBetween(day, nextYear) <= utc(nextYear).getUTCDay()) return 1;
  return 1 + Math.floor((daysBetween(first, day) + utc(first).getUTCDay()) / 7);
}

/** `6 minutes`, `2 hours 46 minutes`, `3 days`: an age or a length of time. */
export function spanWords(ms: number): string {
  const minutes = Math.max(0, Math.round(ms / 60_000));
  const hours = Math.floor(minutes / 60);
  const many = (n: number, word: string) => `${n} ${word}${n === 1 ? '' : 's'}`;
  if (minutes < 1) return 'less than a minute';
  if (hours < 1) return many(minutes, 'minute');
  if (hours >= 48) return many(Math.floor(hours / 24), 'day');
  if (hours >= 6 || minutes % 60 === 0) return many(hours, 'hour');
  return `${many(hours, 'hour')} ${many(minutes % 60, 'minute')}`;
}
export const ageWords = (ms: number): string => `${spanWords(ms)} ago`;
