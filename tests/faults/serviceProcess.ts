/** The real program in a process of its own. */
import { type ChildProcess, spawn } from 'node:child_process';
import { once } from 'node:events';
import { createInterface } from 'node:readline';

export interface ServiceProcess {
  pid: number | undefined;
  /** Resolves when the process has said that it is ready; rejects when it ends before that. */
  ready: Promise<string>;
  /** SIGKILL: no last word, nothing flushed. Resolves when it is gone. */
  kill(): Promise<void>;
  /** SIGTERM; resolves when it has ended by itself. */
  stop(): Promise<void>;
}

export function startProcess(settings: Record<string, string>): ServiceProcess {
  const child = spawn(process.execPath, ['--import', 'tsx', 'services/main.ts'], {
    env: { ...process.env, ...settings },
    stdio: ['ignore', 'pipe', 'inherit'],
  });
  const gone = once(child, 'exit');
  const ready = Promise.race([
    once(createInterface({ input: child.stdout }), 'line').then(([line]) => String(line)),
    gone.then(([code]) => Promise.reject(new Error(`the service ended with ${code} before it was ready`))),
  ]);
  ready.catch(() => {});
  return {
    pid: child.pid,
    ready,
    kill: () => end(child, gone, 'SIGKILL'),
    stop: () => end(child, gone, 'SIGTERM'),
  };
}

async function end(child: ChildProcess, gone: Promise<unknown>, signal: NodeJS.Signals): Promise<void> {
  child.kill(signal);
  await gone;
}
