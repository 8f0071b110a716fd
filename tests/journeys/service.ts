/** Runs the built service as its own process, as `npm start` does, on free ports and a folder of its own. */
import { type ChildProcess, spawn } from 'node:child_process';
import { createHash } from 'node:crypto';
import { once } from 'node:events';
import { createServer } from 'node:net';

export interface RunningService {
  http: string;
  mqtt: string;
  kill(signal?: NodeJS.Signals): Promise<void>;
}

export interface ServiceOptions {
  dataDir: string;
  httpPort: number;
  mqttPort: number;
  /** The service's clock starts here and runs at its own speed. */
  clockStart: string;
}

/** Starts the service and resolves when it has printed its address. */
export async function runService(options: ServiceOptions): Promise<RunningService> {
  const child = spawn(process.execPath, ['dist/services/main.js'], {
    env: {
      ...process.env,
      GLASSTIDE_DATA: options.dataDir,
      GLASSTIDE_HTTP_PORT: `${options.httpPort}`,
      GLASSTIDE_MQTT_PORT: `${options.mqttPort}`,
      GLASSTIDE_CLOCK_START: options.clockStart,
    },
    stdio: ['ignore', 'pipe', 'pipe'],
  });
  await announced(child);
  return {
    http: `http://127.0.0.1:${options.httpPort}`,
    mqtt: `mqtt://127.0.0.1:${options.mqttPort}`,
    async kill(signal = 'SIGTERM') {
      if (child.exitCode !== null || child.signalCode !== null) return;
      const gone = once(child, 'exit');
      child.kill(signal);
      await gone;
    },
  };
}

function announced(child: ChildProcess): Promise<void> {
  return new Promise((resolve, reject) => {
    let said = '';
    const listen = (chunk: Buffer) => {
      said += chunk.toString();
      if (said.includes('glasstide is at http')) resolve();
    };
    child.stdout?.on('data', listen);
    child.stderr?.on('data', (chunk: Buffer) => {
      said += chunk.toString();
    });
    child.once('exit', (code) =>
      reject(new Error(`the service ended (${code}) before it was ready:\n${said}`)),
    );
  });
}

/** A port that is free now. */
export async function freePort(): Promise<number> {
  const server = createServer().listen(0, '127.0.0.1');
  await once(server, 'listening');
  const address = server.address();
  server.close();
  await once(server, 'close');
  if (address === null || typeof address === 'string') throw new Error('no port was given');
  return address.port;
}

/** Calls the API and answers its JSON; a refusal is an error with its words. */
export async function call<T>(http: string, method: string, path: string, body?: unknown): Promise<T> {
  const response = await fetch(`${http}${path}`, {
    method,
    headers: {
      'idempotency-key': createHash('sha256')
        .update(`${method} ${path} ${JSON.stringify(body)}`)
        .digest('hex'),
      ...(body === undefined ? {} : { 'content-type': 'application/json' }),
    },
    ...(body === undefined ? {} : { body: JSON.stringify(body) }),
  });
  if (!response.ok) throw new Error(`${method} ${path}: ${response.status} ${await response.text()}`);
  return (await response.json()) as T;
}
