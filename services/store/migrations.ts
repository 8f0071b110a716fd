import type { Database } from 'better-sqlite3';

/**
 * One entry a schema version, applied in order and never edited after a release. Places and sensors
 * are small numbers in the tall tables: 33 instead of 88 bytes a reading.
 */
const migrations: readonly string[] = [
  `
  create table record (
    kind text not null, place text not null, id text not null, version integer not null,
    changedAtMs integer not null, deleted integer not null, data text not null,
    primary key (kind, place, id, version)
  ) strict, without rowid;
  create index recordByChange on record (place, changedAtMs);

  create table idempotencyKey (
    key text primary key,
    kind text not null, place text not null, id text not null, version integer not null,
    foreign key (kind, place, id, version) references record (kind, place, id, version)
  ) strict, without rowid;

  create table placeNumber (number integer primary key, place text not null unique) strict;
  create table sensorNumber (
    number integer primary key,
    place integer not null references placeNumber (number),
    sensor text not null,
    unique (place, sensor)
  ) strict;

  create table reading (
    place integer not null references placeNumber (number),
    sensor integer not null references sensorNumber (number),
    time integer not null, temperatureC real not null, humidityPct real, doubt text,
    primary key (place, sensor, time)
  ) strict, without rowid;

  create table hour (
    place integer not null, sensor integer not null, hour integer not null,
    count integer not null, meanC real not null, minC real not null, maxC real not null,
    doubted integer not null,
    primary key (place, sensor, hour)
  ) strict, without rowid;

  create table quarantine (
    id integer primary key autoincrement,
    place text, topic text not null, payload blob not null, payloadBytes integer not null,
    retained integer not null, arrivedMs integer not null, code text not null, reason text not null,
    settled text
  ) strict;
  create index quarantineByWaiting on quarantine (settled is null, id);
  create table quarantineLetGo (what text primary key, messages integer not null) strict, without rowid;
  insert into quarantineLetGo values ('settled', 0), ('waiting', 0);

  create table arrival (
    place text not null, number integer not null, topic text not null, arrivedMs integer not null,
    payloadStart text not null, readAs text not null,
    primary key (place, number)
  ) strict, without rowid;

  create table issued (
    place text not null, asOfMs integer not null, forecast text not null, advice text not null,
    primary key (place, asOfMs)
  ) strict;

  create table warning (
    place text not null, id text not null, rule text not null, raisedAtMs integer not null,
    deadlineMs integer not null, text text not null, state text not null, putOffUntilMs integer,
    primary key (place, id)
  ) strict, without rowid;
  `,
  `
  alter table warning add column reason text not null default '';
  alter table warning add column ends text not null default '';
  alter table warning add column urgentFromMs integer;
  alter table warning add column ended text;

  create table tellingSettings (place text primary key, settings text not null) strict, without rowid;
  create table outbox (
    id integer primary key autoincrement,
    place text not null, channel text not null, recipient text not null,
    event text not null, about text not null, createdMs integer not null,
    state text not null default 'waiting', settledMs integer,
    attempts integer not null default 0, nextTryMs integer not null, fault text,
    unique (place, channel, recipient, event, about)
  ) strict;
  create index outboxByState on outbox (place, state);
  create table phone (
    place text not null, id text not null, endpoint text not null, p256dh text not null, auth text not null,
    name text not null, addedMs integer not null,
    primary key (place, id), unique (place, endpoint)
  ) strict, without rowid;
  create table calendarEntry (
    place text not null, uid text not null, sequence integer not null, changedMs integer not null,
    cancelled integer not null, content text not null,
    primary key (place, uid)
  ) strict, without rowid;
  create table job (
    place text not null, job text not null, dueMs integer not null, primary key (place, job)
  ) strict, without rowid;
  create table secret (name text primary key, value text not null) strict, without rowid;
  `,
  `
  create table passphrase (
    only integer primary key check (only = 1), hash text not null, changedMs integer not null
  ) strict;
  create table credential (
    id text primary key, kind text not null, secretHash text not null unique, name text not null,
    role text, place text, sensor text,
    createdMs integer not null, lastUsedMs integer, expiresMs integer
  ) strict, without rowid;
  create table calendarToken (place text primary key, token text not null unique) strict, without rowid;

  create table answered (
    key text primary key, request text not null, answer text not null, atMs integer not null
  ) strict, without rowid;
  `,
  `
  create table delivery (
    sender text not null, packet integer not null, place text not null, sensor text not null,
    content text not null, arrivedMs integer not null,
    primary key (sender, packet, place, sensor)
  ) strict, without rowid;
  create index deliveryByAge on delivery (arrivedMs);

  create table spooled (
    number integer primary key autoincrement,
    place text not null, sensor text not null, time integer not null,
    temperatureC real not null, humidityPct real, doubt text,
    refusal text,
    unique (place, sensor, time)
  ) strict;
  `,
  `
  create table outdoor (
    place text not null, time integer not null, issued integer not null, temperatureC real not null,
    primary key (place, time, issued)
  ) strict, without rowid;
  create table outdoorSource (place text primary key, source text not null) strict, without rowid;
  `,
  `
  create index quarantineByContent on quarantine (topic, code, substr(payload, 1, 64)) where settled is null;
  `,
  `
  alter table record add column madeBy text;
  `,
];

/** The schema of this glasstide. */
export const newestSchema = migrations.length;

/**
 * Brings the file to the present schema, or to an earlier one for a test of upgrades, one transaction a version.
 * @throws when a newer glasstide wrote the file: an older one would misread it.
 */
export function migrate(db: Database, upTo = newestSchema): void {
  const found = versionOf(db);
  if (found > migrations.length) {
    throw new Error(
      `A newer glasstide wrote this data file (schema ${found}; this one knows up to ${migrations.length}). ` +
        'Nothing was changed. Start the newer glasstide again, or use a copy made before the update.',
    );
  }
  migrations.slice(found, upTo).forEach((sql, index) => {
    db.transaction(() => {
      // Another process that starts at the same moment may have done it while this one waited.
      if (versionOf(db) !== found + index) return;
      db.exec(sql);
      db.pragma(`user_version = ${found + index + 1}`);
    }).immediate();
  });
}

function versionOf(db: Database): number {
  return Number(db.pragma('user_version', { simple: true }));
}
