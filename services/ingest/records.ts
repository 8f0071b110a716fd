/** Trap counts and leaf checks that come by MQTT. */
import { createHash } from 'node:crypto';
import type { z } from 'zod';
import { issuesOf, pathName, sentenceOf } from '../issues.ts';
import { leafCheck, trapCount } from '../model/index.ts';
import { entryRefusal } from '../references.ts';
import type { Refusal } from '../refusals.ts';
import type { RecordData, Store } from '../store/store.ts';
import { readText } from './decoders/decodeReadings.ts';
import { isRefusal } from './decoders/decoder.ts';
import { parseNearJson } from './decoders/nearJson.ts';
import type { ArrivedMessage } from './message.ts';
import { clockOf } from './readings.ts';
import { type Result, refused } from './result.ts';

type Kind = 'trapCount' | 'leafCheck';

/** Stores a trap count; the trap is named by the topic. */
export function storeTrapCount(
  store: Store,
  message: ArrivedMessage,
  placeId: string,
  trapId: string,
): Result {
  const count = readRecord(trapCount, message, { trapId });
  if (isRefusal(count)) return refused(placeId, count);
  const record = { kind: 'trapCount', placeId, data: count } as const;
  const problem = entryRefusal(store.records, { ...record, nowMs: message.arrivedMs });
  if (problem) return refused(placeId, problem);
  return put(store, message, record);
}

/** Stores a leaf check. */
export function storeLeafCheck(store: Store, message: ArrivedMessage, placeId: string): Result {
  const check = readRecord(leafCheck, message, {});
  if (isRefusal(check)) return refused(placeId, check);
  const record = { kind: 'leafCheck', placeId, data: check } as const;
  const problem = entryRefusal(store.records, { ...record, nowMs: message.arrivedMs });
  if (problem) return refused(placeId, problem);
  return put(store, message, record);
}

function readRecord<S extends z.ZodType>(
  schema: S,
  { topic, payload }: ArrivedMessage,
  known: object,
): z.infer<S> | Refusal {
  const text = readText(payload);
  if (typeof text !== 'string') return text;
  const parsed = parseNearJson(text);
  if (isRefusal(parsed)) return parsed;
  const sent = typeof parsed.value === 'object' && parsed.value !== null ? parsed.value : {};
  const named = { id: idFrom(topic, sent), ...known, ...sent };
  const checked = schema.safeParse(named);
  if (!checked.success) return invalid(issuesOf(checked.error, named));
  const wrong = Object.entries(known).find(([key, value]) => Reflect.get(named, key) !== value);
  return wrong ? otherThanTopic(wrong[0], wrong[1], Reflect.get(named, wrong[0])) : checked.data;
}

/** The same count sent twice gets the same id, so that it is stored once. */
function idFrom(topic: string, sent: object): string {
  return hash(`${topic} ${String(Reflect.get(sent, 'time'))}`).slice(0, 16);
}

function put<K extends Kind>(
  store: Store,
  message: ArrivedMessage,
  record: { kind: K; placeId: string; data: RecordData[K] },
): Result {
  const idempotencyKey = `mqtt:${hash(`${message.topic} ${Buffer.from(message.payload).toString('base64')}`)}`;
  const { id } = record.data;
  const before = store.records.history(record.kind, record.placeId, id).length;
  const { version } = store.records.put({ ...record, id, atMs: message.arrivedMs, idempotencyKey });
  const what = record.kind === 'trapCount' ? 'Trap count' : 'Leaf check';
  if (version <= before) return { placeId: record.placeId, readAs: `${what} known already.` };
  const at = clockOf(store, message, record.placeId);
  return {
    placeId: record.placeId,
    readAs: `${what} of ${at(Date.parse(record.data.time))}.`,
    changed: 'record',
  };
}

function otherThanTopic(path: string, expected: string, received: unknown): Refusal {
  return invalid([
    { path, expected: `leave it out, or send ${expected} as in the topic`, received: String(received) },
  ]);
}

function invalid(issues: NonNullable<Refusal['issues']>): Refusal {
  return { code: 'record-invalid', reason: sentenceOf(issues, pathName), issues };
}

function hash(text: string): string {
  return createHash('sha256').update(text).digest('hex');
}
