import type { Database } from 'better-sqlite3';
import type { GroupCommit } from './groupCommit.ts';
import type { Notes } from './noting.ts';
import { openNumbers } from './numbers.ts';
import { longestLineMs } from './readingsContract.ts';
import { openRollups } from './rollups.ts';
import type { Added, HourlyRollup, Readings, Standing, StoredReading } from './store.ts';

interface ReadingRow {
  sensorId: string;
  timeMs: number;
  temperatureC: number;
  humidityPct: number | null;
  doubt: string | null;
}

const columns = 'sensorNumber.sensor as sensorId, time as timeMs, temperatureC, humidityPct, doubt';
// Sensor by sensor, because the key begins with place and sensor: each is one short run of the tree.
const bySensor = (table: string) => `
  from sensorNumber cross join ${table}
    on ${table}.place = sensorNumber.place and ${table}.sensor = sensorNumber.number`;
const inWindow = (table: string, time: string) => `
  ${bySensor(table)}
  where sensorNumber.place = @place and (@sensorId is null or sensorNumber.sensor = @sensorId)
    and ${time} >= @fromMs and ${time} < @toMs`;
const inOrder = (time: string) => `order by ${time}, sensorNumber.sensor`;

/** Readings and their hourly roll-ups in the embedded database. */
export function openReadings(db: Database, group: GroupCommit, notes: Notes): Readings {
  const numbers = openNumbers(db, group);
  const rollups = openRollups(db, group);
  const insert = db.prepare('insert into reading values (?, ?, ?, ?, ?, ?) on conflict do nothing');
  const find = db.prepare<[number, number, number], { temperatureC: number; humidityPct: number | null }>(
    'select temperatureC, humidityPct from reading where place = ? and sensor = ? and time = ?',
  );
  const setDoubt = db.prepare('update reading set doubt = ? where place = ? and sensor = ? and time = ?');
  const range = db.prepare<[object], ReadingRow>(
    `select ${columns} ${inWindow('reading', 'time')} ${inOrder('time')}`,
  );
  const doubted = db.prepare<[object], ReadingRow>(
    `select ${columns} ${inWindow('reading', 'time')} and doubt is not null ${inOrder('time')}`,
  );
  // With min() the other columns are those of the row it was found in (SQLite, "Bare columns in an aggregate query").
  const sampled = db.prepare<[object], ReadingRow>(`
    select ${columns.replace('time as', 'min(time) as')} ${inWindow('reading', 'time')} and doubt is null
    group by sensorNumber.number, time / cast(@everyMs as integer) ${inOrder('timeMs')}`);
  const standings = db.prepare<[number], Standing>(`
    select sensorNumber.sensor as sensorId,
      ${longestLineMs} * count(distinct hour / ${longestLineMs}) as coveredMs, avg(meanC) as meanC
    ${bySensor('hour')} where sensorNumber.place = ? group by sensorNumber.number order by sensorNumber.sensor`);
  const hourly = db.prepare<[object], HourlyRollup>(`
    select sensorNumber.sensor as sensorId, hour as hourMs, count, meanC, minC, maxC, doubted
    ${inWindow('hour', 'hour')} ${inOrder('hour')}`);
  const latest = db.prepare<[number], ReadingRow>(`
    select ${columns} ${bySensor('reading')}
    where sensorNumber.place = ? and time =
      (select max(time) from reading where place = sensorNumber.place and sensor = sensorNumber.number)
    order by sensorNumber.sensor`);
  const places = db
    .prepare<[], string>(`
      select place from placeNumber
      where exists (select 1 from reading where reading.place = placeNumber.number) order by place`)
    .pluck();
  // Sensor by sensor: each is one look at the beginning of its run in the tree.
  const earliest = db
    .prepare<[number], number | null>(`
      select min((select min(time) from reading where place = sensorNumber.place and sensor = sensorNumber.number))
      from sensorNumber where place = ?`)
    .pluck();
  const clearing = ['reading', 'hour'].map((table) => db.prepare(`delete from ${table} where place = ?`));

  function addAll(placeId: string, readings: readonly StoredReading[]): Added {
    const added: Added = { stored: 0, duplicates: 0, conflicts: [] };
    for (const reading of readings) {
      const { place, sensor } = numbers.forSensor(placeId, reading.sensorId);
      const { timeMs, temperatureC, humidityPct = null, doubt = null } = reading;
      if (insert.run(place, sensor, timeMs, temperatureC, humidityPct, doubt).changes === 1) {
        added.stored += 1;
        rollups.touch(place, sensor, timeMs);
        continue;
      }
      added.duplicates += 1;
      const kept = find.get(place, sensor, timeMs);
      if (kept?.temperatureC !== temperatureC || kept.humidityPct !== humidityPct)
        added.conflicts.push(reading);
    }
    return added;
  }

  const windowOf = (placeId: string, window: { fromMs: number; toMs: number; sensorId?: string }) => ({
    sensorId: null,
    ...window,
    place: numbers.ofPlace(placeId) ?? null,
  });

  return {
    add: (placeId, readings, noting) =>
      group.write(() => notes.around(placeId, noting, readings, () => addAll(placeId, readings))),
    mark: (placeId, marks) =>
      group.write(() => {
        for (const { sensorId, timeMs, doubt = null } of marks) {
          const { place, sensor } = numbers.forSensor(placeId, sensorId);
          if (setDoubt.run(doubt, place, sensor, timeMs).changes === 1) rollups.touch(place, sensor, timeMs);
        }
      }),
    range: async (placeId, window) => range.all(windowOf(placeId, window)).map(readingOf),
    sampled: async (placeId, window, everyMs) =>
      sampled.all({ ...windowOf(placeId, window), everyMs }).map(readingOf),
    doubted: async (placeId, window) => doubted.all(windowOf(placeId, window)).map(readingOf),
    standings: async (placeId) => standings.all(numbers.ofPlace(placeId) ?? -1),
    hourly: async (placeId, window) => hourly.all(windowOf(placeId, window)),
    earliestMs: async (placeId) => earliest.get(numbers.ofPlace(placeId) ?? -1) ?? undefined,
    latest: async (placeId) => latest.all(numbers.ofPlace(placeId) ?? -1).map(readingOf),
    places: async () => places.all(),
    clear: (placeId) =>
      group.write(() => {
        const place = numbers.ofPlace(placeId);
        for (const statement of clearing) statement.run(place ?? -1);
      }),
  };
}

function readingOf({ sensorId, timeMs, temperatureC, humidityPct, doubt }: ReadingRow): StoredReading {
  const reading: StoredReading = { sensorId, timeMs, temperatureC };
  if (humidityPct !== null) reading.humidityPct = humidityPct;
  if (doubt !== null) reading.doubt = doubt;
  return reading;
}
