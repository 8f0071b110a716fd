/**
 * Turns: one at a time sends to the server, over all processes on one data folder. The lock is one of the
 * operating system on a file beside the database, so that it ends with its process, however that ends.
 */
import Database from 'better-sqlite3';

export interface Turns {
  /** Runs `work` when it is its turn. */
  take<T>(work: () => Promise<T>): Promise<T>;
  close(): void;
}

const lookAgainMs = 20;

/** @param path of the lock file; undefined when nobody else can be on the same data (`:memory:`) */
export function openTurns(path: string | undefined): Turns {
  const lock = path === undefined ? undefined : new Database(path, { timeout: 0 });
  let last: Promise<unknown> = Promise.resolve();

  async function locked<T>(work: () => Promise<T>): Promise<T> {
    while (lock && !isTaken(lock)) await later(lookAgainMs);
    try {
      return await work();
    } finally {
      lock?.exec('rollback');
    }
  }

  return {
    take(work) {
      const turn = last.then(() => locked(work));
      last = turn.catch(() => undefined);
      return turn;
    },
    close: () => lock?.close(),
  };
}

function isTaken(lock: Database.Database): boolean {
  try {
    lock.exec('begin exclusive');
    return true;
  } catch (error) {
    if (error instanceof Database.SqliteError && error.code.startsWith('SQLITE_BUSY')) return false;
    throw error;
  }
}

const later = (ms: number) => new Promise<void>((resolve) => setTimeout(resolve, ms));
