/** The page's side of the computing thread: the latest try wins, older answers are dropped. */
import type { Trial, Tried } from '../../services/model/index.ts';
import type { Refused } from '../api.ts';
import type { Ask, Start, Told } from './messages.ts';

export interface Heard {
  ready(starts: Start[]): void;
  tried(tried: Tried): void;
  refused(refused: Refused): void;
}
export interface Thread {
  try(trial: Trial): void;
  close(): void;
}

export function startThread(begin: Omit<Extract<Ask, { kind: 'begin' }>, 'kind'>, heard: Heard): Thread {
  const worker = new Worker(new URL('./worker.ts', import.meta.url), { type: 'module' });
  let last = 0;
  const ask = (message: Ask) => worker.postMessage(message);
  worker.addEventListener('message', ({ data }: MessageEvent<Told>) => {
    if (data.kind === 'ready') heard.ready(data.starts);
    else if (data.kind === 'refused') heard.refused(data.refused);
    else if (data.number === last) heard.tried(data.tried);
  });
  worker.addEventListener('error', () => {
    const reason = 'It could not be worked out on this phone.';
    heard.refused({ code: 'fault', reason, whatToDo: 'The sentence of the week still stands.' });
  });
  ask({ kind: 'begin', ...begin });
  return {
    try(trial) {
      last += 1;
      ask({ kind: 'try', number: last, trial });
    },
    close: () => worker.terminate(),
  };
}
