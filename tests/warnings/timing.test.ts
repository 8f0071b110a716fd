import { describe, expect, it } from 'vitest';
import type { TellingSettings, Warning } from '../../services/store/store.ts';
import { backOffMs, type Moment, mayLeave, quietUntil } from '../../services/warnings/timing.ts';

const at = (iso: string) => Date.parse(iso);
const timeZone = 'Europe/London';
const settings: TellingSettings = { mailTo: [], quietFromHour: 21, quietToHour: 7 };
const warning = (more: Partial<Warning> = {}): Warning => ({
  id: 'w',
  placeId: 'pear-yard',
  rule: 'order-by',
  raisedAtMs: 0,
  deadlineMs: at('2026-05-18T11:00:00Z'),
  text: 'Order by Mon 18 May.',
  reason: '',
  ends: '',
  state: 'open',
  ...more,
});
const moment = (now: string, more: Partial<Moment> = {}): Moment => ({
  settings,
  timeZone,
  nowMs: at(now),
  lastSentMs: undefined,
  getsLetter: false,
  ...more,
});
const until = (now: string, of = settings) => {
  const ms = quietUntil(of, timeZone, at(now));
  return ms === undefined ? undefined : new Date(ms).toISOString();
};

describe('quiet hours', () => {
  it('run over midnight, by the clock of the place', () => {
    expect(until('2026-05-13T19:59:00Z')).toBeUndefined();
    expect(until('2026-05-13T20:00:00Z')).toBe('2026-05-14T06:00:00.000Z');
    expect(until('2026-05-14T05:59:00Z')).toBe('2026-05-14T06:00:00.000Z');
    expect(until('2026-05-14T06:00:00Z')).toBeUndefined();
    // The same instant is an hour earlier on the clock in winter.
    expect(until('2026-01-13T20:59:00Z')).toBeUndefined();
    expect(until('2026-01-13T21:00:00Z')).toBe('2026-01-14T07:00:00.000Z');
  });

  it('end at the hour of the clock in the night it changes', () => {
    // 29 March and 25 October 2026, IANA tz Europe/London.
    expect(until('2026-03-28T22:00:00Z')).toBe('2026-03-29T06:00:00.000Z');
    expect(until('2026-10-24T22:00:00Z')).toBe('2026-10-25T07:00:00.000Z');
  });

  it('may lie within a day, and may be none', () => {
    expect(until('2026-05-13T12:00:00Z', { ...settings, quietFromHour: 12, quietToHour: 14 })).toBe(
      '2026-05-13T13:00:00.000Z',
    );
    expect(until('2026-05-13T02:00:00Z', { ...settings, quietFromHour: 0, quietToHour: 0 })).toBeUndefined();
  });
});

describe('a message may leave', () => {
  it('outside quiet hours, once a local day', () => {
    expect(mayLeave([warning()], moment('2026-05-13T03:00:00Z'))).toBe(false);
    expect(mayLeave([warning()], moment('2026-05-13T06:00:00Z'))).toBe(true);
    const sentAt = (sent: string) => ({ lastSentMs: at(sent) });
    expect(mayLeave([warning()], moment('2026-05-13T15:00:00Z', sentAt('2026-05-13T06:00:00Z')))).toBe(false);
    expect(mayLeave([warning()], moment('2026-05-14T06:00:00Z', sentAt('2026-05-13T19:00:00Z')))).toBe(true);
  });

  it('a second time a day when something is urgent, yet not in quiet hours', () => {
    const urgent = warning({ urgentFromMs: at('2026-05-17T11:00:00Z') });
    const sent = { lastSentMs: at('2026-05-17T06:00:00Z') };
    expect(mayLeave([urgent], moment('2026-05-17T10:59:00Z', sent))).toBe(false);
    expect(mayLeave([urgent], moment('2026-05-17T11:00:00Z', sent))).toBe(true);
    expect(mayLeave([urgent], moment('2026-05-17T21:00:00Z', sent))).toBe(false);
  });

  it('in quiet hours only when its deadline would pass in them', () => {
    const tonight = warning({ urgentFromMs: 0, deadlineMs: at('2026-05-14T05:00:00Z') });
    expect(mayLeave([tonight], moment('2026-05-13T21:00:00Z'))).toBe(true);
    expect(mayLeave([tonight], moment('2026-05-14T05:30:00Z'))).toBe(false);
  });

  it('on the day of the letter with the letter, unless urgent', () => {
    // 17 May 2026 is a Sunday; 18:00 in London is 17:00 UTC.
    const letter = { settings: { ...settings, letter: { weekday: 7, hour: 18 } }, getsLetter: true };
    expect(mayLeave([warning()], moment('2026-05-17T08:00:00Z', letter))).toBe(false);
    expect(mayLeave([warning({ urgentFromMs: 0 })], moment('2026-05-17T08:00:00Z', letter))).toBe(true);
    expect(mayLeave([warning()], moment('2026-05-17T17:00:00Z', letter))).toBe(true);
    expect(mayLeave([warning()], moment('2026-05-16T08:00:00Z', letter))).toBe(true);
    expect(mayLeave([warning()], moment('2026-05-17T08:00:00Z', { ...letter, getsLetter: false }))).toBe(
      true,
    );
  });
});

it('tries again after five minutes, later each time, and never later than six hours', () => {
  expect([0, 1, 2, 3].map((attempts) => backOffMs(attempts) / 60_000)).toEqual([5, 10, 20, 40]);
  expect(backOffMs(50) / 3_600_000).toBe(6);
});
