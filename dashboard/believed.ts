/** Readings as they are believed or not, and why not. */
import type { RawReading } from './api.ts';

/** The newest that is believed, of one sensor or of any. */
export function latestReading(readings: readonly RawReading[], sensorId?: string): RawReading | undefined {
  return newest(
    readings.filter((each) => !each.doubt && (sensorId === undefined || each.sensorId === sensorId)),
  );
}

export const newest = <T extends { time: string }>(readings: readonly T[]): T | undefined =>
  readings.reduce<T | undefined>((last, each) => (!last || each.time > last.time ? each : last), undefined);

/** The sentences of the service for its codes; held equal by a test, so that the page need not load the model. */
const doubtSentences: Record<string, string> = {
  'not-a-number': 'The sensor sent no number.',
  'one-wire-power-up': 'Exactly 85 °C is what a 1-wire sensor says after power-up, before it has measured.',
  'one-wire-lost': 'Exactly -127 °C is what a 1-wire board says when the sensor has lost contact.',
  'out-of-range': 'Below -30 or above 65 °C: no plant grows there.',
  spike: 'It jumped by more than 15 °C within five minutes and came back.',
  'one-wire-fraction':
    'It is half, three quarters or five sixths of the readings around it: a slip of a 1-wire sensor.',
  stuck: 'The same value to the last digit for twelve hours or longer: the sensor is stuck.',
  sunlit: 'More than 8 °C above the other sensor in daylight: the sun shines on it. Shade it.',
};
export const doubtSentence = (code: string): string => doubtSentences[code] ?? 'This reading is in doubt.';
