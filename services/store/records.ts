import type { Database } from 'better-sqlite3';
import { RefusalError } from '../refusals.ts';
import { byFile, type RecordData, type RecordKind, type Records, type StoredRecord } from './store.ts';

interface Row {
  kind: RecordKind;
  placeId: string;
  id: string;
  version: number;
  changedAtMs: number;
  deleted: number;
  data: string;
  madeBy: string | null;
}
type Key = { kind: RecordKind; placeId: string; id: string };
type Change = Key & { atMs: number; idempotencyKey?: string; madeBy?: string };
type Content = { deleted: boolean; data: unknown };

const mostPresent = 1000;
const columns = 'kind, place as placeId, id, version, changedAtMs, deleted, data, madeBy';
const isNewest = `version =
  (select max(version) from record as newer
   where newer.kind = record.kind and newer.place = record.place and newer.id = record.id)`;
const current = `deleted = 0 and ${isNewest}`;

/** Records with every version kept. Each change and its idempotency key are one transaction. */
export function openRecords(db: Database): Records {
  const versions = db.prepare<[Key], Row>(
    `select ${columns} from record where kind = @kind and place = @placeId and id = @id order by version`,
  );
  const newest = db.prepare<[Key], Row>(
    `select ${columns} from record where kind = @kind and place = @placeId and id = @id order by version desc limit 1`,
  );
  const list = db.prepare<[string, string], Row>(
    `select ${columns} from record where kind = ? and place = ? and ${current} order by id`,
  );
  const takenBack = db.prepare<[string, string], Row>(
    `select ${columns} from record where kind = ? and place = ? and deleted = 1 and madeBy is not '${byFile}' and ${isNewest}
     order by changedAtMs desc, id`,
  );
  const places = db.prepare<[], Row>(
    `select ${columns} from record where kind = 'place' and ${current} order by id`,
  );
  const insert = db.prepare(
    'insert into record values (@kind, @placeId, @id, @version, @changedAtMs, @deleted, @data, @madeBy)',
  );
  const byIdempotencyKey = db.prepare<[string], Row>(
    `select ${columns} from record join idempotencyKey as made using (kind, place, id, version) where made.key = ?`,
  );
  const keepKey = db.prepare(
    'insert into idempotencyKey values (@idempotencyKey, @kind, @placeId, @id, @version)',
  );

  /** Adds the version that `next` makes of the earlier ones; undefined = nothing to change. */
  const change = db.transaction((change: Change, next: (earlier: Row[]) => Content | undefined) => {
    const { kind, placeId, id, atMs, idempotencyKey, madeBy = null } = change;
    const repeated = idempotencyKey === undefined ? undefined : byIdempotencyKey.get(idempotencyKey);
    if (repeated) return repeated;
    const earlier = versions.all({ kind, placeId, id });
    const content = next(earlier);
    const last = earlier.at(-1);
    const row =
      content === undefined && last
        ? last
        : { ...rowOf({ kind, placeId, id }, (last?.version ?? 0) + 1, atMs, content), madeBy };
    if (row !== last) insert.run(row);
    present.clear();
    if (idempotencyKey !== undefined)
      keepKey.run({ idempotencyKey, kind, placeId, id, version: row.version });
    return row;
  });

  // Each reading asks for its place and its sensor; they are read again after a change, also of another process.
  const present = new Map<string, StoredRecord | undefined>();
  const changesByOthers = db.prepare<[], number>('pragma data_version').pluck();
  let seenChanges = changesByOthers.get();
  let looked = false;

  /** Once a tick: to ask takes as long as to store a reading, and hundreds of them come in one tick. */
  function lookForChanges(): void {
    if (looked) return;
    looked = true;
    setImmediate(() => {
      looked = false;
    });
    const changes = changesByOthers.get();
    if (changes !== seenChanges) present.clear();
    seenChanges = changes;
  }

  function presentRecord(key: Key): StoredRecord | undefined {
    lookForChanges();
    if (present.size >= mostPresent) present.clear();
    const name = `${key.kind} ${key.placeId} ${key.id}`;
    if (present.has(name)) return present.get(name);
    const row = newest.get(key);
    const record = row === undefined || row.deleted === 1 ? undefined : recordOf(row);
    present.set(name, record);
    return record;
  }

  return {
    get: <K extends RecordKind>(kind: K, placeId: string, id: string) =>
      presentRecord({ kind, placeId, id }) as StoredRecord<K> | undefined,
    list: (kind, placeId) => list.all(kind, placeId).map((row) => recordOf(row)),
    takenBack: (kind, placeId) => takenBack.all(kind, placeId).map((row) => recordOf(row)),
    places: () => places.all().map((row) => recordOf(row)),
    put: ({ data, ...rest }) => recordOf(change.immediate(rest, () => ({ deleted: false, data }))),
    remove: (step) =>
      recordOf(
        change.immediate(step, (earlier) => {
          const last = lastOf(earlier, step);
          return last.deleted === 1 ? undefined : { deleted: true, data: JSON.parse(last.data) };
        }),
      ),
    history: (kind, placeId, id) => versions.all({ kind, placeId, id }).map((row) => recordOf(row)),
    undo: (step) => recordOf(change.immediate(step, (earlier) => undone(earlier, step))),
  };
}

function undone(earlier: Row[], key: Key): Content {
  const last = lastOf(earlier, key);
  const before = earlier.at(-2);
  if (before) return { deleted: before.deleted === 1, data: JSON.parse(before.data) };
  return { deleted: true, data: JSON.parse(last.data) };
}

function lastOf(earlier: Row[], { kind, placeId, id }: Key): Row {
  const last = earlier.at(-1);
  if (last) return last;
  throw new RefusalError({
    code: 'record-unknown',
    reason: `There is no ${kind} ${id} in ${placeId}. Nothing was changed.`,
  });
}

function rowOf(key: Key, version: number, changedAtMs: number, content: Content | undefined) {
  const deleted = content?.deleted === true ? 1 : 0;
  return { ...key, version, changedAtMs, deleted, data: JSON.stringify(content?.data) };
}

/** Data was checked by zod before it was put; inside it is trusted. */
function recordOf<K extends RecordKind>(row: Row): StoredRecord<K> {
  const { placeId, id, version, changedAtMs, madeBy } = row;
  return {
    kind: row.kind as K,
    placeId,
    id,
    version,
    changedAtMs,
    deleted: row.deleted === 1,
    data: JSON.parse(row.data) as RecordData[K],
    ...(madeBy !== null && { madeBy }),
  };
}
