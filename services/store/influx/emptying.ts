/**
 * Empties the spool into the server: what it has already is left as it is, so that the first value stays in use; new
 * points go with the roll-ups of their hours in one request; then they leave the spool. Ended at any point
 * and begun again, the same points are written again, and a point written twice is one point.
 */
import { hourMs } from '../rollups.ts';
import type { Spool, Spooled } from '../spool.ts';
import type { StoredReading } from '../store.ts';
import { byHour, hourKey, hourOf, readingKey, rollUp } from './hours.ts';
import { hourPoint, readingPoint, readingsIn, readingsOf, type Span } from './points.ts';
import { type InfluxServer, PointsRefused } from './server.ts';

const atOnce = 5000;

/** Sends all that waits. Throws ServerAway; what was not sent stays. */
export async function emptySpool(server: InfluxServer, spool: Spool, goOn: () => boolean): Promise<void> {
  while (goOn()) {
    const batch = spool.waiting(atOnce);
    if (batch.length === 0) return;
    await send(server, spool, batch);
  }
}

/** When the server refuses a batch, it is halved until the points that it will not have stand alone. */
async function send(server: InfluxServer, spool: Spool, batch: readonly Spooled[]): Promise<void> {
  try {
    await write(server, batch);
    spool.remove(batch.map(({ number }) => number));
  } catch (error) {
    if (!(error instanceof PointsRefused)) throw error;
    const [only] = batch;
    if (only && batch.length === 1) return spool.refuse(only.number, error.message);
    const half = Math.ceil(batch.length / 2);
    await send(server, spool, batch.slice(0, half));
    await send(server, spool, batch.slice(half));
  }
}

async function write(server: InfluxServer, batch: readonly Spooled[]): Promise<void> {
  const byPlace = new Map<string, StoredReading[]>();
  for (const { placeId, reading } of batch) {
    const sent = byPlace.get(placeId);
    if (sent) sent.push(reading);
    else byPlace.set(placeId, [reading]);
  }
  const points = [];
  for (const [placeId, sent] of byPlace) {
    const known = await hoursAround(server, placeId, sent);
    const knownKeys = new Set(known.map(readingKey));
    const fresh = sent.filter((reading) => !knownKeys.has(readingKey(reading)));
    points.push(...fresh.map((reading) => readingPoint(placeId, reading)));
    points.push(...hourPoints(placeId, [...known, ...fresh], sent));
  }
  await server.write(points);
}

/** All readings that the server has in the hours of these. */
export async function hoursAround(
  server: InfluxServer,
  placeId: string,
  readings: readonly { sensorId: string; timeMs: number }[],
): Promise<StoredReading[]> {
  const answers = await server.ask(spansOf(readings).map((span) => readingsIn(placeId, span)));
  return answers.flatMap(readingsOf);
}

/** The roll-ups of the hours of `touched` from all readings in them. */
export function hourPoints(
  placeId: string,
  readings: readonly StoredReading[],
  touched: readonly { sensorId: string; timeMs: number }[],
) {
  const hours = byHour(readings);
  const wanted = new Map(
    touched.map(({ sensorId, timeMs }) => [
      hourKey(sensorId, hourOf(timeMs)),
      { sensorId, startMs: hourOf(timeMs) },
    ]),
  );
  return [...wanted].map(([key, { sensorId, startMs }]) =>
    hourPoint(placeId, rollUp(sensorId, startMs, hours.get(key) ?? [])),
  );
}

/** The hours of these readings as spans, neighbours joined. */
function spansOf(readings: readonly { sensorId: string; timeMs: number }[]): Span[] {
  const starts = new Map<string, Set<number>>();
  for (const { sensorId, timeMs } of readings) {
    const known = starts.get(sensorId) ?? new Set();
    starts.set(sensorId, known.add(hourOf(timeMs)));
  }
  return [...starts].flatMap(([sensorId, hours]) => {
    const spans: (Span & { sensorId: string })[] = [];
    for (const fromMs of [...hours].sort((a, b) => a - b)) {
      const last = spans.at(-1);
      if (last?.toMs === fromMs) last.toMs = fromMs + hourMs;
      else spans.push({ sensorId, fromMs, toMs: fromMs + hourMs });
    }
    return spans;
  });
}
