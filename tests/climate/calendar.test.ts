/** Local days around clock changes; the changes of 2026 as laid down by law in each zone (tz database). */
import { describe, expect, it } from 'vitest';
import {
  addDays,
  atLocalHour,
  daysBetween,
  formatDay,
  isoWeekday,
  localDay,
  startOfLocalDay,
} from '../../services/model/climate/calendar.ts';

const utc = (text: string) => Date.parse(text);
const lengthHours = (day: string, zone: string) =>
  (startOfLocalDay(addDays(day, 1), zone) - startOfLocalDay(day, zone)) / 3_600_000;

describe('Europe/London', () => {
  it('noon stays noon on the days the clock changes', () => {
    const noon = (day: string) => new Date(atLocalHour(day, 12, 'Europe/London')).toISOString();
    expect(['2026-03-28', '2026-03-29', '2026-10-25'].map(noon)).toEqual([
      '2026-03-28T12:00:00.000Z',
      '2026-03-29T11:00:00.000Z',
      '2026-10-25T12:00:00.000Z',
    ]);
    expect(atLocalHour('2026-03-28', 24, 'Europe/London')).toBe(
      startOfLocalDay('2026-03-29', 'Europe/London'),
    );
  });

  it('29 March 2026 has 23 hours, 25 October has 25, others 24', () => {
    expect(lengthHours('2026-03-29', 'Europe/London')).toBe(23);
    expect(lengthHours('2026-10-25', 'Europe/London')).toBe(25);
    expect(lengthHours('2026-03-28', 'Europe/London')).toBe(24);
    expect(lengthHours('2026-03-30', 'Europe/London')).toBe(24);
  });

  it('a day begins at 00:00 in winter and 23:00 UTC of the day before in summer', () => {
    expect(startOfLocalDay('2026-03-29', 'Europe/London')).toBe(utc('2026-03-29T00:00:00Z'));
    expect(startOfLocalDay('2026-03-30', 'Europe/London')).toBe(utc('2026-03-29T23:00:00Z'));
    expect(localDay(utc('2026-03-29T22:59:59.999Z'), 'Europe/London')).toBe('2026-03-29');
    expect(localDay(utc('2026-03-29T23:00:00Z'), 'Europe/London')).toBe('2026-03-30');
    expect(localDay(utc('2026-10-25T23:30:00Z'), 'Europe/London')).toBe('2026-10-25');
  });
});

describe('America/New_York', () => {
  it('8 March 2026 has 23 hours, 1 November has 25', () => {
    expect(lengthHours('2026-03-08', 'America/New_York')).toBe(23);
    expect(lengthHours('2026-11-01', 'America/New_York')).toBe(25);
  });

  it('a day begins at 05:00 UTC in winter and 04:00 UTC in summer', () => {
    expect(startOfLocalDay('2026-03-08', 'America/New_York')).toBe(utc('2026-03-08T05:00:00Z'));
    expect(startOfLocalDay('2026-03-09', 'America/New_York')).toBe(utc('2026-03-09T04:00:00Z'));
    expect(localDay(utc('2026-11-02T04:30:00Z'), 'America/New_York')).toBe('2026-11-01');
    expect(localDay(utc('2026-11-02T05:00:00Z'), 'America/New_York')).toBe('2026-11-02');
  });
});

it('a day whose midnight is skipped begins at one o’clock (Africa/Cairo, 28 April 2023)', () => {
  const startMs = startOfLocalDay('2023-04-28', 'Africa/Cairo');
  expect(startMs).toBe(utc('2023-04-27T22:00:00Z'));
  expect(localDay(startMs, 'Africa/Cairo')).toBe('2023-04-28');
  expect(localDay(startMs - 1, 'Africa/Cairo')).toBe('2023-04-27');
});

it('counts days over month ends, leap days and clock changes', () => {
  expect(addDays('2026-03-28', 2)).toBe('2026-03-30');
  expect(addDays('2028-02-28', 1)).toBe('2028-02-29');
  expect(addDays('2026-01-01', -1)).toBe('2025-12-31');
});

// ISO 8601: 1 January 2026 was a Thursday.
it('knows the weekday and writes it short', () => {
  expect(isoWeekday('2026-01-01')).toBe(4);
  expect(isoWeekday('2026-05-24')).toBe(7);
  expect(formatDay('2026-05-21')).toBe('Thu 21 May');
  expect(formatDay('2026-12-31')).toBe('Thu 31 December');
});

it('refuses a day that is not written as one', () => {
  expect(() => startOfLocalDay('soon', 'Europe/London')).toThrow(/YYYY-MM-DD/);
});

it('days between two days, across a leap day and clock changes', () => {
  expect(daysBetween('2028-02-28', '2028-03-01')).toBe(2);
  expect(daysBetween('2026-03-28', '2026-03-30')).toBe(2);
  expect(daysBetween('2026-05-13', '2026-05-10')).toBe(-3);
});
