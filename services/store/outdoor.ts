import type { Database } from 'better-sqlite3';
import type { Outdoor, OutdoorSource, StoredOutdoorPoint } from './store.ts';

interface Row {
  timeMs: number;
  issuedMs: number;
  temperatureC: number;
}

/** The air outdoors; what was measured has the issue 0, which sorts before any forecast. */
export function openOutdoor(db: Database): Outdoor {
  const source = db.prepare<[string], { source: string }>('select source from outdoorSource where place = ?');
  const keepSource = db.prepare('insert or replace into outdoorSource values (?, ?)');
  const dropSource = db.prepare('delete from outdoorSource where place = ?');
  const insert = db.prepare(
    'insert or replace into outdoor values (@placeId, @timeMs, @issuedMs, @temperatureC)',
  );
  const list = db.prepare<[string], Row>(
    'select time as timeMs, issued as issuedMs, temperatureC from outdoor where place = ? order by time, issued',
  );
  const dropEarlier = db.prepare(
    'delete from outdoor where place = @placeId and time >= @fromMs and issued >= @dayMs and issued < @issuedMs',
  );
  const clear = db.prepare('delete from outdoor where place = ?');
  const lastIssue = db.prepare<[string], { issuedMs: number | null }>(
    'select max(issued) as issuedMs from outdoor where place = ? and issued > 0',
  );

  return {
    source(placeId) {
      const row = source.get(placeId);
      return row && (JSON.parse(row.source) as OutdoorSource);
    },
    keepSource: (placeId, value) =>
      void (value ? keepSource.run(placeId, JSON.stringify(value)) : dropSource.run(placeId)),
    add: db.transaction((placeId: string, points: readonly StoredOutdoorPoint[]) => {
      for (const { timeMs, temperatureC, issuedMs = 0 } of points)
        insert.run({ placeId, timeMs, temperatureC, issuedMs });
    }),
    issue: db.transaction((placeId: string, issuedMs: number, points: readonly StoredOutdoorPoint[]) => {
      const fromMs = Math.min(...points.map(({ timeMs }) => timeMs));
      dropEarlier.run({ placeId, fromMs, issuedMs, dayMs: Math.floor(issuedMs / dayLengthMs) * dayLengthMs });
      for (const { timeMs, temperatureC } of points) insert.run({ placeId, timeMs, temperatureC, issuedMs });
    }),
    list: (placeId) =>
      list
        .all(placeId)
        .map(({ timeMs, temperatureC, issuedMs }) =>
          issuedMs === 0 ? { timeMs, temperatureC } : { timeMs, temperatureC, issuedMs },
        ),
    lastIssuedMs: (placeId) => lastIssue.get(placeId)?.issuedMs ?? undefined,
    clear: (placeId) => void clear.run(placeId),
  };
}

const dayLengthMs = 86_400_000;
