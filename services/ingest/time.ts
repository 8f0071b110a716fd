/** The time a board claims, and whether it can be believed. */
import { z } from 'zod';
import type { Refusal } from '../refusals.ts';

const firstYearMs = Date.UTC(2000, 0, 1);
const aheadMs = 5 * 60_000;
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

/** Why a time cannot be right when the message came at `arrivedMs`; undefined when it can. */
export function implausibleTime(timeMs: number, arrivedMs: number): Refusal | undefined {
  if (timeMs >= firstYearMs && timeMs <= arrivedMs + aheadMs) return undefined;
  const received = isoText(timeMs);
  const found =
    timeMs < firstYearMs
      ? `The time ${received} lies before 2000: the clock of the board was not set.`
      : `The time ${received} lies ahead of ${isoText(arrivedMs)}, when the message came.`;
  const expected = 'set the clock of the board, or leave the time out: the time of arrival is used then';
  return {
    code: 'time-implausible',
    reason: `${found} ${sentence(expected)}`,
    issues: [{ path: 'time', expected, received }],
  };
}

/** ISO 8601 in UTC; a plain number where no calendar reaches. */
export function isoText(timeMs: number): string {
  return Math.abs(timeMs) <= 8.64e15 ? new Date(timeMs).toISOString() : `${timeMs} ms`;
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
