/**
 * The temperature ahead, always as an ensemble: one shared course from the house's own habit, its learned answer to
 * the air outdoors and the season, and for each member its own daily anomaly. docs/forecast.md, "Outlook".
 */
import type { Random } from '../numerics/random.ts';
import type { Season } from '../season.ts';
import { hourMs } from '../units.ts';
import { dailyHabit } from './dailyCourse.ts';
import { type DaySummary, type HouseDay, houseDays, summaryOf } from './houseDays.ts';
import { learnResponse } from './houseResponse.ts';
import { lineAt } from './knots.ts';
import { knownOutdoors } from './outdoorDays.ts';
import { lawFor, type OutlookLaw, outlookLaw } from './outlookLaw.ts';
import { anomalyPath, ramp, type SdByLead, spreadByLead } from './outlookSpread.ts';
import { latitudeCourse } from './seasonalMean.ts';
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
  constants: OutlookLaw = outlookLaw,
): TemperatureOutlook {
  const law = lawFor(constants, season.place.kind);
  const past = curve ? houseDays(curve, fromMs, mostDays) : [];
  const { course, sd } =
    past.length > 0
      ? learned(past, season, { fromMs, days, law })
      : unlearned(curve, season, { fromMs, days, law });
  const given = givenCourse(season.outlook);
  const hourlyC = course.map((value, hour) => given(fromMs + (hour + 0.5) * hourMs) ?? value);
  const anomalyC = Array.from({ length: members }, () => anomalyPath(days, sd, law, random));
  return { startMs: fromMs, hourlyC, anomalyC };
}

/** More teaches nothing new: learning forgets. */
const mostDays = 120;

interface Ahead {
  course: Float64Array;
  sd: SdByLead;
}

interface Asked {
  fromMs: number;
  days: number;
  law: OutlookLaw;
}

/** From the house's own days and what is known outdoors. */
function learned(past: readonly HouseDay[], season: Season, { fromMs, days, law }: Asked): Ahead {
  const { outdoors, staleDays } = knownOutdoors(season, fromMs, law);
  const { latitudeDeg } = season.place;
  const response = learnResponse({ days: past, outdoors, latitudeDeg, fromMs, law });
  const profile = meanProfile(past.slice(0, law.habitDays));
  const course = new Float64Array(days * 24);
  for (let day = 0; day < days; day += 1) course.set(stretched(profile, response.expected(day)), day * 24);
  return { course, sd: spreadByLead(law, { days: past, response, outdoors, staleDays }) };
}

/** Mean of each hour of some days; hottest and coldest stay what a whole day has of them. */
function meanProfile(days: readonly HouseDay[]): Float64Array {
  return days[0]!.hoursC.map(
    (_, hour) => days.reduce((sum, day) => sum + day.hoursC[hour]!, 0) / days.length,
  );
}

/** The profile with another mean, its parts above and below drawn out to the hottest and coldest hours expected. */
function stretched(profile: Float64Array, to: DaySummary): Float64Array {
  const from = summaryOf(profile);
  const factor = (wanted: number, had: number) => Math.min(3, Math.max(0, wanted / Math.max(had, 0.1)));
  const above = factor(to.hotC - to.meanC, from.hotC - from.meanC);
  const below = factor(to.meanC - to.coldC, from.meanC - from.coldC);
  const drawn = profile.map((value) => (value - from.meanC) * (value > from.meanC ? above : below));
  const offC = drawn.reduce((sum, value) => sum + value, 0) / drawn.length;
  return drawn.map((value) => to.meanC + value - offC);
}

/** Less than a day seen: the course of the latitude, shifted to the hours there are; or none seen at all. */
function unlearned(curve: TemperatureCurve | undefined, season: Season, { fromMs, days, law }: Asked): Ahead {
  const expected = latitudeCourse(season.place);
  const shift = curve ? shiftFrom(curve, expected, fromMs) : () => 0;
  const course = Float64Array.from({ length: days * 24 }, (_, hour) => {
    const middleMs = fromMs + (hour + 0.5) * hourMs;
    return expected(middleMs) + shift(middleMs);
  });
  const usual = ramp(law.spread);
  return { course, sd: (leadDays) => (curve ? 1 : 2) * usual(leadDays) };
}

/** How the hours seen differ from a course, by time of day; hours never seen are bridged. */
function shiftFrom(curve: TemperatureCurve, expected: (timeMs: number) => number, fromMs: number) {
  const { startMs, meanC } = hourlyMeans(curve);
  const differences = Array.from(meanC, (value, hour) => {
    const timeMs = startMs + (hour + 0.5) * hourMs;
    return { timeMs, temperatureC: value - expected(timeMs) };
  });
  // Whole hours only: an hour still running is known in part.
  const seen = differences.filter(({ timeMs }) => timeMs <= fromMs - hourMs / 2);
  return dailyHabit((seen.length > 0 ? seen : differences.slice(0, 1)).slice(-14 * 24));
}

/** Temperatures somebody supplied, linear between points at most six hours apart. */
function givenCourse(points: Season['outlook']): (timeMs: number) => number | undefined {
  const inTime = points
    .map(({ time, temperatureC }) => ({ timeMs: Date.parse(time), temperatureC }))
    .sort((a, b) => a.timeMs - b.timeMs);
  return (timeMs) => lineAt(inTime, timeMs, 6 * hourMs);
}
