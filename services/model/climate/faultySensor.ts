/** What one sensor's own neighbours in time give away: spikes, slips of 1-wire sensors, a stuck value. */
import { hourMs, minuteMs } from '../units.ts';
import type { Codes, TimedReading } from './doubtCodes.ts';

/** Marks `codes` at the positions of doubted readings; `inTime` are the believed positions, ascending in time. */
export type Marking = (readings: readonly TimedReading[], inTime: readonly number[], codes: Codes) => void;

const jumpC = 15;
const jumpWithinMs = 5 * minuteMs;
const longestExcursionMs = 30 * minuteMs;

/** A jump both ways: away from the reading before and back again within half an hour. */
export const markSpikes: Marking = (readings, inTime, codes) => {
  const series = inTime.map((i) => readings[i]!);
  for (let i = 1; i < series.length; i += 1) {
    if (!isJump(series[i - 1]!, series[i]!)) continue;
    const back = returnFrom(series, i);
    for (; i < back; i += 1) codes[inTime[i]!] = 'spike';
  }
};

function isJump(a: TimedReading, b: TimedReading): boolean {
  return b.timeMs - a.timeMs <= jumpWithinMs && Math.abs(b.temperatureC - a.temperatureC) > jumpC;
}

/** Position of the first reading back near the level before the jump, by a jump; `away` itself if none returns. */
function returnFrom(series: readonly TimedReading[], away: number): number {
  const before = series[away - 1]!;
  for (let j = away + 1; j < series.length; j += 1) {
    if (series[j]!.timeMs - before.timeMs > longestExcursionMs) return away;
    const isBack = Math.abs(series[j]!.temperatureC - before.temperatureC) <= jumpC;
    if (isBack) return isJump(series[j - 1]!, series[j]!) ? j : away;
  }
  return away;
}

const fractions = [1 / 2, 3 / 4, 5 / 6];
const fractionTolerance = 0.015;
const neighbourMs = 30 * minuteMs;
/** Smaller dips than this also happen when a door opens. */
const leastSlipC = 3;

/** A single reading at a fixed fraction of its two neighbours, which agree with each other. */
export const markFractions: Marking = (readings, inTime, codes) => {
  for (let k = 1; k + 1 < inTime.length; k += 1) {
    const before = readings[inTime[k - 1]!]!;
    const here = readings[inTime[k]!]!;
    const after = readings[inTime[k + 1]!]!;
    const isNear = Math.max(after.timeMs - here.timeMs, here.timeMs - before.timeMs) <= neighbourMs;
    const expectedC = (before.temperatureC + after.temperatureC) / 2;
    const slipC = Math.abs(expectedC - here.temperatureC);
    const neighboursAgree = Math.abs(after.temperatureC - before.temperatureC) <= slipC / 4;
    const isFraction = fractions.some(
      (part) => Math.abs(here.temperatureC - part * expectedC) <= fractionTolerance * Math.abs(expectedC),
    );
    if (isNear && slipC >= leastSlipC && neighboursAgree && isFraction)
      codes[inTime[k]!] = 'one-wire-fraction';
  }
};

const stuckMs = 12 * hourMs;
/** Two equal readings half a day apart prove nothing; a run does. */
const stuckReadings = 6;

/** One value to the last digit for half a day or longer. */
export const markStuck: Marking = (readings, inTime, codes) => {
  for (let from = 0, to = 0; from < inTime.length; from = to) {
    const first = readings[inTime[from]!]!;
    while (to < inTime.length && readings[inTime[to]!]!.temperatureC === first.temperatureC) to += 1;
    const lastedMs = readings[inTime[to - 1]!]!.timeMs - first.timeMs;
    if (lastedMs < stuckMs || to - from < stuckReadings) continue;
    for (let k = from; k < to; k += 1) codes[inTime[k]!] = 'stuck';
  }
};
