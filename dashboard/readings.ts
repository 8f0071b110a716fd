/** Readings of the last hours and by the hour, as several pages need them. */
import { correctionsOf, type Sensor } from '../services/model/index.ts';
import type { RawReading, Recorded } from './api.ts';
import { nowMs, placePath, resource, zone } from './state.ts';

const hourMs = 3_600_000;

/** A window of whole hours up to now; rounding keeps its path the same for a while. */
export function windowOf(hours: number): { fromMs: number; toMs: number; query: string } {
  const toMs = Math.ceil(nowMs.value / hourMs) * hourMs;
  const fromMs = toMs - hours * hourMs;
  return { fromMs, toMs, query: `from=${new Date(fromMs).toISOString()}&to=${new Date(toMs).toISOString()}` };
}

/** Readings of the last six hours, corrected as their sensors are. */
export function useLatestReadings(): readonly RawReading[] {
  const path = placePath(`readings?${windowOf(6).query}&resolution=raw`);
  const came = resource<{ readings: RawReading[] }>(path, placePath('readings latest')).value.data?.readings;
  const records = resource<{ records: Recorded<Sensor>[] }>(placePath('sensors')).value.data?.records ?? [];
  const sensors = records.map(({ data }) => data);
  const correctionC = correctionsOf(sensors, zone.value);
  return (came ?? []).map((each) => ({
    ...each,
    temperatureC: each.temperatureC + correctionC(each.sensorId, Date.parse(each.time)),
  }));
}

export interface HourOfSensor {
  sensorId: string;
  hour: string;
  count: number;
  meanC: number;
  minC: number;
  maxC: number;
  doubted: number;
}
/** Roll-ups of the last seven days; undefined until they came. */
export function useHours(): readonly HourOfSensor[] | undefined {
  const path = placePath(`readings?${windowOf(7 * 24).query}&resolution=hour`);
  return resource<{ hours: HourOfSensor[] }>(path, placePath('readings by hour')).value.data?.hours;
}
