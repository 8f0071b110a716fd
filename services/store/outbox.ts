import type { Database } from 'better-sqlite3';
import type { Outbox, OutboxEntry, Target } from './store.ts';

interface Row extends Omit<OutboxEntry, 'settledMs' | 'fault'> {
  settledMs: number | null;
  fault: string | null;
}

const columns =
  'id, place as placeId, channel, recipient as "to", event, about, createdMs, state, settledMs, attempts, nextTryMs, fault';

/** What is still to be told, and what was: nothing leaves this table but by being told or no longer true. */
export function openOutbox(db: Database): Outbox {
  const add = db.prepare(`
    insert or ignore into outbox (place, channel, recipient, event, about, createdMs, nextTryMs)
    values (@placeId, @channel, @to, @event, @about, @createdMs, @createdMs)`);
  const waiting = db.prepare<[string], Row>(
    `select ${columns} from outbox where place = ? and state = 'waiting' order by id`,
  );
  const find = db.prepare<[object], Row>(`
    select ${columns} from outbox where place = @placeId and channel = @channel and recipient = @to
      and event = @event and about = @about`);
  const settled = db.prepare<[string, number], Row>(
    `select ${columns} from outbox where place = ? and state <> 'waiting' order by settledMs desc, id desc limit ?`,
  );
  const lastSent = db.prepare<[object], { ms: number | null }>(`
    select max(settledMs) as ms from outbox
    where place = @placeId and channel = @channel and recipient = @to and state = 'sent'`);
  const settle = db.prepare('update outbox set state = ?, settledMs = ?, fault = null where id = ?');
  const postpone = db.prepare(
    'update outbox set attempts = attempts + 1, nextTryMs = ?, fault = ? where id = ?',
  );

  return {
    add: (entry) => void add.run(entry),
    waiting: (placeId) => waiting.all(placeId).map(entryOf),
    find(entry) {
      const row = find.get(entry);
      return row && entryOf(row);
    },
    settled: (placeId, limit) => settled.all(placeId, limit).map(entryOf),
    lastSentMs: (placeId, { channel, to }: Target) => lastSent.get({ placeId, channel, to })?.ms ?? undefined,
    settle: db.transaction((ids, how, atMs) => {
      for (const id of ids) settle.run(how, atMs, id);
    }),
    postpone: db.transaction((ids, nextTryMs, fault) => {
      for (const id of ids) postpone.run(nextTryMs, fault, id);
    }),
  };
}

function entryOf({ settledMs, fault, ...rest }: Row): OutboxEntry {
  return { ...rest, ...(settledMs !== null && { settledMs }), ...(fault !== null && { fault }) };
}
