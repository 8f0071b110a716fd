/**
 * The temperature ahead, always as an ensemble: one shared course from the house's own readings and the
 * season, and for each member its own daily anomaly. docs/forecast.md, "Temperature".
 */
import { type Random, standardNormal } from '../numerics/random.ts';
import type { Season } from '../season.ts';
import { dayMs, hourMs } from '../units.ts';
import { dayOfYear } from './dayLength.ts';
import { hourlyMeans, type TemperatureCurve } from './temperatureCurve.ts';

export interface TemperatureOutlook {
  startMs: number;
  /** Shared by all members: one mean an hour from startMs. */
  hourlyC: Float64Array;
  /** To be added to all hours of a day: [member][day]. */
  anomalyC: Float64Array[];
}

export interface OutlookSpan {
  fromMs: number;
  days: number;
  members: number;
  random: Random;
}

/** The outlook of `days` days from `fromMs`. Without a curve it rests on latitude alone and is twice as wide. */
export function temperatureOutlook(
  curve: TemperatureCurve | undefined,
  season: Season,
  { fromMs, days, members, random }: OutlookSpan,
): TemperatureOutlook {
  const course = curve ? ownCourse(curve, season.place.latitudeDeg, fromMs) : latitudeCourse(season.place);
  const given = givenCourse(season.outlook);
  const hourlyC = Float64Array.from({ length: days * 24 }, (_, hour) => {
    const middleMs = fromMs + (hour + 0.5) * hourMs;
    return given(middleMs) ?? course(middleMs);
  });
  const widening = curve ? 1 : 2;
  const anomalyC = Array.from({ length: members }, () => anomalyPath(days, widening, random));
  return { startMs: fromMs, hourlyC, anomalyC };
}

/** The measured curve followed by one member's path (the shared course alone when no member is named). */
export function curveAhead(
  curve: TemperatureCurve | undefined,
  outlook: TemperatureOutlook,
  member?: number,
): TemperatureCurve {
  const anomaly = member === undefined ? undefined : outlook.anomalyC[member];
  const ahead = Array.from(outlook.hourlyC, (meanC, hour) => meanC + (anomaly?.[Math.floor(hour / 24)] ?? 0));
  const middles = ahead.map((_, hour) => outlook.startMs + (hour + 0.5) * hourMs);
  const past = curve ? [...curve.timesMs].findIndex((timeMs) => timeMs > outlook.startMs) : 0;
  const known = curve ? (past < 0 ? curve.timesMs.length : past) : 0;
  return {
    timesMs: Float64Array.from([...(curve?.timesMs.subarray(0, known) ?? []), ...middles]),
    temperaturesC: Float64Array.from([...(curve?.temperaturesC.subarray(0, known) ?? []), ...ahead]),
    filled: curve?.filled ?? [],
    doubted: curve?.doubted ?? [],
  };
}

/** Correlation of one day's anomaly with the next, and its spread; measured on simulated seasons, no other source. */
const dailyCorrelation = 0.85;
const finalSdC = 3;
const sdAtLead = (leadDays: number) => finalSdC * Math.min(1, 0.35 + 0.065 * leadDays);

/** AR(1): each day remembers most of the day before; the spread grows with the lead. */
function anomalyPath(days: number, widening: number, random: Random): Float64Array {
  const path = new Float64Array(days);
  const fresh = Math.sqrt(1 - dailyCorrelation ** 2);
  let deviate = standardNormal(random);
  for (let day = 0; day < days; day += 1) {
    if (day > 0) deviate = dailyCorrelation * deviate + fresh * standardNormal(random);
    path[day] = widening * sdAtLead(day + 1) * deviate;
  }
  return path;
}

const recentDays = 14;
const anomalyDays = 2;
/** A warm or cold spell dies away over about a week. */
const spellDays = 7;

/** Level and hourly profile of the last two weeks, the season's trend, and the present spell dying away. */
function ownCourse(curve: TemperatureCurve, latitudeDeg: number, fromMs: number): (timeMs: number) => number {
  const { startMs, meanC } = hourlyMeans(curve);
  const end = Math.min(meanC.length, Math.max(1, Math.floor((fromMs - startMs) / hourMs)));
  const first = Math.max(0, end - recentDays * 24);
  const season = seasonalMean(latitudeDeg);
  const timeOf = (hour: number) => startMs + (hour + 0.5) * hourMs;
  const detrended = Array.from(meanC.subarray(first, end), (value, i) => value - season(timeOf(first + i)));
  const byHour = hourlyMeansOfDay(detrended, (i) => timeOf(first + i));
  const recent = detrended.slice(-anomalyDays * 24).map((value, i, all) => {
    return value - byHour(timeOf(end - all.length + i));
  });
  const spell = recent.reduce((sum, value) => sum + value, 0) / recent.length;
  return (timeMs) =>
    season(timeMs) + byHour(timeMs) + spell * Math.exp(-(timeMs - fromMs) / (spellDays * dayMs));
}

/** Mean by UTC hour of the day; hours never seen get the mean of all. */
function hourlyMeansOfDay(
  values: readonly number[],
  timeOf: (i: number) => number,
): (timeMs: number) => number {
  const sums = new Float64Array(24);
  const counts = new Float64Array(24);
  const hourOf = (timeMs: number) => Math.floor((timeMs % dayMs) / hourMs);
  values.forEach((value, i) => {
    sums[hourOf(timeOf(i))]! += value;
    counts[hourOf(timeOf(i))]! += 1;
  });
  const overall = values.reduce((sum, value) => sum + value, 0) / Math.max(1, values.length);
  return (timeMs) => {
    const hour = hourOf(timeMs);
    return counts[hour]! > 0 ? sums[hour]! / counts[hour]! : overall;
  };
}

/** A daily swing of 6 °C up and down around the seasonal mean, warmest two hours after noon. */
function latitudeCourse(place: Season['place']): (timeMs: number) => number {
  const season = seasonalMean(place.latitudeDeg);
  return (timeMs) => {
    const solarHour = ((timeMs % dayMs) / hourMs + place.longitudeDeg / 15 + 24) % 24;
    return season(timeMs) + 6 * Math.cos(((solarHour - 14) / 24) * 2 * Math.PI);
  };
}

/**
 * Mean temperature under glass by latitude and date: common practice, no source; only its slope matters once
 * there are readings. Warmest a month after the solstice.
 */
function seasonalMean(latitudeDeg: number): (timeMs: number) => number {
  const north = latitudeDeg >= 0 ? 1 : -1;
  const meanC = 36 - 0.0085 * latitudeDeg ** 2;
  const halfRangeC = 0.2 * Math.abs(latitudeDeg);
  return (timeMs) =>
    meanC + north * halfRangeC * Math.cos(((dayOfYear(timeMs) - 203) / 365.25) * 2 * Math.PI);
}

/** Temperatures somebody supplied, linear between points at most six hours apart. */
function givenCourse(points: Season['outlook']): (timeMs: number) => number | undefined {
  const inTime = points
    .map(({ time, temperatureC }) => ({ timeMs: Date.parse(time), temperatureC }))
    .sort((a, b) => a.timeMs - b.timeMs);
  return (timeMs) => {
    const i = inTime.findIndex((point) => point.timeMs >= timeMs);
    const [before, after] = [inTime[i - 1], inTime[i]];
    if (!before || !after || after.timeMs - before.timeMs > 6 * hourMs) return undefined;
    const share = (timeMs - before.timeMs) / (after.timeMs - before.timeMs);
    return before.temperatureC + share * (after.temperatureC - before.temperatureC);
  };
}
