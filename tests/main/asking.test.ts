import { describe, expect, test } from 'vitest';
import { createAsking } from '../../services/asking.ts';

function asking(start: string) {
  const clock = { ms: Date.parse(start), nowMs: () => clock.ms };
  const asked: string[] = [];
  return { clock, asked, ...createAsking(clock, (placeId) => asked.push(placeId)) };
}

describe('a new forecast is asked for', () => {
  test('after every entry', () => {
    const { asked, afterEntry } = asking('2026-05-13T06:10:00Z');
    afterEntry('a');
    afterEntry('a');
    expect(asked).toEqual(['a', 'a']);
  });

  test('after readings once in an hour of the clock, for each place', () => {
    const { clock, asked, afterReading } = asking('2026-05-13T06:59:00Z');
    for (const placeId of ['a', 'a', 'b', 'a']) afterReading(placeId);
    expect(asked).toEqual(['a', 'b']);
    clock.ms += 60_000;
    afterReading('a');
    expect(asked).toEqual(['a', 'b', 'a']);
  });

  test('not after a reading just after an entry', () => {
    const { asked, afterEntry, afterReading } = asking('2026-05-13T06:10:00Z');
    afterEntry('a');
    afterReading('a');
    expect(asked).toEqual(['a']);
  });

  test('once for each place after a load that held it back', () => {
    const { asked, afterEntry, afterReading, hold } = asking('2026-05-13T06:10:00Z');
    const letGo = hold();
    for (const placeId of ['a', 'b', 'a']) afterEntry(placeId);
    afterReading('c');
    expect(asked).toEqual([]);
    letGo();
    expect(asked).toEqual(['a', 'b', 'c']);
    afterEntry('a');
    expect(asked).toEqual(['a', 'b', 'c', 'a']);
  });

  // 05:00 in Paris is 03:00 UTC in summer (CEST, +02:00) and 04:00 UTC in winter (CET, +01:00): IANA tz, Europe/Paris.
  test.each([
    ['2026-07-01T03:00:00Z', ['paris']],
    ['2026-07-01T04:00:00Z', ['london']],
    ['2026-01-10T04:00:00Z', ['paris']],
    ['2026-01-10T05:00:00Z', ['london']],
    ['2026-01-10T06:00:00Z', []],
  ])('at %s, five in the morning of %s', (time, expected) => {
    const { asked, everyHour } = asking(time);
    everyHour([
      { id: 'paris', timeZone: 'Europe/Paris' },
      { id: 'london', timeZone: 'Europe/London' },
    ]);
    expect(asked).toEqual(expected);
  });
});
