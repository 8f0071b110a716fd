import { type Refusal, refusals } from '../../refusals.ts';
import { toCelsius } from '../units.ts';
import type { Decoder } from './decoder.ts';
import { readNumber } from './number.ts';

/** A payload that is one number, the temperature in the unit of the sensor: `19.4`. */
export const plainNumber: Decoder = (text, { arrivedMs, unit }) => {
  const value = readNumber(text);
  if (value === 'dead') return deadNumber(text);
  if (value === 'odd') return noNumber(text);
  const reading = { temperatureC: toCelsius(value, unit), timeMs: arrivedMs, timeFrom: 'arrival' } as const;
  return { readings: [reading], unitStated: false, notes: [] };
};

function deadNumber(text: string): Refusal {
  if (text.trim() === '')
    return { code: 'value-missing', reason: 'The message was empty. Send a temperature such as 19.4.' };
  const received = text.trim();
  return {
    code: 'value-not-finite',
    reason: `The temperature came as ${received}. ${refusals['value-not-finite'].whatToDo}`,
    issues: [{ path: 'temperature', expected: 'send a number such as 19.4', received }],
  };
}

function noNumber(text: string): Refusal {
  const received = text.trim().slice(0, 60);
  const comma = /^[+-]?\d+,\d+$/.test(received) ? ' Write a point, not a comma.' : '';
  return {
    code: 'payload-unreadable',
    reason: `The payload ${received} is no number.${comma} ${refusals['payload-unreadable'].whatToDo}`,
    issues: [{ path: '', expected: 'send a number such as 19.4', received }],
  };
}
