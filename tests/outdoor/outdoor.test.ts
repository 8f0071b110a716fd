/** When a forecast is fetched, and what becomes of one that is not to be had or not to be read. */
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { NotFetched } from '../../services/outdoor/get.ts';
import { createOutdoor } from '../../services/outdoor/outdoor.ts';
import { openStore } from '../../services/store/sqlite.ts';
import type { Store } from '../../services/store/store.ts';
import { aPlace } from '../api/house.ts';

const minute = 60_000;
const start = Date.parse('2026-05-13T06:10:00Z');
const clock = { ms: start, nowMs: () => clock.ms };
let store: Store;
let asked: number[];
let answer: () => string;
let told: string[];

const good = () =>
  JSON.stringify({
    time: [3, 6, 9].map((h) => new Date(clock.ms + h * 60 * minute).toISOString()),
    air: [9, 12, 15],
  });
const open = () =>
  createOutdoor({
    store,
    clock,
    onChange: (placeId, what) => told.push(`${placeId} ${what}`),
    get: async () => {
      asked.push((clock.ms - start) / minute);
      return answer();
    },
  });

beforeEach(() => {
  clock.ms = start;
  [asked, told, answer] = [[], [], good];
  store = openStore({ path: ':memory:' });
  store.records.put({ kind: 'place', placeId: 'lean-to', id: 'lean-to', data: aPlace, atMs: start });
  store.outdoor.keepSource('lean-to', {
    url: 'https://weather.example.org/air?key=secret',
    pointers: { time: '/time', temperature: '/air' },
    unit: 'Cel',
  });
});
afterEach(() => store.close());

async function live(room: ReturnType<typeof open>, minutes: number) {
  for (let i = 0; i < minutes; i += 1) {
    await room.tick();
    clock.ms += minute;
  }
}

describe('fetching', () => {
  it('happens at once and then every six hours, also after a new start', async () => {
    await live(open(), 400);
    await live(open(), 400);
    expect(asked).toEqual([0, 360, 720]);
    expect(store.outdoor.list('lean-to').at(-1)).toMatchObject({ temperatureC: 15 });
    expect(told).toEqual(['lean-to reading', 'lean-to reading', 'lean-to reading']);
  });

  it('is tried again sooner and sooner less after misses, which are told from the second on', async () => {
    const room = open();
    answer = () => {
      throw new NotFetched('It did not answer in time.');
    };
    await live(room, 5);
    expect(room.troubles()).toEqual([]);
    expect(room.troubleOf('lean-to')).toBe('It did not answer in time.');
    await live(room, 195);
    expect(asked).toEqual([0, 5, 35, 155]);
    expect(room.troubles()).toEqual(['No weather forecast for Lean-to: It did not answer in time.']);
    answer = good;
    await live(room, 80);
    expect(asked).toEqual([0, 5, 35, 155, 275]);
    expect(room.troubles()).toEqual([]);
  });

  it('keeps an answer that cannot be read, once, with its reason and without the key', async () => {
    const room = open();
    answer = () => '{"time": [], "warmth": []}';
    await live(room, 60);
    expect(asked).toEqual([0, 5, 35]);
    const kept = store.quarantine.list({ placeId: 'lean-to' });
    expect(kept).toHaveLength(1);
    expect(kept[0]).toMatchObject({
      topic: 'https://weather.example.org/air',
      code: 'forecast-unreadable',
      reason: 'There is no list of at most 5000 at /air. The answer has nothing.',
    });
    expect(new TextDecoder().decode(kept[0]!.payload)).toBe('{"time": [], "warmth": []}');
    expect(store.outdoor.list('lean-to')).toEqual([]);
  });

  it('is not tried for a place without a source', async () => {
    store.outdoor.keepSource('lean-to', undefined);
    const room = open();
    await live(room, 10);
    expect(asked).toEqual([]);
    expect(await room.now('lean-to')).toEqual({ trouble: 'No address is set for the weather forecast.' });
  });

  it('is one at a time', async () => {
    const room = open();
    const both = await Promise.all([room.now('lean-to'), room.now('lean-to')]);
    expect(both).toEqual([{ points: 3 }, { points: 3 }]);
    expect(asked).toEqual([0]);
  });
});
