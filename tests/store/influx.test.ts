import { once } from 'node:events';
import { mkdtempSync, rmSync } from 'node:fs';
import { type AddressInfo, createServer } from 'node:net';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import { type Stretch, stretches } from '../../services/forecasting/stretches.ts';
import { openInfluxStore } from '../../services/store/sqlite.ts';
import type { StoredReading } from '../../services/store/store.ts';
import { readingsContract } from '../contracts/readingsContract.ts';
import { countAnswers } from './answerCounter.ts';
import { type InfluxTestServer, startInflux } from './influxServer.ts';

let server: InfluxTestServer;
let folder: string;
let databases = 0;
beforeAll(async () => {
  folder = mkdtempSync(join(tmpdir(), 'glasstide-store-'));
  server = await startInflux();
});
afterAll(async () => {
  await server.close();
  rmSync(folder, { recursive: true });
});

function openOnServer() {
  const name = `house${++databases}`;
  const options = { path: join(folder, `${name}.sqlite`), url: server.url(name), tryAgainMs: 10 };
  return { name, options, store: openInfluxStore(options) };
}

readingsContract('InfluxDB', async () => {
  const { options, store: first } = openOnServer();
  let store = first;
  return {
    readings: store.readings,
    async reopen() {
      await store.close();
      store = openInfluxStore(options);
      return store.readings;
    },
    close: () => store.close(),
    endlessWriter: [
      process.execPath,
      ...['--import', 'tsx', 'tests/store/endlessWriter.ts', options.path, options.url],
    ],
  };
});

const sum = (numbers: readonly number[]) => numbers.reduce((a, b) => a + b, 0);
const noon = Date.parse('2026-05-13T12:00:00Z');
const always = { fromMs: 0, toMs: Number.MAX_SAFE_INTEGER };
const reading = (minute: number, temperatureC: number, sensorId = 'bench'): StoredReading => ({
  sensorId,
  timeMs: noon + minute * 60_000,
  temperatureC,
});

describe('while the InfluxDB server is away', () => {
  beforeEach(() => server.kill());
  afterEach(() => server.start());

  it('takes an hour of readings of four sensors, says so, and brings them when it is back', async () => {
    const { store, name } = openOnServer();
    const hour = Array.from({ length: 60 }, (_, minute) =>
      ['bench', 'door', 'apex', 'vent'].map((sensor, i) => reading(minute, 10 + i + minute / 60, sensor)),
    );
    for (const minute of hour)
      expect(await store.readings.add('p', minute)).toEqual({ stored: 4, duplicates: 0, conflicts: [] });
    await expect(store.readings.range('p', always)).rejects.toThrow(
      /InfluxDB server at 127.*does not answer/,
    );
    expect(store.troubles()).toEqual([expect.stringMatching(/240 readings wait here on the disk/)]);

    await server.start();
    await store.readings.emptied();
    expect(store.troubles()).toEqual([]);
    const kept = await server.ask(name, 'select count(temperatureC) from reading');
    expect(kept).toContain(',240]');
    expect((await store.readings.hourly('p', always)).map(({ count }) => count)).toEqual([60, 60, 60, 60]);
    await store.close();
    await server.kill();
  });

  it('keeps what it acknowledged when its own process ends too', async () => {
    const { store, options } = openOnServer();
    await store.readings.add('p', [reading(0, 20)]);
    // Nothing is sent on closing: as after a power cut, only the file is left.
    await store.close();
    await server.start();
    const again = openInfluxStore(options);
    await again.readings.emptied();
    expect(await again.readings.range('p', always)).toEqual([reading(0, 20)]);
    await again.close();
    await server.kill();
  });

  it('counts a repetition once, also of what the server had before', async () => {
    await server.start();
    const { store } = openOnServer();
    await store.readings.add('p', [reading(0, 20)]);
    await store.readings.emptied();
    await server.kill();
    await store.readings.add('p', [reading(0, 20), reading(1, 21)]);
    await store.readings.add('p', [reading(0, 64.8), reading(1, 64.8)]);
    await server.start();
    await store.readings.emptied();
    expect(await store.readings.range('p', always)).toEqual([reading(0, 20), reading(1, 21)]);
    expect(await store.readings.hourly('p', always)).toMatchObject([{ count: 2, meanC: 20.5, maxC: 21 }]);
    await store.close();
    await server.kill();
  });

  it('says no to marks and deletions, which would otherwise be half done', async () => {
    const { store } = openOnServer();
    await store.readings.add('p', [reading(0, 20)]);
    await expect(store.readings.clear('p')).rejects.toThrow(/does not answer/);
    const mark = { sensorId: 'bench', timeMs: noon, doubt: 'spike' };
    await expect(store.readings.mark('p', [mark])).rejects.toThrow(/does not answer/);
    await server.start();
    await store.readings.emptied();
    expect(await store.readings.range('p', always)).toEqual([reading(0, 20)]);
    await store.close();
    await server.kill();
  });
});

describe('the InfluxDB server', () => {
  it('ended in mid-write has every acknowledged reading once when it is back', async () => {
    const { store, name } = openOnServer();
    const adding = Array.from({ length: 2000 }, async (_, i) => {
      await store.readings.add('p', [reading(i, i % 30)]);
      if (i === 700) await server.kill();
    });
    await Promise.all(adding);
    await server.start();
    await store.readings.emptied();
    const kept = await store.readings.range('p', always);
    expect(kept).toEqual(Array.from({ length: 2000 }, (_, i) => reading(i, i % 30)));
    expect(await server.ask(name, 'select count(temperatureC) from reading')).toContain(',2000]');
    const hours = await store.readings.hourly('p', always);
    expect(hours.reduce((sum, { count }) => sum + count, 0)).toBe(2000);
    await store.close();
  });

  it('gets the first of two values from whichever process, and hours that hold both their readings', async () => {
    const { options, store: one } = openOnServer();
    const two = openInfluxStore(options);
    const minutes = Array.from({ length: 300 }, (_, i) => i);
    await Promise.all(
      minutes.flatMap((minute) => [
        one.readings.add('p', [reading(minute, 20), reading(minute, 1, 'door')]),
        two.readings.add('p', [reading(minute, 64.8), reading(minute, 2, 'vent')]),
      ]),
    );
    await Promise.all([one.readings.emptied(), two.readings.emptied()]);
    const kept = await one.readings.range('p', always);
    expect(kept).toHaveLength(900);
    expect(await two.readings.range('p', always)).toEqual(kept);
    const meanOf = (sensorId: string, hourMs: number) => {
      const hour = kept.filter(
        (r) => r.sensorId === sensorId && Math.floor(r.timeMs / 3.6e6) * 3.6e6 === hourMs,
      );
      return hour.reduce((sum, { temperatureC }) => sum + temperatureC, 0) / hour.length;
    };
    const hours = await one.readings.hourly('p', always);
    expect(hours).toHaveLength(15);
    for (const hour of hours) {
      expect(hour.count).toBe(60);
      expect(hour.meanC).toBeCloseTo(meanOf(hour.sensorId, hour.hourMs), 9);
    }
    await one.close();
    await two.close();
  });

  it('is asked for no more than a week at once, and for what is not believed alone', async () => {
    const { store: first, name, options } = openOnServer();
    const year = Array.from({ length: 365 * 24 }, (_, hour) => ({
      ...reading(60 * hour, 10 + (hour % 24)),
      ...(hour % 1000 === 7 && { doubt: 'spike' }),
    }));
    await first.readings.add('p', year);
    await first.readings.emptied();
    await first.close();
    const counter = await countAnswers(server.url(''));
    const store = openInfluxStore({ ...options, url: `${counter.url}/${name}` });
    const bytesOf = async (ask: () => Promise<unknown>) => {
      counter.answers.length = 0;
      await ask();
      return counter.answers;
    };
    const all = sum(await bytesOf(() => store.readings.range('p', always)));
    const doubtful = year.filter((each) => 'doubt' in each);
    expect(await store.readings.doubted('p', always)).toEqual(doubtful);
    expect(sum(await bytesOf(() => store.readings.doubted('p', always)))).toBeLessThan(all / 100);
    const week = 7 * 86_400_000;
    const stretch = { fromMs: noon, toMs: noon + 365 * 86_400_000 };
    const parts: StoredReading[] = [];
    const answers = await bytesOf(async () => {
      const read = (part: Stretch) => store.readings.sampled('p', part, week);
      for await (const part of stretches(store.readings, 'p', stretch, read)) parts.push(...part);
    });
    expect(parts.length).toBe(new Set(year.map(({ timeMs }) => Math.floor(timeMs / week))).size);
    expect(Math.max(...answers)).toBeLessThan(all / 50);
    await store.close();
    await counter.close();
  });

  it('that will not have a reading leaves it here, shown and told, and takes the others', async () => {
    const { store, name } = openOnServer();
    await store.readings.add('p', [reading(0, 20)]);
    await store.readings.emptied();
    const nowMs = Date.now();
    await server.ask(name, `create retention policy "short" on "${name}" duration 2h replication 1 default`);
    const fresh: StoredReading = { sensorId: 'bench', timeMs: nowMs, temperatureC: 21 };
    await store.readings.add('p', [reading(1, 19), fresh, reading(2, 18)]);
    await store.readings.emptied();
    const shown = await store.readings.range('p', always);
    expect(shown.map(({ temperatureC }) => temperatureC).sort()).toEqual([18, 19, 21]);
    expect(store.troubles()).toEqual([expect.stringMatching(/will not have 2 readings.*retention policy/)]);
    await store.close();
  });

  it('that accepts a connection and says nothing does not hold up a reading for ever', async () => {
    const mute = createServer().listen(0, '127.0.0.1');
    await once(mute, 'listening');
    const { port } = mute.address() as AddressInfo;
    const store = openInfluxStore({ path: ':memory:', url: `http://127.0.0.1:${port}`, tryAgainMs: 10 });
    expect(await store.readings.add('p', [reading(0, 20)])).toMatchObject({ stored: 1 });
    expect(store.troubles()).toEqual([expect.stringMatching(/no answer within 2 s.*1 reading waits/)]);
    mute.close();
  });
});
