/** Good readings and the odd ways in which they come, through the real broker. */
import fc from 'fast-check';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { openStation, placeId, type Station, startMs } from './station.ts';

const minuteMs = 60_000;
const hourMs = 60 * minuteMs;
const bench = `glasstide/${placeId}/readings/bench`;
let station: Station;

beforeEach(async () => {
  station = await openStation();
});
afterEach(() => station.close());

const timed = (temperatureC: number, timeMs: number) => JSON.stringify({ temperatureC, time: timeMs });

describe('a reading', () => {
  it('is in the store when its acknowledgement comes, and its sensor is set up', async () => {
    await station.publish(bench, '{"temperatureC": 19.4, "humidityPct": 68, "time": "2026-05-13T06:09:00Z"}');
    expect(await station.readings()).toEqual([
      { sensorId: 'bench', timeMs: startMs - minuteMs, temperatureC: 19.4, humidityPct: 68 },
    ]);
    expect(station.store.records.get('sensor', placeId, 'bench')?.data).toEqual({
      id: 'bench',
      name: 'bench',
      unit: 'Cel',
    });
    expect(station.changes).toContainEqual({ placeId, what: 'reading' });
    expect(station.quarantine()).toEqual([]);
  });

  it('without a time has the time of its arrival', async () => {
    station.time.nowMs += 3 * minuteMs;
    await station.publish(bench, '19.4');
    expect(await station.readings()).toMatchObject([{ timeMs: startMs + 3 * minuteMs }]);
  });

  it('shows on the page of arrivals how it was read', async () => {
    await station.publish(bench, '{"temperatureC": 19.4, "humidityPct": NaN}');
    expect(station.store.arrivals.list(placeId)).toMatchObject([
      { topic: bench, payloadStart: '{"temperatureC": 19.4, "humidityPct": NaN}', arrivedMs: startMs },
    ]);
    expect(station.store.arrivals.list(placeId)[0]?.readAs).toMatch(/19.4 °C, .*humidity missing/);
  });

  // The place is in Europe/Berlin: IANA tz database, UTC+2 in May, UTC+1 in December.
  it.each([
    ['2026-05-13T06:09:00Z', "19.4 °C and 68 % humidity, Wed 13 May 08:09 (by the board's clock)."],
    ['2025-12-31T22:30:00Z', "19.4 °C and 68 % humidity, Wed 31 December 2025 23:30 (by the board's clock)."],
  ])('measured at %s is told in the time of the place', async (time, words) => {
    await station.publish(bench, JSON.stringify({ temperatureC: 19.4, humidityPct: 68, time }));
    expect(station.store.arrivals.list(placeId)[0]?.readAs).toBe(words);
  });

  it('counts once when it is sent twice, and the first of two values stays in use', async () => {
    await station.publish(bench, timed(18.2, startMs));
    await station.publish(bench, timed(18.2, startMs));
    await station.publish(bench, timed(18.9, startMs));
    expect(await station.readings()).toMatchObject([{ temperatureC: 18.2 }]);
    expect(station.store.arrivals.list(placeId)[0]?.readAs).toContain('another value is in use');
  });

  it('may come in any order: the store and its doubts are the same', async () => {
    // A night with a spike, a slip and a stuck stretch; times in quarter hours and minutes, unequal on purpose.
    const night = Array.from({ length: 60 }, (_, i) => ({ c: i < 50 ? 14 + (i % 7) / 8 : 15.25, m: 15 * i }));
    const series = [...night, { c: 44, m: 301 }, { c: 14.1, m: 302 }, { c: 7.2, m: 190 }];
    const messages = series.map(({ c, m }) => timed(c, startMs - 24 * hourMs + m * minuteMs));
    const inOrder = await readInto(messages);
    expect(inOrder.filter(({ doubt }) => doubt).map(({ doubt }) => doubt)).toContain('spike');
    await fc.assert(
      fc.asyncProperty(fc.shuffledSubarray(messages, { minLength: messages.length }), async (shuffled) => {
        expect(await readInto(shuffled)).toEqual(inOrder);
      }),
      { seed: 5, numRuns: 5 },
    );
  });

  it('that breaks a stuck stretch, arriving late, takes the doubts back', async () => {
    const stuck = Array.from({ length: 27 }, (_, i) =>
      timed(16.5, startMs - 13 * hourMs + i * 30 * minuteMs),
    );
    for (const payload of stuck) await station.publish(bench, payload);
    await station.ingest.idle();
    expect((await station.readings()).every(({ doubt }) => doubt === 'stuck')).toBe(true);
    await station.publish(bench, timed(16.6, startMs - 6.6 * hourMs));
    await station.ingest.idle();
    expect((await station.readings()).filter(({ doubt }) => doubt)).toEqual([]);
  });

  it('in a pack is used although another in it is not', async () => {
    const pack = [
      { n: 'air', u: 'Cel', v: 18, t: startMs / 1000 },
      { n: 'air', u: 'Cel', v: 19, t: 2 ** 31 },
    ];
    await station.publish(bench, JSON.stringify(pack));
    expect(await station.readings()).toMatchObject([{ temperatureC: 18 }]);
    expect(station.quarantine()).toMatchObject([
      { code: 'time-implausible', reason: expect.stringContaining('2038') },
    ]);
  });
});

describe('a board that publishes elsewhere', () => {
  const topic = 'home/greenhouse/climate';
  const payload = '{"probe": {"t": 64.4}, "battery": 88}';

  it('waits in quarantine until its sensor is mapped, and is then read again', async () => {
    await station.publish(topic, payload);
    const [kept] = station.quarantine();
    expect(kept).toMatchObject({ code: 'topic-unknown', topic });
    const sensor = {
      id: 'vent',
      name: 'Vent',
      unit: 'Far',
      topic: 'home/+/climate',
      pointers: { temperature: '/probe/t' },
    } as const;
    station.store.records.put({ kind: 'sensor', placeId, id: 'vent', data: sensor, atMs: startMs });
    station.time.nowMs += hourMs;
    expect(await station.ingest.reread([kept?.id ?? 0])).toEqual({ mended: 1, stillRefused: 0 });
    await station.publish(topic, '{"probe": {"t": 66.2}}');
    // 64.4 °F and 66.2 °F are 18 °C and 19 °C by the definition of the scales.
    expect(await station.readings()).toEqual([
      { sensorId: 'vent', timeMs: startMs, temperatureC: 18 },
      { sensorId: 'vent', timeMs: startMs + hourMs, temperatureC: 19 },
    ]);
    expect(station.quarantine()).toEqual([]);
  });

  it('may carry two probes in one message', async () => {
    for (const [id, temperature] of [
      ['low', '/0'],
      ['high', '/1'],
    ] as const) {
      const sensor = { id, name: id, unit: 'Cel', topic, pointers: { temperature } } as const;
      station.store.records.put({ kind: 'sensor', placeId, id, data: sensor, atMs: startMs });
    }
    await station.publish(topic, '[17.5, 21.5]');
    expect(await station.readings()).toMatchObject([
      { sensorId: 'high', temperatureC: 21.5 },
      { sensorId: 'low', temperatureC: 17.5 },
    ]);
  });
});

describe('degrees Fahrenheit without a label', () => {
  it('are parked next to what the sensor itself measured, and all mended with one answer', async () => {
    await station.publish(bench, timed(18.1, startMs - 40 * minuteMs));
    await station.publish(bench, timed(64.4, startMs - 25 * minuteMs));
    await station.publish(bench, timed(66.2, startMs - 10 * minuteMs));
    const parked = station.quarantine();
    expect(parked.map(({ code }) => code)).toEqual(['unit-doubtful', 'unit-doubtful']);
    expect(parked[1]?.reason).toMatch(/bench sent 64.4.*°F/);
    expect(await station.readings()).toHaveLength(1);

    const ids = parked.map(({ id }) => id);
    expect(await station.ingest.reread(ids, 'Far')).toEqual({ mended: 2, stillRefused: 0 });
    expect((await station.readings()).map(({ temperatureC }) => temperatureC)).toEqual([18.1, 18, 19]);
    expect(station.store.records.get('sensor', placeId, 'bench')?.data.unit).toBe('Far');
    expect(station.quarantine()).toEqual([]);
    await station.publish(bench, timed(68, startMs));
    expect((await station.readings()).at(-1)).toMatchObject({ temperatureC: 20 });
  });

  it('are parked next to the other sensor, or with nothing to compare', async () => {
    await station.publish(bench, timed(62, startMs - hourMs));
    await station.publish(`glasstide/${placeId}/readings/vent`, timed(17, startMs));
    await station.publish(bench, timed(62, startMs));
    expect(station.quarantine().map(({ code }) => code)).toEqual(['unit-doubtful', 'unit-doubtful']);
  });

  it('are not suspected when the sensor is truly hot', async () => {
    await station.publish(bench, timed(38, startMs - 30 * minuteMs));
    await station.publish(bench, timed(48, startMs));
    expect(await station.readings()).toHaveLength(2);
    expect(station.quarantine()).toEqual([]);
  });

  it('are not suspected when the message names its unit', async () => {
    await station.publish(bench, '[{"u":"Cel","v":62}]');
    expect(await station.readings()).toMatchObject([{ temperatureC: 62 }]);
  });

  it('stay parked when the answer is asked again for what was cut or settled', async () => {
    await station.publish(bench, 'x'.repeat(70_000));
    const ids = station.quarantine().map(({ id }) => id);
    expect(await station.ingest.reread([...ids, 999], 'Far')).toEqual({ mended: 0, stillRefused: 2 });
    expect(station.quarantine()).toHaveLength(1);
  });
});

describe('health', () => {
  it.each(['online', 'offline'])('%s is a hint and changes nothing', async (words) => {
    await station.publish(`glasstide/${placeId}/health/bench`, words, { retain: true });
    expect(station.store.arrivals.list(placeId)[0]?.readAs).toContain(words);
    expect(station.changes).toEqual([]);
  });
});

/** The readings and their doubts after the messages came in this order, in a house of their own. */
async function readInto(messages: readonly string[]) {
  const house = await openStation();
  await Promise.all(messages.map((payload) => house.publish(bench, payload)));
  await house.ingest.idle();
  const readings = await house.readings();
  await house.close();
  return readings;
}
