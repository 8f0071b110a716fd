/** A file of every earlier schema opens with everything that was in it. */
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import Database from 'better-sqlite3';
import { afterEach, beforeEach, expect, it } from 'vitest';
import { migrate, newestSchema } from '../../services/store/migrations.ts';
import { openStore } from '../../services/store/sqlite.ts';

let folder: string;
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'glasstide-upgrade-'));
});
afterEach(() => rmSync(folder, { recursive: true }));

const atMs = Date.parse('2026-05-13T12:00:00Z');
const place = {
  id: 'lean-to',
  name: 'Lean-to',
  kind: 'glasshouse',
  areaM2: 11,
  latitudeDeg: 49.5,
  longitudeDeg: 8.5,
  timeZone: 'Europe/Berlin',
  pests: [],
  limits: {},
  seasonEnd: '10-15',
};

/** A house as the first glasstide wrote it: its tables are in every later schema. */
function writeHouse(db: Database.Database): void {
  db.prepare(`
    insert into record (kind, place, id, version, changedAtMs, deleted, data)
    values ('place', 'lean-to', 'lean-to', 1, ?, 0, ?)`).run(atMs, JSON.stringify(place));
  db.exec("insert into placeNumber values (1, 'lean-to'); insert into sensorNumber values (1, 1, 'bench')");
  const reading = db.prepare('insert into reading values (1, 1, ?, ?, 60, null)');
  for (let minute = 0; minute < 90; minute++) reading.run(atMs + minute * 60_000, 18 + minute / 60);
  db.prepare('insert into hour values (1, 1, ?, 60, 18.5, 18, 19, 0)').run(atMs);
  db.prepare(`
    insert into quarantine (place, topic, payload, payloadBytes, retained, arrivedMs, code, reason)
    values ('lean-to', 't', ?, 4, 0, ?, 'payload-unreadable', 'No number in it.')`).run(
    Buffer.from('warm'),
    atMs,
  );
  db.prepare("insert into arrival values ('lean-to', 1, 't', ?, 'warm', 'Not used.')").run(atMs);
}

const schemas = Array.from({ length: newestSchema }, (_, index) => index + 1);

it.each(schemas)('schema %i', async (schema) => {
  const path = join(folder, 'glasstide.sqlite');
  const old = new Database(path);
  migrate(old, schema);
  expect(old.pragma('user_version', { simple: true })).toBe(schema);
  writeHouse(old);
  old.close();

  const store = openStore({ path });
  expect(store.records.places().map(({ data }) => data)).toEqual([place]);
  const readings = await store.readings.range('lean-to', { fromMs: 0, toMs: 4e12 });
  expect(readings).toHaveLength(90);
  expect(readings[30]).toEqual({
    sensorId: 'bench',
    timeMs: atMs + 30 * 60_000,
    temperatureC: 18.5,
    humidityPct: 60,
  });
  expect(store.quarantine.list()).toMatchObject([{ code: 'payload-unreadable', payloadBytes: 4 }]);
  expect(store.arrivals.list('lean-to')).toMatchObject([{ payloadStart: 'warm' }]);
  expect(
    await store.readings.add('lean-to', [{ sensorId: 'bench', timeMs: atMs, temperatureC: 18 }]),
  ).toMatchObject({
    duplicates: 1,
  });
  await store.close();
  const upgraded = new Database(path, { readonly: true });
  expect(upgraded.pragma('user_version', { simple: true })).toBe(newestSchema);
  upgraded.close();
});
