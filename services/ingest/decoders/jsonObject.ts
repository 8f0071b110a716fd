import { pointersIn, valueAtPointer } from '../../jsonPointer.ts';
import { type Refusal, refusals } from '../../refusals.ts';
import { boardTime } from '../time.ts';
import { toCelsius } from '../units.ts';
import { type DecodeOptions, type Decoder, isRefusal } from './decoder.ts';
import { parseNearJson } from './nearJson.ts';
import { readNumber } from './number.ts';

/**
 * A JSON document with one reading: `{"temperatureC": 19.4, "humidityPct": 68, "time": ...}`, or any
 * other shape with the pointers of the sensor. A dead humidity is left out, a dead temperature refused.
 */
export const jsonObject: Decoder = (text, options) => {
  const parsed = parseNearJson(text);
  if (isRefusal(parsed)) return parsed;
  const pointers = pointersOf(options);
  const temperature = temperatureAt(parsed.value, pointers.temperature);
  if (typeof temperature !== 'number') return temperature;
  const time = boardTime(valueAtPointer(parsed.value, pointers.time));
  if (typeof time === 'object') return time;
  const humidity = humidityAt(parsed.value, pointers.humidity);
  return {
    readings: [
      {
        temperatureC: toCelsius(temperature, options.unit),
        ...(humidity.value !== undefined && { humidityPct: humidity.value }),
        timeMs: time ?? options.arrivedMs,
        timeFrom: time === undefined ? 'arrival' : 'board',
      },
    ],
    unitStated: false,
    notes: humidity.notes,
  };
};

function pointersOf({ pointers }: DecodeOptions) {
  return {
    temperature: pointers?.temperature ?? '/temperatureC',
    humidity: pointers?.humidity ?? '/humidityPct',
    time: pointers?.time ?? '/time',
  };
}

function temperatureAt(document: unknown, pointer: string): number | Refusal {
  const value = valueAtPointer(document, pointer);
  if (value === undefined) return nothingThere(document, pointer);
  const number = readNumber(value);
  if (typeof number === 'number') return number;
  const received = JSON.stringify(value).slice(0, 60);
  return {
    code: number === 'dead' ? 'value-not-finite' : 'payload-unreadable',
    reason:
      number === 'dead'
        ? `The temperature at ${pointer} is no number. ${refusals['value-not-finite'].whatToDo}`
        : `The temperature at ${pointer} came as ${received}. Send a number such as 19.4.`,
    issues: [{ path: pointer, expected: 'send a number such as 19.4', received }],
  };
}

function humidityAt(document: unknown, pointer: string): { value?: number; notes: string[] } {
  const value = valueAtPointer(document, pointer);
  if (value === undefined) return { notes: [] };
  const number = readNumber(value);
  return typeof number === 'number'
    ? { value: number, notes: [] }
    : { notes: ['humidity missing: no number came'] };
}

function nothingThere(document: unknown, pointer: string): Refusal {
  const has = pointersIn(document);
  const found = has.length > 0 ? `The message has ${has.join(', ')}` : 'The message has no fields';
  return {
    code: 'value-missing',
    reason: `There is no temperature at ${pointer}. ${found}: send temperatureC, or point this sensor to the right field.`,
    issues: [{ path: pointer, expected: 'send a number such as 19.4', received: 'nothing' }],
  };
}
