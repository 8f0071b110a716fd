/**
 * A real mosquitto (Debian's package) with passwords, rights and TLS on free ports. Its certificate is made by openssl
 * for the test and is good for 127.0.0.1 only. The same lines stand in docs/operations.md.
 */
import { type ChildProcess, execFileSync, spawn } from 'node:child_process';
import { once } from 'node:events';
import { mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { connect } from 'node:net';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { setTimeout as pause } from 'node:timers/promises';
import { freePort } from '../store/influxServer.ts';

export interface Mosquitto {
  port: number;
  tlsPort: number;
  /** File of the certificate that vouches for the broker's. */
  caFile: string;
  ca: Buffer;
  /** Address with name and password, plain or over TLS. */
  url(user: User, over?: 'mqtt' | 'mqtts'): string;
  pid(): number | undefined;
  /** Ends it with SIGKILL; its folder stays. */
  kill(): Promise<void>;
  start(): Promise<void>;
  close(): Promise<void>;
}

export type User = 'service' | 'lean-to' | 'north';
export const passwords: Record<User, string> = {
  service: 'all-of-it',
  'lean-to': 'one-house',
  north: 'another-house',
};

const env = { ...process.env, PATH: `${process.env.PATH}:/usr/sbin` };

export async function startMosquitto(): Promise<Mosquitto> {
  const folder = mkdtempSync(join(tmpdir(), 'glasstide-mosquitto-'));
  const [port, tlsPort] = [await freePort(), await freePort()];
  const run = (command: string, ...args: string[]) =>
    execFileSync(command, args, { cwd: folder, env, stdio: ['ignore', 'ignore', 'pipe'] });
  makeCertificates(run, folder);
  writeFileSync(join(folder, 'passwd'), '', { mode: 0o600 });
  for (const [user, password] of Object.entries(passwords))
    run('mosquitto_passwd', '-b', 'passwd', user, password);
  // `pattern` lines are for every user; %u is the name it came with, here that of its house.
  writeFileSync(
    join(folder, 'acl'),
    `pattern write glasstide/%u/readings/+
pattern write glasstide/%u/health/+
pattern read glasstide/%u/advice
user service
topic readwrite glasstide/#
`,
  );
  mkdirSync(join(folder, 'data'));
  // Who runs as root would otherwise become the user mosquitto, who cannot read this folder.
  writeFileSync(
    join(folder, 'mosquitto.conf'),
    `${process.getuid?.() === 0 ? 'user root' : ''}
allow_anonymous false
password_file passwd
acl_file acl
persistence true
persistence_location ./data/
autosave_interval 1
autosave_on_changes true
max_queued_messages 0
listener ${port} 127.0.0.1
listener ${tlsPort} 127.0.0.1
certfile server.crt
keyfile server.key
`,
  );
  let child: ChildProcess | undefined;

  async function start(): Promise<void> {
    const started = spawn('mosquitto', ['-c', 'mosquitto.conf'], { cwd: folder, env, stdio: 'ignore' });
    child = started;
    const failed = new Promise<never>((_, reject) => {
      started.once('error', (error) =>
        reject(new Error(`mosquitto did not start (${error.message}): apt-get install mosquitto`)),
      );
      started.once('exit', (code) => reject(new Error(`mosquitto ended with ${code}`)));
    });
    failed.catch(() => {});
    await Promise.race([failed, listening(port)]);
  }

  async function kill(): Promise<void> {
    if (!child || child.exitCode !== null || child.signalCode !== null) return;
    const gone = once(child, 'exit');
    child.kill('SIGKILL');
    await gone;
  }

  await start();
  const caFile = join(folder, 'ca.crt');
  return {
    port,
    tlsPort,
    caFile,
    ca: readFileSync(caFile),
    url: (user, over = 'mqtt') =>
      `${over}://${user}:${passwords[user]}@127.0.0.1:${over === 'mqtts' ? tlsPort : port}`,
    pid: () => child?.pid,
    kill,
    start,
    async close() {
      await kill();
      rmSync(folder, { recursive: true });
    },
  };
}

function makeCertificates(run: (command: string, ...args: string[]) => void, folder: string): void {
  const newKey = ['-newkey', 'ec', '-pkeyopt', 'ec_paramgen_curve:prime256v1', '-nodes'];
  run(
    'openssl',
    'req',
    '-x509',
    ...newKey,
    ...'-keyout ca.key -out ca.crt -days 2 -subj /CN=Club'.split(' '),
  );
  run('openssl', 'req', ...newKey, ...'-keyout server.key -out server.csr -subj /CN=localhost'.split(' '));
  writeFileSync(join(folder, 'san.ext'), 'subjectAltName=DNS:localhost,IP:127.0.0.1');
  const sign =
    '-in server.csr -CA ca.crt -CAkey ca.key -CAcreateserial -out server.crt -days 2 -extfile san.ext';
  run('openssl', 'x509', '-req', ...sign.split(' '));
}

async function listening(port: number): Promise<void> {
  for (;;) {
    const socket = connect(port, '127.0.0.1');
    const answered = await Promise.race([
      once(socket, 'connect').then(() => true),
      once(socket, 'error').then(() => false),
    ]).catch(() => false);
    socket.destroy();
    if (answered) return;
    await pause(20);
  }
}
