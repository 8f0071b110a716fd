import { type AddressInfo, connect, type Socket } from 'node:net';
import mqtt, { type MqttClient } from 'mqtt';
import { afterEach, describe, expect, test } from 'vitest';
import { type Broker, type BrokerRights, startBroker } from '../../services/broker/broker.ts';
import { packetSizes } from '../../services/broker/packetSize.ts';

const boards: Record<string, { password: string; publishes: string }> = {
  'lean-to/bench': { password: 'p-bench', publishes: 'glasstide/lean-to/readings/bench' },
  'lean-to/door': { password: 'p-door', publishes: 'glasstide/lean-to/readings/door' },
};
let broker: Broker;
let revoked: Set<string>;
let refused: string[];
let stored: string[];
const clients: MqttClient[] = [];

const rights = (): BrokerRights => ({
  signIn(user = '', password = '') {
    const board = boards[user];
    if (board?.password !== password || revoked.has(user)) return undefined;
    return {
      user,
      mayPublish: (topic) => topic === board.publishes,
      mayHear: (filter) => filter === 'glasstide/lean-to/advice',
      isStillIn: () => !revoked.has(user),
    };
  },
  onTurnedAway: ({ user, why, topic }) => refused.push([user, why, topic].filter(Boolean).join(' ')),
});

async function open(): Promise<void> {
  revoked = new Set();
  refused = [];
  stored = [];
  broker = await startBroker({
    port: 0,
    rights: rights(),
    beforeAcknowledge: async ({ topic }) => void stored.push(topic),
  });
}
afterEach(async () => {
  for (const client of clients.splice(0)) await client.endAsync(true);
  await broker.close();
});

async function board(user: string, more: mqtt.IClientOptions = {}): Promise<MqttClient> {
  const password = boards[user]?.password ?? '';
  const client = await mqtt.connectAsync(
    `mqtt://127.0.0.1:${broker.port}`,
    { protocolVersion: 4, username: user, password, reconnectPeriod: 0, ...more },
    false,
  );
  clients.push(client);
  return client;
}
const gone = (client: MqttClient) => new Promise<void>((resolve) => client.once('close', () => resolve()));

describe('a board', () => {
  test('with its password publishes on its own topic', async () => {
    await open();
    const bench = await board('lean-to/bench');
    await bench.publishAsync('glasstide/lean-to/readings/bench', '19', { qos: 1 });
    expect(stored).toEqual(['glasstide/lean-to/readings/bench']);
  });

  test.each([
    ['glasstide/lean-to/readings/door', 1],
    ['glasstide/lean-to/readings/door', 0],
    ['glasstide/lean-to/advice', 1],
    ['anything/else', 1],
  ] as const)('that publishes on %s at QoS %i is cut off, and nothing is kept', async (topic, qos) => {
    await open();
    const bench = await board('lean-to/bench');
    const cut = gone(bench);
    bench.publish(topic, '19', { qos });
    await cut;
    expect(stored).toEqual([]);
    expect(refused).toEqual([`lean-to/bench publish ${topic}`]);
  });

  test('may leave a last will on its own topic only', async () => {
    await open();
    const will = {
      topic: 'glasstide/lean-to/readings/door',
      payload: Buffer.from('99'),
      qos: 1,
      retain: false,
    };
    const bench = await board('lean-to/bench', { will: { ...will, qos: 1 } });
    const cut = gone(bench);
    bench.stream.destroy();
    await cut;
    const door = await board('lean-to/door');
    await door.publishAsync('glasstide/lean-to/readings/door', '20', { qos: 1 });
    expect(stored).toEqual(['glasstide/lean-to/readings/door']);
    expect(refused).toEqual(['lean-to/bench publish glasstide/lean-to/readings/door']);
  });

  // MQTT 3.1.1, 3.9.3: return code 0x80 of SUBACK means failure.
  test.each(['#', 'glasstide/#', 'glasstide/lean-to/readings/bench', '$SYS/#'])(
    'hears nothing on %s',
    async (filter) => {
      await open();
      const bench = await board('lean-to/bench');
      await expect(bench.subscribeAsync(filter)).rejects.toThrow();
      expect(refused).toEqual([`lean-to/bench subscribe ${filter}`]);
    },
  );

  test('hears the advice of its place', async () => {
    await open();
    const bench = await board('lean-to/bench');
    expect(await bench.subscribeAsync('glasstide/lean-to/advice')).toMatchObject([{ qos: 0 }]);
  });

  test('cannot take over the connection of another by its client name', async () => {
    await open();
    const bench = await board('lean-to/bench', { clientId: 'esp-1' });
    // MQTT 3.1.1, table 3.1: 2 is "identifier rejected".
    await expect(board('lean-to/door', { clientId: 'esp-1' })).rejects.toMatchObject({ code: 2 });
    expect(bench.connected).toBe(true);
    await bench.publishAsync('glasstide/lean-to/readings/bench', '19', { qos: 1 });
  });

  test('nor the kept session of another that is away', async () => {
    await open();
    const bench = await board('lean-to/bench', { clientId: 'esp-1', clean: false });
    await bench.endAsync();
    await expect(board('lean-to/door', { clientId: 'esp-1' })).rejects.toMatchObject({ code: 2 });
    expect((await board('lean-to/bench', { clientId: 'esp-1', clean: false })).connected).toBe(true);
  });

  test('is cut off when its password is taken away, and not let in again', async () => {
    await open();
    const bench = await board('lean-to/bench');
    const door = await board('lean-to/door');
    revoked.add('lean-to/bench');
    const cut = gone(bench);
    broker.review();
    await cut;
    await expect(board('lean-to/bench')).rejects.toMatchObject({ code: 5 });
    expect(door.connected).toBe(true);
  });
});

describe('a stranger', () => {
  // MQTT 3.1.1, table 3.1: 5 is "not authorized".
  test.each([
    ['without a name', {}],
    ['with a wrong password', { username: 'lean-to/bench', password: 'p-door' }],
    ['with another name', { username: 'lean-to', password: 'p-bench' }],
    ['with a name of the language', { username: '__proto__', password: '' }],
  ])('%s is not let in', async (_, login) => {
    await open();
    const attempt = mqtt.connectAsync(
      `mqtt://127.0.0.1:${broker.port}`,
      { protocolVersion: 4, reconnectPeriod: 0, ...login },
      false,
    );
    await expect(attempt).rejects.toMatchObject({ code: 5 });
    expect(stored).toEqual([]);
  });

  test('that publishes before it says who it is, is cut off', async () => {
    await open();
    const socket = connect(broker.port, '127.0.0.1');
    const closed = new Promise((resolve) => socket.once('close', resolve));
    // A PUBLISH at QoS 0 on topic "a" with payload "x".
    socket.write(Buffer.from([0x30, 4, 0, 1, 0x61, 0x78]));
    await closed;
    expect(stored).toEqual([]);
  });
});

describe('packets', () => {
  // MQTT 3.1.1, 2.2.3: 7 bits a byte, lowest first; 321 = 0xC1 0x02 and 268 435 455 = 0xFF 0xFF 0xFF 0x7F.
  test.each([
    ['of no length', [0xc0, 0], 0],
    ['of 321 bytes', [0x30, 0xc1, 0x02], 321],
    ['of the most', [0x30, 0xff, 0xff, 0xff, 0x7f], 268_435_455],
    ['two, one after the other', [0x30, 2, 9, 9, 0x30, 3], 3],
    ['whose body looks like a header', [0x30, 3, 0xff, 0xff, 0xff, 0x30, 1, 0xff], 3],
  ])('%s', (_, bytes, largest) => {
    expect(packetSizes()(Uint8Array.from(bytes))).toBe(largest);
    const bytewise = packetSizes();
    expect(Math.max(...bytes.map((byte) => bytewise(Uint8Array.of(byte))))).toBe(largest);
  });

  test('larger than is taken end the connection when they are announced, not when they are gathered', async () => {
    await open();
    const bench = await board('lean-to/bench');
    const cut = gone(bench);
    // A PUBLISH that announces 256 MB and sends nothing of it.
    (bench.stream as Socket).write(Buffer.from([0x30, 0xff, 0xff, 0xff, 0x7f, 0, 1, 0x61]));
    await cut;
    expect(broker.connected()).toBe(0);
  });
});

test('the broker moves to another address, and who was in stays in', async () => {
  await open();
  const bench = await board('lean-to/bench');
  await broker.moveTo('0.0.0.0');
  await bench.publishAsync('glasstide/lean-to/readings/bench', '19', { qos: 1 });
  expect((await board('lean-to/door')).connected).toBe(true);
  const socket = connect(broker.port, '127.0.0.2');
  await new Promise((resolve) => socket.once('connect', resolve));
  expect((socket.address() as AddressInfo).port).toBeGreaterThan(0);
  socket.destroy();
});

test('the broker closes while somebody holds a line without a word', async () => {
  await open();
  const socket = connect(broker.port, '127.0.0.1');
  await new Promise((resolve) => socket.once('connect', resolve));
  const bench = await board('lean-to/bench');
  const cut = Promise.all([gone(bench), new Promise((resolve) => socket.once('close', resolve))]);
  await broker.close();
  await cut;
  await open();
});
