/** Copies of a house whose readings live on an InfluxDB server, a real one. */
import { mkdtempSync, readdirSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, expect, it } from 'vitest';
import { copyInOwnProcess } from '../../services/backup/ownProcess.ts';
import { run as backup } from '../../services/commands/backup.ts';
import { run as restore } from '../../services/commands/restore.ts';
import { settingsFrom } from '../../services/config.ts';
import { files } from '../../services/forecasting/files.ts';
import { openInfluxStore, openStore } from '../../services/store/sqlite.ts';
import type { StoredReading } from '../../services/store/store.ts';
import { smallSeason } from '../fixtures/smallSeason.ts';
import { type InfluxTestServer, startInflux } from '../store/influxServer.ts';

const placeId = 'crooked-pane';
const atMs = Date.parse('2026-05-18T08:00:00Z');
const always = { fromMs: 0, toMs: Number.MAX_SAFE_INTEGER };
let folder: string;
let server: InfluxTestServer;
let said: string[];
const at = (...parts: string[]) => join(folder, ...parts);
const output = {
  result: (text: string) => void said.push(text),
  progress: (text: string) => void said.push(text),
};
const url = () => server.url('copied');
const house = () => settingsFrom({ GLASSTIDE_DATA: at('data'), GLASSTIDE_INFLUX_URL: url() }).config;
const open = () => openInfluxStore({ path: at('data', 'glasstide.sqlite'), url: url(), tryAgainMs: 20 });

beforeEach(async () => {
  folder = mkdtempSync(join(tmpdir(), 'glasstide-backup-influx-'));
  said = [];
  server = await startInflux();
});
afterEach(async () => {
  await server.close();
  rmSync(folder, { recursive: true });
});

/** Three months of hours after the small season, some of them doubted. */
const later: StoredReading[] = Array.from({ length: 90 * 24 }, (_, i): StoredReading => {
  const doubt = i % 500 === 0 ? { doubt: 'spike' } : {};
  return {
    sensorId: 'bench',
    timeMs: atMs + i * 3_600_000,
    temperatureC: 15 + (i % 70) / 10,
    humidityPct: i % 100,
    ...doubt,
  };
});

async function textOf(parts: AsyncIterable<string>): Promise<string> {
  let text = '';
  for await (const part of parts) text += part;
  return text;
}

/** What a place says of itself after a copy was restored into a house without a server. */
async function restored(copy: string) {
  expect(await restore([copy], settingsFrom({ GLASSTIDE_DATA: at('new') }).config, output)).toBe(0);
  const store = openStore({ path: at('new', 'glasstide.sqlite') });
  const content = {
    season: await textOf(files.text(store, placeId)),
    readings: await store.readings.range(placeId, always),
    hours: await store.readings.hourly(placeId, always),
    places: await store.readings.places(),
  };
  await store.close();
  return content;
}

it('hold records and readings, restored into a house that keeps both in its file', async () => {
  // From before there was a server: the command that carried them there left them in the file.
  const before = openStore({ path: at('data', 'glasstide.sqlite') });
  await before.readings.add('given-up', [{ sensorId: 'bench', timeMs: atMs, temperatureC: 20 }]);
  await before.close();
  const store = open();
  await files.import(store, smallSeason(), { replace: false, atMs });
  await store.readings.add(placeId, later);
  await store.readings.emptied();
  const [season, readings] = [
    await textOf(files.text(store, placeId)),
    await store.readings.range(placeId, always),
  ];
  const hours = await store.readings.hourly(placeId, always);
  // While the service runs, as each night.
  await copyInOwnProcess({ dataDir: at('data'), influxUrl: url() })(at('copies', 'night.sqlite'));
  await store.close();
  expect(readdirSync(at('copies'))).toEqual(['night.sqlite']);
  expect(await restored(at('copies', 'night.sqlite'))).toEqual({
    season,
    readings,
    hours,
    places: [placeId],
  });
  expect(readings.length).toBeGreaterThan(later.length);
});

it('are not made without the server, and with it hold what waited meanwhile', async () => {
  const store = open();
  await files.import(store, smallSeason(), { replace: false, atMs });
  await store.readings.emptied();
  await server.kill();
  await store.readings.add(placeId, later.slice(0, 5));
  await store.close();
  expect(await backup([at('copies', 'one.sqlite')], house(), output)).toBe(2);
  expect(said.at(-1)).toMatch(/^The InfluxDB server at .* does not answer/);
  expect(readdirSync(at('copies'))).toEqual([]);
  await server.start();
  expect(await backup([at('copies', 'one.sqlite')], house(), output)).toBe(0);
  const { readings } = await restored(at('copies', 'one.sqlite'));
  expect(readings).toEqual(expect.arrayContaining(later.slice(0, 5)));
});
