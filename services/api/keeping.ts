/** Reading and changing records: the part that all record routes, places included, share. */
import { isDeepStrictEqual } from 'node:util';
import type { FastifyRequest } from 'fastify';
import type { Caller } from '../access/door.ts';
import { entryRefusal } from '../references.ts';
import { RefusalError } from '../refusals.ts';
import type { RecordData, RecordKind, Records, StoredRecord } from '../store/store.ts';
import type { ApiDeps } from './deps.ts';
import { idempotencyKey } from './writes.ts';

export interface Target<K extends RecordKind> {
  kind: K;
  placeId: string;
  id: string;
}

/** The record as the API shows it. */
export function shown<K extends RecordKind>({ id, version, changedAtMs, deleted, data }: StoredRecord<K>) {
  return { id, version, changedAt: new Date(changedAtMs).toISOString(), deleted, data };
}

export function notFound({ kind, placeId, id }: Target<RecordKind>): RefusalError {
  const where = kind === 'place' ? '' : ` in ${placeId}`;
  return new RefusalError({ code: 'record-unknown', reason: `There is no ${words(kind)} ${id}${where}.` });
}

/** The current record; deleted and never made are refused alike. */
export function current<K extends RecordKind>(records: Records, target: Target<K>): StoredRecord<K> {
  const record = records.get(target.kind, target.placeId, target.id);
  if (!record) throw notFound(target);
  return record;
}

/** Keeps a new version. A key that was used for something else is refused. */
export function keep<K extends RecordKind>(
  deps: ApiDeps,
  request: FastifyRequest,
  target: Target<K>,
  data: RecordData[K],
) {
  const refusal = entryRefusal(deps.store.records, { ...target, data, nowMs: deps.clock.nowMs() });
  if (refusal) throw new RefusalError(refusal);
  const record = deps.store.records.put({ ...target, data, ...stamp(deps, request) });
  if (record.id !== target.id || !isDeepStrictEqual(record.data, asKept(data))) {
    throw new RefusalError({
      code: 'idempotency-key-reused',
      reason: `This key already belongs to ${words(record.kind)} ${record.id}, which stays as it is.`,
    });
  }
  deps.changes.tell({ placeId: target.placeId, what: 'record' });
  return shown(record);
}

export function remove<K extends RecordKind>(deps: ApiDeps, request: FastifyRequest, target: Target<K>) {
  versionsOf(deps.store.records, target);
  const record = deps.store.records.remove({ ...target, ...stamp(deps, request) });
  deps.changes.tell({ placeId: target.placeId, what: 'record' });
  return shown(record);
}

/** Whoever was invited takes back what was entered with the same session, and nothing of others. */
export const mayTakeBack = ({ role, credential }: Caller, record: StoredRecord | undefined): boolean =>
  role !== 'helper' || record?.madeBy === credential?.id;

/** Puts the version before back; the undone one stays in the history. */
export function undo<K extends RecordKind>(deps: ApiDeps, request: FastifyRequest, target: Target<K>) {
  const present = versionsOf(deps.store.records, target).at(-1);
  if (!mayTakeBack(request.caller, present)) {
    const reason = 'Somebody else entered this, or changed it since. Nothing was changed.';
    throw new RefusalError({ code: 'not-allowed', reason });
  }
  const record = deps.store.records.undo({ ...target, ...stamp(deps, request) });
  deps.changes.tell({ placeId: target.placeId, what: 'record' });
  return shown(record);
}

export function versionsOf<K extends RecordKind>(records: Records, target: Target<K>): StoredRecord<K>[] {
  const versions = records.history(target.kind, target.placeId, target.id);
  if (versions.length === 0) throw notFound(target);
  return versions;
}

function stamp(deps: ApiDeps, request: FastifyRequest) {
  const madeBy = request.caller.credential?.id;
  return {
    atMs: deps.clock.nowMs(),
    idempotencyKey: idempotencyKey(request),
    ...(madeBy !== undefined && { madeBy }),
  };
}

/** As JSON gives it back: -0 comes back as 0. */
function asKept(data: object): unknown {
  return JSON.parse(JSON.stringify(data));
}

function words(kind: RecordKind): string {
  return kind.replace(/[A-Z]/g, (letter) => ` ${letter.toLowerCase()}`);
}
