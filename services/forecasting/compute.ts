/** Forecasts in a thread of their own, which is kept: starting one costs more than a short forecast. */
import { Worker } from 'node:worker_threads';
import type { Compute, Outcome } from './forecasting.ts';
import type { Answer } from './messages.ts';

export interface ComputeThread {
  compute: Compute;
  /** Ends the thread; what it was computing is rejected. */
  close(): Promise<void>;
}

interface Pending {
  resolve(outcome: Outcome): void;
  reject(error: unknown): void;
}

/** The thread starts with the first request, and anew after it ended by a fault. */
export function startCompute(workerUrl: URL = workerBesideThisFile()): ComputeThread {
  const pending = new Map<number, Pending>();
  let worker: Worker | undefined;
  let lastNumber = 0;

  function rejectAll(error: unknown): void {
    for (const { reject } of pending.values()) reject(error);
    pending.clear();
  }

  function start(): Worker {
    const started = startWorker(workerUrl);
    let fault: unknown;
    started.on('message', (answer: Answer) => {
      const asked = pending.get(answer.number);
      pending.delete(answer.number);
      if ('outcome' in answer) asked?.resolve(answer.outcome);
      else asked?.reject(answer.error);
    });
    started.on('error', (error) => {
      fault = error;
    });
    started.on('exit', () => {
      worker = undefined;
      rejectAll(fault ?? new Error('The computing thread ended before it had answered.'));
    });
    return started;
  }

  return {
    compute: (season, asOf, options) =>
      new Promise((resolve, reject) => {
        worker ??= start();
        lastNumber += 1;
        pending.set(lastNumber, { resolve, reject });
        worker.postMessage({ number: lastNumber, season, asOf, options });
      }),
    async close() {
      await worker?.terminate();
    },
  };
}

/** Compiled, the thread runs as it is; from the sources it first needs the loader that reads TypeScript. */
function startWorker(url: URL): Worker {
  if (!url.pathname.endsWith('.ts')) return new Worker(url);
  // Node 20 does not apply a loader of the command line to the first file of a thread.
  const [loader, file] = [import.meta.resolve('tsx/esm/api'), url.href].map((part) => JSON.stringify(part));
  const begin = `import(${loader}).then(({ register }) => { register(); return import(${file}); });`;
  return new Worker(begin, { eval: true });
}

function workerBesideThisFile(): URL {
  const file = import.meta.url.endsWith('.ts') ? './worker.ts' : './worker.js';
  return new URL(file, import.meta.url);
}
