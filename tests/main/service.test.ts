import { execFile, spawn } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { createServer } from 'node:net';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { promisify } from 'node:util';
import mqtt from 'mqtt';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { startBroker } from '../../services/broker/broker.ts';
import { run } from '../../services/commands/forecast.ts';
import { type Config, type Service, start } from '../../services/main.ts';
import { aPlace } from '../api/house.ts';

const now = Date.parse('2026-05-13T06:10:00Z');
const aTrap = { id: 'door', name: 'Door', hungAt: '2026-05-01T08:00:00Z' };
const aCount = { trapId: 'door', time: '2026-05-13T06:00:00Z', exposureDays: 7, counts: { whitefly: 3 } };
let folder: string;
let clock: { ms: number; nowMs(): number };
let running: Service[];

beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'glasstide-'));
  clock = { ms: now, nowMs: () => clock.ms };
  running = [];
});
afterEach(async () => {
  for (const service of running) await service.close();
  rmSync(folder, { recursive: true });
});

async function begin(changes: Partial<Config> = {}): Promise<Service> {
  const config: Config = {
    dataDir: folder,
    httpHost: '127.0.0.1',
    httpPort: 0,
    mqtt: { embeddedPort: 0 },
    demo: false,
    log: 'silent',
    ...changes,
  };
  const service = await start(config, clock);
  running.push(service);
  return service;
}

let keys = 0;
async function call(service: Service, method: string, path: string, body?: unknown) {
  const response = await fetch(`http://127.0.0.1:${service.httpPort}/api${path}`, {
    method,
    headers: {
      'Idempotency-Key': `k${keys++}`,
      ...(body === undefined ? {} : { 'Content-Type': 'application/json' }),
    },
    ...(body === undefined ? {} : { body: JSON.stringify(body) }),
  });
  return { status: response.status, body: await response.json() };
}

/** Publishes like a board: QoS 1, and waits for the acknowledgement. */
async function publish(service: Service, topic: string, payload: object): Promise<void> {
  const client = await mqtt.connectAsync(`mqtt://127.0.0.1:${service.mqttPort}`, { protocolVersion: 4 });
  await client.publishAsync(topic, JSON.stringify(payload), { qos: 1 });
  await client.endAsync();
}

/** The retained message on a topic. */
async function retained(service: Pick<Service, 'mqttPort'>, topic: string): Promise<unknown> {
  const client = await mqtt.connectAsync(`mqtt://127.0.0.1:${service.mqttPort}`, { protocolVersion: 4 });
  const message = new Promise<Buffer>((resolve) => client.once('message', (_, payload) => resolve(payload)));
  await client.subscribeAsync(topic);
  const payload = await message;
  await client.endAsync();
  return JSON.parse(payload.toString());
}

async function takePort() {
  const other = createServer();
  await new Promise<void>((resolve) => other.listen(0, '127.0.0.1', resolve));
  const address = other.address();
  return { other, port: typeof address === 'object' && address ? address.port : 0 };
}

async function freePort(): Promise<number> {
  const { other, port } = await takePort();
  await new Promise((resolve) => other.close(resolve));
  return port;
}

describe('the service', () => {
  test('from a reading and a count to a sentence, on the API and on MQTT', async () => {
    const service = await begin();
    await call(service, 'POST', '/places', aPlace);
    await publish(service, 'glasstide/lean-to/readings/bench', {
      temperatureC: 21.5,
      time: '2026-05-13T06:00:00Z',
    });
    const readings = await call(service, 'GET', '/places/lean-to/readings?resolution=raw');
    expect(readings.body.readings).toMatchObject([{ sensorId: 'bench', temperatureC: 21.5 }]);

    await call(service, 'POST', '/places/lean-to/traps', aTrap);
    await call(service, 'POST', '/places/lean-to/trap-counts', aCount);
    await service.settled();

    const { body: outcome } = await call(service, 'GET', '/places/lean-to/outcome');
    expect(outcome.issuedAt).toBe('2026-05-13T06:10:00.000Z');
    const advice = await retained(service, 'glasstide/lean-to/advice');
    expect(advice).toMatchObject({ sentence: outcome.advice.sentence, decision: outcome.advice.decision });
    const { body: health } = await call(service, 'GET', '/health');
    expect(health).toMatchObject({ status: 'well', reasons: [] });
  });

  test('the season file gives the same forecast without the service, bit for bit', async () => {
    const service = await begin();
    await call(service, 'POST', '/places', aPlace);
    await call(service, 'POST', '/places/lean-to/traps', aTrap);
    await publish(service, 'glasstide/lean-to/readings/bench', {
      temperatureC: 21.5,
      time: '2026-05-13T06:00:00Z',
    });
    await call(service, 'POST', '/places/lean-to/trap-counts', aCount);
    const { body: outcome } = await call(service, 'POST', '/places/lean-to/outcome');
    const { body: season } = await call(service, 'GET', '/places/lean-to/season');
    const file = join(folder, 'season.json');
    writeFileSync(file, JSON.stringify(season));
    let printed = '';
    const result = (text: string) => {
      printed = text;
    };
    run([file, '--as-of', outcome.forecast.asOf, '--json'], { result, progress: () => {} });
    expect(JSON.parse(printed)).toEqual({ forecast: outcome.forecast, advice: outcome.advice });
  });

  test('starts and answers while an external broker is away, says so, and speaks to it once it is there', async () => {
    const port = await freePort();
    const service = await begin({ mqtt: { url: `mqtt://127.0.0.1:${port}` } });
    expect((await call(service, 'GET', '/health')).body).toMatchObject({
      status: 'unwell',
      reasons: [expect.stringContaining(`127.0.0.1:${port} does not answer`)],
    });
    await call(service, 'POST', '/places', aPlace);
    await service.settled();
    const broker = await startBroker({ port });
    const advice = await retained({ mqttPort: port }, 'glasstide/lean-to/advice');
    expect(advice).toMatchObject({ decision: expect.any(String) });
    await service.close();
    await broker.close();
  });

  test('what was acknowledged is there after a new start', async () => {
    const first = await begin();
    await call(first, 'POST', '/places', aPlace);
    await publish(first, 'glasstide/lean-to/readings/bench', {
      temperatureC: 21.5,
      time: '2026-05-13T06:00:00Z',
    });
    await first.close();
    const second = await begin();
    const { body } = await call(second, 'GET', '/places/lean-to/readings?resolution=raw');
    expect(body.readings).toHaveLength(1);
  });

  test('the commands of docs/operations.md copy the house while it runs, and put it back', async () => {
    const service = await begin({ dataDir: join(folder, 'data') });
    await call(service, 'POST', '/places', aPlace);
    const block =
      /```sh\n(npm run -s backup [^`]+)```/.exec(readFileSync('docs/operations.md', 'utf8'))?.[1] ?? '';
    const [backup = '', restore = ''] = block
      .split('\n')
      .map((line) => line.replace(/ +#.*/, '').replace('copy.sqlite', join(folder, 'copy.sqlite')));
    const runIn = (command: string, dataDir: string) =>
      promisify(execFile)('bash', ['-c', command], {
        env: { ...process.env, GLASSTIDE_DATA: join(folder, dataDir) },
      });
    await runIn(backup, 'data');
    await runIn(restore, 'restored');
    const restored = await begin({ dataDir: join(folder, 'restored') });
    expect((await call(restored, 'GET', '/places')).body.places).toEqual([aPlace]);
  });

  test('listens only on this machine unless told otherwise', async () => {
    const service = await begin();
    await expect(fetch(`http://127.0.0.2:${service.httpPort}/api/health`)).rejects.toThrow();
  });

  test.each([
    ['GLASSTIDE_HTTP_PORT', (port: number) => ({ httpPort: port })],
    ['GLASSTIDE_MQTT_PORT', (port: number) => ({ mqtt: { embeddedPort: port } })],
  ])('a taken port is told by the name of its setting: %s', async (setting, config) => {
    const { port, other } = await takePort();
    await expect(begin(config(port))).rejects.toThrow(
      `Port ${port} is taken by another program: set ${setting}`,
    );
    await new Promise((resolve) => other.close(resolve));
  });
});

describe('run as a program', () => {
  const program = (env: Record<string, string>) =>
    spawn(process.execPath, ['--import', 'tsx', 'services/main.ts'], {
      env: { PATH: process.env.PATH, GLASSTIDE_DATA: folder, GLASSTIDE_MQTT_PORT: '0', ...env },
      stdio: ['ignore', 'pipe', 'pipe'],
    });
  const textOf = async (stream: NodeJS.ReadableStream) => {
    let text = '';
    for await (const part of stream) text += part;
    return text;
  };
  const exitOf = (child: ReturnType<typeof program>) =>
    new Promise<number | null>((resolve) => child.on('exit', (code) => resolve(code)));

  test('prints its address in one line, and ends well on SIGTERM', async () => {
    const child = program({ GLASSTIDE_HTTP_PORT: '0', GLASSTIDE_CLOCK_START: '2026-05-13T06:10:00Z' });
    const exit = exitOf(child);
    const firstLine = new Promise<string>((resolve) =>
      child.stdout.once('data', (part) => resolve(String(part))),
    );
    const errors = textOf(child.stderr);
    const line = await firstLine;
    const url = /^glasstide is at (http:\/\/127\.0\.0\.1:\d+\/)\n$/.exec(line)?.[1];
    const health = await (await fetch(`${url}api/health`)).json();
    expect(health.now).toMatch(/^2026-05-13T06:1/);
    child.kill('SIGTERM');
    expect([await exit, await errors]).toEqual([0, '']);
  });

  test('a setting that cannot be is named, without a trace of the program', async () => {
    const child = program({ GLASSTIDE_HTTP_PORT: 'eighty' });
    const [code, errors] = await Promise.all([exitOf(child), textOf(child.stderr)]);
    expect(code).toBe(1);
    expect(errors).toBe('GLASSTIDE_HTTP_PORT is "eighty": set a port number.\n');
  });
});
