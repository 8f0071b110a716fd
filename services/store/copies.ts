/** Whole copies of the database file: made while it is in use, checked, and put in place of nothing. */
import {
  chmodSync,
  closeSync,
  copyFileSync,
  existsSync,
  fsyncSync,
  mkdirSync,
  openSync,
  renameSync,
  rmSync,
  statSync,
} from 'node:fs';
import { dirname, join } from 'node:path';
import Database from 'better-sqlite3';
import { newestSchema } from './migrations.ts';

/** A copy holds the whole house. */
const ownerOnly = 0o600;

export const databaseName = 'glasstide.sqlite';

/** Where the copy cannot be made or put back as asked; the message says what to do. */
export class CopyProblem extends Error {}

/**
 * Copies a database that may be in use, and checks the copy. It has its name only once it is whole.
 * @param complete adds to the copy what lives elsewhere; when it rejects there is no copy
 * @throws CopyProblem when there is no database, or the copy is not whole
 */
export async function copyDatabase(
  from: string,
  to: string,
  complete: (part: string) => Promise<void> = async () => {},
): Promise<{ bytes: number }> {
  if (!existsSync(from))
    throw new CopyProblem(`There is no database at ${from}: name its folder in GLASSTIDE_DATA.`);
  mkdirSync(dirname(to), { recursive: true });
  const part = `${to}.part`;
  const clear = () => {
    for (const end of ['', '-wal', '-shm']) rmSync(`${part}${end}`, { force: true });
  };
  clear();
  try {
    const source = new Database(from, { readonly: true, fileMustExist: true });
    try {
      // All in one step: a copy in steps begins anew with every reading that is stored meanwhile.
      await source.backup(part, { progress: ({ totalPages }) => 2 * totalPages + 1000 });
    } finally {
      source.close();
    }
    await complete(part);
    intoOneFile(part);
    chmodSync(part, ownerOnly);
    checkCopy(part);
    settle(part, to);
  } finally {
    clear();
  }
  return { bytes: statSync(to).size };
}

/**
 * Puts a checked copy where no database is yet.
 * @throws CopyProblem when one is, or the copy cannot be used
 */
export function restoreDatabase(copy: string, dataDir: string): void {
  const to = join(dataDir, databaseName);
  if (!existsSync(copy)) throw new CopyProblem(`There is no file ${copy}.`);
  const present = [to, `${to}-wal`].find((path) => existsSync(path));
  if (present !== undefined) {
    throw new CopyProblem(
      `${present} is there already, and nothing was changed. Restore into an empty folder (GLASSTIDE_DATA), or move that file away first.`,
    );
  }
  checkCopy(copy);
  mkdirSync(dataDir, { recursive: true });
  const part = `${to}.part`;
  copyFileSync(copy, part);
  chmodSync(part, ownerOnly);
  settle(part, to);
}

/** @throws CopyProblem when the file is no whole database of ours, or of a newer glasstide */
export function checkCopy(path: string): void {
  const found = schemaOf(path);
  if (found > newestSchema) {
    throw new CopyProblem(
      `A newer glasstide wrote ${path} (schema ${found}; this one knows up to ${newestSchema}).`,
    );
  }
}

function schemaOf(path: string): number {
  let db: Database.Database | undefined;
  try {
    db = new Database(path, { readonly: true, fileMustExist: true });
    const verdict = db.pragma('integrity_check(1)', { simple: true });
    if (verdict !== 'ok') throw new Error(String(verdict));
    const isOurs = db.prepare("select 1 from sqlite_schema where type = 'table' and name = 'record'").get();
    if (!isOurs) throw new Error('it holds no records');
    return Number(db.pragma('user_version', { simple: true }));
  } catch (cause) {
    const why = cause instanceof Error ? cause.message : String(cause);
    throw new CopyProblem(`${path} is not a whole copy of a glasstide database: ${why}.`, { cause });
  } finally {
    db?.close();
  }
}

/** A copy carries the journal mode of its source; as a file to be kept it must stand alone. */
function intoOneFile(path: string): void {
  const db = new Database(path);
  db.pragma('journal_mode = DELETE');
  db.close();
}

/** On the disk before it has its name, and its name on the disk too. */
function settle(part: string, to: string): void {
  sync(part);
  renameSync(part, to);
  sync(dirname(to));
}

function sync(path: string): void {
  const file = openSync(path, 'r');
  try {
    fsyncSync(file);
  } finally {
    closeSync(file);
  }
}
