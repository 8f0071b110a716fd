/** From the JSON of a weather service to points of the air outdoors, by the owner's pointers. */
import { z } from 'zod';
import { pointersIn, valueAtPointer } from '../jsonPointer.ts';
import { toCelsius } from '../model/index.ts';
import type { Refusal } from '../refusals.ts';
import type { OutdoorSource, StoredOutdoorPoint } from '../store/store.ts';

type Point = Pick<StoredOutdoorPoint, 'timeMs' | 'temperatureC'>;

const hourMs = 3_600_000;
const dayMs = 24 * hourMs;
/** What lies further ahead is climate, not weather. */
const furthestDays = 16;
const mostEntries = 5000;
/** As fine as a day's course needs; a year of forecasts is kept. */
const stepMs = 3 * hourMs;

const list = z.array(z.unknown()).max(mostEntries);
const time = z.union([
  z.iso.datetime({ offset: true }).transform((text) => Date.parse(text)),
  // Many services give hours without a zone: they are asked for UTC, and the settings page says so.
  z.iso.datetime({ local: true }).transform((text) => Date.parse(`${text}Z`)),
  z
    .string()
    .regex(/^\d{4}-\d\d-\d\dT\d\d:\d\d$/)
    .transform((text) => Date.parse(`${text}:00Z`)),
  z.number().transform((number) => (Math.abs(number) < 1e11 ? number * 1000 : number)),
]);

/** Points in three-hour steps, sorted, or why there are none. */
export function readForecast(text: string, source: OutdoorSource, arrivedMs: number): Point[] | Refusal {
  let document: unknown;
  try {
    document = JSON.parse(text);
  } catch {
    return unreadable(`The answer is no JSON: it begins with ${text.trim().slice(0, 40)}.`);
  }
  const pairs = pairsOf(document, source.pointers);
  if (!Array.isArray(pairs)) return pairs;
  const points: Point[] = [];
  for (const [at, value] of pairs) {
    // Services leave the last hours of a run empty.
    if (value === null || value === undefined) continue;
    const timeMs = time.safeParse(at);
    if (!timeMs.success)
      return unreadable(`A time came as ${shown(at)}. Point to times in ISO 8601 or seconds.`);
    if (typeof value !== 'number' || !Number.isFinite(value))
      return unreadable(`A temperature came as ${shown(value)}. Point to plain numbers.`);
    const temperatureC = toCelsius(value, source.unit);
    if (temperatureC < -60 || temperatureC > 60)
      return unreadable(
        `A temperature of ${Math.round(temperatureC)} °C outdoors cannot be: look at the unit.`,
      );
    points.push({ timeMs: timeMs.data, temperatureC });
  }
  const used = thinned(points, arrivedMs);
  if (used.length === 0) return unreadable('None of its times lies in the days ahead.');
  return used;
}

/** Times and temperatures, from a list of entries or from two lists. */
function pairsOf(document: unknown, pointers: OutdoorSource['pointers']): [unknown, unknown][] | Refusal {
  if (pointers.list !== undefined) {
    const entries = list.safeParse(valueAtPointer(document, pointers.list));
    if (!entries.success) return noList(document, pointers.list);
    return entries.data.map((entry) => [
      valueAtPointer(entry, pointers.time),
      valueAtPointer(entry, pointers.temperature),
    ]);
  }
  const times = list.safeParse(valueAtPointer(document, pointers.time));
  if (!times.success) return noList(document, pointers.time);
  const values = list.safeParse(valueAtPointer(document, pointers.temperature));
  if (!values.success) return noList(document, pointers.temperature);
  if (times.data.length !== values.data.length)
    return unreadable(`There are ${times.data.length} times but ${values.data.length} temperatures.`);
  return times.data.map((at, i) => [at, values.data[i]]);
}

/** One point a step, from a step before now to the furthest day. */
function thinned(points: readonly Point[], nowMs: number): Point[] {
  const ahead = points
    .filter(({ timeMs }) => timeMs > nowMs - stepMs && timeMs < nowMs + furthestDays * dayMs)
    .sort((a, b) => a.timeMs - b.timeMs);
  let lastMs = Number.NEGATIVE_INFINITY;
  return ahead.filter(({ timeMs }) => {
    if (timeMs - lastMs < stepMs) return false;
    lastMs = timeMs;
    return true;
  });
}

function noList(document: unknown, pointer: string): Refusal {
  const there = pointersIn(document).join(', ') || 'nothing';
  return unreadable(
    `There is no list of at most ${mostEntries} at ${pointer || 'the top'}. The answer has ${there}.`,
  );
}

function unreadable(reason: string): Refusal {
  return { code: 'forecast-unreadable', reason };
}

const shown = (value: unknown): string => (JSON.stringify(value) ?? 'nothing').slice(0, 60);
