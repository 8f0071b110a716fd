import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { withNeededReadings } from '../../services/forecasting/neededReadings.ts';
import { seasonSchema } from '../../services/model/index.ts';
import { smallSeason } from '../fixtures/smallSeason.ts';
import { aPlace, openHouse } from './house.ts';

let house: Awaited<ReturnType<typeof openHouse>>;
beforeEach(async () => {
  house = await openHouse();
});
afterEach(() => house.close());

const url = '/api/places/lean-to/season';
const aSeason = {
  format: 'glasstide-season',
  version: 1,
  place: aPlace,
  sensors: [{ id: 'bench', name: 'Bench' }],
  readings: [
    { sensorId: 'bench', time: '2026-05-12T11:00:00Z', temperatureC: 24.5 },
    { sensorId: 'bench', time: '2026-05-12T10:00:00Z', temperatureC: 21.25, humidityPct: 60 },
  ],
  traps: [{ id: 'door', name: 'Door', hungAt: '2026-05-01T08:00:00Z' }],
  trapCounts: [
    {
      id: 'w19',
      trapId: 'door',
      time: '2026-05-12T18:00:00Z',
      exposureDays: 7,
      counts: { whitefly: { low: 6, high: 20 } },
    },
  ],
  dailyExtremes: [{ day: '2026-05-10', minC: 8, maxC: 27 }],
  outlook: [{ time: '2026-05-14T12:00:00Z', temperatureC: 22 }],
};

describe('the season file', () => {
  test('taken out, brought in elsewhere and taken out again it is the same', async () => {
    expect((await house.send('POST', '/api/season', aSeason)).statusCode).toBe(200);
    const first = await house.app.inject(url);
    const other = await openHouse();
    await other.send('POST', '/api/season', first.body);
    const second = await other.app.inject(url);
    await other.close();
    expect(second.body).toBe(first.body);
    expect(first.json()).toMatchObject({
      place: aPlace,
      readings: [{ temperatureC: 21.25, humidityPct: 60 }, { temperatureC: 24.5 }],
      trapCounts: [{ counts: { whitefly: { low: 6, high: 20 } } }],
      dailyExtremes: aSeason.dailyExtremes,
      outlook: aSeason.outlook,
    });
  });

  test('as a forecast reads it, it holds one reading in half an hour of those older than eight days', async () => {
    const firstMs = Date.parse('2026-05-01T00:00:00Z');
    const readings = Array.from({ length: 12 * 24 * 6 }, (_, i) => ({
      sensorId: 'bench',
      time: new Date(firstMs + i * 600_000).toISOString(),
      temperatureC: 15 + (i % 50) / 10,
    }));
    await house.send('POST', '/api/season', { ...aSeason, readings });
    const asOf = '2026-05-12T12:00:00.000Z';
    const whole = seasonSchema.parse((await house.app.inject(url)).json());
    const read = seasonSchema.parse((await house.app.inject(`${url}?asOf=${asOf}`)).json());
    const before = whole.readings.filter(({ time }) => Date.parse(time) <= Date.parse(asOf));
    expect(read.readings).toEqual(withNeededReadings({ ...whole, readings: before }, asOf).readings);
    expect({ ...read, readings: [] }).toEqual({ ...whole, readings: [] });
    // From noon of the 4th: eight days of 144 and the last; before, three and a half days of 48.
    expect(read.readings).toHaveLength(8 * 144 + 1 + 3.5 * 48);
  });

  test('the answer says how much came in', async () => {
    const { placeId, imported } = (await house.send('POST', '/api/season', aSeason)).json();
    expect(placeId).toBe('lean-to');
    expect(imported).toMatchObject({ readings: 2, traps: 1, trapCounts: 1, releases: 0 });
  });

  test('a place that is there is replaced only when asked', async () => {
    await house.send('POST', '/api/season', aSeason);
    const refused = await house.send('POST', '/api/season', { ...aSeason, traps: [], trapCounts: [] });
    expect([refused.statusCode, refused.json().code]).toEqual([409, 'place-exists']);
    expect((await house.app.inject(url)).json().trapCounts).toHaveLength(1);
    await house.send('POST', '/api/season?replace=true', { ...aSeason, trapCounts: [] });
    expect((await house.app.inject(url)).json().trapCounts).toEqual([]);
  });

  test('a wrong value deep in the file is named by its path', async () => {
    const readings = [...aSeason.readings, { sensorId: 'bench', time: 'noon', temperatureC: 3 }];
    const { issues } = (await house.send('POST', '/api/season', { ...aSeason, readings })).json();
    expect(issues).toEqual([
      { path: 'readings[2].time', expected: expect.stringContaining('date and time'), received: '"noon"' },
    ]);
  });

  // RFC 8259 and JSON Schema 2020-12, core section 8.1.1: $schema names the dialect.
  test('its JSON Schema is published', async () => {
    const schema = (await house.app.inject('/api/schema/season')).json();
    expect(schema.$schema).toBe('https://json-schema.org/draft/2020-12/schema');
    expect(schema.required.sort()).toEqual(['format', 'place', 'version']);
  });
});

describe('a season file sent again', () => {
  test('with its key is answered as the first time and brought in once, also while the first is at work', async () => {
    const season = smallSeason();
    const send = () => house.send('POST', '/api/season', season, 'phone-1');
    const [one, two] = await Promise.all([send(), send()]);
    const three = await send();
    expect([one.statusCode, two.statusCode, three.statusCode]).toEqual([200, 200, 200]);
    expect([two.json(), three.json()]).toEqual([one.json(), one.json()]);
    expect(house.told.filter(({ what }) => what === 'record')).toHaveLength(1);
  });

  test('with its key and another content is refused', async () => {
    await house.send('POST', '/api/season', smallSeason(), 'phone-1');
    const other = { ...smallSeason(), traps: [], trapCounts: [] };
    const answer = await house.send('POST', '/api/season?replace=true', other, 'phone-1');
    expect(answer.statusCode).toBe(200);
    const reused = await house.send('POST', '/api/season?replace=true', smallSeason(), 'phone-1');
    expect(reused.json().code).toBe('idempotency-key-reused');
  });

  test('that was refused may be sent again with the same key once it is mended', async () => {
    await house.send('POST', '/api/season', smallSeason(), 'first');
    expect((await house.send('POST', '/api/season', smallSeason(), 'k')).json().code).toBe('place-exists');
    await house.send('DELETE', `/api/places/${smallSeason().place.id}`);
    expect((await house.send('POST', '/api/season', smallSeason(), 'k')).statusCode).toBe(200);
  });
});

test('the readings come out as CSV', async () => {
  const season = smallSeason();
  await house.send('POST', '/api/season', season);
  const answer = await house.app.inject(`/api/places/${season.place.id}/readings.csv`);
  expect(answer.headers['content-type']).toMatch(/^text\/csv/);
  const lines = answer.body.split('\r\n');
  expect(lines[0]).toBe('sensor,time,temperature_c,humidity_pct,doubt');
  expect(lines).toHaveLength(season.readings.length + 2);
});
