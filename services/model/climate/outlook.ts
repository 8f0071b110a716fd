/**
 * The temperature ahead, always as an ensemble: one shared course from the house's own readings and the
 * season, and for each member its own daily anomaly. docs/forecast.md, "Temperature".
 */
import { type Random, standardNormal } from '../numerics/random.ts';
import type { Season } from '../season.ts';
import { dayMs, hourMs } from '../units.ts';
import { type Course, dailyHabit } from './dailyCourse.ts';
import { dayOfYear } from './dayLength.ts';
import { between, lineAt, mean } from './knots.ts';
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
  const course = curve ? ownCourse(curve, season.place, fromMs) : latitudeCourse(season.place);
  const given = givenCourse(season.outlook);
  const hourlyC = Float64Array.from({ length: days * 24 }, (_, hour) => {
    const middleMs = fromMs + (hour + 0.5) * hourMs;
    return given(middleMs) ?? course(middleMs);
  });
  const widening = curve ? 1 : 2;
  const anomalyC = Array.from({ length: members }, () => anomalyPath(days, widening, random));
  return { startMs: fromMs, hourlyC, anomalyC };
}

/** Correlation of one day's anomaly with the next; measured on simulated seasons, no other source. */
const dailyCorrelation = 0.85;
/**
 * Spread by lead. The shared course missed daily means by 1.4, 1.9, 2.1, 2.2, 2.4 and 2.4 degC (root mean square)
 * 1, 2, 3, 5, 7 and 10 days ahead in two unheated tunnel houses in Italy (data of Brentarolli et al.).
 */
const finalSdC = 3;
const sdAtLead = (leadDays: number) => finalSdC * Math.min(1, 0.4 + 0.08 * leadDays);

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

const habitDays = 14;
const spellSeenDays = 1;
/** Of one and two days seen and 2 to 7 days lasting, these did best in two tunnel houses and outdoors in New York. */
const spellLastsDays = 5;

/**
 * How the house differed from the course of its latitude in the last two weeks, by time of day, carried on; the
 * present spell (the last day against those weeks) dying away on top. Hours never seen keep the latitude's
 * daily swing.
 */
function ownCourse(curve: TemperatureCurve, place: Season['place'], fromMs: number): Course {
  const expected = latitudeCourse(place);
  const { startMs, meanC } = hourlyMeans(curve);
  const differences = Array.from(meanC, (value, hour) => {
    const timeMs = startMs + (hour + 0.5) * hourMs;
    return { timeMs, temperatureC: value - expected(timeMs) };
  });
  // Whole hours only: an hour still running is known in part.
  const recent = between(differences, fromMs - habitDays * dayMs, fromMs - hourMs / 2);
  const habit = dailyHabit(recent.length > 0 ? recent : differences.slice(0, 1));
  const spellSeen = between(recent, fromMs - spellSeenDays * dayMs, fromMs);
  const spell = mean(spellSeen.map(({ timeMs, temperatureC }) => temperatureC - habit(timeMs))) ?? 0;
  return (timeMs) =>
    expected(timeMs) + habit(timeMs) + spell * Math.exp(-(timeMs - fromMs) / (spellLastsDays * dayMs));
}

/** A daily swing of 6 °C up and down around the seasonal mean, warmest two hours after noon. */
function latitudeCourse(place: Season['place']): Course {
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
function seasonalMean(latitudeDeg: number): Course {
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
  return (timeMs) => lineAt(inTime, timeMs, 6 * hourMs);
}
