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
import { groupCommit } from './groupCommit.ts';
import { openIssued } from './issued.ts';
import { migrate } from './migrations.ts';
import { openNotes } from './noting.ts';
import { openQuarantine } from './quarantine.ts';
import { openReadings } from './readings.ts';
import { openRecords } from './records.ts';
import type { Store } from './store.ts';
import { openTelling } from './telling.ts';
import { openWarnings } from './warnings.ts';

/**
 * Opens the store, making the file and its folder when they are new; `:memory:` keeps nothing.
 * @throws when a newer glasstide wrote the file.
 */
export function openStore({ path }: { path: string }): Store {
  const db = openDatabase(path);
  const group = groupCommit(db);
  const notes = openNotes(db);
  return {
    records: openRecords(db),
    readings: openReadings(db, group, notes),
    quarantine: openQuarantine(db),
    arrivals: openArrivals(db, group, notes),
    issued: openIssued(db),
    warnings: openWarnings(db),
    credentials: openCredentials(db),
    answered: openAnswered(db),
    telling: openTelling(db),
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
    db.pragma('journal_mode = WAL');
    db.pragma('synchronous = FULL');
    db.pragma('foreign_keys = ON');
    migrate(db);
    return db;
  } catch (error) {
    db.close();
    throw error;
  }
}
