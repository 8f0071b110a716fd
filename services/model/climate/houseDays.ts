/** The house day by day, in whole days counted back from an instant: what its response is learned from. */
import { dayMs, hourMs } from '../units.ts';
import { filledHoursBetween, hourlyMeans, type TemperatureCurve } from './temperatureCurve.ts';

/** Of 24 hours: their mean, and the means of the three hottest and the three coldest. */
export interface DaySummary {
  meanC: number;
  hotC: number;
  coldC: number;
}

export interface HouseDay extends DaySummary {
  /** 1 = the 24 hours before the instant, 2 = those before them. */
  age: number;
  hoursC: Float64Array;
}

/** A day of which more was filled in than this teaches nothing. */
const mostFilledHours = 6;

/** The days of a curve before an instant, youngest first; days with long gaps are left out. Nothing later is read. */
export function houseDays(curve: TemperatureCurve, fromMs: number, mostDays: number): HouseDay[] {
  // Shifted so that its hours end at the instant.
  const shiftMs = fromMs % hourMs;
  const { startMs, meanC } = hourlyMeans({
    ...curve,
    timesMs: curve.timesMs.map((timeMs) => timeMs - shiftMs),
  });
  const wholeHours = Math.min(meanC.length, Math.floor((fromMs - shiftMs - startMs) / hourMs));
  const missing = Math.floor((fromMs - shiftMs - startMs) / hourMs) - wholeHours;
  const days: HouseDay[] = [];
  for (let age = 1 + Math.ceil(missing / 24); age <= mostDays; age += 1) {
    const end = wholeHours + missing - 24 * (age - 1);
    if (end < 24) break;
    const endMs = fromMs - (age - 1) * dayMs;
    if (filledHoursBetween(curve, endMs - dayMs, endMs) > mostFilledHours) continue;
    const hoursC = meanC.slice(end - 24, end);
    days.push({ age, hoursC, ...summaryOf(hoursC) });
  }
  return days;
}

/** Mean, three hottest and three coldest of the hours of a day. */
export function summaryOf(hoursC: Float64Array): DaySummary {
  const sorted = hoursC.slice().sort();
  const meanOf = (part: Float64Array) => part.reduce((sum, value) => sum + value, 0) / part.length;
  return { meanC: meanOf(sorted), hotC: meanOf(sorted.subarray(-3)), coldC: meanOf(sorted.subarray(0, 3)) };
}
