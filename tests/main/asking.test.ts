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

  test('each morning', () => {
    const { asked, eachMorning } = asking('2026-05-13T04:00:00Z');
    eachMorning('a');
    expect(asked).toEqual(['a']);
  });
});
