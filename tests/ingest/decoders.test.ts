import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { decodeReadings } from '../../services/ingest/decoders/decodeReadings.ts';
import { jsonObject } from '../../services/ingest/decoders/jsonObject.ts';
import { parseNearJson } from '../../services/ingest/decoders/nearJson.ts';
import { plainNumber } from '../../services/ingest/decoders/plainNumber.ts';
import { senml } from '../../services/ingest/decoders/senml.ts';
import { decoderContract } from '../contracts/decoderContract.ts';

const arrivedMs = Date.UTC(2026, 4, 13, 6, 10);
const options = { arrivedMs, unit: 'Cel' } as const;
const bytes = (text: string) => new TextEncoder().encode(text);

const value = fc.oneof(fc.double(), fc.string(), fc.constant(null), fc.constant('nan'));

decoderContract('plain number', {
  decode: plainNumber,
  write: String,
  dead: ['nan', 'NaN', '-nan', ' nan ', 'inf', '-Infinity', 'null', 'unavailable', '1e999'],
  foreign: ['19,4', '19.4 C', '0x1F', 'warm', '1 2', '{}', '[]', '12:30'],
  nearby: fc.double().map(String),
});

decoderContract('JSON object', {
  decode: jsonObject,
  write: (temperatureC) => JSON.stringify({ temperatureC }),
  dead: [
    '{"temperatureC": nan}',
    '{"temperatureC": NaN, "humidityPct": 61}',
    '{"temperatureC": -inf}',
    '{"temperatureC": null}',
    '{"temperatureC": "nan"}',
    '{"temperatureC": 1e999}',
  ],
  foreign: [
    '{"temperatureC": 19',
    '{"temperature": 19}',
    '{"temperatureC": "warm"}',
    '{"temperatureC": [1]}',
    '[]',
    '7',
    '',
  ],
  nearby: fc.record({ temperatureC: value, humidityPct: value, time: value }).map((v) => JSON.stringify(v)),
});

decoderContract('SenML', {
  decode: senml,
  write: (temperatureC) => JSON.stringify([{ n: 'air', u: 'Cel', v: temperatureC }]),
  dead: ['[{"n":"air","u":"Cel","v":nan}]', '[{"n":"air","u":"Cel","v":null},{"n":"rh","u":"%RH","v":60}]'],
  foreign: ['[]', '{}', '19.4', '[1]', '[{"u":"Cel","v":"19"}]', '[{"u":"Far","v":64}]', '[{"v":19}]'],
  nearby: fc
    .array(
      fc.record(
        {
          bt: fc.double(),
          bv: fc.double(),
          bu: fc.constantFrom('Cel', 'K', '%RH', 'V'),
          v: value,
          t: fc.double(),
          u: fc.constantFrom('Cel', '%RH'),
        },
        { requiredKeys: [] },
      ),
    )
    .map((pack) => JSON.stringify(pack)),
});

describe('near-JSON', () => {
  it('saves what lives beside a dead value, which is missing and not 0', () => {
    const decoded = jsonObject('{"temperatureC": 19.4, "humidityPct": nan}', options);
    expect(decoded).toEqual({
      readings: [{ temperatureC: 19.4, timeMs: arrivedMs, timeFrom: 'arrival' }],
      unitStated: false,
      notes: ['humidity missing: no number came'],
    });
  });

  it('leaves text in quotes alone', () => {
    expect(parseNearJson('{"a": nan, "b": "nan, \\"inf\\" and so on", "c": [-Infinity]}')).toEqual({
      value: { a: null, b: 'nan, "inf" and so on', c: [null] },
    });
  });

  it('agrees with JSON wherever there is JSON', () => {
    fc.assert(
      fc.property(fc.jsonValue(), (document) => {
        expect(parseNearJson(JSON.stringify(document))).toEqual({
          value: JSON.parse(JSON.stringify(document)),
        });
      }),
      { seed: 3 },
    );
  });
});

describe('JSON with the pointers of a sensor', () => {
  const payload = '{"probes": [{"t": 64.4, "rh": "71"}, {"t": 12.0}], "at": 1778652600}';

  it('reads the pointed fields in the unit of the sensor', () => {
    const pointers = { temperature: '/probes/0/t', humidity: '/probes/0/rh', time: '/at' };
    expect(jsonObject(payload, { arrivedMs, unit: 'Far', pointers })).toMatchObject({
      // 64.4 °F is 18 °C by the definition of the scales; the epoch is that of 2026-05-13T06:10:00Z.
      readings: [
        {
          temperatureC: 18,
          humidityPct: 71,
          timeMs: Date.parse('2026-05-13T06:10:00Z'),
          timeFrom: 'board',
        },
      ],
    });
  });

  it('names the fields that did come when the pointed one is missing', () => {
    const decoded = jsonObject(payload, options);
    expect(decoded).toMatchObject({ code: 'value-missing', reason: expect.stringContaining('/probes/0/t') });
  });

  it('names absolute zero as 0 K', () => {
    expect(plainNumber('0', { arrivedMs, unit: 'K' })).toMatchObject({
      readings: [{ temperatureC: -273.15 }],
    });
  });
});

describe('the choice of the format', () => {
  it.each([
    ['19.4', { temperatureC: 19.4 }],
    [' {"temperatureC": 19.4}', { temperatureC: 19.4 }],
    ['\n[{"u":"K","v":292.55}]', { temperatureC: 19.4 }],
  ])('%j', (text, reading) => {
    expect(decodeReadings(bytes(text), options)).toMatchObject({ readings: [reading] });
  });

  it('never throws on arbitrary bytes', () => {
    fc.assert(
      fc.property(fc.uint8Array({ maxLength: 300 }), (payload) => {
        expect(decodeReadings(payload, options)).toBeTypeOf('object');
      }),
      { seed: 4, numRuns: 2000 },
    );
  });

  it('refuses bytes that are no text', () => {
    expect(decodeReadings(new Uint8Array([0xff, 0xfe, 0x00]), options)).toMatchObject({
      code: 'payload-unreadable',
      reason: expect.stringContaining('3 bytes'),
    });
  });
});
