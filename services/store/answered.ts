import type { Database } from 'better-sqlite3';

/** Answers to writes that are no single record, so that the same request sent again gets the same answer. */
export interface Answered {
  /** `request` tells apart what was sent under the same key. */
  get(key: string): { request: string; answer: string } | undefined;
  keep(key: string, done: { request: string; answer: string; atMs: number }): void;
}

/** Longer than any phone keeps trying. */
const keptMs = 30 * 86_400_000;

export function openAnswered(db: Database): Answered {
  const get = db.prepare<[string], { request: string; answer: string }>(
    'select request, answer from answered where key = ?',
  );
  const insert = db.prepare('insert or ignore into answered values (@key, @request, @answer, @atMs)');
  const dropOld = db.prepare('delete from answered where atMs < ?');
  return {
    get: (key) => get.get(key),
    keep(key, done) {
      insert.run({ key, ...done });
      dropOld.run(done.atMs - keptMs);
    },
  };
}
