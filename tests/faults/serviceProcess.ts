/** The real program in a process of its own. */
import { type ChildProcess, execFileSync, spawn } from 'node:child_process';
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
  /** Files may grow again. */
  makeRoom(): void;
  /** Nobody reads what it says any more. */
  closePipes(): void;
}

export interface ProcessOptions {
  /** The kernel refuses whatever would make a file larger, until `makeRoom`; without it a file grows as it likes. */
  largestFileKB?: number;
  /** Errors go into a pipe too, which `closePipes` closes. */
  pipeErrors?: boolean;
}

export function startProcess(settings: Record<string, string>, options: ProcessOptions = {}): ServiceProcess {
  const { largestFileKB = 'unlimited', pipeErrors = false } = options;
  // A soft limit, which whoever started the process may lift again; exec keeps the process id.
  const program = [process.execPath, '--import', 'tsx', 'services/main.ts'];
  const child = spawn('bash', ['-c', `ulimit -S -f ${largestFileKB}; exec "$0" "$@"`, ...program], {
    env: { ...process.env, ...settings },
    stdio: ['ignore', 'pipe', pipeErrors ? 'pipe' : 'inherit'],
  });
  const gone = once(child, 'exit');
  const ready = Promise.race([
    once(createInterface({ input: child.stdout! }), 'line').then(([line]) => String(line)),
    gone.then(([code]) => Promise.reject(new Error(`the service ended with ${code} before it was ready`))),
  ]);
  ready.catch(() => {});
  return {
    pid: child.pid,
    ready,
    kill: () => end(child, gone, 'SIGKILL'),
    stop: () => end(child, gone, 'SIGTERM'),
    makeRoom: () => void execFileSync('prlimit', [`--pid=${child.pid}`, '--fsize=unlimited']),
    closePipes() {
      child.stdout?.destroy();
      child.stderr?.destroy();
    },
  };
}

async function end(child: ChildProcess, gone: Promise<unknown>, signal: NodeJS.Signals): Promise<void> {
  child.kill(signal);
  await gone;
}
