/** A real InfluxDB server (Debian's `influxdb`) on free ports, with a folder of its own. */
import { type ChildProcess, spawn } from 'node:child_process';
import { once } from 'node:events';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { createServer } from 'node:net';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { setTimeout as pause } from 'node:timers/promises';

export interface InfluxTestServer {
  /** Address of a database of this name. */
  url(database: string): string;
  pid(): number | undefined;
  /** Ends the process without a word and waits until it is gone; the data stays. */
  kill(): Promise<void>;
  start(): Promise<void>;
  /** One InfluxQL statement, asked outside of our client. */
  ask(database: string, statement: string): Promise<string>;
  close(): Promise<void>;
}

/** A port that was free a moment ago. */
export async function freePort(): Promise<number> {
  const server = createServer().listen(0, '127.0.0.1');
  await once(server, 'listening');
  const address = server.address();
  server.close();
  await once(server, 'close');
  return typeof address === 'object' && address ? address.port : 0;
}

export async function startInflux(): Promise<InfluxTestServer> {
  const folder = mkdtempSync(join(tmpdir(), 'glasstide-influx-'));
  const [port, inner] = [await freePort(), await freePort()];
  const config = join(folder, 'influxdb.conf');
  writeFileSync(
    config,
    `reporting-disabled = true
bind-address = "127.0.0.1:${inner}"
[meta]
  dir = "${folder}/meta"
[data]
  dir = "${folder}/data"
  wal-dir = "${folder}/wal"
  index-version = "tsi1"
  query-log-enabled = false
[http]
  bind-address = "127.0.0.1:${port}"
  log-enabled = false
[monitor]
  store-enabled = false
[logging]
  level = "error"
`,
  );
  const base = `http://127.0.0.1:${port}`;
  let child: ChildProcess | undefined;

  async function start(): Promise<void> {
    const started = spawn('influxd', ['run', '-config', config], { stdio: 'ignore' });
    child = started;
    const failed = new Promise<never>((_, reject) => {
      started.once('error', (error) =>
        reject(new Error(`influxd did not start (${error.message}): apt-get install influxdb`)),
      );
      started.once('exit', (code) => reject(new Error(`influxd ended with ${code} before it answered`)));
    });
    failed.catch(() => {});
    await Promise.race([failed, answering()]);
  }

  async function answering(): Promise<void> {
    for (;;) {
      const answer = await fetch(`${base}/ping`).catch(() => undefined);
      if (answer?.ok) return;
      await pause(20);
    }
  }

  async function kill(): Promise<void> {
    if (!child || child.exitCode !== null || child.signalCode !== null) return;
    const gone = once(child, 'exit');
    child.kill('SIGKILL');
    await gone;
  }

  await start();
  return {
    url: (database) => `${base}/${database}`,
    pid: () => child?.pid,
    kill,
    start,
    ask: async (database, statement) =>
      (
        await fetch(`${base}/query`, {
          method: 'POST',
          body: new URLSearchParams({ db: database, q: statement }),
        })
      ).text(),
    async close() {
      await kill();
      rmSync(folder, { recursive: true });
    },
  };
}
