import mqtt from 'mqtt';
import { afterEach, describe, expect, it } from 'vitest';
import { type Broker, type PublishedMessage, startBroker } from '../../services/broker/broker.ts';

let broker: Broker | undefined;
afterEach(async () => {
  await broker?.close();
  broker = undefined;
});

const connect = (options: mqtt.IClientOptions = {}) =>
  mqtt.connectAsync(`mqtt://127.0.0.1:${broker?.port}`, { reconnectPeriod: 0, ...options });

const closing = (client: mqtt.MqttClient) =>
  new Promise<void>((resolve) => {
    client.once('close', () => resolve());
  });

/** A store that keeps nothing until it is told to. */
function slowStore() {
  const asked: { message: PublishedMessage; resolve: () => void; reject: (error: Error) => void }[] = [];
  const waiters: { count: number; resolve: () => void }[] = [];
  return {
    asked,
    beforeAcknowledge: (message: PublishedMessage) =>
      new Promise<void>((resolve, reject) => {
        asked.push({ message, resolve, reject });
        for (const waiter of waiters) if (asked.length >= waiter.count) waiter.resolve();
      }),
    untilAsked: (count: number) =>
      new Promise<void>((resolve) => {
        if (asked.length >= count) resolve();
        else waiters.push({ count, resolve });
      }),
  };
}

describe('the embedded broker', () => {
  it('carries a message from one client to another', async () => {
    broker = await startBroker({ port: 0 });
    const [board, reader] = [await connect(), await connect()];
    await reader.subscribeAsync('glasstide/+/advice', { qos: 1 });
    const received = new Promise<string[]>((resolve) => {
      reader.once('message', (topic, payload) => resolve([topic, String(payload)]));
    });
    await board.publishAsync('glasstide/lean-to/advice', 'Leave it', { qos: 1, retain: true });
    expect(await received).toEqual(['glasstide/lean-to/advice', 'Leave it']);
    await Promise.all([board.endAsync(), reader.endAsync()]);
  });

  it('hands over topic, payload and flags as they were sent', async () => {
    const store = slowStore();
    broker = await startBroker({ port: 0, beforeAcknowledge: store.beforeAcknowledge });
    const board = await connect();
    board.publish('a/b', Buffer.from([0, 255]), { qos: 1, retain: true });
    await store.untilAsked(1);
    expect(store.asked[0]?.message).toEqual({
      topic: 'a/b',
      payload: Buffer.from([0, 255]),
      retained: true,
      duplicate: false,
      live: true,
      delivery: { sender: board.options.clientId, packetId: expect.any(Number) },
    });
    store.asked[0]?.resolve();
    await board.endAsync();
  });

  it('[MQTT-4.6.0-2] acknowledges in the order of arrival, however they were stored', async () => {
    const store = slowStore();
    broker = await startBroker({ port: 0, beforeAcknowledge: store.beforeAcknowledge });
    const board = await connect();
    const acknowledged: number[] = [];
    // One network packet: the broker hands over together what it read together.
    board.stream.cork();
    const allAcknowledged = Promise.all(
      [0, 1, 2].map(async (n) => {
        await board.publishAsync('n', String(n), { qos: 1 });
        acknowledged.push(n);
      }),
    );
    board.stream.uncork();
    await store.untilAsked(3);
    store.asked[2]?.resolve();
    store.asked[1]?.resolve();
    store.asked[0]?.resolve();
    await allAcknowledged;
    expect(acknowledged).toEqual([0, 1, 2]);
    await board.endAsync();
  });

  it('ends the connection without an acknowledgement when the store refuses', async () => {
    const store = slowStore();
    broker = await startBroker({ port: 0, beforeAcknowledge: store.beforeAcknowledge });
    const board = await connect();
    let acknowledged = false;
    board.publish('a', '1', { qos: 1 }, (error) => {
      acknowledged = error === undefined || error === null;
    });
    const closed = closing(board);
    await store.untilAsked(1);
    store.asked[0]?.reject(new Error('disk full'));
    await closed;
    expect(acknowledged).toBe(false);
    await board.endAsync(true);
  });

  it('[MQTT-4.7.2-1] lets nobody speak for the broker', async () => {
    const store = slowStore();
    broker = await startBroker({ port: 0, beforeAcknowledge: store.beforeAcknowledge });
    const board = await connect();
    const closed = closing(board);
    board.publish('$SYS/uptime', '1', { qos: 1 });
    await closed;
    expect(store.asked).toEqual([]);
    await board.endAsync(true);
  });

  it('says so when the port is taken, and closes with clients connected', async () => {
    broker = await startBroker({ port: 0 });
    await expect(startBroker({ port: broker.port })).rejects.toMatchObject({ code: 'EADDRINUSE' });
    const board = await connect();
    const closed = closing(board);
    await broker.close();
    await closed;
    broker = undefined;
  });
});
