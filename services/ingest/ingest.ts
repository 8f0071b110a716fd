/**
 * From messages to the store. An embedded broker hands each message to `handle` before it
 * acknowledges it; from an external broker messages come through our own client (`url`). Either way
 * the acknowledgement follows the commit (docs/decisions/0002-acknowledge-after-commit.md).
 */
import type { Clock } from '../clock.ts';
import type { TemperatureUnit } from '../model/index.ts';
import { type Refusal, RefusalError } from '../refusals.ts';
import type { Store } from '../store/store.ts';
import { type Listening, listen } from './client.ts';
import { interpret, mappedSensors, placeNamed } from './interpret.ts';
import { createMarks } from './marks.ts';
import type { ArrivedMessage, Message } from './message.ts';
import { arrivalOf, payloadStart } from './readings.ts';
import { type Result, refused } from './result.ts';

const dayMs = 86_400_000;
const ownTopics = 'glasstide/#';

export interface Change {
  /** Empty when the message named no place that is set up. */
  placeId: string;
  what: 'reading' | 'record' | 'quarantine';
}

export interface IngestOptions {
  store: Store;
  clock: Clock;
  onChange(change: Change): void;
  /** Address of an external broker; left out beside the embedded one. */
  url?: string;
  clientId?: string;
  /** Name of the group of processes among which the broker deals the messages out. */
  share?: string;
}

export interface Ingest {
  /** Keeps one message, as data or in quarantine; resolves when it is on disk, rejects when it is not. */
  handle(message: Message): Promise<void>;
  /** Reads quarantined messages again; with `unit`, their sensors speak that unit from now on. */
  reread(ids: readonly number[], unit?: TemperatureUnit): Promise<{ mended: number; stillRefused: number }>;
  /** Call after sensors changed: listens on their topics as well. */
  refreshMappings(): void;
  /** Resolves when an external broker has granted the subscriptions, at once without one. */
  ready(): Promise<void>;
  /** Sentences for the owner about what does not work just now. */
  troubles(): string[];
  /** Resolves when no message is being stored and no doubt is being looked for. */
  idle(): Promise<void>;
  close(): Promise<void>;
}

export async function startIngest({
  store,
  clock,
  onChange,
  url,
  clientId,
  share,
}: IngestOptions): Promise<Ingest> {
  const marks = createMarks(store, (placeId) => onChange({ placeId, what: 'reading' }));
  const inHand = new Set<Promise<void>>();
  /** Messages that could not be stored and were not acknowledged. */
  const stumbled = new Set<string>();
  // A process that ended between storing and marking left readings unjudged.
  for (const { placeId } of store.records.places()) {
    marks.look(placeId, { fromMs: clock.nowMs() - dayMs, toMs: clock.nowMs() });
  }

  /** What cannot be stored is sent again; what cannot be stored twice is put aside, or it would come for ever. */
  async function read(message: ArrivedMessage): Promise<Result[]> {
    try {
      const results = await interpret({ store, marks }, message);
      if (stumbled.size > 0) stumbled.delete(keyOf(message));
      return results;
    } catch (error) {
      // Not by the flag DUP: not every broker sets it.
      if (!stumbled.delete(keyOf(message))) {
        stumbled.add(keyOf(message));
        throw error;
      }
      return [refused(placeNamed(store, message.topic), faultOf(error))];
    }
  }

  async function keep(message: ArrivedMessage): Promise<void> {
    for (const result of await read(message)) {
      if (!result.noted) note(store, message, result);
      await putAside(store, message, result);
      if (result.changed) onChange({ placeId: result.placeId ?? '', what: result.changed });
      if (result.refusal) onChange({ placeId: result.placeId ?? '', what: 'quarantine' });
    }
  }

  function handle(message: Message): Promise<void> {
    const payloadBytes = message.payload.length;
    const kept = keep({ ...message, payloadBytes, arrivedMs: clock.nowMs() });
    const settle = () => void inHand.delete(settled);
    const settled = kept.then(settle, settle);
    inHand.add(settled);
    return kept;
  }

  async function mend(id: number, unit: TemperatureUnit | undefined): Promise<boolean> {
    const kept = store.quarantine.get(id);
    if (!kept || kept.settled || kept.payloadBytes > kept.payload.length) return false;
    const results = await interpret({ store, marks }, { ...kept, duplicate: false }, unit);
    for (const { placeId = '', changed } of results) if (changed) onChange({ placeId, what: changed });
    if (results.length === 0 || results.some(({ refusal }) => refusal)) return false;
    store.quarantine.settle(id, 'mended');
    onChange({ placeId: results[0]?.placeId ?? '', what: 'quarantine' });
    return true;
  }

  const filters = () =>
    [ownTopics, ...mappedSensors(store).map(({ sensor }) => sensor.topic)].map((filter) =>
      share === undefined ? filter : `$share/${share}/${filter}`,
    );
  const listening: Listening | undefined =
    url === undefined
      ? undefined
      : listen({ url, clientId: clientId ?? 'glasstide-ingest', filters: filters(), handle });

  async function idle(): Promise<void> {
    while (inHand.size > 0) await Promise.all(inHand);
    await marks.idle();
  }

  return {
    handle,
    async reread(ids, unit) {
      let mended = 0;
      for (const id of ids) if (await mend(id, unit)) mended += 1;
      return { mended, stillRefused: ids.length - mended };
    },
    refreshMappings: () => listening?.subscribe(filters()),
    ready: async () => listening?.ready(),
    troubles: () => [listening?.trouble(), marks.trouble()].filter((trouble) => trouble !== undefined),
    idle,
    async close() {
      await listening?.close();
      await idle();
    },
  };
}

const keyOf = ({ topic, payload }: ArrivedMessage) => `${topic} ${payloadStart(payload)}`;

function faultOf(error: unknown): Refusal {
  if (error instanceof RefusalError) return error.refusal;
  const why = error instanceof Error ? error.message : String(error);
  return {
    code: 'fault',
    reason: `The message could not be stored twice over (${why}). It is kept: read it again.`,
  };
}

function note(store: Store, message: ArrivedMessage, { placeId, readAs }: Result): void {
  if (placeId === undefined) return;
  store.arrivals.note(arrivalOf(message, placeId, readAs));
}

/** A message that comes again with each reconnection is kept once. */
async function putAside(store: Store, message: ArrivedMessage, { placeId, refusal }: Result): Promise<void> {
  if (!refusal) return;
  const { topic, payload, payloadBytes, retained, arrivedMs, duplicate } = message;
  const { code, reason } = refusal;
  const place = placeId === undefined ? {} : { placeId };
  await store.quarantine.add(
    { ...place, topic, payload, payloadBytes, retained, arrivedMs, code, reason },
    { again: retained || duplicate },
  );
}
