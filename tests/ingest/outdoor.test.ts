/** The air outdoors by MQTT, through the real broker. */
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { openStation, placeId, type Station, startMs } from './station.ts';

const topic = `glasstide/${placeId}/outdoor`;
const hour = 3_600_000;
let station: Station;

beforeEach(async () => {
  station = await openStation();
});
afterEach(() => station.close());

const known = () => station.store.outdoor.list(placeId);
const send = (value: unknown, options = {}) => station.publish(topic, JSON.stringify(value), options);
const iso = (timeMs: number) => new Date(timeMs).toISOString();

describe('a measured value', () => {
  it('is kept once an hour, the last one sent, whether a plain number or with its time', async () => {
    await send(12.5);
    await send({ temperatureC: 13, time: iso(startMs - 60_000) });
    await send({ temperatureC: 9, time: iso(startMs - 2 * hour) });
    const middle = startMs - (startMs % hour) + hour / 2;
    expect(known()).toEqual([
      { timeMs: middle - 2 * hour, temperatureC: 9 },
      { timeMs: middle, temperatureC: 13 },
    ]);
    expect(station.changes.map(({ what }) => what)).toEqual(['reading', 'reading', 'reading']);
    expect(station.store.arrivals.list(placeId)[0]?.readAs).toMatch(/^9 °C outdoors at /);
  });
});

describe('a forecast', () => {
  const points = [0, 3, 6].map((h) => ({ time: iso(startMs + h * hour), temperatureC: 10 + h }));

  it('is kept as issued then, or now', async () => {
    await send({ issuedAt: iso(startMs - 24 * hour), points });
    await send({ points });
    expect(known().map(({ issuedMs }) => issuedMs)).toEqual(
      [0, 0, 0].flatMap(() => [startMs - 24 * hour, startMs]),
    );
  });
});

describe('what cannot be used', () => {
  it.each([
    ['a value no air has', { temperatureC: 85 }, 'record-invalid'],
    ['a forecast without points', { points: [] }, 'record-invalid'],
    [
      'a forecast of tomorrow',
      { issuedAt: iso(startMs + 24 * hour), points: [{ time: iso(startMs), temperatureC: 1 }] },
      'time-implausible',
    ],
    ['no JSON', undefined, 'payload-unreadable'],
  ])('%s is put aside with its reason', async (_, value, code) => {
    await (value === undefined ? station.publish(topic, 'mild') : send(value));
    expect(known()).toEqual([]);
    expect(station.store.quarantine.list({ placeId })).toMatchObject([{ topic, code }]);
  });
});
