import {
  existsSync,
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  rmSync,
  writeFileSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { Readable } from 'node:stream';
import Database from 'better-sqlite3';
import { beforeEach, describe, expect, test } from 'vitest';
import { createBackups } from '../../services/backup/backups.ts';
import { run as backup } from '../../services/commands/backup.ts';
import { run as exportAll } from '../../services/commands/export.ts';
import { run as passphrase } from '../../services/commands/passphrase.ts';
import { run as restore } from '../../services/commands/restore.ts';
import { settingsFrom } from '../../services/config.ts';
import { files } from '../../services/forecasting/files.ts';
import { seasonSchema } from '../../services/model/index.ts';
import { copyDatabase } from '../../services/store/copies.ts';
import { openStore } from '../../services/store/sqlite.ts';
import type { Store } from '../../services/store/store.ts';
import { smallSeason } from '../fixtures/smallSeason.ts';

const placeId = 'crooked-pane';
const atMs = Date.parse('2026-05-18T08:00:00Z');
let folder: string;
let said: string[];
const at = (...parts: string[]) => join(folder, ...parts);
const config = (dataDir = at('data')) => settingsFrom({ GLASSTIDE_DATA: dataDir }).config;
const output = {
  result: (text: string) => void said.push(text),
  progress: (text: string) => void said.push(text),
};
const open = (dataDir = at('data')) => openStore({ path: join(dataDir, 'glasstide.sqlite') });

beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'glasstide-backup-'));
  said = [];
  return () => rmSync(folder, { recursive: true });
});

async function full(): Promise<Store> {
  const store = open();
  await files.import(store, smallSeason(), { replace: false, atMs });
  return store;
}
async function textOf(parts: AsyncIterable<string>): Promise<string> {
  let text = '';
  for await (const part of parts) text += part;
  return text;
}

describe('a copy', () => {
  test('made while the service writes is whole, restored into an empty folder, and gives the same season', async () => {
    const store = await full();
    const before = await textOf(files.text(store, placeId));
    expect(await backup([at('copies', 'one.sqlite')], config(), output)).toBe(0);
    await store.readings.add(placeId, [{ sensorId: 'bench', timeMs: atMs + 1, temperatureC: 40 }]);
    expect(await restore([at('copies', 'one.sqlite')], config(at('new')), output)).toBe(0);
    const restored = open(at('new'));
    expect(await textOf(files.text(restored, placeId))).toBe(before);
    expect(before).not.toContain('"temperatureC":40');
    await restored.close();
    await store.close();
    expect(readdirSync(at('copies'))).toEqual(['one.sqlite']);
  });

  test('keeps the lock and the people, so that a thief of the copy has no secret and the owner is let in', async () => {
    const store = await full();
    await store.close();
    expect(
      await passphrase(
        Readable.from(['copper kettle under snow\n']),
        config(),
        { nowMs: () => atMs },
        output,
      ),
    ).toBe(0);
    await backup([at('one.sqlite')], config(), output);
    expect(readFileSync(at('one.sqlite')).includes('copper kettle')).toBe(false);
    await restore([at('one.sqlite')], config(at('new')), output);
    const restored = open(at('new'));
    expect(restored.credentials.passphraseHash()).toMatch(/^scrypt\$/);
    await restored.close();
  });

  test('goes over no file that is there', async () => {
    await (await full()).close();
    writeFileSync(at('one.sqlite'), 'mine');
    expect(await backup([at('one.sqlite')], config(), output)).toBe(2);
    expect(said.join()).toMatch(/is there already/);
    expect(readFileSync(at('one.sqlite'), 'utf8')).toBe('mine');
  });

  test('of no database is refused, and none is made', async () => {
    expect(await backup([at('one.sqlite')], config(), output)).toBe(2);
    expect(said.join()).toMatch(/no database at .*GLASSTIDE_DATA/);
    expect(existsSync(at('data'))).toBe(false);
  });

  test.each([[[]], [['a', 'b']], [['--help']]])('called with %j says how it is called', async (args) => {
    expect(await backup(args, config(), output)).toBe(2);
    expect(said.join()).toMatch(/^Usage: npm run -s backup -- FILE/);
  });
});

describe('restoring', () => {
  test('goes over no database', async () => {
    const store = await full();
    await backup([at('one.sqlite')], config(), output);
    await store.close();
    const before = readFileSync(at('data', 'glasstide.sqlite'));
    expect(await restore([at('one.sqlite')], config(), output)).toBe(2);
    expect(said.at(-1)).toMatch(/is there already, and nothing was changed/);
    expect(readFileSync(at('data', 'glasstide.sqlite')).equals(before)).toBe(true);
  });

  test('refuses what is no database, a broken one, one of somebody else, and one of a newer glasstide', async () => {
    await (await full()).close();
    await backup([at('whole.sqlite')], config(), output);
    const whole = readFileSync(at('whole.sqlite'));
    writeFileSync(at('text.sqlite'), 'a shopping list, long enough to be a header of something.'.repeat(100));
    writeFileSync(at('half.sqlite'), whole.subarray(0, Math.floor(whole.length / 2)));
    const spoiled = Buffer.from(whole);
    spoiled.fill(0xaa, 4096 * 3, 4096 * 6);
    writeFileSync(at('spoiled.sqlite'), spoiled);
    const other = new Database(at('other.sqlite'));
    other.exec('create table song (name text)');
    other.close();
    writeFileSync(at('newer.sqlite'), whole);
    const newer = new Database(at('newer.sqlite'));
    newer.pragma('user_version = 99');
    newer.close();
    for (const name of ['text', 'half', 'spoiled', 'other', 'newer', 'missing']) {
      expect(await restore([at(`${name}.sqlite`)], config(at('new')), output), name).toBe(2);
    }
    expect(said.slice(-6)).toEqual([
      ...['text', 'half', 'spoiled', 'other'].map((name) =>
        expect.stringMatching(new RegExp(`${name}\\.sqlite is not a whole copy of a glasstide database`)),
      ),
      expect.stringMatching(/A newer glasstide wrote .*newer\.sqlite \(schema 99/),
      expect.stringMatching(/no file .*missing\.sqlite/),
    ]);
    expect(existsSync(at('new'))).toBe(false);
  });
});

describe('everything in open forms', () => {
  test('is a season file that is valid, and the readings as CSV', async () => {
    const store = await full();
    await store.readings.mark(placeId, [
      {
        sensorId: 'bench',
        timeMs: (await store.readings.latest(placeId))[0]!.timeMs,
        doubt: 'a "jump", by much',
      },
    ]);
    const readings = await store.readings.range(placeId, { fromMs: 0, toMs: atMs * 2 });
    await store.close();
    expect(await exportAll([at('out')], config(), output)).toBe(0);
    expect(readdirSync(at('out')).sort()).toEqual([`${placeId}.readings.csv`, `${placeId}.season.json`]);
    const season = seasonSchema.parse(JSON.parse(readFileSync(at('out', `${placeId}.season.json`), 'utf8')));
    expect(season.readings).toHaveLength(readings.length);
    // RFC 4180, section 2: lines end in CRLF (rule 1), quotes around commas and quotes (6), quotes doubled (7).
    const [head, ...lines] = readFileSync(at('out', `${placeId}.readings.csv`), 'utf8').split('\r\n');
    expect(head).toBe('sensor,time,temperature_c,humidity_pct,doubt');
    expect(lines.pop()).toBe('');
    expect(lines).toHaveLength(readings.length);
    const [first] = readings;
    expect(lines[0]).toBe(
      `${first?.sensorId},${new Date(first?.timeMs ?? 0).toISOString()},${first?.temperatureC},${first?.humidityPct ?? ''},`,
    );
    expect(lines.filter((line) => line.includes('jump'))).toEqual([
      expect.stringMatching(/,"a ""jump"", by much"$/),
    ]);
  });
});

describe('the daily copy', () => {
  const clock = { ms: atMs, nowMs: () => clock.ms };
  beforeEach(() => {
    clock.ms = atMs;
  });
  const daily = (copyTo = (path: string) => copyDatabase(at('data', 'glasstide.sqlite'), path)) =>
    createBackups({ folder: at('daily'), clock, copyTo });

  test('is made once a day, and old ones go', async () => {
    const store = await full();
    const backups = daily();
    for (let day = 0; day < 20; day += 1) {
      await backups.run();
      await backups.run();
      clock.ms += 86_400_000;
    }
    await store.close();
    const names = readdirSync(at('daily'));
    expect(names).toContain('glasstide-2026-06-06.sqlite');
    expect(names).not.toContain('glasstide-2026-05-19.sqlite');
    expect(backups.state()).toMatchObject({ copies: names.length, lastBytes: expect.any(Number) });
  });

  test('is made at the start when the machine was off', async () => {
    const store = await full();
    await daily().runIfDue();
    expect(daily().state().copies).toBe(1);
    clock.ms += 86_400_000;
    await daily().runIfDue();
    expect(daily().state().copies).toBe(1);
    clock.ms += 2 * 86_400_000;
    await daily().runIfDue();
    expect(daily().state().copies).toBe(2);
    await store.close();
  });

  test('that cannot be made says so, keeps the earlier ones, and says no more once one is made', async () => {
    const store = await full();
    await daily().run();
    clock.ms += 86_400_000;
    let full_ = true;
    const backups = daily((path) =>
      full_
        ? Promise.reject(new Error('no space left on device'))
        : copyDatabase(at('data', 'glasstide.sqlite'), path),
    );
    await backups.run();
    expect(backups.state()).toMatchObject({
      copies: 1,
      trouble: expect.stringMatching(/no space left on device/),
    });
    full_ = false;
    await backups.run();
    expect(backups.state()).toMatchObject({ copies: 2 });
    expect(backups.state()).not.toHaveProperty('trouble');
    await store.close();
  });

  test('into a folder that is a file is a trouble, not an end', async () => {
    mkdirSync(at('data'));
    writeFileSync(at('daily'), '');
    const backups = daily();
    await backups.run();
    expect(backups.state().trouble).toMatch(/was not made/);
  });
});

describe('the passphrase command', () => {
  const clock = { nowMs: () => atMs };
  test('locks the house, and opens it to nobody when it is called again', async () => {
    expect(await passphrase(Readable.from(['short\n']), config(), clock, output)).toBe(2);
    expect(said.at(-1)).toMatch(/at least 12 characters/);
    expect(await passphrase(Readable.from([]), config(), clock, output)).toBe(2);
    expect(await passphrase(Readable.from(['copper kettle under snow\n']), config(), clock, output)).toBe(0);
    expect(said.at(-1)).toMatch(/The house is locked/);
    expect(await passphrase(Readable.from(['another kettle under snow\n']), config(), clock, output)).toBe(0);
    expect(said.at(-1)).toMatch(/The passphrase is changed/);
    expect(said.join()).not.toContain('kettle');
  });
});
