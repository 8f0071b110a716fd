/**
 * Readings a second, acknowledged at QoS 1 when they are on the disk, against three baselines of the same run: the same
 * broker with a subscriber that does nothing, mosquitto with its memory on the disk and such a subscriber, and the
 * database by itself. Publisher and subscriber live in this process.
 */
import Database from 'better-sqlite3';
import mqtt from 'mqtt';
import { startBroker } from '../../services/broker/broker.ts';
import { startIngest } from '../../services/ingest/ingest.ts';
import { startMosquitto } from '../ingest/mosquitto.ts';
import { openHouse, placeId, startMs } from '../ingest/station.ts';

/** Publishes on their way at a time. */
const inFlight = 500;
const batch = 500;

async function perSecond(readings: number, work: () => Promise<unknown> | unknown): Promise<number> {
  const start = performance.now();
  await work();
  return (1000 * readings) / (performance.now() - start);
}

const payloadOf = (number: number) =>
  JSON.stringify({ temperatureC: 15 + (number % 97) / 10, time: startMs - number * 60_000 });

/** Resolves when all are acknowledged. */
async function publishAll(board: mqtt.MqttClient, readings: number, waiting: number): Promise<void> {
  let next = 0;
  const publishTheRest = async () => {
    while (next < readings) {
      next += 1;
      await board.publishAsync(`glasstide/${placeId}/readings/bench`, payloadOf(next), { qos: 1 });
    }
  };
  await Promise.all(Array.from({ length: waiting }, publishTheRest));
}

export async function acknowledgedPerSecond(
  path: string,
  readings: number,
  waiting = inFlight,
): Promise<number> {
  const store = openHouse(path);
  const ingest = await startIngest({ store, clock: { nowMs: () => startMs }, onChange: () => {} });
  const broker = await startBroker({ port: 0, beforeAcknowledge: ingest.handle });
  const board = await mqtt.connectAsync(`mqtt://127.0.0.1:${broker.port}`);
  const found = await perSecond(readings, () => publishAll(board, readings, waiting));
  const kept = await store.readings.range(placeId, { fromMs: 0, toMs: startMs + 1 });
  if (kept.length !== readings) throw new Error(`${kept.length} of ${readings} readings were kept`);
  await board.endAsync();
  await broker.close();
  await ingest.close();
  await store.close();
  return found;
}

/** Until everything is acknowledged and has come to a subscriber that does nothing with it. */
async function passedPerSecond(url: string, readings: number): Promise<number> {
  const [board, idler] = [await mqtt.connectAsync(url), await mqtt.connectAsync(url)];
  let heard = 0;
  const allHeard = new Promise<void>((resolve) => {
    idler.on('message', () => {
      heard += 1;
      if (heard === readings) resolve();
    });
  });
  await idler.subscribeAsync('glasstide/#', { qos: 1 });
  const found = await perSecond(readings, () =>
    Promise.all([publishAll(board, readings, inFlight), allHeard]),
  );
  await board.endAsync();
  await idler.endAsync();
  return found;
}

async function ownBrokerPerSecond(readings: number): Promise<number> {
  const broker = await startBroker({ port: 0 });
  const found = await passedPerSecond(`mqtt://127.0.0.1:${broker.port}`, readings);
  await broker.close();
  return found;
}

async function mosquittoPerSecond(readings: number): Promise<number> {
  const broker = await startMosquitto();
  const found = await passedPerSecond(broker.url('service'), readings);
  await broker.close();
  return found;
}

/** The table of readings alone, a transaction for each batch, synced as ours is. */
function insertedPerSecond(path: string, readings: number): Promise<number> {
  const db = new Database(path);
  db.pragma('journal_mode = WAL');
  db.pragma('synchronous = FULL');
  db.exec(`create table reading (place int, sensor int, time int, temperatureC real, humidityPct real, doubt text,
    primary key (place, sensor, time)) without rowid`);
  const insert = db.prepare('insert into reading values (1, 1, ?, ?, null, null) on conflict do nothing');
  const insertFrom = db.transaction((from: number) => {
    for (let number = from; number < from + batch; number += 1) {
      const { time, temperatureC } = JSON.parse(payloadOf(number));
      insert.run(time, temperatureC);
    }
  });
  const found = perSecond(readings, () => {
    for (let from = 0; from < readings; from += batch) insertFrom(from);
  });
  db.close();
  return found;
}

/** Medians of runs that take turns, so that what else the machine does weighs on all alike. */
export async function ingestionLines(nextFile: () => string, readings = 20_000, runs = 5): Promise<string[]> {
  const rows = new Map<string, number[]>();
  const note = (what: string, found: number) => rows.set(what, [...(rows.get(what) ?? []), found]);
  for (let run = 0; run < runs; run += 1) {
    note('acknowledged and on disk', await acknowledgedPerSecond(nextFile(), readings));
    note('same broker, idle subscriber', await ownBrokerPerSecond(readings));
    // It writes all of its memory to the disk at each change, so it gets fewer.
    note('mosquitto that forgets nothing, idle subscriber', await mosquittoPerSecond(readings / 20));
    note('database alone, 500 a batch', await insertedPerSecond(nextFile(), readings));
  }
  const median = (what: string) =>
    (rows.get(what) ?? []).sort((a, b) => a - b)[Math.floor(runs / 2)] ?? Number.NaN;
  const ours = median('acknowledged and on disk');
  return [...rows.keys()].map((what) => {
    const found = median(what);
    return `${what.padEnd(48)} ${Math.round(found)} readings/s  ours is ${(ours / found).toFixed(2)} of it`;
  });
}
