import { afterEach, beforeEach, expect, test } from 'vitest';
import { aPlace, openHouse } from './house.ts';

type House = Awaited<ReturnType<typeof openHouse>>;
let house: House;
let fetched: string[];
const url = '/api/places/lean-to/outdoor';
const source = {
  url: 'https://weather.example.org/air?key=secret',
  pointers: { list: '/list', time: '/dt', temperature: '/t' },
  unit: 'K',
};

beforeEach(async () => {
  fetched = [];
  house = await openHouse({
    outdoor: {
      now: async (placeId) => fetched.push(placeId),
      afresh: () => {},
      troubleOf: () => (fetched.length > 0 ? 'It answered 404.' : undefined),
    },
  });
  await house.send('POST', '/api/places', aPlace);
});
afterEach(() => house.close());

test('a source is set, fetched at once, told with its trouble, and taken away', async () => {
  expect((await house.app.inject(url)).json()).toEqual({});
  const set = await house.send('PUT', url, source);
  expect(set.json()).toEqual({ source, trouble: 'It answered 404.' });
  expect(fetched).toEqual(['lean-to']);
  const issuedMs = house.clock.nowMs();
  house.store.outdoor.issue('lean-to', issuedMs, [{ timeMs: issuedMs, temperatureC: 9 }]);
  expect((await house.app.inject(url)).json()).toMatchObject({ issuedAt: '2026-05-13T06:10:00.000Z' });
  expect((await house.send('DELETE', url)).json().source).toBeUndefined();
});

test('another kind of address is refused, and an unknown place', async () => {
  const wrong = await house.send('PUT', url, { ...source, url: 'file:///etc/passwd' });
  expect(wrong.statusCode).toBe(400);
  expect(wrong.json().issues[0]).toMatchObject({ path: 'url' });
  expect((await house.send('PUT', '/api/places/elsewhere/outdoor', source)).statusCode).toBe(404);
  expect(fetched).toEqual([]);
});

test('the season that is taken out holds the air outdoors, never the address', async () => {
  await house.send('PUT', url, source);
  const atMs = house.clock.nowMs();
  house.store.outdoor.issue('lean-to', atMs, [{ timeMs: atMs, temperatureC: 9 }]);
  house.store.outdoor.add('lean-to', [{ timeMs: atMs - 60_000, temperatureC: 8 }]);
  const season = (await house.app.inject('/api/places/lean-to/season')).json();
  expect(season.outdoor).toEqual([
    { time: '2026-05-13T06:09:00Z', temperatureC: 8 },
    { time: '2026-05-13T06:10:00Z', temperatureC: 9, issuedAt: '2026-05-13T06:10:00Z' },
  ]);
  expect(JSON.stringify(season)).not.toContain('secret');
  await house.send('POST', '/api/season?replace=true', season);
  expect((await house.app.inject('/api/places/lean-to/season')).json()).toEqual(season);
});
