/** What else goes wrong in a shed: a file that is locked or damaged, a clock that jumps, a server that is not there. */
import { type ChildProcess, spawn } from 'node:child_process';
import { once } from 'node:events';
import { copyFileSync, mkdtempSync, openSync, readFileSync, rmSync, statSync, writeSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import Database from 'better-sqlite3';
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { type Service, start } from '../../services/main.ts';
import { openStore } from '../../services/store/sqlite.ts';
import { connectBoard, openHouse, openStation, placeId, publish, startMs } from '../ingest/station.ts';
import { startInflux } from '../store/influxServer.ts';

const bench = `glasstide/${placeId}/readings/bench`;
const always = { fromMs: 0, toMs: 4e12 };
let folder: string;
let path: string;
const closers: (() => unknown)[] = [];
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'glasstide-wrongs-'));
  path = join(folder, 'glasstide.sqlite');
});
afterEach(async () => {
  for (const close of closers.splice(0).reverse()) await close();
  rmSync(folder, { recursive: true });
});

describe('a database that another program has locked', () => {
  it('costs time and no reading: nothing is acknowledged until it is stored', async () => {
    const args = ['--import', 'tsx', 'tests/broker/house.ts', path];
    const house: ChildProcess = spawn(process.execPath, args, { stdio: ['ignore', 'pipe', 'inherit'] });
    closers.push(() => house.kill('SIGKILL'));
    const [port] = await once(house.stdout!, 'data');
    const board = await connectBoard(Number(port), { clientId: 'bench', clean: false });
    closers.push(() => board.endAsync(true));
    const other = new Database(path);
    closers.push(() => other.close());
    other.exec('begin immediate');
    const sendings: string[] = [];
    const sent = publish(board, bench, '{"temperatureC": 19.4, "time": "2026-05-13T06:09:00Z"}').then(() =>
      sendings.push('acknowledged'),
    );
    // The store gives up after five seconds, and the broker ends the connection instead of an acknowledgement.
    await new Promise<void>((resolve) => board.once('close', () => resolve()));
    expect(sendings).toEqual([]);
    other.exec('rollback');
    await sent;
    const looker = openStore({ path });
    closers.push(() => looker.close());
    expect(await looker.readings.range(placeId, always)).toMatchObject([{ temperatureC: 19.4 }]);
    expect(looker.quarantine.list()).toEqual([]);
  });
});

describe('a damaged database', () => {
  /** Overwrites a page in the middle, as a dying card does. */
  async function spoil(): Promise<void> {
    const store = openHouse(path);
    const readings = Array.from({ length: 5000 }, (_, i) => {
      return { sensorId: 'bench', timeMs: startMs + i * 1000, temperatureC: (i % 300) / 10 };
    });
    await store.readings.add(placeId, readings);
    await store.close();
    const file = openSync(path, 'r+');
    writeSync(file, Buffer.alloc(8192, 0xa5), 0, 8192, Math.floor(statSync(path).size / 8192) * 4096);
  }

  it('is not opened: the refusal says what to do, and the file stays as it is', async () => {
    await spoil();
    copyFileSync(path, `${path}.before`);
    const config = { dataDir: folder, httpHost: '127.0.0.1', httpPort: 0, mqtt: { embeddedPort: 0 } };
    const starting = start({ ...config, demo: false, log: 'silent' }, { nowMs: () => startMs });
    await expect(starting).rejects.toThrow(/glasstide\.sqlite is damaged .*Nothing was changed.*Put a copy/);
    expect(readFileSync(path).equals(readFileSync(`${path}.before`))).toBe(true);
  });
});

describe('a clock that jumps', () => {
  it('a day back and ten years on loses and doubles nothing', async () => {
    const station = await openStation();
    closers.push(() => station.close());
    const dayMs = 24 * 3_600_000;
    const jumps = [0, -dayMs, 3650 * dayMs, 1000];
    for (const [i, jump] of jumps.entries()) {
      station.time.nowMs = startMs + jump;
      await station.publish(bench, String(19 + i / 10));
      const timed = { temperatureC: 15 + i / 10, time: startMs - (1 + i) * 60_000 };
      await station.publish(`glasstide/${placeId}/readings/vent`, JSON.stringify(timed));
    }
    const readings = await station.readings();
    const untimed = readings.filter(({ sensorId }) => sensorId === 'bench');
    expect(untimed.map(({ timeMs }) => timeMs)).toEqual(
      [...jumps].sort((a, b) => a - b).map((jump) => startMs + jump),
    );
    // By a clock that is a day slow, the board's own time lies ahead: kept, and told.
    expect(station.quarantine().map(({ code }) => code)).toEqual(['time-implausible']);
    const timed = readings.filter(({ sensorId }) => sensorId === 'vent');
    expect(timed.map(({ temperatureC }) => temperatureC).sort()).toEqual([15, 15.2, 15.3]);
    station.time.nowMs = startMs;
    expect(await station.ingest.reread(station.quarantine().map(({ id }) => id))).toMatchObject({
      stillRefused: 1,
    });
  });
});

describe('a service whose InfluxDB server is not there', () => {
  it('starts, takes readings, says what is wrong, and shows them when the server comes', async () => {
    await openHouse(path).close();
    const influx = await startInflux();
    closers.push(() => influx.close());
    await influx.kill();
    const service: Service = await start(
      {
        dataDir: folder,
        httpHost: '127.0.0.1',
        httpPort: 0,
        mqtt: { embeddedPort: 0 },
        influxUrl: influx.url('late'),
        demo: false,
        log: 'silent',
      },
      { nowMs: () => startMs },
    );
    closers.push(() => service.close());
    const board = await connectBoard(service.mqttPort!);
    closers.push(() => board.endAsync(true));
    await publish(board, bench, '{"temperatureC": 19.4, "time": "2026-05-13T06:09:00Z"}');
    const ask = async (route: string) => {
      const answer = await fetch(`http://127.0.0.1:${service.httpPort}/api${route}`);
      return { status: answer.status, body: await answer.json() };
    };
    const day = `/places/${placeId}/readings?from=2026-05-13T00:00:00Z&to=2026-05-14T00:00:00Z&resolution=raw`;
    const ofServer = async (): Promise<string[]> =>
      (await ask('/health')).body.reasons.filter((reason: string) =>
        reason.startsWith('The InfluxDB server'),
      );
    expect(await ofServer()).toEqual([expect.stringContaining('1 reading waits here')]);
    expect(await ask(day)).toMatchObject({
      status: 500,
      body: { reason: expect.stringContaining('InfluxDB') },
    });

    await influx.start();
    await vi.waitFor(async () => expect(await ask(day)).toMatchObject({ status: 200 }), { timeout: 30_000 });
    expect(await ask(day)).toMatchObject({ body: { readings: [{ temperatureC: 19.4 }] } });
    await vi.waitFor(async () => expect(await ofServer()).toEqual([]), { timeout: 30_000 });
  });
});
