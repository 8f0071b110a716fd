import { getISOWeek } from 'date-fns';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  addDays,
  ageWords,
  daysBetween,
  dayWords,
  entryTime,
  expectedWords,
  instantOf,
  isoWeek,
  isTimeZone,
  localClock,
  localDay,
  longDayWords,
  nextSeasonEnd,
  rangeWords,
  spanWords,
} from '../../dashboard/words/dates.ts';

const days = fc
  .date({ min: new Date('2001-01-01T00:00:00Z'), max: new Date('2099-12-31T00:00:00Z'), noInvalidDate: true })
  .map((date) => date.toISOString().slice(0, 10));

describe('calendar days', () => {
  // Independent reference: date-fns getISOWeek (ISO 8601, weeks from Monday, week 1 holds the first Thursday).
  it('number weeks as ISO 8601', () => {
    fc.assert(
      fc.property(days, (day) => {
        const [year, month, date] = day.split('-').map(Number);
        expect(isoWeek(day)).toBe(getISOWeek(new Date(year!, month! - 1, date!)));
      }),
      { seed: 7, numRuns: 400 },
    );
  });

  // ISO 8601:2004 §3.2.2 (from memory): 2008-12-29 is in week 1 of 2009, 2010-01-03 in week 53 of 2009.
  it.each([
    ['2008-12-29', 1],
    ['2010-01-03', 53],
    ['2026-05-13', 20],
  ])('%s is in week %i', (day, week) => expect(isoWeek(day)).toBe(week));

  it('add and subtract', () => {
    fc.assert(
      fc.property(days, fc.integer({ min: -800, max: 800 }), (day, n) => {
        expect(daysBetween(day, addDays(day, n))).toBe(n);
      }),
      { seed: 7 },
    );
  });

  it('are told the way a seed label tells them', () => {
    expect(dayWords('2026-05-21')).toBe('Thu 21 May');
    expect(longDayWords('2026-05-13')).toBe('Wednesday 13 May');
    expect(rangeWords('2026-05-30', '2026-06-08')).toBe('30 May to 8 June');
    expect(rangeWords('2026-06-04', '2026-06-11')).toBe('4 to 11 June');
    expect(rangeWords('2026-06-04', '2026-06-04')).toBe('4 June');
    expect(rangeWords('2026-12-28', '2027-01-04')).toBe('28 December 2026 to 4 January 2027');
  });

  it('are told as expected within the season, and after it as that', () => {
    const end = nextSeasonEnd('10-15', '2026-05-13');
    expect(end).toBe('2026-10-15');
    expect(nextSeasonEnd('04-30', '2026-11-02')).toBe('2027-04-30');
    expect(nextSeasonEnd('10-15', '2026-10-15')).toBe('2026-10-15');
    expect(expectedWords('2026-06-01', '2026-06-01', end)).toBe('on Mon 1 June');
    expect(expectedWords('2026-06-04', '2026-06-11', end)).toBe('4 to 11 June');
    expect(expectedWords('2026-10-10', '2026-10-16', end)).toBe(
      '10 October or later, perhaps after the season',
    );
    expect(expectedWords('2026-12-28', '2027-01-04', end)).toBe('after the season');
  });
});

describe('a place has its own clock', () => {
  // IANA tz database: Auckland is at UTC+12 in May, Los Angeles at UTC-7.
  it('gives the local day and time', () => {
    const ms = Date.parse('2026-05-13T20:30:00Z');
    expect(localDay(ms, 'Pacific/Auckland')).toBe('2026-05-14');
    expect(localClock(ms, 'Pacific/Auckland')).toBe('08:30');
    expect(localDay(ms, 'America/Los_Angeles')).toBe('2026-05-13');
    expect(localClock(ms, 'America/Los_Angeles')).toBe('13:30');
  });

  it.each(['Pacific/Auckland', 'America/St_Johns', 'Europe/Lisbon', 'Asia/Kathmandu'])(
    'finds noon of a day again in %s',
    (timeZone) => {
      fc.assert(
        fc.property(days, (day) => {
          const ms = instantOf(day, 12, timeZone);
          expect(localDay(ms, timeZone)).toBe(day);
          expect(localClock(ms, timeZone)).toBe('12:00');
        }),
        { seed: 3 },
      );
    },
  );
});

describe('ages', () => {
  it.each([
    [20_000, 'less than a minute'],
    [6 * 60_000, '6 minutes'],
    [60 * 60_000, '1 hour'],
    [166 * 60_000, '2 hours 46 minutes'],
    [9.2 * 3_600_000, '9 hours'],
    [49 * 3_600_000, '2 days'],
  ])('%d ms is %s', (ms, words) => expect(spanWords(ms)).toBe(words));
  it('are told as past', () => expect(ageWords(60_000)).toBe('1 minute ago'));
});

describe('a day typed in', () => {
  const nowMs = Date.parse('2026-05-13T22:30:00Z');
  it('is now on the local day of now, which in Auckland is the next one', () => {
    expect(entryTime('2026-05-13', nowMs, 'Europe/London')).toBe('2026-05-13T22:30:00.000Z');
    expect(entryTime('2026-05-14', nowMs, 'Pacific/Auckland')).toBe('2026-05-13T22:30:00.000Z');
  });
  it('is noon of any other day, in winter and in summer time', () => {
    expect(entryTime('2026-05-06', nowMs, 'Europe/London')).toBe('2026-05-06T11:00:00.000Z');
    expect(entryTime('2026-02-06', nowMs, 'Europe/London')).toBe('2026-02-06T12:00:00.000Z');
    expect(entryTime('2026-05-13', nowMs, 'Pacific/Auckland')).toBe('2026-05-13T00:00:00.000Z');
  });
  it('is nothing without a day', () => expect(entryTime('', nowMs, 'UTC')).toBe(''));
  it('needs a time zone that exists', () => {
    expect([isTimeZone('Europe/Paris'), isTimeZone('Paris'), isTimeZone('')]).toEqual([true, false, false]);
  });
});
