/** A sensor the sun shines on: far warmer than every other sensor of the place, by day only. */
import { hourMs } from '../units.ts';
import { type SunTimes, sunTimes } from './dayLength.ts';
import type { Codes, TimedReading } from './doubtCodes.ts';

interface Position {
  latitudeDeg: number;
  longitudeDeg: number;
}

const excessC = 8;
/** Readings of two sensors further apart than this are not compared. */
const comparableMs = hourMs;

/** Marks readings more than 8 °C above the warmest other sensor of the moment between sunrise and sunset. */
export function markSunlit(
  readings: readonly TimedReading[],
  sensors: readonly (readonly number[])[],
  codes: Codes,
  position: Position,
): void {
  const isSunUp = sunUpAt(position);
  const series = sensors.map((inTime) => inTime.map((i) => readings[i]!));
  const found = sensors.flatMap((inTime, sensor) => {
    const others = series.filter((_, other) => other !== sensor).map(nearestInTime);
    return inTime.filter((i) => {
      const { timeMs, temperatureC } = readings[i]!;
      const atOnce = others.map((nearest) => nearest(timeMs)).filter((other) => other !== undefined);
      const warmestC = Math.max(...atOnce.map((other) => other.temperatureC));
      return atOnce.length > 0 && temperatureC - warmestC > excessC && isSunUp(timeMs);
    });
  });
  for (const i of found) codes[i] = 'sunlit';
}

/** Nearest reading of one sensor within the comparable time; to be asked with ascending times. */
function nearestInTime(series: readonly TimedReading[]): (timeMs: number) => TimedReading | undefined {
  let at = 0;
  return (timeMs) => {
    const distance = (k: number) => Math.abs((series[k]?.timeMs ?? Number.POSITIVE_INFINITY) - timeMs);
    while (at + 1 < series.length && distance(at + 1) <= distance(at)) at += 1;
    return distance(at) <= comparableMs ? series[at] : undefined;
  };
}

/** Remembers the last day asked for, because readings come by the thousand a day. */
function sunUpAt(position: Position): (timeMs: number) => boolean {
  let known: SunTimes | undefined;
  return (timeMs) => {
    if (!known || Math.abs(timeMs - known.noonMs) > 11 * hourMs) known = sunTimes(timeMs, position);
    return timeMs > known.sunriseMs && timeMs < known.sunsetMs;
  };
}
