/** The whole service behind its doors: what an outsider gets over HTTP and MQTT, and where it listens. */
import { execFileSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { get } from 'node:https';
import { connect } from 'node:net';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import mqtt from 'mqtt';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { createAccess } from '../../services/access/door.ts';
import { type Config, type Service, start } from '../../services/main.ts';
import { aPlace } from '../api/house.ts';

const passphrase = 'copper kettle under snow';
const nowMs = Date.parse('2026-05-13T06:10:00Z');
let folder: string;
let services: Service[];
let keys = 0;

beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'glasstide-doors-'));
  services = [];
});
afterEach(async () => {
  for (const service of services) await service.close();
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
  const service = await start(config, { nowMs: () => nowMs });
  services.push(service);
  return service;
}

async function ask(service: Service, path: string, body?: object, cookie = '', host = '127.0.0.1') {
  const response = await fetch(`http://${host}:${service.httpPort}/api${path}`, {
    method: body ? 'POST' : 'GET',
    headers: {
      'idempotency-key': `k${keys++}`,
      ...(body && { 'content-type': 'application/json' }),
      ...(cookie && { cookie }),
    },
    ...(body && { body: JSON.stringify(body) }),
  });
  const set = response.headers.get('set-cookie')?.split(';')[0] ?? '';
  return { status: response.status, body: await response.json(), cookie: set };
}

const sensors = ['bench', 'door'];
async function locked(changes: Partial<Config> = {}) {
  const service = await begin(changes);
  await ask(service, '/places', aPlace);
  for (const id of sensors) await ask(service, '/places/lean-to/sensors', { id, name: id });
  const { cookie } = await ask(service, '/access/passphrase', { passphrase });
  return { service, cookie };
}
const boardOf = async (service: Service, cookie: string, sensorId: string) =>
  (
    await ask(
      service,
      '/access/credentials',
      { kind: 'device', name: sensorId, placeId: 'lean-to', sensorId },
      cookie,
    )
  ).body as { secret: string; credential: { id: string; user: string } };

const signIn = (service: Service, login: mqtt.IClientOptions = {}) =>
  mqtt.connectAsync(
    `mqtt://127.0.0.1:${service.mqttPort}`,
    { protocolVersion: 4, reconnectPeriod: 0, ...login },
    false,
  );
const kept = async (service: Service) =>
  (await service.store.readings.range('lean-to', { fromMs: 0, toMs: nowMs * 2 })).map(
    ({ sensorId, temperatureC }) => [sensorId, temperatureC],
  );

/** Whether anybody listens there. */
const answers = (host: string, port: number) =>
  new Promise<boolean>((resolve) => {
    const socket = connect(port, host);
    socket.once('connect', () => {
      socket.destroy();
      resolve(true);
    });
    socket.once('error', () => resolve(false));
  });

describe('an outsider’s try at a locked house', () => {
  const logins: mqtt.IClientOptions[] = [
    {},
    { username: '', password: '' },
    { username: 'admin', password: 'admin' },
    // As the service itself, with a sensor's name alone, and with the passphrase.
    { username: 'glasstide', password: 'glasstide' },
    { username: 'lean-to/bench' },
    { username: 'owner', password: passphrase },
    { username: 'lean-to', password: passphrase },
  ];
  const paths = ['/places', '/health', '/quarantine', '/places/lean-to/season', '/places/lean-to/readings'];

  test('is turned away, over MQTT and over HTTP', async () => {
    const { service, cookie } = await locked();
    const sessionAsPassword = { username: 'lean-to/bench', password: cookie.split('=')[1] ?? '' };
    for (const login of [...logins, sessionAsPassword]) {
      await expect(signIn(service, login)).rejects.toMatchObject({ code: 5 });
    }
    for (const path of paths) {
      expect(await ask(service, path)).toMatchObject({ status: 401, body: { code: 'sign-in-needed' } });
    }
    expect(await kept(service)).toEqual([]);
  });

  test('who was connected while the house was open is cut off when it is locked', async () => {
    const service = await begin();
    await ask(service, '/places', aPlace);
    const early = await signIn(service);
    await early.subscribeAsync('glasstide/#');
    const cut = new Promise<void>((resolve) => early.once('close', () => resolve()));
    await ask(service, '/access/passphrase', { passphrase });
    await cut;
    await expect(signIn(service)).rejects.toMatchObject({ code: 5 });
  });
});

describe('a board with its password', () => {
  test('is heard on its own topic and cut off on another’s, which stays empty', async () => {
    const { service, cookie } = await locked();
    const { secret, credential } = await boardOf(service, cookie, 'bench');
    const login = { username: credential.user, password: secret };
    const bench = await signIn(service, login);
    await bench.publishAsync('glasstide/lean-to/readings/bench', '19.5', { qos: 1 });
    const cut = new Promise<void>((resolve) => bench.once('close', () => resolve()));
    bench.publish('glasstide/lean-to/readings/door', '44', { qos: 1 });
    await cut;
    expect(await kept(service)).toEqual([['bench', 19.5]]);
    const again = await signIn(service, login);
    await again.endAsync();
  });

  test('hears the advice of its place once it is issued, which the service itself publishes', async () => {
    const { service, cookie } = await locked();
    const { secret, credential } = await boardOf(service, cookie, 'bench');
    const bench = await signIn(service, { username: credential.user, password: secret });
    const heard = new Promise<string>((resolve) =>
      bench.once('message', (_, payload) => resolve(payload.toString())),
    );
    await bench.subscribeAsync('glasstide/lean-to/advice');
    await ask(service, '/places/lean-to/outcome', {}, cookie);
    expect(JSON.parse(await heard)).toMatchObject({ decision: expect.any(String) });
    await bench.endAsync();
  });

  test('is cut off at once when the owner takes it away', async () => {
    const { service, cookie } = await locked();
    const { secret, credential } = await boardOf(service, cookie, 'bench');
    const bench = await signIn(service, { username: credential.user, password: secret });
    const cut = new Promise<void>((resolve) => bench.once('close', () => resolve()));
    await fetch(`http://127.0.0.1:${service.httpPort}/api/access/credentials/${credential.id}`, {
      method: 'DELETE',
      headers: { cookie, 'idempotency-key': 'x' },
    });
    await cut;
  });
});

describe('a house that is meant to be reached from outside', () => {
  const outside = { httpHost: '0.0.0.0', mqtt: { embeddedPort: 0, host: '0.0.0.0' } };

  // 127.0.0.2 is this machine too, but not the one address an open house listens at.
  test('listens at this machine only until it has a passphrase, and then everywhere', async () => {
    const service = await begin(outside);
    const ports = [service.httpPort, service.mqttPort ?? 0];
    expect(await Promise.all(ports.map((port) => answers('127.0.0.2', port)))).toEqual([false, false]);
    expect(await Promise.all(ports.map((port) => answers('127.0.0.1', port)))).toEqual([true, true]);
    await ask(service, '/access/passphrase', { passphrase });
    await service.settled();
    expect(await Promise.all(ports.map((port) => answers('127.0.0.2', port)))).toEqual([true, true]);
    expect(await ask(service, '/places', undefined, '', '127.0.0.2')).toMatchObject({ status: 401 });
  });

  test('says so while it has none', async () => {
    const service = await begin(outside);
    expect((await ask(service, '/health')).body.reasons.join(' ')).toMatch(/passphrase/);
  });

  test('listens everywhere at once when it starts with one', async () => {
    await locked();
    await services.pop()?.close();
    const service = await begin(outside);
    expect(await answers('127.0.0.2', service.httpPort)).toBe(true);
    expect(await answers('127.0.0.2', service.mqttPort ?? 0)).toBe(true);
  });
});

describe('with a certificate', () => {
  function certificate() {
    const paths = { certificate: join(folder, 'house.crt'), key: join(folder, 'house.key') };
    execFileSync(
      'openssl',
      [
        ...[
          'req',
          '-x509',
          '-newkey',
          'ec',
          '-pkeyopt',
          'ec_paramgen_curve:prime256v1',
          '-nodes',
          '-days',
          '2',
        ],
        ...['-keyout', paths.key, '-out', paths.certificate, '-subj', '/CN=localhost'],
        ...['-addext', 'subjectAltName=DNS:localhost,IP:127.0.0.1'],
      ],
      { stdio: 'ignore' },
    );
    return paths;
  }

  test('pages and broker speak TLS, and in plain nobody but this machine is heard', async () => {
    const paths = certificate();
    const ca = readFileSync(paths.certificate);
    await locked();
    await services.pop()?.close();
    const service = await begin({
      httpHost: '0.0.0.0',
      mqtt: { embeddedPort: 0, host: '0.0.0.0' },
      tls: { ...paths, mqttPort: 0 },
    });
    const reply = await new Promise<{ status: number | undefined; text: string }>((resolve, reject) => {
      get(`https://localhost:${service.httpPort}/api/access`, { ca }, (response) => {
        let text = '';
        response.on('data', (part) => {
          text += part;
        });
        response.on('end', () => resolve({ status: response.statusCode, text }));
      }).on('error', reject);
    });
    expect(reply.status).toBe(200);
    expect(JSON.parse(reply.text)).toEqual({ passphrase: true, you: 'nobody' });
    expect(await answers('127.0.0.2', service.mqttPort ?? 0)).toBe(false);

    const access = createAccess({ credentials: service.store.credentials, clock: { nowMs: () => nowMs } });
    const { secret } = access.makeDevice('Bench', { placeId: 'lean-to', sensorId: 'bench' });
    const bench = await mqtt.connectAsync(
      `mqtts://127.0.0.1:${service.mqttTlsPort}`,
      { protocolVersion: 4, reconnectPeriod: 0, ca, username: 'lean-to/bench', password: secret },
      false,
    );
    await bench.publishAsync('glasstide/lean-to/readings/bench', '19.5', { qos: 1 });
    await bench.endAsync();
    expect(await kept(service)).toEqual([['bench', 19.5]]);
  });

  test('that cannot be read the service does not start', async () => {
    const tls = { certificate: join(folder, 'none.crt'), key: join(folder, 'none.key'), mqttPort: 0 };
    await expect(begin({ tls })).rejects.toThrow(
      /GLASSTIDE_TLS_CERT names .*none\.crt, which could not be read/,
    );
  });
});
