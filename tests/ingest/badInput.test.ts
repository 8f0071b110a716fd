/** Every bad input of the day, sent by a real client through the real broker. */
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { doubtWords } from '../../services/model/index.ts';
import { openStation, placeId, type Station, startMs } from './station.ts';

const bench = `glasstide/${placeId}/readings/bench`;
const door = `glasstide/${placeId}/counts/door`;
let station: Station;

beforeEach(async () => {
  station = await openStation();
});
afterEach(() => station.close());

const count = (change: object) =>
  JSON.stringify({ time: '2026-05-13T05:00:00Z', exposureDays: 7, counts: { whitefly: 3 }, ...change });

/** topic, payload, code, and words that the reason must hold: the field, the value, what to send. */
const refused: [string, string, string, string, string[]][] = [
  ['NaN', bench, 'nan', 'value-not-finite', ['nan', 'probe']],
  ['NaN in JSON', bench, '{"temperatureC": nan, "humidityPct": 61}', 'value-not-finite', ['/temperatureC']],
  ['no temperature', bench, '{"humidityPct": 61}', 'value-missing', ['/humidityPct', 'temperatureC']],
  ['broken JSON', bench, '{"temperatureC": 19.4', 'payload-unreadable', ['{"temperatureC": 19.4']],
  ['decimal comma', bench, '19,4', 'payload-unreadable', ['19,4', 'point']],
  ['unit not in the registry', bench, '[{"u":"Far","v":64}]', 'unit-unknown', ['Far', 'Cel']],
  ['clock of 1970', bench, '{"temperatureC": 19, "time": 42}', 'time-implausible', ['1970', 'clock']],
  ['clock of 1900', bench, '{"temperatureC": 19, "time": -2208988800}', 'time-implausible', ['1900']],
  [
    'clock 36 years ahead',
    bench,
    '{"temperatureC": 19, "time": "2062-05-13T06:10:00Z"}',
    'time-implausible',
    ['13 May 2062 08:10', '13 May 08:10'],
  ],
  [
    'local time without zone',
    bench,
    '{"temperatureC": 19, "time": "2026-05-13T08:10"}',
    'time-implausible',
    ['zone'],
  ],
  ['unknown place', 'glasstide/shed/readings/bench', '19.4', 'topic-unknown-place', ['shed']],
  ['mistyped topic', `glasstide/${placeId}/reading/bench`, '19.4', 'topic-unknown', ['readings']],
  [
    'negative count',
    door,
    count({ counts: { whitefly: -3 } }),
    'record-invalid',
    ['counts.whitefly', '-3', '0 or more'],
  ],
  [
    'half an insect',
    door,
    count({ counts: { whitefly: 2.5 } }),
    'record-invalid',
    ['counts.whitefly', '2.5', 'whole'],
  ],
  ['fraction 0', door, count({ countedFraction: 0 }), 'record-invalid', ['countedFraction', '0', 'above 0']],
  [
    'fraction 1.5',
    door,
    count({ countedFraction: 1.5 }),
    'record-invalid',
    ['countedFraction', '1.5', 'at most 1'],
  ],
  ['unknown kind', door, count({ counts: { moth: 1 } }), 'record-invalid', ['counts.moth']],
  ['no days', door, count({ exposureDays: undefined }), 'record-invalid', ['exposureDays', 'missing']],
  [
    'count before the trap was hung',
    door,
    count({ time: '2026-04-30T08:00:00Z' }),
    'count-before-trap',
    ['2026-04-30', '2026-05-01'],
  ],
  ['count of next year', door, count({ time: '2027-05-13T05:00:00Z' }), 'date-ahead', ['2027-05-13']],
  ['unknown trap', `glasstide/${placeId}/counts/window`, count({}), 'reference-unknown', ['window']],
  [
    'trap other than its topic',
    door,
    count({ trapId: 'window' }),
    'record-invalid',
    ['trapId', 'window', 'door'],
  ],
  [
    'more infested leaves than leaves',
    `glasstide/${placeId}/leaves`,
    '{"time": "2026-05-13T05:00:00Z", "leaves": 10, "seen": [{"kind": "aphid", "infestedLeaves": 11}]}',
    'record-invalid',
    ['seen', 'more infested leaves'],
  ],
  [
    'health in other words',
    `glasstide/${placeId}/health/bench`,
    'tired',
    'payload-unreadable',
    ['tired', 'online'],
  ],
];

describe('refused and kept in quarantine', () => {
  it.each(refused)('%s', async (_, topic, payload, code, words) => {
    await station.publish(topic, payload);
    const [kept, ...more] = station.quarantine();
    expect(more).toEqual([]);
    expect(kept).toMatchObject({ topic, code, arrivedMs: startMs, retained: false });
    expect(new TextDecoder().decode(kept?.payload)).toBe(payload);
    for (const word of words) expect(kept?.reason).toContain(word);
    expect(await station.readings()).toEqual([]);
    expect(station.store.records.list('trapCount', placeId)).toEqual([]);
    expect(station.store.records.list('leafCheck', placeId)).toEqual([]);
    expect(station.changes.at(-1)?.what).toBe('quarantine');
  });

  it('a message of 1 MB: its first 4 kB and its length', async () => {
    await station.publish(bench, 'x'.repeat(1_000_000));
    expect(station.quarantine()).toMatchObject([{ code: 'payload-too-large', payloadBytes: 1_000_000 }]);
    expect(station.quarantine()[0]?.payload).toHaveLength(4096);
    expect(station.quarantine()[0]?.reason).toContain('64 kB');
  });

  // 1.8e308 is beyond the largest double, 1.797...e308 (IEEE 754).
  it.each(['Far', 'K'] as const)('a number that its unit (%s) takes beyond all numbers', async (unit) => {
    const sensor = { id: 'bench', name: 'Bench', unit } as const;
    station.store.records.put({ kind: 'sensor', placeId, id: 'bench', data: sensor, atMs: startMs });
    await station.publish(bench, '1e308');
    expect(station.quarantine()).toMatchObject([{ code: 'value-not-finite' }]);
    expect(await station.readings()).toEqual([]);
  });

  /** As a broker hands over what it had kept when somebody subscribes. */
  const fromMemory = (payload: string) =>
    station.ingest.handle({ topic: bench, payload: Buffer.from(payload), retained: true, duplicate: false });

  it("a reading out of a broker's memory without its own time; with it, it counts", async () => {
    await fromMemory('19.4');
    await fromMemory('[{"u":"Cel","v":19.4,"t":-60}]');
    expect(station.quarantine().map(({ code }) => code)).toEqual([
      'retained-without-time',
      'retained-without-time',
    ]);
    await fromMemory('{"temperatureC": 19.4, "time": "2026-05-12T21:00:00Z"}');
    expect(await station.readings()).toMatchObject([{ timeMs: Date.parse('2026-05-12T21:00:00Z') }]);
  });

  it('the retained ghost that comes again is kept once', async () => {
    await fromMemory('19.4');
    await fromMemory('19.4');
    expect(station.quarantine()).toHaveLength(1);
  });

  it('but not one that its board publishes just now and wants to be kept', async () => {
    await station.publish(bench, '19.4', { retain: true });
    expect(await station.readings()).toMatchObject([{ temperatureC: 19.4, timeMs: startMs }]);
    expect(station.quarantine()).toEqual([]);
  });

  it('an empty retained message only clears what a broker had kept', async () => {
    await station.publish(bench, '', { retain: true });
    expect(station.quarantine()).toEqual([]);
  });
});

describe('stored, marked, and not used', () => {
  it.each([
    ['-127', 'one-wire-lost'],
    ['85', 'one-wire-power-up'],
    ['-30.1', 'out-of-range'],
    ['-1e300', 'out-of-range'],
  ])('%s', async (payload, doubt) => {
    await station.publish(bench, payload);
    expect(await station.readings()).toMatchObject([{ temperatureC: Number(payload), doubt }]);
    const hour = { fromMs: startMs - 3_600_000, toMs: startMs + 3_600_000 };
    expect(await station.store.readings.hourly(placeId, hour)).toEqual([]);
    expect(station.store.arrivals.list(placeId)[0]?.readAs).toContain(`Not believed: ${doubtWords(doubt)}`);
  });

  it('a humidity that cannot be is left out, its temperature is kept', async () => {
    await station.publish(bench, '{"temperatureC": 19.4, "humidityPct": 140}');
    const [reading] = await station.readings();
    expect(reading).toEqual({ sensorId: 'bench', timeMs: startMs, temperatureC: 19.4 });
  });
});
