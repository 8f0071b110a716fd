import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { openStore } from '../../services/store/sqlite.ts';
import type { Store } from '../../services/store/store.ts';
import { isDue, type Job, lastDueMs } from '../../services/warnings/schedule.ts';
import { dayMs, hourMs } from './house.ts';

const at = (iso: string) => Date.parse(iso);
const dueAt = (job: Omit<Job, 'name'>, timeZone: string, now: string) =>
  new Date(lastDueMs({ name: 'job', ...job }, timeZone, at(now))).toISOString();

// Offsets and changes: IANA time zone database (Europe/London, America/New_York, Australia/Lord_Howe, Africa/Cairo).
describe('the instant a job was last due', () => {
  it('is the hour of the place, today or the day before', () => {
    expect(dueAt({ hour: 5 }, 'Europe/London', '2026-05-13T04:00:00Z')).toBe('2026-05-13T04:00:00.000Z');
    expect(dueAt({ hour: 5 }, 'Europe/London', '2026-05-13T03:59:59Z')).toBe('2026-05-12T04:00:00.000Z');
    expect(dueAt({ hour: 5 }, 'America/New_York', '2026-05-13T04:00:00Z')).toBe('2026-05-12T09:00:00.000Z');
  });

  it('on one weekday goes back to the last such day', () => {
    // 10 May 2026 is a Sunday.
    const letter = { hour: 18, weekday: 7 };
    expect(dueAt(letter, 'Europe/London', '2026-05-13T09:00:00Z')).toBe('2026-05-10T17:00:00.000Z');
    expect(dueAt(letter, 'Europe/London', '2026-05-17T16:59:00Z')).toBe('2026-05-10T17:00:00.000Z');
    expect(dueAt(letter, 'Europe/London', '2026-05-17T17:00:00Z')).toBe('2026-05-17T17:00:00.000Z');
  });

  it('in spring, an hour that does not exist is the one after it', () => {
    // 29 March 2026: 01:00 GMT is followed by 02:00 BST.
    expect(dueAt({ hour: 1 }, 'Europe/London', '2026-03-29T12:00:00Z')).toBe('2026-03-29T01:00:00.000Z');
    // 8 March 2026: 02:00 EST is followed by 03:00 EDT.
    expect(dueAt({ hour: 2 }, 'America/New_York', '2026-03-08T12:00:00Z')).toBe('2026-03-08T07:00:00.000Z');
    // 24 April 2026, a Friday: midnight itself is skipped.
    expect(dueAt({ hour: 0 }, 'Africa/Cairo', '2026-04-24T12:00:00Z')).toBe('2026-04-23T22:00:00.000Z');
  });
});

describe('a job', () => {
  let store: Store;
  beforeEach(() => {
    store = openStore({ path: ':memory:' });
  });
  afterEach(() => store.close());

  /** Instants at which the job runs when looked at every `stepMs`. */
  function runs(job: Job, timeZone: string, from: string, to: string, stepMs = 60_000): string[] {
    const ran: string[] = [];
    for (let nowMs = at(from); nowMs <= at(to); nowMs += stepMs) {
      const due = isDue(store.telling.jobs, 'pear-yard', job, timeZone, nowMs);
      if (!due) continue;
      ran.push(new Date(nowMs).toISOString());
      due.done();
    }
    return ran;
  }
  const daily = (hour: number): Job => ({ name: `daily-${hour}`, hour });

  it('runs once a local day, also on the days of 23 and 25 hours', () => {
    // Clocks go forward on 29 March and back on 25 October 2026.
    expect(runs(daily(5), 'Europe/London', '2026-03-27T12:00:00Z', '2026-03-30T12:00:00Z')).toEqual([
      '2026-03-28T05:00:00.000Z',
      '2026-03-29T04:00:00.000Z',
      '2026-03-30T04:00:00.000Z',
    ]);
    expect(runs(daily(6), 'Europe/London', '2026-10-23T12:00:00Z', '2026-10-26T12:00:00Z')).toEqual([
      '2026-10-24T05:00:00.000Z',
      '2026-10-25T06:00:00.000Z',
      '2026-10-26T06:00:00.000Z',
    ]);
  });

  it('runs once in the hour that comes twice', () => {
    // 25 October 2026: 01:00 to 02:00 BST is followed by 01:00 to 02:00 GMT.
    const ran = runs(daily(1), 'Europe/London', '2026-10-24T12:00:00Z', '2026-10-25T12:00:00Z');
    expect(ran).toHaveLength(1);
    expect(ran[0]).toMatch(/^2026-10-25T0[01]:00:00/);
  });

  it.each(['Europe/London', 'America/New_York', 'Australia/Lord_Howe', 'Africa/Cairo'])(
    'runs once in each day of the months in which the clocks of %s change',
    (timeZone) => {
      const job = { name: timeZone, hour: 2 };
      const spring = runs(job, timeZone, '2026-03-01T16:00:00Z', '2026-05-01T16:00:00Z', hourMs);
      expect(spring).toHaveLength(61);
      runs(job, timeZone, '2026-09-24T16:00:00Z', '2026-09-25T16:00:00Z', hourMs);
      const autumn = runs(job, timeZone, '2026-09-25T17:00:00Z', '2026-11-10T16:00:00Z', hourMs);
      expect(autumn).toHaveLength(46);
    },
  );

  it('that was missed while the power was away is caught up once', () => {
    const job = daily(5);
    runs(job, 'Europe/London', '2026-05-01T00:00:00Z', '2026-05-02T00:00:00Z');
    expect(runs(job, 'Europe/London', '2026-05-12T13:37:00Z', '2026-05-13T12:00:00Z')).toEqual([
      '2026-05-12T13:37:00.000Z',
      '2026-05-13T04:00:00.000Z',
    ]);
  });

  it('that was not finished is due again; one seen for the first time is not', () => {
    const job = daily(5);
    const now = at('2026-05-13T12:00:00Z');
    expect(isDue(store.telling.jobs, 'pear-yard', job, 'Europe/London', now)).toBeUndefined();
    const tomorrow = now + dayMs;
    expect(isDue(store.telling.jobs, 'pear-yard', job, 'Europe/London', tomorrow)).toBeDefined();
    const again = isDue(store.telling.jobs, 'pear-yard', job, 'Europe/London', tomorrow + hourMs);
    expect(again?.dueMs).toBe(at('2026-05-14T04:00:00Z'));
    again?.done();
    expect(isDue(store.telling.jobs, 'pear-yard', job, 'Europe/London', tomorrow + hourMs)).toBeUndefined();
  });

  it('that the clock is set back behind does not run twice', () => {
    const job = daily(5);
    runs(job, 'Europe/London', '2026-05-12T00:00:00Z', '2026-05-13T05:00:00Z');
    expect(runs(job, 'Europe/London', '2026-05-12T23:00:00Z', '2026-05-13T12:00:00Z')).toEqual([]);
  });
});
