/** A club: mosquitto with passwords, rights and TLS, several ingest processes, readings on InfluxDB. All of it real. */
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import mqtt from 'mqtt';
import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, it, vi } from 'vitest';
import { openInfluxStore, openStore } from '../../services/store/sqlite.ts';
import type { Store } from '../../services/store/store.ts';
import { type ServiceProcess, startProcess } from '../faults/serviceProcess.ts';
import { type InfluxTestServer, startInflux } from '../store/influxServer.ts';
import { type Mosquitto, startMosquitto } from './mosquitto.ts';
import { openHouse, placeId, startMs } from './station.ts';

const bench = `glasstide/${placeId}/readings/bench`;
const always = { fromMs: 0, toMs: 4e12 };
let broker: Mosquitto;
let folder: string;
const processes: ServiceProcess[] = [];

beforeAll(async () => {
  broker = await startMosquitto();
});
afterAll(() => broker.close());
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'glasstide-club-'));
});
afterEach(async () => {
  await Promise.all(processes.splice(0).map((one) => one.kill()));
  rmSync(folder, { recursive: true });
});

function startIngestProcess(name: string, settings: Record<string, string>): ServiceProcess {
  const started = startProcess({
    GLASSTIDE_DATA: folder,
    GLASSTIDE_ONLY: 'ingest',
    GLASSTIDE_MQTT_CLIENT: `${folder}-${name}`,
    ...settings,
  });
  processes.push(started);
  return started;
}

async function newHouse(): Promise<void> {
  await openHouse(join(folder, 'glasstide.sqlite')).close();
}

const connect = (url: string, options: mqtt.IClientOptions = {}) =>
  mqtt.connectAsync(url, { ca: broker.ca, protocolVersion: 5, reconnectPeriod: 0, ...options });

const timed = (minute: number) =>
  JSON.stringify({ temperatureC: 10 + (minute % 200) / 10, time: startMs - minute * 60_000 });

/** Waits until so many readings are there: more would be a reading counted twice, fewer one that is lost. */
async function untilStored(store: Store, count: number): Promise<number[]> {
  const times = await vi.waitFor(
    async () => {
      const stored = (await store.readings.range(placeId, always)).map(({ timeMs }) => timeMs);
      if (stored.length < count) throw new Error(`${stored.length} of ${count} are stored`);
      return stored;
    },
    { timeout: 150_000, interval: 50 },
  );
  return times;
}

describe('mosquitto with passwords, rights and TLS', () => {
  it('carries a reading from a board to the store, both ways encrypted', async () => {
    await newHouse();
    const tls = { GLASSTIDE_MQTT_URL: broker.url('service', 'mqtts'), NODE_EXTRA_CA_CERTS: broker.caFile };
    await startIngestProcess('tls', tls).ready;
    const board = await connect(broker.url('lean-to', 'mqtts'));
    await board.publishAsync(bench, '{"temperatureC": 19.4, "time": "2026-05-13T06:09:00Z"}', { qos: 1 });
    await board.endAsync();
    const store = openStore({ path: join(folder, 'glasstide.sqlite') });
    await untilStored(store, 1);
    expect(await store.readings.range(placeId, always)).toMatchObject([{ temperatureC: 19.4 }]);
    await store.close();
  });

  it('lets nobody in without the right password, and no board into another house', async () => {
    const nobody = `mqtt://127.0.0.1:${broker.port}`;
    // Reason codes of MQTT 5, §2.4: 0x86 bad user name or password, 0x87 not authorized.
    await expect(connect(nobody)).rejects.toMatchObject({ code: 0x87 });
    await expect(connect(nobody, { username: 'north', password: 'guessed' })).rejects.toMatchObject({
      code: 0x87,
    });
    const foreign = await connect(broker.url('north'));
    await expect(foreign.publishAsync(bench, '19.4', { qos: 1 })).rejects.toMatchObject({ code: 0x87 });
    await foreign.endAsync(true);
    const own = await connect(broker.url('north'));
    await own.publishAsync('glasstide/north/readings/bench', '19.4', { qos: 1 });
    await own.endAsync();
  });

  it('tells a house only its own advice, whatever it asks for', async () => {
    const [board, service] = [await connect(broker.url('north')), await connect(broker.url('service'))];
    const heard: string[] = [];
    const told = new Promise<void>((resolve) => {
      board.on('message', (topic) => {
        heard.push(topic);
        if (topic === 'glasstide/north/advice') resolve();
      });
    });
    await board.subscribeAsync('glasstide/#', { qos: 1 });
    await service.publishAsync(`glasstide/${placeId}/advice`, 'Leave it', { qos: 1 });
    await service.publishAsync('glasstide/north/advice', 'Leave it', { qos: 1 });
    await told;
    expect(heard).toEqual(['glasstide/north/advice']);
    await Promise.all([board.endAsync(), service.endAsync()]);
  });

  it('is not trusted without its certificate', async () => {
    const stranger = mqtt.connectAsync(broker.url('lean-to', 'mqtts'), { reconnectPeriod: 0 });
    await expect(stranger).rejects.toThrow(/certificate/);
  });
});

describe('three ingest processes on one group, with InfluxDB', () => {
  let influx: InfluxTestServer;
  beforeAll(async () => {
    influx = await startInflux();
  });
  afterAll(() => influx.close());

  it('lose nothing and double nothing when each is ended by SIGKILL in turn', async () => {
    await newHouse();
    const settings = {
      GLASSTIDE_MQTT_URL: broker.url('service'),
      GLASSTIDE_MQTT_SHARE: 'club',
      GLASSTIDE_INFLUX_URL: influx.url('club'),
    };
    const names = ['first', 'second', 'third'];
    const running = new Map(names.map((name) => [name, startIngestProcess(name, settings)]));
    for (const one of running.values()) await one.ready;

    const board = await connect(broker.url('lean-to'));
    const count = 600;
    const killAt = new Map(names.map((name, i) => [100 + 150 * i, name]));
    const store = openInfluxStore({ path: join(folder, 'glasstide.sqlite'), url: influx.url('club') });
    const restarts: Promise<string>[] = [];
    await Promise.all(
      Array.from({ length: count }, async (_, i) => {
        await board.publishAsync(bench, timed(i), { qos: 1 });
        const name = killAt.get(i);
        if (name === undefined) return;
        await running.get(name)?.kill();
        restarts.push(startIngestProcess(name, settings).ready);
      }),
    );
    await Promise.all(restarts);
    expect(restarts).toHaveLength(3);
    await board.endAsync();

    const times = await untilStored(store, count);
    expect(times).toEqual(Array.from({ length: count }, (_, i) => startMs - (count - 1 - i) * 60_000));
    await store.readings.emptied();
    expect(await influx.ask('club', 'select count(temperatureC) from reading')).toContain(`,${count}]`);
    const hours = await store.readings.hourly(placeId, always);
    expect(hours.reduce((sum, hour) => sum + hour.count + hour.doubted, 0)).toBe(count);
    expect(store.quarantine.list()).toEqual([]);
    await store.close();
  }, 200_000);
});
