/** The time a board claims, and whether it can be believed. */
import { z } from 'zod';
import { formatDay } from '../model/index.ts';
import type { Refusal } from '../refusals.ts';

const firstYearMs = Date.UTC(2000, 0, 1);
const aheadMs = 5 * 60_000;
/** The last instant a Date can hold (ECMAScript, time values and time range). */
const lastMs = 8.64e15;
/** Between these, days have years of four digits. */
const calendarMs = { from: Date.UTC(1000, 0, 2), to: Date.UTC(9999, 11, 30) };
/** Smaller numbers are seconds (this one would be the year 5138), larger ones milliseconds (from 1973). */
const leastMilliseconds = 1e11;
const zoned = z.iso.datetime({ offset: true });
const local = z.iso.datetime({ local: true });

/**
 * Reads ISO 8601 text with its offset, or the epoch in seconds or milliseconds (as number or text).
 * Undefined when the board sent no time.
 */
export function boardTime(value: unknown): number | undefined | Refusal {
  if (value === undefined || value === null || value === '') return undefined;
  if (typeof value !== 'number' && typeof value !== 'string') return unreadable(JSON.stringify(value));
  const number = Number(value);
  if (Number.isFinite(number)) return Math.abs(number) < leastMilliseconds ? number * 1000 : number;
  const text = String(value).trim().replace(' ', 'T').toUpperCase();
  const iso = text.replace(/([+-]\d\d)(\d\d)$/, '$1:$2').replace(/(T\d\d:\d\d)(Z|[+-])/, '$1:00$2');
  if (zoned.safeParse(iso).success) return Date.parse(iso);
  return local.safeParse(iso).success ? withoutZone(text) : unreadable(String(value));
}

/** Why a time cannot be right when the message came at `arrivedMs`; undefined when it can. Worded in local time. */
export function implausibleTime(timeMs: number, arrivedMs: number, timeZone = 'UTC'): Refusal | undefined {
  if (timeMs >= firstYearMs && timeMs <= arrivedMs + aheadMs) return undefined;
  const received = isoText(timeMs);
  const told = localWords(timeMs, timeZone, arrivedMs);
  const found =
    timeMs < firstYearMs
      ? `The time ${told} lies before 2000: the clock of the board was not set.`
      : `The time ${told} lies ahead of ${localWords(arrivedMs, timeZone, arrivedMs)}, when the message came.`;
  const expected = 'set the clock of the board, or leave the time out: the time of arrival is used then';
  return {
    code: 'time-implausible',
    reason: `${found} ${sentence(expected)}`,
    issues: [{ path: 'time', expected, received }],
  };
}

/** `Mon 25 May 12:00` on the clock of the place; the year is named when it is another than that of `nearMs`. */
export function localWords(timeMs: number, timeZone: string, nearMs: number): string {
  if (timeMs < calendarMs.from || timeMs > calendarMs.to) return isoText(timeMs);
  const [day, clock] = onTheClock(timeMs, timeZone);
  const [today] = onTheClock(nearMs, timeZone);
  const year = day.slice(0, 4) === today.slice(0, 4) ? '' : ` ${day.slice(0, 4)}`;
  return `${wordsOfDay(day)}${year} ${clock}`;
}

let lastDay = { day: '', words: '' };

/** Most messages are of the same day as the one before. */
function wordsOfDay(day: string): string {
  if (day !== lastDay.day) lastDay = { day, words: formatDay(day) };
  return lastDay.words;
}

const clocks = new Map<string, Intl.DateTimeFormat>();

/** Day (ISO 8601) and time of day. To make a formatter takes longer than to store a reading, so they are kept. */
function onTheClock(timeMs: number, timeZone: string): [day: string, clock: string] {
  const known = clocks.get(timeZone);
  // In Sweden dates are written as in ISO 8601.
  const clock =
    known ?? new Intl.DateTimeFormat('sv-SE', { timeZone, dateStyle: 'short', timeStyle: 'short' });
  if (!known) clocks.set(timeZone, clock);
  const text = clock.format(timeMs);
  return [text.slice(0, 10), text.slice(11)];
}

/** ISO 8601 in UTC; a plain number where no calendar reaches. */
export function isoText(timeMs: number): string {
  return Math.abs(timeMs) <= lastMs ? new Date(timeMs).toISOString() : `${timeMs} ms`;
}

function withoutZone(received: string): Refusal {
  const expected = `send it with its offset, such as ${received}Z or ${received}+02:00`;
  return {
    code: 'time-implausible',
    reason: `The time ${received} names no zone, so it may be hours off. ${sentence(expected)}`,
    issues: [{ path: 'time', expected, received }],
  };
}

function unreadable(received: string): Refusal {
  const expected = 'send ISO 8601 with its offset, such as 2026-05-13T06:10:00Z, or the epoch in seconds';
  return {
    code: 'time-implausible',
    reason: `The time came as ${received.slice(0, 60)}. ${sentence(expected)}`,
    issues: [{ path: 'time', expected, received: received.slice(0, 60) }],
  };
}

function sentence(words: string): string {
  return `${words.charAt(0).toUpperCase()}${words.slice(1)}.`;
}
