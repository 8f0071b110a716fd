/**
 * Temperature as a function of time: straight lines between believed readings up to two hours apart, longer
 * gaps filled (gapFilling.ts) and marked. One sensor leads, the others fill its gaps.
 */
import { finite } from '../numerics/finite.ts';
import type { DailyExtremes, Place, Season } from '../season.ts';
import { hourMs } from '../units.ts';
import { addDays, startOfLocalDay } from './calendar.ts';
import { type CorrectionC, correctionsOf } from './corrections.ts';
import type { ExtremesDay } from './dailyCourse.ts';
import type { Codes, TimedReading } from './doubtCodes.ts';
import { doubtedOf, doubtsOf } from './doubts.ts';
import { closeTail, fillFromDays, fillFromExtremes, fillFromSensor } from './gapFilling.ts';
import { type FilledBy, type Knot, longestLineMs, mean } from './knots.ts';

export interface TemperatureCurve {
  /** Ascending; between two knots the temperature is linear. */
  timesMs: Float64Array;
  temperaturesC: Float64Array;
  filled: { fromMs: number; toMs: number; by: FilledBy }[];
  doubted: { sensorId: string; timeMs: number; doubt: string }[];
}

/** How much there is of a sensor, and how warm it reads, corrected. */
interface Standing {
  sensorId: string;
  coveredMs: number;
  meanC: number;
}

/**
 * The curve from the first usable datum to untilMs, or undefined when there is none. Later data are not read. Who
 * leads is told by the readings, unless these are a part only and the standings over all of them are given.
 */
export function temperatureCurve(
  season: Season,
  untilMs: number,
  standings: readonly Standing[] = [],
): TemperatureCurve | undefined {
  const readings = season.readings
    .map(({ sensorId, time, temperatureC }) => ({ sensorId, timeMs: Date.parse(time), temperatureC }))
    .filter((reading) => reading.timeMs <= untilMs);
  // Doubts are told by what came: a probe without contact says exactly 85 °C, whatever its owner adds.
  const codes = doubtsOf(readings, season.place);
  const correctionC = correctionsOf(season.sensors, season.place.timeZone);
  const sensors = believedBySensor(readings, codes, { standings, correctionC });
  const days = endedDays(season.dailyExtremes, season.place, untilMs);
  const starts = [...sensors.map((sensor) => sensor[0]!.timeMs), ...days.map((day) => day.startMs)];
  if (starts.length === 0) return undefined;
  const span = { fromMs: Math.min(...starts), untilMs };
  const [leading = [], ...others] = sensors;
  const measured = others.reduce((knots, other) => fillFromSensor(knots, other, span), leading);
  const withExtremes = fillFromExtremes(measured, days, season.place, span);
  const knots = closeTail(fillFromDays(withExtremes, span), span);
  return { ...asArrays(knots), filled: filledStretches(knots), doubted: doubtedOf(readings, codes) };
}

/** Temperature at an instant in degC; outside the curve the nearest end is held. */
export function temperatureAt(curve: TemperatureCurve, timeMs: number): number {
  const { timesMs, temperaturesC } = curve;
  const i = segmentAt(curve, timeMs);
  if (i < 0) return temperaturesC[0]!;
  if (i >= timesMs.length - 1) return temperaturesC[timesMs.length - 1]!;
  const share = (timeMs - timesMs[i]!) / (timesMs[i + 1]! - timesMs[i]!);
  return temperaturesC[i]! + share * (temperaturesC[i + 1]! - temperaturesC[i]!);
}

/** Index of the last knot at or before an instant; -1 before the first. */
export function segmentAt({ timesMs }: TemperatureCurve, timeMs: number): number {
  let low = 0;
  let high = timesMs.length;
  while (low < high) {
    const middle = (low + high) >> 1;
    if (timesMs[middle]! <= timeMs) low = middle + 1;
    else high = middle;
  }
  return low - 1;
}

/** Exact means of the UTC hours the curve touches; the first and last over the part it covers. */
export function hourlyMeans(curve: TemperatureCurve): { startMs: number; meanC: Float64Array } {
  const { timesMs, temperaturesC } = curve;
  const startMs = Math.floor(timesMs[0]! / hourMs) * hourMs;
  const hours = Math.max(1, Math.ceil((timesMs.at(-1)! - startMs) / hourMs));
  const degreeMs = new Float64Array(hours);
  const coveredMs = new Float64Array(hours);
  for (let i = 0; i + 1 < timesMs.length; i += 1) {
    for (let fromMs = timesMs[i]!; fromMs < timesMs[i + 1]!; ) {
      const hour = Math.floor((fromMs - startMs) / hourMs);
      const toMs = Math.min(timesMs[i + 1]!, startMs + (hour + 1) * hourMs);
      const slope = (temperaturesC[i + 1]! - temperaturesC[i]!) / (timesMs[i + 1]! - timesMs[i]!);
      const middleC = temperaturesC[i]! + slope * ((fromMs + toMs) / 2 - timesMs[i]!);
      degreeMs[hour]! += middleC * (toMs - fromMs);
      coveredMs[hour]! += toMs - fromMs;
      fromMs = toMs;
    }
  }
  return {
    startMs,
    meanC: degreeMs.map((sum, h) => (coveredMs[h]! > 0 ? sum / coveredMs[h]! : temperaturesC[0]!)),
  };
}

/** Hours between two instants that were filled, not measured. */
export function filledHoursBetween(curve: TemperatureCurve, fromMs: number, toMs: number): number {
  const overlaps = curve.filled.map((gap) => Math.min(gap.toMs, toMs) - Math.max(gap.fromMs, fromMs));
  return overlaps.reduce((sum, ms) => sum + Math.max(0, ms), 0) / hourMs;
}

/** Covering this share of the longest cover is as good: a day of flat battery must not decide who leads. */
const nearlyAll = 0.9;

/**
 * Believed readings of each sensor in time and corrected, readings of one instant averaged; the leading one first. Of those
 * that cover nearly all, the one that reads lowest leads: sun on a bad shield only ever adds degrees.
 */
function believedBySensor(
  readings: readonly TimedReading[],
  codes: Readonly<Codes>,
  { standings, correctionC }: { standings: readonly Standing[]; correctionC: CorrectionC },
): Knot[][] {
  const known = new Map(standings.map((standing) => [standing.sensorId, standing]));
  const sensors = new Map<string, Knot[]>();
  readings.forEach(({ sensorId, timeMs, temperatureC }, i) => {
    if (codes[i] !== undefined) return;
    const knot = { timeMs, temperatureC: temperatureC + correctionC(sensorId, timeMs) };
    const knots = sensors.get(sensorId);
    if (knots) knots.push(knot);
    else sensors.set(sensorId, [knot]);
  });
  const ranked = [...sensors].map(([sensorId, unsorted]) => {
    const knots = inTime(unsorted);
    return { ...(known.get(sensorId) ?? standingOf(sensorId, knots)), knots };
  });
  const enoughMs = nearlyAll * Math.max(0, ...ranked.map((sensor) => sensor.coveredMs));
  return ranked
    .sort((a, b) => {
      const [aLacks, bLacks] = [Number(a.coveredMs < enoughMs), Number(b.coveredMs < enoughMs)];
      const among = aLacks ? b.coveredMs - a.coveredMs : a.meanC - b.meanC;
      return aLacks - bLacks || among || (a.sensorId < b.sensorId ? -1 : 1);
    })
    .map(({ knots }) => knots);
}

function standingOf(sensorId: string, knots: readonly Knot[]): Standing {
  return {
    sensorId,
    coveredMs: coveredMs(knots),
    meanC: mean(knots.map((k) => k.temperatureC)) ?? 0,
  };
}

/** Sorted by temperature too, so that the order of arrival cannot change the last bit of a mean. */
function inTime(knots: Knot[]): Knot[] {
  knots.sort((a, b) => a.timeMs - b.timeMs || a.temperatureC - b.temperatureC);
  const merged: Knot[] = [];
  for (let i = 0, next = 0; i < knots.length; i = next) {
    const { timeMs } = knots[i]!;
    let sum = 0;
    for (next = i; knots[next]?.timeMs === timeMs; next += 1) sum += knots[next]!.temperatureC;
    merged.push({ timeMs, temperatureC: sum / (next - i) });
  }
  return merged;
}

function coveredMs(knots: readonly Knot[]): number {
  return knots
    .slice(1)
    .reduce((sum, knot, i) => sum + Math.min(longestLineMs, knot.timeMs - knots[i]!.timeMs), 0);
}

/** Extremes typed in for days that are over: today's highest is not known yet. */
function endedDays(extremes: readonly DailyExtremes[], place: Place, untilMs: number): ExtremesDay[] {
  return extremes
    .map(({ day, minC, maxC }) => ({
      startMs: startOfLocalDay(day, place.timeZone),
      endMs: startOfLocalDay(addDays(day, 1), place.timeZone),
      minC,
      maxC,
    }))
    .filter((day) => day.endMs <= untilMs)
    .sort((a, b) => a.startMs - b.startMs);
}

function asArrays(knots: readonly Knot[]) {
  return {
    timesMs: Float64Array.from(knots, (knot) => knot.timeMs),
    temperaturesC: Float64Array.from(knots, (knot) => finite(knot.temperatureC, 'temperature')),
  };
}

/** Neighbouring stretches filled the same way are one. */
function filledStretches(knots: readonly Knot[]): TemperatureCurve['filled'] {
  const stretches: TemperatureCurve['filled'] = [];
  knots.slice(1).forEach((knot, i) => {
    const before = knots[i]!;
    const by = knot.by ?? before.by;
    if (!by) return;
    const last = stretches.at(-1);
    if (last?.by === by && last.toMs === before.timeMs) last.toMs = knot.timeMs;
    else stretches.push({ fromMs: before.timeMs, toMs: knot.timeMs, by });
  });
  return stretches;
}
