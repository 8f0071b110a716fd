/** Readings as the server has them, and what the spool adds to them. */

import { longestLineMs } from '../readingsContract.ts';
import { hourMs } from '../rollups.ts';
import { firstOfEach } from '../sampling.ts';
import type { Spool } from '../spool.ts';
import type { HourlyRollup, Standing, StoredReading } from '../store.ts';
import { hoursAround } from './emptying.ts';
import { byHour, byTimeThenSensor, hourKey, hourOf, readingKey, rollUp } from './hours.ts';
import {
  doubtedIn,
  endsOf,
  hoursIn,
  hoursOf,
  inReach,
  lastReadings,
  readingsIn,
  readingsOf,
  type Span,
} from './points.ts';
import type { InfluxServer } from './server.ts';

const dayMs = 24 * hourMs;
const always: Span = { fromMs: Number.NEGATIVE_INFINITY, toMs: Number.POSITIVE_INFINITY };
/** One answer holds at most this much, so that a year of minutes does not have to fit into one text. */
const atOnceMs = { readings: 31 * dayMs, hours: 400 * dayMs };

export interface Content {
  /** Ordered by time, then sensor; the server's value goes before a waiting one for the same sensor and time. */
  range(placeId: string, span: Span): Promise<StoredReading[]>;
  hourly(placeId: string, span: Span): Promise<HourlyRollup[]>;
  latest(placeId: string): Promise<StoredReading[]>;
  sampled(placeId: string, span: Span, everyMs: number): Promise<StoredReading[]>;
  /** The server picks them out: of a year they are few. */
  doubted(placeId: string, span: Span): Promise<StoredReading[]>;
  earliestMs(placeId: string): Promise<number | undefined>;
  standings(placeId: string): Promise<Standing[]>;
}

/** The spool is always looked at first: what leaves it meanwhile is on the server by then, so nothing is missed. */
export function openContent(server: InfluxServer, spool: Spool): Content {
  async function endsOnServer(placeId: string): Promise<{ first?: number; last?: number }> {
    const [first, last] = (await server.ask(endsOf(placeId))).map((series) => series[0]?.values[0]?.[0]);
    return typeof first === 'number' && typeof last === 'number' ? { first, last } : {};
  }

  /** The span cut into parts that fit into one answer, from the first reading of the place to its last. */
  async function parts(placeId: string, span: Span, atOnce: number): Promise<Span[]> {
    const whole = { ...span, fromMs: inReach(span.fromMs), toMs: inReach(span.toMs) };
    if (whole.toMs - whole.fromMs <= atOnce) return [whole];
    const { first, last } = await endsOnServer(placeId);
    if (first === undefined || last === undefined) return [];
    const fromMs = Math.max(whole.fromMs, hourOf(first));
    const toMs = Math.min(whole.toMs, last + 1);
    const count = Math.max(0, Math.ceil((toMs - fromMs) / atOnce));
    return Array.from({ length: count }, (_, i) => {
      return { ...span, fromMs: fromMs + i * atOnce, toMs: Math.min(toMs, fromMs + (i + 1) * atOnce) };
    });
  }

  /** Those to be kept, part by part: a year of minutes is never held at once. */
  async function ofServer(
    placeId: string,
    span: Span,
    keep: (reading: StoredReading) => boolean = () => true,
  ): Promise<StoredReading[]> {
    const readings: StoredReading[] = [];
    for (const part of await parts(placeId, span, atOnceMs.readings)) {
      for (const series of await server.ask([readingsIn(placeId, part)])) {
        for (const reading of readingsOf(series)) if (keep(reading)) readings.push(reading);
      }
    }
    return readings;
  }

  async function range(placeId: string, span: Span): Promise<StoredReading[]> {
    const waiting = spool.range(placeId, span);
    return merged(await ofServer(placeId, span), waiting);
  }

  async function hourly(placeId: string, span: Span): Promise<HourlyRollup[]> {
    const waiting = spool.range(placeId, { ...span, toMs: span.toMs + hourMs });
    const unsettled = new Set(waiting.map(({ sensorId, timeMs }) => hourKey(sensorId, hourOf(timeMs))));
    const hours: HourlyRollup[] = [];
    for (const part of await parts(placeId, span, atOnceMs.hours)) {
      for (const series of await server.ask([hoursIn(placeId, part)])) {
        for (const hour of hoursOf(series))
          if (!unsettled.has(hourKey(hour.sensorId, hour.hourMs))) hours.push(hour);
      }
    }
    const fresh = await rolledUp(placeId, waiting, unsettled);
    return [...hours, ...fresh.filter((hour) => hour.hourMs >= span.fromMs && hour.hourMs < span.toMs)].sort(
      (a, b) => a.hourMs - b.hourMs || (a.sensorId < b.sensorId ? -1 : 1),
    );
  }

  /** The hours in which something waits, worked out from all their readings. */
  async function rolledUp(
    placeId: string,
    waiting: readonly StoredReading[],
    unsettled: ReadonlySet<string>,
  ): Promise<HourlyRollup[]> {
    if (waiting.length === 0) return [];
    const times = waiting.map(({ timeMs }) => hourOf(timeMs));
    const span = { fromMs: smallest(times), toMs: -smallest(times.map((time) => -time)) + hourMs };
    return [...byHour(await range(placeId, span))]
      .filter(([key]) => unsettled.has(key))
      .map(([, [first, ...more]]) => rollUp(first!.sensorId, hourOf(first!.timeMs), [first!, ...more]))
      .filter(({ count }) => count > 0);
  }

  /** Of each sensor the first of each stretch of what is there, and again of that with what waits. */
  async function sampled(placeId: string, span: Span, everyMs: number): Promise<StoredReading[]> {
    const waiting = spool.range(placeId, span);
    const readings = await ofServer(placeId, span, firstOfEach(everyMs));
    return merged(readings, waiting).filter(firstOfEach(everyMs));
  }

  async function doubted(placeId: string, span: Span): Promise<StoredReading[]> {
    const waiting = spool.range(placeId, span).filter(({ doubt }) => doubt !== undefined);
    // Before the answer itself: what comes to the server in between is then in both, and told once.
    const known = new Set((await hoursAround(server, placeId, waiting)).map(readingKey));
    const [series = []] = await server.ask([doubtedIn(placeId, span)]);
    return merged(
      readingsOf(series),
      waiting.filter((reading) => !known.has(readingKey(reading))),
    );
  }

  async function earliestMs(placeId: string): Promise<number | undefined> {
    const waiting = spool.range(placeId, always).map(({ timeMs }) => timeMs);
    const { first = Number.POSITIVE_INFINITY } = await endsOnServer(placeId);
    const earliest = smallest([first, ...waiting]);
    return Number.isFinite(earliest) ? earliest : undefined;
  }

  async function standings(placeId: string): Promise<Standing[]> {
    const sums = new Map<string, { stretches: Set<number>; hours: number; sumC: number }>();
    for (const { sensorId, hourMs: startMs, meanC } of await hourly(placeId, always)) {
      const sum = sums.get(sensorId) ?? { stretches: new Set(), hours: 0, sumC: 0 };
      sums.set(sensorId, sum);
      sum.stretches.add(Math.floor(startMs / longestLineMs));
      sum.hours += 1;
      sum.sumC += meanC;
    }
    return [...sums]
      .map(([sensorId, { stretches, hours, sumC }]) => {
        return { sensorId, coveredMs: stretches.size * longestLineMs, meanC: sumC / hours };
      })
      .sort((a, b) => (a.sensorId < b.sensorId ? -1 : 1));
  }

  return {
    range,
    hourly,
    sampled,
    doubted,
    earliestMs,
    standings,
    async latest(placeId) {
      const waiting = spool.range(placeId, { fromMs: -inReach(Infinity), toMs: inReach(Infinity) });
      const [series = []] = await server.ask([lastReadings(placeId)]);
      const newest = new Map<string, StoredReading>();
      for (const reading of merged(readingsOf(series), waiting)) newest.set(reading.sensorId, reading);
      return [...newest.values()].sort((a, b) => (a.sensorId < b.sensorId ? -1 : 1));
    },
  };
}

function merged(readings: readonly StoredReading[], waiting: readonly StoredReading[]): StoredReading[] {
  const known = waiting.length === 0 ? new Set<string>() : new Set(readings.map(readingKey));
  return [...readings, ...waiting.filter((reading) => !known.has(readingKey(reading)))].sort(
    byTimeThenSensor,
  );
}

/** Math.min takes its numbers as arguments, and a year of minutes is too many of them. */
function smallest(numbers: readonly number[]): number {
  return numbers.reduce((least, number) => Math.min(least, number), Number.POSITIVE_INFINITY);
}
