import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { setImmediate as nextTick } from 'node:timers/promises';
import Database from 'better-sqlite3';
import { afterAll, describe, expect, it } from 'vitest';
import { openStore } from '../../services/store/sqlite.ts';
import type { Store, StoredReading } from '../../services/store/store.ts';
import { credentialsContract } from '../contracts/credentialsContract.ts';
import { readingsContract } from '../contracts/readingsContract.ts';
import { storeContract } from '../contracts/storeContract.ts';
import { tellingContract } from '../contracts/tellingContract.ts';

const folders: string[] = [];
const newFile = () => {
  const folder = mkdtempSync(join(tmpdir(), 'glasstide-store-'));
  folders.push(folder);
  return join(folder, 'new', 'glasstide.sqlite');
};
afterAll(() => {
  for (const folder of folders) rmSync(folder, { recursive: true });
});

function openInFile() {
  const path = newFile();
  let store: Store = openStore({ path });
  const reopen = async () => {
    await store.close();
    store = openStore({ path });
    return store;
  };
  return { path, store, reopen, close: () => store.close() };
}

storeContract('in an SQLite file', async () => openInFile());
tellingContract('in an SQLite file', async () => openInFile());
credentialsContract('in an SQLite file', async () => openInFile());

readingsContract('an SQLite file', async () => {
  const { path, store, reopen, close } = openInFile();
  return {
    readings: store.readings,
    reopen: async () => (await reopen()).readings,
    close,
    endlessWriter: [process.execPath, '--import', 'tsx', 'tests/store/endlessWriter.ts', path],
  };
});

describe('the SQLite file', () => {
  it('is written through a log, so that readers never wait', () => {
    const path = newFile();
    const store = openStore({ path });
    const db = new Database(path, { readonly: true });
    expect(db.pragma('journal_mode', { simple: true })).toBe('wal');
    db.close();
    return store.close();
  });

  it('shows from the next tick what another process changed, and gives what it had read before no second life', async () => {
    const { path, store, close } = openInFile();
    const other = openStore({ path });
    const trap = (name: string) => ({ id: 'door', name, hungAt: '2026-05-01T08:00:00Z' });
    const key = { kind: 'trap', placeId: 'lean-to', id: 'door' } as const;
    const nameNow = () => store.records.get('trap', 'lean-to', 'door')?.data.name;
    const names = [nameNow()];
    for (const [atMs, writer] of [other, store, other].entries()) {
      writer.records.put({ ...key, data: trap(`name ${atMs}`), atMs });
      await nextTick();
      names.push(nameNow(), nameNow());
    }
    other.records.remove({ ...key, atMs: 9 });
    await nextTick();
    expect([...names, nameNow()]).toEqual([
      undefined,
      ...['name 0', 'name 0', 'name 1', 'name 1', 'name 2', 'name 2'],
      undefined,
    ]);
    await other.close();
    await close();
  });

  it('refuses a file of a newer glasstide and leaves it as it is', async () => {
    const { path, close } = openInFile();
    await close();
    const newer = new Database(path);
    newer.pragma('user_version = 99');
    newer.close();
    expect(() => openStore({ path })).toThrow(/newer glasstide wrote this data file \(schema 99/);
    const untouched = new Database(path, { readonly: true });
    expect(untouched.pragma('user_version', { simple: true })).toBe(99);
    untouched.close();
  });

  it('refuses a file that is no database', () => {
    const path = join(mkdtempSync(join(tmpdir(), 'glasstide-store-')), 'notes.txt');
    folders.push(join(path, '..'));
    writeFileSync(
      path,
      'Tomatoes: 4. Peppers: 2. This is a shopping list, and long enough to be a header.\n'.repeat(9),
    );
    expect(() => openStore({ path })).toThrow(/not a database/);
  });

  it('takes what is written while closing, and refuses what comes after', async () => {
    const { store, reopen } = openInFile();
    const reading: StoredReading = { sensorId: 'bench', timeMs: 1, temperatureC: 20 };
    const added = store.readings.add('p', [reading]);
    const again = await reopen();
    expect((await added).stored).toBe(1);
    expect(await again.readings.latest('p')).toEqual([reading]);
    await expect(store.readings.add('p', [reading])).rejects.toThrow(/not open/);
    await again.close();
  });
});

describe('group commit', () => {
  const good: StoredReading = { sensorId: 'bench', timeMs: 1000, temperatureC: 20 };
  const bad: StoredReading = { sensorId: 'new-one', timeMs: 2000, temperatureC: Number.NaN };

  it('commits the calls of one tick as one transaction', async () => {
    const path = newFile();
    const store = openStore({ path });
    const onlooker = new Database(path, { readonly: true });
    const rows = onlooker.prepare('select count(*) from reading').pluck();
    const adds = [1, 2, 3].map((second) => store.readings.add('p', [{ ...good, timeMs: second * 1000 }]));
    expect(rows.get()).toBe(0);
    await adds[0];
    expect(rows.get()).toBe(3);
    await Promise.all(adds);
    onlooker.close();
    await store.close();
  });

  it('commits the line of the page of arrivals together with its readings', async () => {
    const path = newFile();
    const store = openStore({ path });
    const onlooker = new Database(path, { readonly: true });
    const rows = onlooker.prepare('select (select count(*) from reading), (select count(*) from arrival)');
    const seen = new Set<string>();
    const line = { placeId: 'p', topic: 't', arrivedMs: 0, payloadStart: '20', readAs: '20 °C' };
    for (let second = 1; second <= 3; second++) {
      await store.readings.add('p', [{ ...good, timeMs: second * 1000 }], { arrival: () => line });
      seen.add(String(rows.raw().get()));
    }
    const lost = store.readings.add('p', [good], {
      arrival: () => {
        throw new Error('no room for the line');
      },
    });
    await expect(lost).rejects.toThrow('no room');
    seen.add(String(rows.raw().get()));
    expect([...seen]).toEqual(['1,1', '2,2', '3,3']);
    onlooker.close();
    await store.close();
  });

  it('lets a reading without a number take no other with it', async () => {
    const store = openStore({ path: ':memory:' });
    const [first, second, third] = await Promise.allSettled([
      store.readings.add('p', [good]),
      store.readings.add('p', [{ ...good, timeMs: 1500 }, bad]),
      store.readings.add('p', [{ ...bad, temperatureC: 21 }]),
    ]);
    expect([first?.status, second?.status, third?.status]).toEqual(['fulfilled', 'rejected', 'fulfilled']);
    const kept = await store.readings.range('p', { fromMs: 0, toMs: Number.POSITIVE_INFINITY });
    expect(kept).toEqual([good, { ...bad, temperatureC: 21 }]);
    await store.close();
  });
});

describe('quarantine over its cap', () => {
  it('lets the oldest settled go first, then the oldest waiting, and counts both', async () => {
    const store = openStore({ path: ':memory:' });
    const message = {
      topic: 't',
      payload: new Uint8Array(1),
      payloadBytes: 1,
      retained: false,
      arrivedMs: 0,
      code: 'payload-unreadable',
      reason: 'No number in it.',
    };
    await Promise.all(Array.from({ length: 10_000 }, () => store.quarantine.add(message)));
    store.quarantine.settle(5, 'dismissed');
    expect(store.quarantine.letGo()).toEqual({ settled: 0, waiting: 0 });
    await store.quarantine.add(message);
    expect(store.quarantine.get(5)).toBeUndefined();
    expect(store.quarantine.get(1)).toBeDefined();
    await store.quarantine.add(message);
    expect(store.quarantine.get(1)).toBeUndefined();
    expect(store.quarantine.letGo()).toEqual({ settled: 1, waiting: 1 });
    expect(store.quarantine.list()).toHaveLength(10_000);
    await store.close();
  });
});
