/** A house for the tests: real broker, real store, and an MQTT client that behaves like a board. */
import mqtt, { type MqttClient } from 'mqtt';
import { startBroker } from '../../services/broker/broker.ts';
import { type Change, startIngest } from '../../services/ingest/ingest.ts';
import type { Place } from '../../services/model/index.ts';
import { openStore } from '../../services/store/sqlite.ts';

export const startMs = Date.parse('2026-05-13T06:10:00Z');
export const placeId = 'lean-to';

const place: Place = {
  id: placeId,
  name: 'Lean-to',
  kind: 'glasshouse',
  areaM2: 11,
  latitudeDeg: 49.5,
  longitudeDeg: 8.5,
  timeZone: 'Europe/Berlin',
  pests: ['trialeurodes-vaporariorum'],
  limits: {},
  seasonEnd: '10-15',
};

export type Station = Awaited<ReturnType<typeof openStation>>;

/** A store with one place and one trap, hung on 1 May. */
export function openHouse(path = ':memory:') {
  const store = openStore({ path });
  store.records.put({ kind: 'place', placeId, id: placeId, data: place, atMs: startMs });
  const trap = { id: 'door', name: 'Door', hungAt: '2026-05-01T08:00:00+02:00' };
  store.records.put({ kind: 'trap', placeId, id: 'door', data: trap, atMs: startMs });
  return store;
}

/** Embedded broker with ingest behind it; `publish` resolves on the PUBACK. */
export async function openStation() {
  const store = openHouse();
  const time = { nowMs: startMs };
  const changes: Change[] = [];
  const clock = { nowMs: () => time.nowMs };
  const ingest = await startIngest({ store, clock, onChange: (change) => changes.push(change) });
  const broker = await startBroker({ port: 0, beforeAcknowledge: ingest.handle });
  const board = await connectBoard(broker.port);

  return {
    store,
    ingest,
    time,
    changes,
    port: broker.port,
    publish: (topic: string, payload: string | Uint8Array, options: { retain?: boolean } = {}) =>
      publish(board, topic, payload, options),
    /** All readings of the place, whatever was thought of them. */
    readings: () => store.readings.range(placeId, { fromMs: 0, toMs: 4e12 }),
    quarantine: () => store.quarantine.list(),
    async close() {
      await board.endAsync();
      await broker.close();
      await ingest.close();
      await store.close();
    },
  };
}

export function connectBoard(port: number, options: mqtt.IClientOptions = {}): Promise<MqttClient> {
  return mqtt.connectAsync(`mqtt://127.0.0.1:${port}`, { reconnectPeriod: 20, ...options });
}

/** [MQTT-3.3.1-1] What is sent again carries the flag DUP; mqtt.js leaves that out. */
export function boardMemory(): mqtt.Store {
  const store = new mqtt.Store();
  const put = store.put.bind(store);
  store.put = (packet, done) => put(packet.cmd === 'publish' ? { ...packet, dup: true } : packet, done);
  return store;
}

export async function publish(
  board: MqttClient,
  topic: string,
  payload: string | Uint8Array,
  options: { retain?: boolean } = {},
): Promise<void> {
  await board.publishAsync(topic, Buffer.from(payload), { qos: 1, ...options });
}
