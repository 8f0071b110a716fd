/**
 * Who may come in. Of the passphrase only its slow hash is kept, of every other secret only its SHA-256:
 * a stolen copy of the file opens nothing. The calendar's token is kept as it is, because its address is
 * shown again on each phone, and it opens less than the file itself holds.
 */
import type { Database } from 'better-sqlite3';

export type CredentialKind = 'session' | 'invite' | 'device' | 'reader';

/** A secret somebody holds, without the secret. */
export interface Credential {
  id: string;
  kind: CredentialKind;
  /** For the owner to tell it from others: a person, a phone, a board. */
  name: string;
  /** Of a session. */
  role?: 'owner' | 'helper';
  /** Of a device: its place, and its sensor unless it speaks for the whole place. */
  placeId?: string;
  sensorId?: string;
  createdMs: number;
  lastUsedMs?: number;
  expiresMs?: number;
}

export interface Credentials {
  /** Undefined until the owner has chosen a passphrase. */
  passphraseHash(): string | undefined;
  keepPassphraseHash(hash: string, atMs: number): void;
  add(credential: Credential, secretHash: string): void;
  bySecretHash(secretHash: string): Credential | undefined;
  /** Oldest first. */
  list(): Credential[];
  markUsed(id: string, atMs: number): void;
  /** False when there was none: of two who take the same one away, one is told. */
  remove(id: string): boolean;
  calendarToken(placeId: string): string | undefined;
  keepCalendarToken(placeId: string, token: string): void;
  placeOfCalendarToken(token: string): string | undefined;
}

interface Row {
  id: string;
  kind: CredentialKind;
  name: string;
  role: 'owner' | 'helper' | null;
  placeId: string | null;
  sensorId: string | null;
  createdMs: number;
  lastUsedMs: number | null;
  expiresMs: number | null;
}

const columns =
  'id, kind, name, role, place as placeId, sensor as sensorId, createdMs, lastUsedMs, expiresMs';

export function openCredentials(db: Database): Credentials {
  const passphrase = db.prepare<[], string>('select hash from passphrase').pluck();
  const keepPassphrase = db.prepare('insert or replace into passphrase values (1, ?, ?)');
  const insert = db.prepare(`
    insert into credential values
    (@id, @kind, @secretHash, @name, @role, @placeId, @sensorId, @createdMs, @lastUsedMs, @expiresMs)`);
  const bySecret = db.prepare<[string], Row>(`select ${columns} from credential where secretHash = ?`);
  const list = db.prepare<[], Row>(`select ${columns} from credential order by createdMs, id`);
  const markUsed = db.prepare('update credential set lastUsedMs = ? where id = ?');
  const remove = db.prepare('delete from credential where id = ?');
  const token = db.prepare<[string], string>('select token from calendarToken where place = ?').pluck();
  const keepToken = db.prepare('insert or replace into calendarToken values (?, ?)');
  const placeOf = db.prepare<[string], string>('select place from calendarToken where token = ?').pluck();

  return {
    passphraseHash: () => passphrase.get(),
    keepPassphraseHash: (hash, atMs) => void keepPassphrase.run(hash, atMs),
    add: (credential, secretHash) => void insert.run({ ...nothing, ...credential, secretHash }),
    bySecretHash(secretHash) {
      const row = bySecret.get(secretHash);
      return row && credentialOf(row);
    },
    list: () => list.all().map(credentialOf),
    markUsed: (id, atMs) => void markUsed.run(atMs, id),
    remove: (id) => remove.run(id).changes === 1,
    calendarToken: (placeId) => token.get(placeId),
    keepCalendarToken: (placeId, next) => void keepToken.run(placeId, next),
    placeOfCalendarToken: (given) => placeOf.get(given),
  };
}

const nothing = { role: null, placeId: null, sensorId: null, lastUsedMs: null, expiresMs: null };

function credentialOf({ role, placeId, sensorId, lastUsedMs, expiresMs, ...rest }: Row): Credential {
  return {
    ...rest,
    ...(role !== null && { role }),
    ...(placeId !== null && { placeId }),
    ...(sensorId !== null && { sensorId }),
    ...(lastUsedMs !== null && { lastUsedMs }),
    ...(expiresMs !== null && { expiresMs }),
  };
}
