/** What is left on the disk of what was sent, looked for message by message. */
import { openInfluxStore, openStore } from '../../services/store/sqlite.ts';
import type { Store } from '../../services/store/store.ts';
import { countKey, garbageKey, type Kind, readingKey, untimedKey, untimedSensors } from './messages.ts';

export interface Found {
  /** Different messages that had to be found: a repetition is the same message. */
  different: number;
  once: number;
  /** Of these, kept in quarantine with a reason. */
  refusedWithReason: number;
  lost: string[];
  doubled: string[];
  /** In the store, and never sent. */
  strange: string[];
}

const always = { fromMs: 0, toMs: 4e12 };

export async function countFound(
  expected: ReadonlyMap<string, Kind>,
  places: readonly string[],
  { path, url }: { path: string; url?: string },
): Promise<Found> {
  const store = await openSettled(path, url);
  const times = new Map<string, number>();
  const see = (key: string) => times.set(key, (times.get(key) ?? 0) + 1);
  for (const place of places) await seePlace(store, place, see);
  let refusedWithReason = 0;
  for (const message of store.quarantine.list({ settledToo: true })) {
    see(garbageKey(message.topic, new TextDecoder().decode(message.payload)));
    if (message.reason !== '' && message.code !== 'fault') refusedWithReason += 1;
  }
  await store.close();
  const keys = [...expected.keys()];
  return {
    different: keys.length,
    once: keys.filter((key) => times.get(key) === 1).length,
    refusedWithReason,
    lost: keys.filter((key) => !times.has(key)),
    doubled: keys.filter((key) => (times.get(key) ?? 0) > 1),
    strange: [...times.keys()].filter((key) => !expected.has(key)),
  };
}

async function openSettled(path: string, url: string | undefined): Promise<Store> {
  if (url === undefined) return openStore({ path });
  const store = openInfluxStore({ path, url });
  await store.readings.emptied();
  return store;
}

async function seePlace(store: Store, place: string, see: (key: string) => void): Promise<void> {
  for (const { sensorId, timeMs, temperatureC } of await store.readings.range(place, always)) {
    const untimed = untimedSensors.includes(sensorId);
    see(untimed ? untimedKey(place, temperatureC) : readingKey(place, sensorId, timeMs, temperatureC));
  }
  for (const { id } of store.records.list('trapCount', place)) see(countKey(place, id));
}
