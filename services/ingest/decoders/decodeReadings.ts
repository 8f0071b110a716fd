import { type Refusal, refusals } from '../../refusals.ts';
import type { Decoded, DecodeOptions } from './decoder.ts';
import { jsonObject } from './jsonObject.ts';
import { plainNumber } from './plainNumber.ts';
import { senml } from './senml.ts';

/** Chooses the payload format: pointers of the sensor first, then SenML `[`, JSON `{`, plain number. */
export function decodeReadings(payload: Uint8Array, options: DecodeOptions): Decoded | Refusal {
  const text = readText(payload);
  if (typeof text !== 'string') return text;
  if (options.pointers) return jsonObject(text, options);
  const start = text.trimStart().charAt(0);
  if (start === '[') return senml(text, options);
  return start === '{' ? jsonObject(text, options) : plainNumber(text, options);
}

const utf8 = new TextDecoder('utf-8', { fatal: true });

/** The payload as text. */
export function readText(payload: Uint8Array): string | Refusal {
  try {
    return utf8.decode(payload);
  } catch {
    return {
      code: 'payload-unreadable',
      reason: `The payload of ${payload.length} bytes is no UTF-8 text. ${refusals['payload-unreadable'].whatToDo}`,
    };
  }
}
