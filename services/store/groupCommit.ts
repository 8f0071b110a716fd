import type { Database } from 'better-sqlite3';

/** Writes of one tick, committed together: one wait for the disk instead of one a message. */
export interface GroupCommit {
  /** Runs `work` within the next transaction; resolves with its result after COMMIT. */
  write<T>(work: () => T): Promise<T>;
  /** Something to do once a transaction, after all work and before COMMIT. */
  beforeCommit(last: () => void): void;
  /** Something to forget when work was rolled back. */
  afterRollback(forget: () => void): void;
  /** Commits at once what is waiting. */
  flush(): void;
}

interface Waiting {
  /** Does the work; the result settles its promise and is called after COMMIT. */
  run(): () => void;
  reject(error: unknown): void;
}

export function groupCommit(db: Database): GroupCommit {
  let waiting: Waiting[] = [];
  const lasts: (() => void)[] = [];
  const forgets: (() => void)[] = [];

  const forgetAll = () => {
    for (const forget of forgets) forget();
  };
  const commit = db.transaction((group: Waiting[]) => {
    const settlements = group.map((one) => one.run());
    for (const last of lasts) last();
    return settlements;
  });

  function flush(): void {
    const group = waiting;
    waiting = [];
    if (group.length === 0) return;
    for (const settle of committed(group)) settle();
  }

  function committed(group: Waiting[]): (() => void)[] {
    try {
      // Immediate: a transaction that begins by reading cannot wait for another process to finish writing.
      return commit.immediate(group);
    } catch (error) {
      forgetAll();
      return group.map((one) => () => one.reject(error));
    }
  }

  // Nested in the group's transaction this is a savepoint: work that throws takes nobody along.
  const savepoint = db.transaction((work: () => void) => work());

  function write<T>(work: () => T): Promise<T> {
    return new Promise<T>((resolve, reject) => {
      const run = () => {
        try {
          let result: T;
          savepoint(() => {
            result = work();
          });
          return () => resolve(result);
        } catch (error) {
          forgetAll();
          return () => reject(error);
        }
      };
      if (waiting.length === 0) setImmediate(flush);
      waiting.push({ run, reject });
    });
  }

  return {
    write,
    flush,
    beforeCommit: (last) => void lasts.push(last),
    afterRollback: (forget) => void forgets.push(forget),
  };
}
