/** The temperature part of a forecast: measured days, and days ahead as ranges. */
import { addDays, localDay, startOfLocalDay } from '../climate/calendar.ts';
import type { TemperatureOutlook } from '../climate/outlook.ts';
import { filledHoursBetween, hourlyMeans, type TemperatureCurve } from '../climate/temperatureCurve.ts';
import { quantileRange } from '../numerics/quantiles.ts';
import type { Forecast } from '../outcome.ts';
import { dayMs, hourMs } from '../units.ts';

type TemperatureDay = Forecast['temperature']['days'][number];
type OutlookDay = Forecast['temperature']['outlook'][number];

/** As fine as sensors tell; all digits of all days ahead would make up three quarters of the whole answer. */
const hundredths = (temperatureC: number): number => Math.round(temperatureC * 100) / 100;

/** Lowest, mean and highest of each local day the curve touches; lowest and highest of its knots. */
export function temperatureDays(curve: TemperatureCurve | undefined, timeZone: string): TemperatureDay[] {
  if (!curve) return [];
  const hours = hourlyMeans(curve);
  const endMs = curve.timesMs.at(-1)!;
  const days: TemperatureDay[] = [];
  let knot = 0;
  for (let day = localDay(curve.timesMs[0]!, timeZone); ; day = addDays(day, 1)) {
    const fromMs = startOfLocalDay(day, timeZone);
    if (fromMs >= endMs) return days;
    const toMs = startOfLocalDay(addDays(day, 1), timeZone);
    const means = between(hours, fromMs, toMs);
    let [minC, maxC] = [Math.min(...means), Math.max(...means)];
    for (; knot < curve.timesMs.length && curve.timesMs[knot]! < toMs; knot++) {
      minC = Math.min(minC, curve.temperaturesC[knot]!);
      maxC = Math.max(maxC, curve.temperaturesC[knot]!);
    }
    if (means.length > 0) {
      const meanC = means.reduce((sum, mean) => sum + mean, 0) / means.length;
      const filledHours = filledHoursBetween(curve, fromMs, toMs);
      days.push({
        day,
        minC: hundredths(minC),
        meanC: hundredths(meanC),
        maxC: hundredths(maxC),
        filledHours,
      });
    }
  }
}

/** Whole local days ahead; the anomaly of a member shifts all hours of its day. */
export function outlookDays(outlook: TemperatureOutlook, timeZone: string): OutlookDay[] {
  const endMs = outlook.startMs + outlook.hourlyC.length * hourMs;
  const days: OutlookDay[] = [];
  for (let day = addDays(localDay(outlook.startMs, timeZone), 1); ; day = addDays(day, 1)) {
    const fromMs = startOfLocalDay(day, timeZone);
    const toMs = startOfLocalDay(addDays(day, 1), timeZone);
    if (toMs > endMs) return days;
    const means = between({ startMs: outlook.startMs, meanC: outlook.hourlyC }, fromMs, toMs);
    const index = Math.floor((fromMs + dayMs / 2 - outlook.startMs) / dayMs);
    const anomalies = outlook.anomalyC.map((path) => path[index] ?? 0);
    const range = (baseC: number) => quantileRange(anomalies.map((anomaly) => hundredths(baseC + anomaly)));
    const meanC = means.reduce((sum, mean) => sum + mean, 0) / means.length;
    days.push({ day, minC: range(Math.min(...means)), meanC: range(meanC), maxC: range(Math.max(...means)) });
  }
}

function between(hours: { startMs: number; meanC: Float64Array }, fromMs: number, toMs: number): number[] {
  const at = (timeMs: number) => Math.max(0, Math.round((timeMs - hours.startMs) / hourMs));
  return [...hours.meanC.subarray(at(fromMs), at(toMs))];
}
