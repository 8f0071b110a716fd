/**
 * What a reading and an hour look like in InfluxDB: measurements `reading` and `hour`, tags place and
 * sensor, so that one sensor and time is one point whoever writes it, and however often.
 */
import type { IPoint } from 'influx';
import type { HourlyRollup, StoredReading } from '../store.ts';
import type { Series } from './server.ts';

/** The first and the last instant of a point: 64 bit of nanoseconds around 1970. */
const timesMs = { first: -9_223_372_036_854, last: 9_223_372_036_854 };

export interface Span {
  fromMs: number;
  /** Exclusive. */
  toMs: number;
  sensorId?: string;
}

/**
 * A point becomes visible field by field, so whoever reads meanwhile may see half of it. Every reading has its
 * temperature, its doubt (empty when it is believed), and either a humidity or the word that there is none: what
 * lacks one of them is not there yet.
 */
export function readingPoint(placeId: string, reading: StoredReading): IPoint {
  const { sensorId, timeMs, temperatureC, humidityPct, doubt = '' } = reading;
  const humidity = humidityPct === undefined ? { humidityMissing: true } : { humidityPct };
  return pointOf('reading', placeId, sensorId, timeMs, { temperatureC, doubt, ...humidity });
}

/** Fields are merged into the point that is there: only the doubt changes. An empty one means believed. */
export function doubtPoint(placeId: string, sensorId: string, timeMs: number, doubt = ''): IPoint {
  return pointOf('reading', placeId, sensorId, timeMs, { doubt });
}

export function hourPoint(placeId: string, hour: HourlyRollup): IPoint {
  const { sensorId, hourMs: startMs, count, meanC, minC, maxC, doubted } = hour;
  return pointOf('hour', placeId, sensorId, startMs, { count, meanC, minC, maxC, doubted });
}

function pointOf(
  measurement: string,
  placeId: string,
  sensorId: string,
  timeMs: number,
  fields: object,
): IPoint {
  return { measurement, tags: { place: placeId, sensor: sensorId }, fields, timestamp: String(timeMs) };
}

const otherFields = '"humidityPct", "humidityMissing", "doubt"';

export const readingsIn = (placeId: string, span: Span): string =>
  `select "temperatureC", ${otherFields} from "reading" where ${within(placeId, span)} group by "sensor"`;

export const doubtedIn = (placeId: string, span: Span): string =>
  `select "temperatureC", ${otherFields} from "reading" where ${within(placeId, span)} and "doubt" != '' group by "sensor"`;

export const hoursIn = (placeId: string, span: Span): string =>
  `select "count", "meanC", "minC", "maxC", "doubted" from "hour" where ${within(placeId, span)} group by "sensor"`;

export const lastReadings = (placeId: string): string =>
  `select last("temperatureC"), ${otherFields} from "reading" where ${ofPlace(placeId)} group by "sensor"`;

/** Where a place's readings begin and end, one statement each. */
export const endsOf = (placeId: string): string[] =>
  ['first', 'last'].map((end) => `select ${end}("temperatureC") from "reading" where ${ofPlace(placeId)}`);

export const dropPlace = (placeId: string): string =>
  `drop series from "reading", "hour" where ${ofPlace(placeId)}`;

/** By their readings: a list of tags still names series that were dropped. */
export const allPlaces = 'select last("temperatureC") from "reading" group by "place"';

const ofPlace = (placeId: string) => `"place" = ${literal(placeId)}`;

function within(placeId: string, { fromMs, toMs, sensorId }: Span): string {
  const sensor = sensorId === undefined ? '' : ` and "sensor" = ${literal(sensorId)}`;
  return `${ofPlace(placeId)}${sensor} and time >= ${inReach(fromMs)}ms and time < ${inReach(toMs)}ms`;
}

export const inReach = (timeMs: number) => Math.min(Math.max(Math.ceil(timeMs), timesMs.first), timesMs.last);

function literal(text: string): string {
  return `'${text.replace(/[\\']/g, '\\$&')}'`;
}

/** Columns: time, temperature, humidity, no humidity, doubt. */
export function readingsOf(series: readonly Series[]): StoredReading[] {
  return series.flatMap(({ tags, values }) =>
    values.flatMap(([timeMs, temperatureC, humidityPct = null, humidityMissing = null, doubt]) => {
      if (typeof timeMs !== 'number' || typeof temperatureC !== 'number') return [];
      if (typeof doubt !== 'string' || (humidityPct === null && humidityMissing === null)) return [];
      const reading: StoredReading = { sensorId: tags?.sensor ?? '', timeMs, temperatureC };
      if (typeof humidityPct === 'number') reading.humidityPct = humidityPct;
      if (doubt !== '') reading.doubt = doubt;
      return [reading];
    }),
  );
}

/** Columns as in `hoursIn`; an hour that lost its last believed reading stays with count 0 and is left out. */
export function hoursOf(series: readonly Series[]): HourlyRollup[] {
  return series.flatMap(({ tags, values }) =>
    values
      .map((row) => row.map(Number))
      .map(([startMs = 0, count = 0, meanC = 0, minC = 0, maxC = 0, doubted = 0]) => {
        return { sensorId: tags?.sensor ?? '', hourMs: startMs, count, meanC, minC, maxC, doubted };
      })
      .filter(({ count }) => count > 0),
  );
}
