/**
 * The fault suite: boards send as fast as they are answered, the real service is ended by SIGKILL at random
 * points and started again, and afterwards every message is looked for in what is left on the disk.
 */
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { setTimeout as pause } from 'node:timers/promises';
import mqtt, { type MqttClient } from 'mqtt';
import type { Place } from '../../services/model/index.ts';
import { seeded } from '../../services/model/numerics/random.ts';
import { openStore } from '../../services/store/sqlite.ts';
import { boardMemory } from '../ingest/station.ts';
import { freePort, type InfluxTestServer, startInflux } from '../store/influxServer.ts';
import { countFound, type Found } from './found.ts';
import {
  type Kind,
  mixedMessages,
  placeOf,
  type SentMessage,
  trapId,
  untimedMessage,
  untimedSensors,
} from './messages.ts';
import { startProcess } from './serviceProcess.ts';

export interface FaultRun {
  messages: number;
  kills: number;
  seed: number;
  /** Where readings live; with `influx` its server is ended as often as the service. */
  store: 'embedded' | 'influx';
  onKill?: (done: number, acknowledged: number) => void;
}

export interface FaultResult {
  sent: Record<Kind, number>;
  acknowledged: number;
  /** Sent more than once because an answer was missing, flag DUP. */
  sentAgain: number;
  kills: { service: number; influx: number };
  found: Found;
  seconds: number;
}

const boards = 8;
const inFlight = 64;
/** One message in ten has no time of its own. */
const untimedShare = 0.1;

export async function runFaults(run: FaultRun): Promise<FaultResult> {
  const folder = mkdtempSync(join(tmpdir(), 'glasstide-faults-'));
  const influx = run.store === 'influx' ? await startInflux() : undefined;
  try {
    await setUp(folder);
    return await play(run, folder, influx);
  } finally {
    await influx?.close();
    rmSync(folder, { recursive: true });
  }
}

async function play(
  run: FaultRun,
  folder: string,
  influx: InfluxTestServer | undefined,
): Promise<FaultResult> {
  const startedMs = performance.now();
  const port = await freePort();
  const settings = {
    GLASSTIDE_DATA: folder,
    GLASSTIDE_HTTP_PORT: '0',
    GLASSTIDE_MQTT_PORT: String(port),
    ...(influx && { GLASSTIDE_INFLUX_URL: influx.url('faults') }),
  };
  let service = startProcess(settings);
  await service.ready;
  const tally = createTally(run);
  const clients = await Promise.all(
    Array.from({ length: boards }, (_, board) => connectBoard(board, port, tally)),
  );
  const sending = Promise.all(clients.map((client, board) => sendAll(client, board, run, tally)));
  const kills = { service: 0, influx: 0 };
  for (const { at, afterMs, whom } of killPlan(run)) {
    await tally.reached(at);
    if (afterMs > 0) await pause(afterMs);
    if (whom === 'influx') {
      await influx?.kill();
      await influx?.start();
    } else {
      await service.kill();
      service = startProcess(settings);
      await service.ready;
    }
    kills[whom] += 1;
    run.onKill?.(kills.service + kills.influx, tally.acknowledged());
  }
  await sending;
  await Promise.all(clients.map((client) => client.endAsync()));
  await service.stop();
  const found = await countFound(
    tally.expected(),
    Array.from({ length: boards }, (_, b) => placeOf(b)),
    {
      path: join(folder, 'glasstide.sqlite'),
      ...(influx && { url: influx.url('faults') }),
    },
  );
  const seconds = (performance.now() - startedMs) / 1000;
  return { ...tally.totals(), acknowledged: tally.acknowledged(), kills, found, seconds };
}

/** When and whom to end: after so many acknowledgements and some milliseconds more. */
function killPlan({ messages, kills, seed, store }: FaultRun) {
  const random = seeded(seed);
  const points = Array.from({ length: kills }, () => Math.floor(random() * messages * 0.98)).sort(
    (a, b) => a - b,
  );
  return points.map((at, i) => {
    const whom: 'service' | 'influx' = store === 'influx' && i % 2 === 1 ? 'influx' : 'service';
    // Half of them right upon an acknowledgement, when the others of its batch are on the disk and not yet answered.
    const afterMs = random() < 0.5 ? 0 : 1 + random() * 20;
    return { at, afterMs, whom };
  });
}

async function setUp(folder: string): Promise<void> {
  const store = openStore({ path: join(folder, 'glasstide.sqlite') });
  const atMs = Date.now();
  for (let board = 0; board < boards; board++) {
    const placeId = placeOf(board);
    const data: Place = {
      id: placeId,
      name: placeId,
      kind: 'glasshouse',
      areaM2: 11,
      latitudeDeg: 49.5,
      longitudeDeg: 8.5,
      timeZone: 'Europe/Berlin',
      pests: [],
      limits: {},
      seasonEnd: '10-15',
    };
    store.records.put({ kind: 'place', placeId, id: placeId, data, atMs });
    const trap = { id: trapId, name: trapId, hungAt: '2001-05-01T08:00:00Z' };
    store.records.put({ kind: 'trap', placeId, id: trapId, data: trap, atMs });
  }
  await store.close();
}

function connectBoard(board: number, port: number, tally: Tally): Promise<MqttClient> {
  const options = {
    clientId: `board-${board}`,
    clean: false,
    reconnectPeriod: 20,
    outgoingStore: boardMemory(),
  };
  return mqtt.connectAsync(`mqtt://127.0.0.1:${port}`, options).then((client) => {
    // A refused connection is no end: the board tries again.
    client.on('error', () => {});
    client.on('packetsend', (packet) => {
      if (packet.cmd === 'publish' && packet.dup) tally.again();
    });
    return client;
  });
}

async function sendAll(
  client: MqttClient,
  board: number,
  { messages, seed }: FaultRun,
  tally: Tally,
): Promise<void> {
  const own = Math.ceil(messages / boards);
  const untimed = Math.floor(own * untimedShare);
  const lastMs = Math.floor(Date.now() / 600_000) * 600_000 - 3_600_000;
  const send = async ({ topic, payload, retain, ...message }: SentMessage) => {
    tally.send(message);
    await publish(client, topic, payload, retain);
    tally.acknowledge();
  };
  const mixed = mixedMessages(board, own - untimed, lastMs, seed);
  const sendMixed = async () => {
    for (const message of mixed) await send(message);
  };
  const sendUntimed = async (sensor: number) => {
    for (let index = sensor; index < untimed; index += untimedSensors.length) {
      await send(untimedMessage(board, sensor, index));
      // Two readings of one sensor in one millisecond would be two values for one time.
      for (const now = Date.now(); Date.now() < now + 2; ) await pause(1);
    }
  };
  await Promise.all([
    ...Array.from({ length: inFlight }, sendMixed),
    ...untimedSensors.map((_, sensor) => sendUntimed(sensor)),
  ]);
}

/**
 * mqtt.js keeps and repeats what it has sent, but throws away with an error what was still waiting in its queue when
 * the line broke again: that was never on the line.
 */
async function publish(client: MqttClient, topic: string, payload: string, retain: boolean): Promise<void> {
  for (;;) {
    try {
      await client.publishAsync(topic, payload, { qos: 1, retain });
      return;
    } catch (error) {
      if (!(error instanceof Error) || error.message !== 'Connection closed') throw error;
      await pause(1);
    }
  }
}

type Tally = ReturnType<typeof createTally>;

function createTally({ messages }: FaultRun) {
  const sent: Record<Kind, number> = { timed: 0, untimed: 0, repeated: 0, count: 0, garbage: 0 };
  const expected = new Map<string, Kind>();
  let acknowledged = 0;
  let sentAgain = 0;
  let waiting: { at: number; go(): void } | undefined;
  return {
    send({ kind, key }: Pick<SentMessage, 'kind' | 'key'>) {
      sent[kind] += 1;
      if (!expected.has(key)) expected.set(key, kind);
    },
    acknowledge() {
      acknowledged += 1;
      if (waiting && acknowledged >= Math.min(waiting.at, messages)) waiting.go();
    },
    again: () => void sentAgain++,
    /** Resolves when so many messages were acknowledged. */
    reached: (at: number) =>
      new Promise<void>((go) => {
        if (acknowledged >= at) go();
        else waiting = { at, go };
      }),
    acknowledged: () => acknowledged,
    expected: () => expected as ReadonlyMap<string, Kind>,
    totals: () => ({ sent, sentAgain }),
  };
}
