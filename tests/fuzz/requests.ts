/** Whatever a program may ask: every route of the API's own description, with and without a key. */
import fc from 'fast-check';
import { forecastAndAdvise } from '../../services/model/index.ts';
import { aPlace, openHouse } from '../api/house.ts';
import { smallSeason } from '../fixtures/smallSeason.ts';
import { fitting, hostile, hostileText, type Schema, spoilt } from './values.ts';

interface Parameter {
  in: 'path' | 'query' | 'header';
  name: string;
  schema: Schema;
}
interface Operation {
  method: string;
  path: string;
  parameters: Parameter[];
  body: Schema | undefined;
}
interface Described {
  parameters?: Parameter[];
  requestBody?: { content: Record<string, { schema: Schema }> };
}
interface Asked {
  method: string;
  url: string;
  headers: Record<string, string>;
  payload?: string | Buffer;
}

type House = Awaited<ReturnType<typeof openHouse>>;

function operationsOf({ app }: House): Operation[] {
  const paths = app.swagger().paths as unknown as Record<string, Record<string, Described>>;
  return Object.entries(paths).flatMap(([path, operations]) =>
    Object.entries(operations).map(([method, { parameters = [], requestBody }]) => {
      return {
        method: method.toUpperCase(),
        path,
        parameters,
        body: requestBody?.content['application/json']?.schema,
      };
    }),
  );
}

const known = ['lean-to', 'door', 'bench', '1', 'x'];
const segment = fc.oneof(
  { weight: 6, arbitrary: fc.constantFrom(...known) },
  { weight: 1, arbitrary: hostileText },
);
const sometimes = <T>(values: fc.Arbitrary<T>) => fc.option(values, { nil: undefined, freq: 3 });

function requestsTo({ method, path, parameters, body }: Operation): fc.Arbitrary<Asked> {
  const places = [...path.matchAll(/\{\w+\}/g)];
  const queries = parameters.filter((parameter) => parameter.in === 'query');
  return fc
    .record({
      segments: fc.tuple(
        fc.oneof({ weight: 8, arbitrary: fc.constant('lean-to') }, { weight: 1, arbitrary: segment }),
        ...places.slice(1).map(() => segment),
      ),
      query: fc.tuple(
        ...queries.map(({ name, schema }) =>
          sometimes(fc.oneof(fitting(schema), hostileText)).map((value) => [name, value]),
        ),
      ),
      stray: sometimes(fc.tuple(hostileText, hostileText)),
      method: fc.oneof(
        { weight: 20, arbitrary: fc.constant(method) },
        { weight: 1, arbitrary: fc.constantFrom('GET', 'HEAD', 'POST', 'PUT', 'DELETE', 'PATCH', 'OPTIONS') },
      ),
      headers: headers,
      payload: body === undefined ? sometimes(bodies(fc.constant({}))) : bodies(fitting(body)),
    })
    .map(({ segments, query, stray, payload, ...rest }) => {
      const search = new URLSearchParams();
      for (const [name, value] of query) if (value !== undefined) search.append(String(name), String(value));
      if (stray) search.append(...stray);
      const filled = path.replace(/\{\w+\}/g, () => encodeURIComponent(wellFormed(segments.shift() ?? 'x')));
      const url = search.size > 0 ? `${filled}?${search}` : filled;
      const empty = rest.method === 'GET' || rest.method === 'HEAD' || payload === undefined;
      return { url, ...rest, ...(!empty && { payload }) };
    });
}

/** A lone surrogate has no spelling in an address. */
const wellFormed = (text: string) => text.replace(/[\ud800-\udfff]/g, '\ufffd');

const bodies = (values: fc.Arbitrary<unknown>): fc.Arbitrary<string | Buffer> =>
  fc.oneof(
    { weight: 6, arbitrary: values.map((value) => JSON.stringify(value) ?? '') },
    { weight: 6, arbitrary: spoilt(values).map((value) => JSON.stringify(value) ?? '') },
    { weight: 1, arbitrary: hostile.map((value) => JSON.stringify(value) ?? '') },
    { weight: 1, arbitrary: hostileText },
    { weight: 1, arbitrary: fc.uint8Array({ maxLength: 200 }).map((bytes) => Buffer.from(bytes)) },
    {
      weight: 1,
      arbitrary: fc.constantFrom(
        '--b\r\nContent-Disposition: form-data; name="f"; filename="a.csv"\r\n\r\nsensor,time\r\n--b--\r\n',
        'sensor,time,temperature_c\r\nbench,,\r\n',
        '['.repeat(3000),
      ),
    },
  );

const visible = hostileText.map((text) => text.replace(/[^\x20-\x7e]/g, '').slice(0, 2000));
const headers = fc
  .record(
    {
      'idempotency-key': fc.oneof(
        { weight: 8, arbitrary: fc.uuid() },
        { weight: 1, arbitrary: fc.constantFrom('same', '') },
        { weight: 1, arbitrary: visible },
      ),
      'content-type': fc.oneof(
        { weight: 12, arbitrary: fc.constant('application/json') },
        {
          weight: 1,
          arbitrary: fc.constantFrom(
            'text/csv',
            'multipart/form-data; boundary=b',
            'application/x-www-form-urlencoded',
            'application/json; charset=utf-7',
            'text/plain',
          ),
        },
        { weight: 1, arbitrary: visible },
      ),
      'if-none-match': visible,
      accept: visible,
      origin: fc.constantFrom('http://localhost', 'null', 'https://example.org'),
      'sec-fetch-site': fc.constantFrom('same-origin', 'cross-site', 'none'),
      'accept-encoding': visible,
    },
    { requiredKeys: ['idempotency-key', 'content-type'] },
  )
  .map((sent) => ({ ...sent }) as Record<string, string>);

/** Who asks: in an open house everybody is the owner; a locked one knows persons, programs and strangers. */
export type Who = 'owner' | 'helper' | 'reader' | 'stranger';
const passphrase = 'a passphrase of the fuzzer';
/** As many sessions as keep the limit of requests a minute out of the way. */
const sessions = 60;

async function keysOf(who: Who, { access, send }: House): Promise<Record<string, string>[]> {
  if (who === 'owner') return [{}];
  await send('POST', '/api/access/passphrase', { passphrase });
  if (who === 'stranger') return [{}, { cookie: 'glasstide=x' }, { authorization: 'Bearer x' }];
  return Array.from({ length: sessions }, () =>
    who === 'helper'
      ? { cookie: `glasstide=${access.accept(access.invite('Fuzz').secret).secret}` }
      : { authorization: `Bearer ${access.makeReader('Fuzz').secret}` },
  );
}

/** A live stream never ends, and a passphrase would lock an open house: both have tests of their own. */
const leftOut = (who: Who, { path }: Operation) =>
  (path === '/api/events' && who !== 'stranger') || (path === '/api/access/passphrase' && who === 'owner');

/** No answer is a fault of ours, and each refusal has its documented shape. */
export async function fuzzRequests(inputs: number, seed: number, who: Who): Promise<void> {
  const outcome = forecastAndAdvise(smallSeason(), '2026-05-10T09:00:00Z', { members: 50 });
  const house = await openHouse({
    forecastNow: async (placeId) => ({ placeId, asOfMs: Date.parse('2026-05-10T09:00:00Z'), ...outcome }),
  });
  await furnish(house);
  const keys = await keysOf(who, house);
  const operations = operationsOf(house).filter((operation) => !leftOut(who, operation));
  let sent = 0;
  const property = fc.asyncProperty(
    fc.oneof(...operations.map(requestsTo)),
    async ({ method, url, headers: named, payload }) => {
      sent += 1;
      const answer = await house.app.inject({
        method: method as 'GET',
        url,
        headers: { ...named, ...keys[sent % keys.length] },
        ...(payload !== undefined && { payload }),
        // A stranger comes from everywhere, so that the limit is not what turns all of them away.
        remoteAddress:
          who === 'owner' ? '127.0.0.1' : `10.${(sent >> 16) & 255}.${(sent >> 8) & 255}.${sent & 255}`,
      });
      if (answer.statusCode >= 500) throw new Error(`${answer.statusCode}: ${answer.body.slice(0, 300)}`);
      if (answer.statusCode < 400 || method === 'HEAD') return;
      const { code, reason, whatToDo } = answer.json();
      if (![code, reason, whatToDo].every((text) => typeof text === 'string' && text !== ''))
        throw new Error(`A refusal of another shape: ${answer.body.slice(0, 300)}`);
    },
  );
  await fc.assert(property, { numRuns: inputs, seed });
  if (Object.hasOwn(Object.prototype, 'polluted')) throw new Error('A body reached Object.prototype.');
  await house.close();
}

async function furnish({ send, store }: House): Promise<void> {
  await send('POST', '/api/places', aPlace);
  const hungAt = '2026-03-01T08:00:00Z';
  await send('POST', '/api/places/lean-to/traps', { id: 'door', name: 'Door', hungAt });
  await send('POST', '/api/places/lean-to/sensors', { id: 'bench', name: 'Bench', unit: 'Cel' });
  await send('POST', '/api/places/lean-to/trap-counts', {
    id: 'door',
    trapId: 'door',
    time: '2026-05-08T08:00:00Z',
    exposureDays: 7,
    counts: { whitefly: 3 },
  });
  const readings = Array.from({ length: 500 }, (_, i) => ({
    sensorId: 'bench',
    timeMs: Date.parse(hungAt) + i * 3_600_000,
    temperatureC: 18 + (i % 9),
  }));
  await store.readings.add('lean-to', readings);
  await store.quarantine.add({
    topic: 't',
    payload: new Uint8Array(3),
    payloadBytes: 3,
    retained: false,
    arrivedMs: 0,
    code: 'payload-unreadable',
    reason: 'No number in it.',
  });
}
