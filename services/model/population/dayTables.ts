/**
 * Daily integrals of functions of hourly temperature, tabulated on a grid of offsets: a member whose
 * canopy is half a degree warmer, or whose path ahead is its own, interpolates instead of integrating.
 */
import type { TemperatureFactor } from '../species/record.ts';

const lowestOffsetC = -9;
const stepC = 0.5;
const offsets = 37;

export interface DayTable {
  /** [day * offsets + offset]. */
  values: Float64Array;
}

export interface HourlyPath {
  /** Mean temperature of every hour, whole days. */
  hourlyC: Float64Array;
  /** 1 in daylight, 0 in the dark, by hour. */
  daylight: Uint8Array;
  /** Hours from sunrise to sunset by day; absent: counted from `daylight`. */
  dayLengthH?: Float64Array;
  /** Of the whole year at the place; absent: the longest of the path. */
  longestDayH?: number;
  /** Mean vapour pressure deficit by day in kPa, NaN where nobody measured; absent: nowhere. */
  deficitKPa?: Float64Array;
}

export type Over = 'all-hours' | 'daylight';

/**
 * Mean of `f(temperature)` over the hours of each day (24 hours, or those in daylight), for each offset.
 * A day without daylight has the mean 0.
 */
export function tabulateDays(path: HourlyPath, f: (temperatureC: number) => number, over: Over): DayTable {
  const days = Math.floor(path.hourlyC.length / 24);
  const values = new Float64Array(days * offsets);
  for (let day = 0; day < days; day++) {
    for (let offset = 0; offset < offsets; offset++) {
      values[day * offsets + offset] = tabulated(path, f, over, day, lowestOffsetC + offset * stepC);
    }
  }
  return { values };
}

function tabulated(
  path: HourlyPath,
  f: (temperatureC: number) => number,
  over: Over,
  day: number,
  offsetC: number,
): number {
  let sum = 0;
  let hours = 0;
  for (let hour = day * 24; hour < day * 24 + 24; hour++) {
    if (over === 'daylight' && path.daylight[hour] === 0) continue;
    sum += f(path.hourlyC[hour]! + offsetC);
    hours += 1;
  }
  return hours === 0 ? 0 : sum / hours;
}

/** Mean over the 24 hours of a day. */
export function meanOfDay(hours: ArrayLike<number>, day: number): number {
  let sum = 0;
  for (let hour = day * 24; hour < day * 24 + 24; hour++) sum += hours[hour]!;
  return sum / 24;
}

/** Hours from sunrise to sunset. */
export function dayLengthH({ dayLengthH: known, daylight }: HourlyPath, day: number): number {
  return known ? known[day]! : 24 * meanOfDay(daylight, day);
}

/** The table with 0 on the days and offsets that are marked. */
export function zeroWhere(table: DayTable, marked: (day: number, offsetC: number) => boolean): DayTable {
  return {
    values: table.values.map((value, i) =>
      marked(Math.floor(i / offsets), lowestOffsetC + (i % offsets) * stepC) ? 0 : value,
    ),
  };
}

/** Position of an offset on the grid, for `dayValue`; offsets beyond the grid count as its ends. */
export function gridPosition(offsetC: number): number {
  return Math.min(offsets - 1.000001, Math.max(0, (offsetC - lowestOffsetC) / stepC));
}

/** Value of a table on a day at a grid position. */
export function dayValue(table: DayTable, day: number, position: number): number {
  const offset = Math.floor(position);
  const low = table.values[day * offsets + offset]!;
  return low + (position - offset) * (table.values[day * offsets + offset + 1]! - low);
}

/** Piecewise linear factor of temperature, constant outside its points. */
export function factorAt(factor: TemperatureFactor, temperatureC: number): number {
  const first = factor[0]!;
  if (temperatureC <= first[0]) return first[1];
  for (let i = 1; i < factor.length; i++) {
    const [x1, y1] = factor[i]!;
    if (temperatureC > x1) continue;
    const [x0, y0] = factor[i - 1]!;
    return y0 + ((y1 - y0) * (temperatureC - x0)) / (x1 - x0);
  }
  return factor.at(-1)![1];
}

/** Hazard of heat per hour: 0 up to `heatFromC`, then rising with the square to `hazardAt39C` at 39 degC. */
export function heatHazardPerHour(temperatureC: number, heatFromC: number, hazardAt39C: number): number {
  if (temperatureC <= heatFromC) return 0;
  return hazardAt39C * ((temperatureC - heatFromC) / (39 - heatFromC)) ** 2;
}
