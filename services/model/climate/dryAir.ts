/** How dry the air was, day by day, from humidity sensors. */
import type { Reading } from '../season.ts';
import { dayMs } from '../units.ts';
import { vapourPressureDeficitKPa } from './humidity.ts';

/** Vapour pressure deficits of those readings that carry a believable humidity: cheap sensors fail at one end of their scale. */
export function deficitsKPa(readings: readonly Reading[]): { timeMs: number; deficitKPa: number }[] {
  return readings.flatMap(({ time, temperatureC, humidityPct }) =>
    humidityPct !== undefined && humidityPct > 2 && humidityPct < 99.5
      ? [{ timeMs: Date.parse(time), deficitKPa: vapourPressureDeficitKPa({ temperatureC, humidityPct }) }]
      : [],
  );
}

/** Days of readings of which the mean stands for what is to come. */
const daysKept = 7;
const fewestReadings = 24;

/**
 * Mean vapour pressure deficit in kPa by day from `startMs`; from `asOfMs` on the mean of the last week, where it has at
 * least a day of hourly readings. NaN on days without readings.
 */
export function dailyDeficitKPa(
  readings: readonly Reading[],
  span: { startMs: number; asOfMs: number; days: number },
): Float64Array {
  const { startMs, asOfMs, days } = span;
  const sums = new Float64Array(days);
  const counts = new Float64Array(days);
  const lately = { sum: 0, count: 0 };
  for (const { timeMs, deficitKPa } of deficitsKPa(readings)) {
    const day = Math.floor((timeMs - startMs) / dayMs);
    if (day >= 0 && day < days) {
      sums[day] = sums[day]! + deficitKPa;
      counts[day] = counts[day]! + 1;
    }
    if (asOfMs - timeMs < daysKept * dayMs) {
      lately.sum += deficitKPa;
      lately.count += 1;
    }
  }
  const ahead = lately.count >= fewestReadings ? lately.sum / lately.count : Number.NaN;
  const today = Math.floor((asOfMs - startMs) / dayMs);
  return sums.map((sum, day) => (day > today ? ahead : sum / counts[day]!));
}
