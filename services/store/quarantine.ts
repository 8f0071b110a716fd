import type { Database } from 'better-sqlite3';
import type { GroupCommit } from './groupCommit.ts';
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

/**
 * Messages that could not be used. What exceeds the cap is let go oldest first, and counted. A board that shouts must
 * cost no more than one that speaks: messages are committed in groups, and a repeated one is found by an index.
 */
export function openQuarantine(db: Database, group: GroupCommit): Quarantine {
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
  const waiting = db.prepare<[], number>('select count(*) from quarantine where settled is null').pluck();
  const same = db
    .prepare<[object], number>(`
      select id from quarantine
      where topic = @topic and code = @code and substr(payload, 1, 64) = substr(@payload, 1, 64)
        and payload = @payload and settled is null`)
    .pluck();
  const dropOldest = db
    .prepare<[number], 'settled' | 'waiting'>(`
      delete from quarantine
      where id in (select id from quarantine order by settled is null, id limit ?)
      returning iif(settled is null, 'waiting', 'settled')`)
    .pluck();
  const countLetGo = db.prepare('update quarantineLetGo set messages = messages + 1 where what = ?');
  const letGo = db.prepare<[string], number>('select messages from quarantineLetGo where what = ?').pluck();

  let grown = false;
  group.beforeCommit(() => {
    if (!grown) return;
    grown = false;
    const over = (kept.get() ?? 0) - keptMessages;
    if (over > 0) for (const what of dropOldest.all(over)) countLetGo.run(what);
  });

  function add(message: Parameters<Quarantine['add']>[0], again: boolean): number {
    const { placeId = null, retained, payload, ...rest } = message;
    const row = {
      ...rest,
      placeId,
      retained: retained ? 1 : 0,
      payload: payload.subarray(0, keptPayloadBytes),
    };
    const known = again ? same.get(row) : undefined;
    if (known !== undefined) return known;
    grown = true;
    return Number(insert.run(row).lastInsertRowid);
  }

  const messageWith = (id: number) => {
    const row = get.get(id);
    return row && messageOf(row);
  };

  return {
    add: (message, { again = false } = {}) => group.write(() => messageWith(add(message, again))!),
    get(id) {
      group.flush();
      return messageWith(id);
    },
    list({ placeId, settledToo = false, limit = keptMessages } = {}) {
      group.flush();
      return list.all({ placeId: placeId ?? null, settledToo: settledToo ? 1 : 0, limit }).map(messageOf);
    },
    waiting() {
      group.flush();
      return waiting.get() ?? 0;
    },
    settle(id, how) {
      group.flush();
      settle.run(how, id);
    },
    letGo() {
      group.flush();
      return { settled: letGo.get('settled') ?? 0, waiting: letGo.get('waiting') ?? 0 };
    },
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
