/** A sensor's corrections, as they are told and changed on its page. */
import { afterEach, describe, expect, it } from 'vitest';
import {
  addAmiss,
  addedWords,
  withCorrection,
  withoutCorrection,
} from '../../dashboard/pages/sensors/corrected.ts';
import { celsiusStepTyped, habits, ownStep } from '../../dashboard/words/habits.ts';
import { sensor } from '../../services/model/index.ts';

const british = habits.value;
afterEach(() => {
  habits.value = british;
});

const bench = { id: 'bench', name: 'Bench', unit: 'Cel' as const, topic: 'own/topic' };
const may = { from: '2026-05-05', addC: 1.5 };
const june = { from: '2026-06-01', addC: -0.5 };

describe('the corrections of a sensor', () => {
  it('stand by day, one for each, and leave the rest of the sensor as it is', () => {
    const both = withCorrection(withCorrection(bench, june), may);
    expect(both).toEqual({ ...bench, corrections: [may, june] });
    const mended = withCorrection(both, { ...may, addC: 1 });
    expect(mended.corrections).toEqual([{ ...may, addC: 1 }, june]);
    expect(sensor.parse(mended)).toEqual(mended);
  });

  it('are taken away one by one', () => {
    const both = { ...bench, corrections: [may, june] };
    expect(withoutCorrection(both, may.from)).toEqual({ ...bench, corrections: [june] });
  });

  it('are told in words, by their sign', () => {
    expect([may, june, { ...may, addC: 0 }].map(addedWords)).toEqual([
      '1.5 °C is added',
      '0.5 °C is taken off',
      'nothing is added',
    ]);
  });

  // A kelvin is 1.8 degrees Fahrenheit (NIST SP 811, B.8): a difference knows no 32.
  it('are differences, also in degrees Fahrenheit', () => {
    habits.value = { ...british, degrees: 'F' };
    expect(addedWords({ ...may, addC: 5 })).toBe('9.0 °F is added');
    expect(celsiusStepTyped(-1.8)).toBe(-1);
    expect(ownStep(-1)).toBe(-1.8);
  });

  it('are refused in the degrees they were typed in, where the service refuses them', () => {
    const taken = (addC: number) => sensor.safeParse({ ...bench, corrections: [{ ...may, addC }] }).success;
    expect([taken(10), taken(10.1)]).toEqual([true, false]);
    expect([addAmiss('10'), addAmiss('-10')]).toEqual([undefined, undefined]);
    expect(addAmiss('-10.1')?.expected).toContain('10 °C');
    habits.value = { ...british, degrees: 'F' };
    expect(addAmiss('18')).toBeUndefined();
    expect(addAmiss('18.1')).toMatchObject({ expected: expect.stringContaining('18 °F'), received: '18.1' });
  });
});
