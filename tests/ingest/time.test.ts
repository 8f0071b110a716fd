import { describe, expect, it } from 'vitest';
import { boardTime, implausibleTime } from '../../services/ingest/time.ts';

const arrivedMs = Date.parse('2026-05-13T06:10:00Z');

describe('the time a board claims', () => {
  it.each([
    '2026-05-13T06:10:00Z',
    '2026-05-13T08:10:00+02:00',
    '2026-05-13T08:10:00+0200',
    '2026-05-13 06:10:00Z',
    '2026-05-13T06:10Z',
    '2026-05-13T06:10:00.000z',
    // 2026-05-13T06:10:00Z in seconds since 1970-01-01, by `date -u -d 2026-05-13T06:10:00Z +%s`.
    1778652600,
    1778652600000,
    '1778652600',
  ])('%j is ten past six in Greenwich', (value) => {
    expect(boardTime(value)).toBe(arrivedMs);
  });

  it.each([undefined, null, ''])('%j is no time at all', (value) => {
    expect(boardTime(value)).toBeUndefined();
  });

  it('is refused without its zone, with the words to add', () => {
    expect(boardTime('2026-05-13T06:10:00')).toMatchObject({
      code: 'time-implausible',
      reason: expect.stringContaining('names no zone'),
      issues: [{ path: 'time', expected: expect.stringContaining('2026-05-13T06:10:00Z') }],
    });
  });

  it.each(['yesterday', '2026-02-30T06:10:00Z', '13.05.2026 06:10', {}, true])('%j is refused', (value) => {
    expect(boardTime(value)).toMatchObject({ code: 'time-implausible' });
  });

  it.each([
    ['the clock was never set', 0],
    ['NTP epoch of 1900', Date.UTC(1900, 0, 1)],
    ['seconds since boot', 86_400_000],
    ['the last moment of 1999', Date.UTC(2000, 0, 1) - 1],
    ['five minutes and a bit ahead', arrivedMs + 300_001],
    ['microseconds taken for milliseconds', 1778652600000000],
    ['no calendar reaches there', 1e300],
  ])('is not believed: %s', (_, timeMs) => {
    expect(implausibleTime(timeMs, arrivedMs)).toMatchObject({ code: 'time-implausible' });
  });

  it.each([
    ['the first moment of 2000', Date.UTC(2000, 0, 1)],
    ['five minutes ahead', arrivedMs + 300_000],
    ['a year late', arrivedMs - 365 * 86_400_000],
  ])('is believed: %s', (_, timeMs) => {
    expect(implausibleTime(timeMs, arrivedMs)).toBeUndefined();
  });
});
