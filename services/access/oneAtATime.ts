import { RefusalError } from '../refusals.ts';

const mostWaiting = 8;

/** Runs slow work one after the other; who comes when too many wait already is refused at once. */
export function oneAtATime(): <T>(work: () => Promise<T>) => Promise<T> {
  let last: Promise<unknown> = Promise.resolve();
  let waiting = 0;
  return (work) => {
    if (waiting >= mostWaiting) {
      const reason = 'Too many passphrases are being tried just now.';
      return Promise.reject(new RefusalError({ code: 'too-many-requests', reason }));
    }
    waiting += 1;
    const turn = last.then(work).finally(() => {
      waiting -= 1;
    });
    last = turn.catch(() => undefined);
    return turn;
  };
}
