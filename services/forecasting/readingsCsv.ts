/** Readings as CSV (RFC 4180), which any program reads; and keeps the doubts that the season file leaves to the model. */
import type { Store, StoredReading } from '../store/store.ts';
import { stretches } from './stretches.ts';

export const csvHead = 'sensor,time,temperature_c,humidity_pct,doubt\r\n';

/** One line a reading; times in UTC, an empty field where nothing is known. */
export function csvLines(readings: readonly StoredReading[]): string {
  return readings
    .map(({ sensorId, timeMs, temperatureC, humidityPct = '', doubt = '' }) =>
      [sensorId, new Date(timeMs).toISOString(), temperatureC, humidityPct, field(doubt)].join(','),
    )
    .map((line) => `${line}\r\n`)
    .join('');
}

/** All readings of a place, piece by piece. */
export async function* readingsCsv(store: Store, placeId: string): AsyncGenerator<string> {
  yield csvHead;
  for await (const readings of stretches(store.readings, placeId)) yield csvLines(readings);
}

/** RFC 4180, section 2, rules 6 and 7. */
const field = (text: string) => (/[",\r\n]/.test(text) ? `"${text.replaceAll('"', '""')}"` : text);
