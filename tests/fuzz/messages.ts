/** Whatever a board may shout: every decoder by itself, and every topic through ingest into a store. */
import fc from 'fast-check';
import { decodeReadings } from '../../services/ingest/decoders/decodeReadings.ts';
import { isRefusal } from '../../services/ingest/decoders/decoder.ts';
import { startIngest } from '../../services/ingest/ingest.ts';
import { readForecast } from '../../services/outdoor/read.ts';
import { refusals } from '../../services/refusals.ts';
import { openHouse, placeId, startMs } from '../ingest/station.ts';
import { fitting, hostileText, type Schema, spoilt } from './values.ts';

const number: Schema = { anyOf: [{ type: 'number' }, { type: 'string' }] };
const object = (properties: Record<string, Schema>): Schema => ({ type: 'object', properties });
const listOf = (items: Schema): Schema => ({ type: 'array', items });
const time: Schema = { anyOf: [{ type: 'string', format: 'date-time' }, { type: 'number' }] };
const unit: Schema = { enum: ['Cel', 'K', '%RH', 'Far', ''] };
const senml = object({
  bn: { type: 'string' },
  bt: { type: 'number' },
  bu: unit,
  bv: { type: 'number' },
  bver: { type: 'integer' },
  n: { type: 'string' },
  u: unit,
  v: { type: 'number' },
  t: { type: 'number' },
});
const reading = object({
  temperatureC: number,
  humidityPct: number,
  time,
  data: object({ t: number, when: time }),
});
const count = object({
  id: { type: 'string' },
  time,
  exposureDays: { type: 'number' },
  card: { enum: ['new', 'same', 'lost'] },
  counts: object({ whitefly: { type: 'integer', minimum: 0 }, aphid: { type: 'integer' } }),
});
const leaves = object({
  id: { type: 'string' },
  time,
  leavesLooked: { type: 'integer' },
  pest: { type: 'string' },
  infestedLeaves: { type: 'integer' },
});
const outdoor = object({
  points: listOf(object({ time, temperatureC: number, issuedAt: time })),
  hourly: object({ time: listOf(time), t: listOf(number) }),
});
const shapes = [reading, listOf(senml), count, leaves, outdoor, listOf(reading)];

const nearJson = fc
  .oneof(...shapes.flatMap((shape) => [fitting(shape), spoilt(fitting(shape))]))
  .map((value) => JSON.stringify(value) ?? '');
const cut = fc.tuple(nearJson, fc.nat(200)).map(([text, at]) => text.slice(0, at));
const bareWords = nearJson.map((text) => text.replace(/\d+(\.\d+)?/, 'nan'));
const numerals = fc.oneof(
  fc.double().map(String),
  fc.double({ min: -40, max: 60, noNaN: true }).map(String),
  fc.stringMatching(/^[+-]?\d*[.,]?\d*([eE][+-]?\d+)?$/),
);
const texts = fc.oneof(nearJson, cut, bareWords, numerals, hostileText, fc.constantFrom('online', 'offline'));
export const payloads = fc.oneof(
  { weight: 5, arbitrary: texts.map((text) => new TextEncoder().encode(text)) },
  { weight: 1, arbitrary: fc.uint8Array({ maxLength: 300 }) },
);

const pointer = fc.oneof(
  fc.constantFrom('/temperatureC', '/data/t', '/0/v', '', '/', '/~2', '/hourly/t', '/points'),
  fc.string(),
);
const options = fc.record(
  {
    arrivedMs: fc.constant(startMs),
    unit: fc.constantFrom('Cel' as const, 'Far' as const, 'K' as const),
    pointers: fc.record(
      { temperature: pointer, humidity: pointer, time: pointer },
      { requiredKeys: ['temperature'] },
    ),
  },
  { requiredKeys: ['arrivedMs', 'unit'] },
);

/** Each decoder gives numbers, or a refusal of the catalogue with a sentence. */
export function fuzzDecoders(inputs: number, seed: number): void {
  const property = fc.property(payloads, options, (payload, spoken) => {
    const decoded = decodeReadings(payload, spoken);
    if (isRefusal(decoded)) return decoded.code in refusals && decoded.reason.length > 0;
    // 1e308 °F is beyond the numbers in K; ingest refuses it by its sentence.
    const isNumber = (value: number) => !Number.isNaN(value);
    return decoded.readings.every(
      ({ temperatureC = 0, humidityPct = 0, timeMs }) =>
        isNumber(temperatureC) && Number.isFinite(humidityPct) && Number.isFinite(timeMs),
    );
  });
  fc.assert(property, { numRuns: inputs, seed });
}

/** The answer of a weather service, whatever it is: points in order, or a refusal. */
export function fuzzWeather(inputs: number, seed: number): void {
  const source = fc.record({
    url: fc.constant('https://example.org/'),
    pointers: fc.record(
      { list: pointer, time: pointer, temperature: pointer },
      { requiredKeys: ['time', 'temperature'] },
    ),
    unit: fc.constantFrom('Cel' as const, 'Far' as const, 'K' as const),
  });
  const property = fc.property(texts, source, (text, from) => {
    const points = readForecast(text, from, startMs);
    if (!Array.isArray(points)) return points.code in refusals && points.reason.length > 0;
    return points.every(
      ({ timeMs, temperatureC }, i) =>
        Number.isFinite(temperatureC) && timeMs > (points[i - 1]?.timeMs ?? -Infinity),
    );
  });
  fc.assert(property, { numRuns: inputs, seed });
}

const level = fc.oneof(
  {
    weight: 3,
    arbitrary: fc.constantFrom(
      placeId,
      'readings',
      'counts',
      'leaves',
      'outdoor',
      'health',
      'advice',
      'door',
      'bench',
      'a-b',
    ),
  },
  { weight: 1, arbitrary: hostileText },
);
const topics = fc.oneof(
  {
    weight: 6,
    arbitrary: fc
      .constantFrom(
        'readings/bench',
        'readings/mapped',
        'counts/door',
        'leaves',
        'outdoor',
        'health/bench',
        'advice',
      )
      .map((end) => `glasstide/${placeId}/${end}`),
  },
  { weight: 1, arbitrary: fc.constantFrom('vendor/sonde/1', 'vendor/sonde/2') },
  {
    weight: 3,
    arbitrary: fc.array(level, { maxLength: 6 }).map((levels) => ['glasstide', ...levels].join('/')),
  },
  { weight: 1, arbitrary: fc.array(level, { maxLength: 4 }).map((levels) => levels.join('/')) },
);
const messages = fc.record(
  {
    topic: topics,
    payload: payloads,
    retained: fc.boolean(),
    duplicate: fc.boolean(),
    live: fc.constant(true as const),
    delivery: fc.record({ sender: hostileText, packetId: fc.integer({ min: 1, max: 65_535 }) }),
  },
  { requiredKeys: ['topic', 'payload', 'retained', 'duplicate'] },
);

/** Every message is kept or put aside with a reason; none is thrown back, or its board would send it for ever. */
export async function fuzzMessages(inputs: number, seed: number): Promise<void> {
  const store = openHouse();
  const mapped = {
    id: 'mapped',
    name: 'Mapped',
    unit: 'Far' as const,
    topic: 'vendor/sonde/+',
    pointers: { temperature: '/data/t', time: '/data/when' },
  };
  store.records.put({ kind: 'sensor', placeId, id: 'mapped', data: mapped, atMs: startMs });
  const ingest = await startIngest({ store, clock: { nowMs: () => startMs }, onChange: () => {} });
  const property = fc.asyncProperty(messages, async (message) => {
    await ingest.handle(message);
    return store.quarantine
      .list({ limit: 1 })
      .every(({ code, reason }) => code in refusals && code !== 'fault' && reason !== '');
  });
  await fc.assert(property, { numRuns: inputs, seed });
  await ingest.idle();
  for (const { temperatureC, humidityPct = 0, timeMs } of await store.readings.range(placeId, {
    fromMs: -8e15,
    toMs: 8e15,
  })) {
    if (![temperatureC, humidityPct, timeMs].every(Number.isFinite))
      throw new Error(`Stored ${temperatureC} at ${timeMs}`);
  }
  if (ingest.troubles().length > 0) throw new Error(ingest.troubles().join(' '));
  await ingest.close();
  await store.close();
}
