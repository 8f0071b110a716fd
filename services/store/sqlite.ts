/**
 * The store in one file of the embedded database. Write-ahead log with a sync at every COMMIT: what
 * was acknowledged survives the end of the process and of the power supply.
 */
import { mkdirSync } from 'node:fs';
import { dirname } from 'node:path';
import Database from 'better-sqlite3';
import { openAnswered } from './answered.ts';
import { openArrivals } from './arrivals.ts';
import { openCredentials } from './credentials.ts';
import { type GroupCommit, groupCommit } from './groupCommit.ts';
import { type InfluxOptions, type InfluxReadings, openInfluxReadings } from './influx/readings.ts';
import { openIssued } from './issued.ts';
import { migrate } from './migrations.ts';
import { type Notes, openNotes } from './noting.ts';
import { openOutdoor } from './outdoor.ts';
import { openQuarantine } from './quarantine.ts';
import { openReadings } from './readings.ts';
import { openRecords } from './records.ts';
import type { Readings, Store } from './store.ts';
import { openTelling } from './telling.ts';
import { openWarnings } from './warnings.ts';

/**
 * Opens the store, making the file and its folder when they are new; `:memory:` keeps nothing.
 * @throws when a newer glasstide wrote the file, or it is damaged.
 */
export function openStore({ path }: { path: string }): Store {
  return storeOn(path, openReadings);
}

/**
 * The same with the readings on an InfluxDB server; everything else, and what is on its way there, stays in the file.
 * @throws as `openStore` does; a server that does not answer is no reason.
 */
export function openInfluxStore({
  path,
  ...options
}: { path: string } & Omit<InfluxOptions, 'lockPath'>): Store & { readings: InfluxReadings } {
  const lockPath = path === ':memory:' ? undefined : `${path}-turn`;
  const open = (...inside: Inside) => openInfluxReadings(...inside, { ...options, lockPath });
  const store = storeOn(path, open);
  return {
    ...store,
    troubles: () => store.readings.troubles(),
    async close() {
      await store.readings.close();
      await store.close();
    },
  };
}

type Inside = [db: Database.Database, group: GroupCommit, notes: Notes];

function storeOn<R extends Readings>(path: string, open: (...inside: Inside) => R): Store & { readings: R } {
  const db = openDatabase(path);
  const group = groupCommit(db);
  const notes = openNotes(db, group);
  return {
    records: openRecords(db),
    readings: open(db, group, notes),
    outdoor: openOutdoor(db),
    quarantine: openQuarantine(db, group),
    arrivals: openArrivals(db, group, notes),
    issued: openIssued(db),
    warnings: openWarnings(db),
    credentials: openCredentials(db),
    answered: openAnswered(db),
    telling: openTelling(db),
    troubles: () => [],
    async close() {
      group.flush();
      db.close();
    },
  };
}

function openDatabase(path: string): Database.Database {
  if (path !== ':memory:') mkdirSync(dirname(path), { recursive: true });
  const db = new Database(path);
  try {
    const found = db.pragma('quick_check(1)', { simple: true });
    if (found !== 'ok') throw damaged(path, String(found));
    db.pragma('journal_mode = WAL');
    db.pragma('synchronous = FULL');
    db.pragma('foreign_keys = ON');
    migrate(db);
    return db;
  } catch (error) {
    db.close();
    const isDamage = error instanceof Database.SqliteError && damageCodes.includes(error.code);
    throw isDamage ? damaged(path, error.message) : error;
  }
}

const damageCodes = ['SQLITE_NOTADB', 'SQLITE_CORRUPT'];

function damaged(path: string, why: string): Error {
  return new Error(
    `The data file ${path} is damaged (${why.replace(/\s+/g, ' ')}). Nothing was changed. Put a copy in its place, or move it away to ` +
      'begin with an empty one; docs/operations.md says how.',
  );
}
