import type { Database } from 'better-sqlite3';
import type { Quarantine, QuarantinedMessage } from './store.ts';

const keptPayloadBytes = 4096;
const keptMessages = 10_000;

interface Row {
  id: number;
  placeId: string | null;
  topic: string;
  payload: Uint8Array;
  payloadBytes: number;
  retained: number;
  arrivedMs: number;
  code: string;
  reason: string;
  settled: 'mended' | 'dismissed' | null;
}

const columns =
  'id, place as placeId, topic, payload, payloadBytes, retained, arrivedMs, code, reason, settled';

/** Messages that could not be used. What exceeds the cap is let go oldest first, and counted. */
export function openQuarantine(db: Database): Quarantine {
  const insert = db.prepare(`
    insert into quarantine (place, topic, payload, payloadBytes, retained, arrivedMs, code, reason)
    values (@placeId, @topic, @payload, @payloadBytes, @retained, @arrivedMs, @code, @reason)`);
  const get = db.prepare<[number], Row>(`select ${columns} from quarantine where id = ?`);
  const list = db.prepare<[object], Row>(`
    select ${columns} from quarantine
    where (@placeId is null or place = @placeId) and (@settledToo or settled is null)
    order by id desc limit @limit`);
  const settle = db.prepare('update quarantine set settled = ? where id = ?');
  const kept = db.prepare<[], number>('select count(*) from quarantine').pluck();
  const dropOldest = db
    .prepare<[], 'settled' | 'waiting'>(`
      delete from quarantine
      where id = (select id from quarantine order by settled is null, id limit 1)
      returning iif(settled is null, 'waiting', 'settled')`)
    .pluck();
  const countLetGo = db.prepare('update quarantineLetGo set messages = messages + 1 where what = ?');
  const letGo = db.prepare<[string], number>('select messages from quarantineLetGo where what = ?').pluck();

  const add = db.transaction((message: Parameters<Quarantine['add']>[0]) => {
    const { placeId = null, retained, payload, ...rest } = message;
    const id = insert.run({
      ...rest,
      placeId,
      retained: retained ? 1 : 0,
      payload: payload.subarray(0, keptPayloadBytes),
    }).lastInsertRowid;
    if ((kept.get() ?? 0) > keptMessages) countLetGo.run(dropOldest.get());
    return Number(id);
  });

  const messageWith = (id: number) => {
    const row = get.get(id);
    return row && messageOf(row);
  };

  return {
    add: (message) => messageWith(add(message))!,
    get: messageWith,
    list: ({ placeId, settledToo = false, limit = keptMessages } = {}) =>
      list.all({ placeId: placeId ?? null, settledToo: settledToo ? 1 : 0, limit }).map(messageOf),
    settle: (id, how) => void settle.run(how, id),
    letGo: () => ({ settled: letGo.get('settled') ?? 0, waiting: letGo.get('waiting') ?? 0 }),
  };
}

function messageOf({ placeId, settled, retained, payload, ...rest }: Row): QuarantinedMessage {
  return {
    ...rest,
    payload: new Uint8Array(payload),
    retained: retained === 1,
    ...(placeId !== null && { placeId }),
    ...(settled !== null && { settled }),
  };
}
