/** Our client on a broker that is not ours: persistent session, retained ghosts, a store that stumbles. */
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { type Broker, startBroker } from '../../services/broker/broker.ts';
import { type Ingest, startIngest } from '../../services/ingest/ingest.ts';
import type { Readings, Store } from '../../services/store/store.ts';
import { connectBoard, openHouse, placeId, publish, startMs } from './station.ts';

const bench = `glasstide/${placeId}/readings/bench`;
let broker: Broker;
let store: Store;
let ingest: Ingest | undefined;
let nowMs = startMs;
let board: Awaited<ReturnType<typeof connectBoard>>;
let onChange: () => void = () => {};

const changed = () =>
  new Promise<void>((resolve) => {
    onChange = resolve;
  });

async function start(overStore: Store = store, port = broker.port): Promise<Ingest> {
  ingest = await startIngest({
    url: `mqtt://127.0.0.1:${port}`,
    store: overStore,
    clock: { nowMs: () => nowMs },
    onChange: () => onChange(),
  });
  return ingest;
}
const readings = () => store.readings.range(placeId, { fromMs: 0, toMs: 4e12 });

beforeEach(async () => {
  nowMs = startMs;
  broker = await startBroker({ port: 0 });
  store = openHouse();
  board = await connectBoard(broker.port);
});
afterEach(async () => {
  await ingest?.close();
  ingest = undefined;
  await board.endAsync(true);
  await broker.close();
  await store.close();
});

describe('on an external broker', () => {
  it('stores what boards publish', async () => {
    await (await start()).ready();
    const told = changed();
    await publish(board, bench, '19.4');
    await told;
    expect(await readings()).toMatchObject([{ temperatureC: 19.4 }]);
    expect(ingest?.troubles()).toEqual([]);
  });

  it('gets what came while it was away, through its persistent session', async () => {
    await (await start()).ready();
    await ingest?.close();
    await publish(board, bench, '{"temperatureC": 18.5, "time": "2026-05-13T03:00:00Z"}');
    const told = changed();
    await start();
    await told;
    expect(await readings()).toMatchObject([{ temperatureC: 18.5 }]);
  });

  it('does not take the retained ghost for a reading, and a live retained one it does', async () => {
    await publish(board, bench, '35', { retain: true });
    const haunted = changed();
    await (await start()).ready();
    await haunted;
    expect(store.quarantine.list()).toMatchObject([{ code: 'retained-without-time', retained: true }]);
    const told = changed();
    // [MQTT-3.3.1-9] A broker clears the flag for those who listen already.
    await publish(board, bench, '19.4', { retain: true });
    await told;
    expect(await readings()).toMatchObject([{ temperatureC: 19.4 }]);
  });

  /** A store that cannot keep readings for the first `times` times. */
  const stumbling = (times: number): Store => {
    let left = times;
    const add: Readings['add'] = async (...args) => {
      if (left-- > 0) throw new Error('disk full');
      return store.readings.add(...args);
    };
    return { ...store, readings: { ...store.readings, add } };
  };

  it('does not acknowledge what the store could not keep: the broker sends it again', async () => {
    await (await start(stumbling(1))).ready();
    const told = changed();
    await publish(board, bench, '{"temperatureC": 18.5, "time": "2026-05-13T03:00:00Z"}');
    await told;
    expect(await readings()).toMatchObject([{ temperatureC: 18.5 }]);
    expect(store.quarantine.list()).toEqual([]);
  });

  it('puts aside what could not be kept twice, so that it does not come for ever', async () => {
    await (await start(stumbling(2))).ready();
    const told = changed();
    await publish(board, bench, '{"temperatureC": 18.5, "time": "2026-05-13T03:00:00Z"}');
    await told;
    const [kept] = store.quarantine.list({ placeId });
    expect(kept).toMatchObject({ code: 'fault', reason: expect.stringContaining('disk full') });
    expect(await ingest?.reread([kept?.id ?? 0])).toEqual({ mended: 1, stillRefused: 0 });
    expect(await readings()).toMatchObject([{ temperatureC: 18.5 }]);
  });

  it('a message delivered again without a time of its own counts once', async () => {
    const handled = await start();
    await handled.ready();
    const delivery = { sender: 'broker', packetId: 7 };
    const first = { topic: bench, payload: Buffer.from('19.4'), retained: false, duplicate: false, delivery };
    // [MQTT-3.3.1-1] What is delivered again carries the flag DUP, [MQTT-4.4.0-1] and its identifier.
    const again = { ...first, duplicate: true };
    await handled.handle(first);
    nowMs += 60_000;
    await handled.handle(again);
    expect(await readings()).toHaveLength(1);
    expect(store.arrivals.list(placeId)[0]?.readAs).toMatch(/^Sent again/);
    // Another message that says the same, whose first sending never came: it counts.
    await handled.handle({ ...again, delivery: { ...delivery, packetId: 8 } });
    nowMs += 60_000;
    // The identifier used again for another message: it counts.
    await handled.handle({ ...first, payload: Buffer.from('19.5') });
    nowMs += 60_000;
    await handled.handle({ ...again, payload: Buffer.from('19.6') });
    expect((await readings()).map(({ temperatureC }) => temperatureC)).toEqual([19.4, 19.4, 19.5, 19.6]);
  });

  it('listens on the topic of a sensor that is mapped later', async () => {
    await (await start()).ready();
    const sensor = { id: 'vent', name: 'Vent', unit: 'Cel', topic: 'home/+/t' } as const;
    store.records.put({ kind: 'sensor', placeId, id: 'vent', data: sensor, atMs: startMs });
    ingest?.refreshMappings();
    const told = changed();
    // Retained, so that it arrives whenever the broker grants the subscription; its time makes it a reading.
    const senml = JSON.stringify([{ u: 'Cel', v: 17, t: startMs / 1000 - 60 }]);
    await publish(board, 'home/greenhouse/t', senml, { retain: true });
    await told;
    expect(await readings()).toEqual([{ sensorId: 'vent', timeMs: startMs - 60_000, temperatureC: 17 }]);
  });

  it('says so while the broker is away', async () => {
    await start(store, 9);
    expect(ingest?.troubles()).toEqual([expect.stringContaining('127.0.0.1:9 does not answer')]);
  });
});
