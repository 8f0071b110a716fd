/** What was acknowledged is on disk, also when the process ends without a word at that moment. */
import { type ChildProcess, spawn } from 'node:child_process';
import { once } from 'node:events';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { openStore } from '../../services/store/sqlite.ts';
import { boardMemory, connectBoard, placeId, startMs } from '../ingest/station.ts';

let folder: string;
const houses: ChildProcess[] = [];

beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'glasstide-'));
});
afterEach(() => {
  for (const house of houses.splice(0)) house.kill('SIGKILL');
  rmSync(folder, { recursive: true });
});

async function startHouse({
  port = 0,
  diskMs = 0,
  laterMs = 0,
  end = '',
}): Promise<{ house: ChildProcess; port: number }> {
  const args = [
    '--import',
    'tsx',
    'tests/broker/house.ts',
    join(folder, 'house.db'),
    String(port),
    String(diskMs),
    String(laterMs),
    end,
  ];
  const house = spawn(process.execPath, args, { stdio: ['ignore', 'pipe', 'inherit'] });
  houses.push(house);
  const [line] = await once(house.stdout!, 'data');
  return { house, port: Number(line) };
}

async function storedTimes(): Promise<number[]> {
  const store = openStore({ path: join(folder, 'house.db') });
  const readings = await store.readings.range(placeId, { fromMs: 0, toMs: 4e12 });
  await store.close();
  return readings.map(({ timeMs }) => timeMs);
}

const messages = Array.from({ length: 301 }, (_, i) => {
  const timeMs = startMs - i * 60_000;
  return { timeMs, payload: JSON.stringify({ temperatureC: 12 + (i % 17) / 3, time: timeMs }) };
});

describe('kill -9 at the first acknowledgement', () => {
  it('loses nothing that was acknowledged, and what is sent again counts once', async () => {
    const first = await startHouse({ diskMs: 30 });
    const board = await connectBoard(first.port, { clientId: 'bench', clean: false });
    const acknowledged: number[] = [];
    const ended = once(first.house, 'exit');
    const all = messages.map(async ({ timeMs, payload }) => {
      await board.publishAsync(`glasstide/${placeId}/readings/bench`, payload, { qos: 1 });
      acknowledged.push(timeMs);
      if (acknowledged.length === 1) first.house.kill('SIGKILL');
    });
    expect(await ended).toEqual([null, 'SIGKILL']);

    const onDisk = new Set(await storedTimes());
    const acknowledgedThen = [...acknowledged];
    expect(acknowledgedThen.length).toBeGreaterThan(0);
    expect(acknowledgedThen.filter((timeMs) => !onDisk.has(timeMs))).toEqual([]);

    // The board never learnt of the others, so it sends them again to the house that comes back.
    await startHouse({ port: first.port });
    await Promise.all(all);
    await board.endAsync();
    expect(await storedTimes()).toEqual(messages.map(({ timeMs }) => timeMs).sort((a, b) => a - b));
  });
});

describe('kill -9 between the commit and its acknowledgement', () => {
  it('stores a reading without a time of its own once, though it is sent again later', async () => {
    const first = await startHouse({ end: 'at-commit' });
    const options = { clientId: 'bench', clean: false, outgoingStore: boardMemory() };
    const board = await connectBoard(first.port, options);
    const ended = once(first.house, 'exit');
    const acknowledged = board.publishAsync(`glasstide/${placeId}/readings/bench`, '19.4', { qos: 1 });
    expect(await ended).toEqual([null, 'SIGKILL']);
    expect(await storedTimes()).toEqual([startMs]);

    await startHouse({ port: first.port, laterMs: 60_000 });
    await acknowledged;
    expect(await storedTimes()).toEqual([startMs]);
    // A new reading that says the same is another one.
    await board.publishAsync(`glasstide/${placeId}/readings/bench`, '19.4', { qos: 1 });
    expect(await storedTimes()).toEqual([startMs, startMs + 60_000]);
    await board.endAsync();
  });
});
