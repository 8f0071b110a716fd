/** The command that carries readings to InfluxDB and back, as a person runs it. */
import { execFile } from 'node:child_process';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { promisify } from 'node:util';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { openInfluxStore, openStore } from '../../services/store/sqlite.ts';
import type { StoredReading } from '../../services/store/store.ts';
import { type InfluxTestServer, startInflux } from './influxServer.ts';

let server: InfluxTestServer;
let data: string;
beforeAll(async () => {
  data = mkdtempSync(join(tmpdir(), 'glasstide-move-'));
  server = await startInflux();
});
afterAll(async () => {
  await server.close();
  rmSync(data, { recursive: true });
});

const always = { fromMs: 0, toMs: Number.MAX_SAFE_INTEGER };
const noon = Date.parse('2026-05-13T12:00:00Z');
const run = (...args: string[]) =>
  promisify(execFile)('npm', ['run', '-s', 'readings', '--', '--influx', server.url('moved'), ...args]);

/** Half a year of quarter hours of two sensors, a doubted one at each end, so that no hour shows where they begin. */
const readings: StoredReading[] = Array.from({ length: 180 * 96 }, (_, i): StoredReading => {
  const ends = i === 0 || i === 180 * 96 - 1 ? { doubt: 'spike' } : {};
  const timeMs = noon + 900_000 * i + (i === 0 ? -86_400_000 : 0);
  return {
    sensorId: i % 2 ? 'bench' : 'door',
    timeMs,
    temperatureC: (i % 300) / 10,
    humidityPct: i % 100,
    ...ends,
  };
});

it('carries everything there, is content with a second time, and carries it back into an empty file', async () => {
  const path = join(data, 'glasstide.sqlite');
  const embedded = openStore({ path });
  await embedded.readings.add('lean-to', readings);
  await embedded.readings.add('north', readings.slice(0, 10));
  const hours = await embedded.readings.hourly('lean-to', always);
  await embedded.close();

  const there = await run('--data', data, '--to', 'influx');
  expect(there.stdout).toBe(
    `lean-to: ${readings.length} readings, 0 of them there before, 0 different\n` +
      'north: 10 readings, 0 of them there before, 0 different\n',
  );
  const again = await run('--data', data, '--to', 'influx');
  expect(again.stdout).toContain(
    `${readings.length} readings, ${readings.length} of them there before, 0 different`,
  );

  const emptied = openStore({ path });
  await emptied.readings.clear('lean-to');
  await emptied.readings.clear('north');
  expect(await emptied.readings.places()).toEqual([]);
  await emptied.close();
  await run('--data', data, '--to', 'embedded');
  const back = openStore({ path });
  expect(await back.readings.range('lean-to', always)).toEqual(readings);
  expect(await back.readings.hourly('lean-to', always)).toEqual(hours);
  await back.close();
});

it('tells of values that differ there and leaves both as they are', async () => {
  const path = join(data, 'glasstide.sqlite');
  const other = openInfluxStore({ path: ':memory:', url: server.url('moved') });
  await other.readings.add('west', [{ sensorId: 'bench', timeMs: noon, temperatureC: 9 }]);
  await other.readings.emptied();
  await other.close();
  const embedded = openStore({ path });
  await embedded.readings.add('west', [{ sensorId: 'bench', timeMs: noon, temperatureC: 8 }]);
  await embedded.close();
  const told = run('--data', data, '--to', 'influx');
  await expect(told).rejects.toMatchObject({
    code: 1,
    stdout: expect.stringContaining('west: 1 readings, 1 of them there before, 1 different'),
  });
});

it('says what to do when the server is away or the folder is wrong', async () => {
  await server.kill();
  await expect(run('--data', data, '--to', 'influx')).rejects.toMatchObject({
    stderr: expect.stringMatching(/InfluxDB server at .* does not answer/),
  });
  await server.start();
  await expect(run('--data', join(data, 'none'), '--to', 'influx')).rejects.toMatchObject({
    stderr: expect.stringContaining('name the folder of the database with --data'),
  });
  await expect(run('--data', data)).rejects.toMatchObject({
    stderr: expect.stringContaining('--to embedded'),
  });
});
