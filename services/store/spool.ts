/**
 * Readings on their way to a server, in the embedded database: they are acknowledged when they are here, and leave
 * when the server has them. What the server will not have stays, with its reason, and is still shown.
 */
import type { Database } from 'better-sqlite3';
import type { StoredReading } from './store.ts';

export interface Spooled {
  number: number;
  placeId: string;
  reading: StoredReading;
}

export interface Spool {
  /** Within a transaction: keeps a reading unless one for its sensor and time waits already, which is answered. */
  keep(placeId: string, reading: StoredReading): StoredReading | undefined;
  /** The oldest that are still to be sent. */
  waiting(limit: number): Spooled[];
  count(): number;
  /** The server has them. */
  remove(numbers: readonly number[]): void;
  refuse(number: number, reason: string): void;
  refused(): { readings: number; reason: string } | undefined;
  /** Everything of a place that is here, refused ones too. */
  range(placeId: string, window: { fromMs: number; toMs: number; sensorId?: string }): StoredReading[];
  /** Changes the doubt of one that is here. */
  mark(placeId: string, mark: { sensorId: string; timeMs: number; doubt?: string }): void;
  clear(placeId: string): void;
  places(): string[];
}

interface Row {
  number: number;
  placeId: string;
  sensorId: string;
  timeMs: number;
  temperatureC: number;
  humidityPct: number | null;
  doubt: string | null;
}

const columns =
  'number, place as placeId, sensor as sensorId, time as timeMs, temperatureC, humidityPct, doubt';

export function openSpool(db: Database): Spool {
  const insert = db.prepare(`
    insert into spooled (place, sensor, time, temperatureC, humidityPct, doubt)
    values (@placeId, @sensorId, @timeMs, @temperatureC, @humidityPct, @doubt) on conflict do nothing`);
  const find = db.prepare<[string, string, number], Row>(
    `select ${columns} from spooled where place = ? and sensor = ? and time = ?`,
  );
  const waiting = db.prepare<[number], Row>(
    `select ${columns} from spooled where refusal is null order by number limit ?`,
  );
  const count = db.prepare<[], number>('select count(*) from spooled where refusal is null').pluck();
  const remove = db.prepare('delete from spooled where number = ?');
  const refuse = db.prepare('update spooled set refusal = ? where number = ?');
  const refused = db.prepare<[], { readings: number; reason: string | null }>(
    'select count(*) as readings, max(refusal) as reason from spooled where refusal is not null',
  );
  const range = db.prepare<[object], Row>(`
    select ${columns} from spooled
    where place = @placeId and (@sensorId is null or sensor = @sensorId) and time >= @fromMs and time < @toMs`);
  const mark = db.prepare('update spooled set doubt = ? where place = ? and sensor = ? and time = ?');
  const clear = db.prepare('delete from spooled where place = ?');
  const places = db.prepare<[], string>('select distinct place from spooled order by place').pluck();
  const removeAll = db.transaction((numbers: readonly number[]) => {
    for (const number of numbers) remove.run(number);
  });

  return {
    keep(placeId, reading) {
      const { sensorId, timeMs } = reading;
      const row = { placeId, humidityPct: null, doubt: null, ...reading };
      if (insert.run(row).changes === 1) return undefined;
      const known = find.get(placeId, sensorId, timeMs);
      return known && spooledOf(known).reading;
    },
    waiting: (limit) => waiting.all(limit).map(spooledOf),
    count: () => count.get() ?? 0,
    remove: (numbers) => removeAll.immediate(numbers),
    refuse: (number, reason) => void refuse.run(reason, number),
    refused() {
      const { readings = 0, reason = null } = refused.get() ?? {};
      return reason === null ? undefined : { readings, reason };
    },
    range: (placeId, window) =>
      range.all({ sensorId: null, ...window, placeId }).map((row) => spooledOf(row).reading),
    mark: (
      placeId,
      { sensorId, timeMs, doubt = null }: { sensorId: string; timeMs: number; doubt?: string | null },
    ) => void mark.run(doubt, placeId, sensorId, timeMs),
    clear: (placeId) => void clear.run(placeId),
    places: () => places.all(),
  };
}

function spooledOf({ number, placeId, sensorId, timeMs, temperatureC, humidityPct, doubt }: Row): Spooled {
  const reading: StoredReading = { sensorId, timeMs, temperatureC };
  if (humidityPct !== null) reading.humidityPct = humidityPct;
  if (doubt !== null) reading.doubt = doubt;
  return { number, placeId, reading };
}
