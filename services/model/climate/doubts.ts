/**
 * Which readings not to believe, and why. Pure and free of order: the same set of readings gives the same
 * doubts however they arrived. Doubted readings are kept and shown, never used.
 */
import { hourMs, minuteMs } from '../units.ts';
import { type SunTimes, sunTimes } from './dayLength.ts';

export interface TimedReading {
  sensorId: string;
  timeMs: number;
  temperatureC: number;
}

const words = {
  'not-a-number': 'The sensor sent no number.',
  'one-wire-power-up': 'Exactly 85 °C is what a 1-wire sensor says after power-up, before it has measured.',
  'one-wire-lost': 'Exactly -127 °C is what a 1-wire board says when the sensor has lost contact.',
  'out-of-range': 'Below -30 or above 65 °C: not a temperature of a place where plants grow.',
  spike: 'It jumped by more than 15 °C within five minutes and came back.',
  'one-wire-fraction':
    'It is half, three quarters or five sixths of the readings around it: a slip of a 1-wire sensor.',
  stuck: 'The same value to the last digit for twelve hours or longer: the sensor is stuck.',
  sunlit: 'More than 8 °C above the other sensor in daylight: the sun shines on it. Shade it.',
} as const;
export type DoubtCode = keyof typeof words;

/** The doubt in a sentence. */
export function doubtWords(code: string): string {
  return code in words ? words[code as DoubtCode] : 'This reading is in doubt.';
}

export interface Doubted {
  sensorId: string;
  timeMs: number;
  doubt: DoubtCode;
}

/** Where the sensors hang; without it, sunlit sensors cannot be told. */
export interface DoubtOptions {
  latitudeDeg?: number;
  longitudeDeg?: number;
}

/** The doubted readings, by sensor and time. */
export function findDoubts(readings: readonly TimedReading[], options: DoubtOptions = {}): Doubted[] {
  const codes = doubtsOf(readings, options);
  return readings
    .flatMap(({ sensorId, timeMs }, i) => (codes[i] ? [{ sensorId, timeMs, doubt: codes[i] }] : []))
    .sort(
      (a, b) => compareText(a.sensorId, b.sensorId) || a.timeMs - b.timeMs || compareText(a.doubt, b.doubt),
    );
}

/** One code or none for each reading, in the order given. */
export function doubtsOf(
  readings: readonly TimedReading[],
  { latitudeDeg, longitudeDeg }: DoubtOptions = {},
): (DoubtCode | undefined)[] {
  const codes = readings.map(({ temperatureC }) => impossible(temperatureC));
  const sensors = new Map<string, number[]>();
  readings.forEach((reading, i) => {
    const own = sensors.get(reading.sensorId);
    if (own) own.push(i);
    else sensors.set(reading.sensorId, [i]);
  });
  const believed = (indices: readonly number[]) => indices.filter((i) => codes[i] === undefined);
  const sorted = [...sensors.values()].map((indices) =>
    indices.sort(
      (i, j) =>
        readings[i]!.timeMs - readings[j]!.timeMs || readings[i]!.temperatureC - readings[j]!.temperatureC,
    ),
  );
  for (const indices of sorted) {
    for (const mark of [markSpikes, markFractions, markStuck]) mark(readings, believed(indices), codes);
  }
  if (latitudeDeg !== undefined && longitudeDeg !== undefined) {
    markSunlit(readings, sorted.map(believed), codes, { latitudeDeg, longitudeDeg });
  }
  return codes;
}

type Codes = (DoubtCode | undefined)[];
type Marking = (readings: readonly TimedReading[], inTime: readonly number[], codes: Codes) => void;

function impossible(temperatureC: number): DoubtCode | undefined {
  if (!Number.isFinite(temperatureC)) return 'not-a-number';
  if (temperatureC === 85) return 'one-wire-power-up';
  if (temperatureC === -127) return 'one-wire-lost';
  return temperatureC < -30 || temperatureC > 65 ? 'out-of-range' : undefined;
}

const jumpC = 15;
const jumpWithinMs = 5 * minuteMs;
const excursionMs = 30 * minuteMs;

/** A jump both ways: away from the reading before and back again within half an hour. */
const markSpikes: Marking = (readings, inTime, codes) => {
  let last = 0;
  for (let i = 1; i < inTime.length; i += 1) {
    const before = readings[inTime[last]!]!;
    const back = isJump(before, readings[inTime[i]!]!) ? returnFrom(readings, inTime, last, i) : i;
    for (let away = i; away < back; away += 1) codes[inTime[away]!] = 'spike';
    last = back;
    i = back;
  }
};

function isJump(a: TimedReading, b: TimedReading): boolean {
  return b.timeMs - a.timeMs <= jumpWithinMs && Math.abs(b.temperatureC - a.temperatureC) > jumpC;
}

/** Index of the first reading back near the level before the jump, by a jump; `away` itself if none returns. */
function returnFrom(
  readings: readonly TimedReading[],
  inTime: readonly number[],
  last: number,
  away: number,
) {
  const before = readings[inTime[last]!]!;
  for (let j = away + 1; j < inTime.length; j += 1) {
    const reading = readings[inTime[j]!]!;
    if (reading.timeMs - before.timeMs > excursionMs) return away;
    const isBack = Math.abs(reading.temperatureC - before.temperatureC) <= jumpC;
    if (isBack) return isJump(readings[inTime[j - 1]!]!, reading) ? j : away;
  }
  return away;
}

const fractions = [1 / 2, 3 / 4, 5 / 6];
const neighbourMs = 30 * minuteMs;
const leastSlipC = 3;

/** A single reading at a fixed fraction of its two neighbours, which agree with each other. */
const markFractions: Marking = (readings, inTime, codes) => {
  for (let i = 1; i < inTime.length - 1; i += 1) {
    const [before, here, after] = [inTime[i - 1]!, inTime[i]!, inTime[i + 1]!].map((k) => readings[k]!);
    if (after!.timeMs - here!.timeMs > neighbourMs || here!.timeMs - before!.timeMs > neighbourMs) continue;
    const expected = (before!.temperatureC + after!.temperatureC) / 2;
    const slip = Math.abs(expected - here!.temperatureC);
    const neighboursAgree = Math.abs(after!.temperatureC - before!.temperatureC) <= slip / 4;
    const isFraction = fractions.some(
      (part) => Math.abs(here!.temperatureC - part * expected) <= 0.015 * Math.abs(expected),
    );
    if (slip >= leastSlipC && neighboursAgree && isFraction) codes[inTime[i]!] = 'one-wire-fraction';
  }
};

const stuckMs = 12 * hourMs;
/** Two equal readings half a day apart prove nothing; a run does. */
const stuckReadings = 6;

const markStuck: Marking = (readings, inTime, codes) => {
  for (let from = 0, to = 0; from < inTime.length; from = to) {
    const first = readings[inTime[from]!]!;
    while (to < inTime.length && readings[inTime[to]!]!.temperatureC === first.temperatureC) to += 1;
    const lasted = readings[inTime[to - 1]!]!.timeMs - first.timeMs;
    if (lasted < stuckMs || to - from < stuckReadings) continue;
    for (let i = from; i < to; i += 1) codes[inTime[i]!] = 'stuck';
  }
};

const sunlitC = 8;
const comparableMs = hourMs;

/** Warmer than the warmest other sensor by more than 8 °C while the sun is up. */
function markSunlit(
  readings: readonly TimedReading[],
  sensors: readonly (readonly number[])[],
  codes: Codes,
  place: { latitudeDeg: number; longitudeDeg: number },
): void {
  const sunUp = sunUpAt(place);
  const series = sensors.map((inTime) => inTime.map((i) => readings[i]!));
  const found = sensors.flatMap((inTime, sensor) => {
    const others = series.filter((_, other) => other !== sensor).map(nearestInTime);
    return inTime.filter((i) => {
      const { timeMs, temperatureC } = readings[i]!;
      const compared = others.map((nearest) => nearest(timeMs)).filter((other) => other !== undefined);
      const warmest = Math.max(...compared.map((other) => other.temperatureC));
      return compared.length > 0 && temperatureC - warmest > sunlitC && sunUp(timeMs);
    });
  });
  for (const i of found) codes[i] = 'sunlit';
}

/** Nearest reading of one sensor within an hour; to be asked with ascending times. */
function nearestInTime(series: readonly TimedReading[]): (timeMs: number) => TimedReading | undefined {
  let at = 0;
  return (timeMs) => {
    const distance = (k: number) => Math.abs((series[k]?.timeMs ?? Number.POSITIVE_INFINITY) - timeMs);
    while (at + 1 < series.length && distance(at + 1) <= distance(at)) at += 1;
    return distance(at) <= comparableMs ? series[at] : undefined;
  };
}

function sunUpAt(place: { latitudeDeg: number; longitudeDeg: number }): (timeMs: number) => boolean {
  let known: SunTimes | undefined;
  return (timeMs) => {
    if (!known || Math.abs(timeMs - known.noonMs) > 11 * hourMs) known = sunTimes(timeMs, place);
    return timeMs > known.sunriseMs && timeMs < known.sunsetMs;
  };
}

const compareText = (a: string, b: string) => (a < b ? -1 : a > b ? 1 : 0);
