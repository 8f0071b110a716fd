/** Why a reading may not be believed: one short code each, and its sentence. */

export interface TimedReading {
  sensorId: string;
  timeMs: number;
  temperatureC: number;
}

const words = {
  'not-a-number': 'The sensor sent no number.',
  'one-wire-power-up': 'Exactly 85 °C is what a 1-wire sensor says after power-up, before it has measured.',
  'one-wire-lost': 'Exactly -127 °C is what a 1-wire board says when the sensor has lost contact.',
  'out-of-range': 'Below -30 or above 65 °C: no plant grows there.',
  spike: 'It jumped by more than 15 °C within five minutes and came back.',
  'one-wire-fraction':
    'It is half, three quarters or five sixths of the readings around it: a slip of a 1-wire sensor.',
  stuck: 'The same value to the last digit for twelve hours or longer: the sensor is stuck.',
  sunlit: 'More than 8 °C above the other sensor in daylight: the sun shines on it. Shade it.',
} as const;
export type DoubtCode = keyof typeof words;
export type Codes = (DoubtCode | undefined)[];

/** The doubt in a sentence. */
export function doubtWords(code: string): string {
  return Object.hasOwn(words, code) ? words[code as DoubtCode] : 'This reading is in doubt.';
}
