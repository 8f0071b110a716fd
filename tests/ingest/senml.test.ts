import { describe, expect, it } from 'vitest';
import { senml } from '../../services/ingest/decoders/senml.ts';

const arrivedMs = Date.UTC(2026, 4, 13, 6, 10);
const decode = (text: string) => senml(text, { arrivedMs, unit: 'Cel' });

/** Examples of RFC 8428 (August 2018) §5, written down from memory. */
describe('SenML examples of RFC 8428', () => {
  it('§5.1.1 a single data point without a time is one of now', () => {
    expect(decode('[{"n":"urn:dev:ow:10e2073a01080063","u":"Cel","v":23.1}]')).toEqual({
      readings: [{ temperatureC: 23.1, timeMs: arrivedMs, timeFrom: 'arrival' }],
      unitStated: true,
      notes: [],
    });
  });

  it('§5.1.2 volts and amperes are no climate', () => {
    const pack = `[{"bn":"urn:dev:ow:10e2073a01080063:","n":"voltage","u":"V","v":120.1},
      {"n":"current","u":"A","v":1.2}]`;
    expect(decode(pack)).toMatchObject({ code: 'unit-unknown', reason: expect.stringContaining('V, A') });
  });

  it('§5.1.3 base time and base unit hold for the records after them', () => {
    const pack = `[{"bn":"urn:dev:ow:10e2073a01080063","bt":1.320067464e+09,"bu":"%RH","v":20},
      {"u":"lon","v":24.30621},{"u":"lat","v":60.07965},
      {"t":60,"v":20.3},{"u":"lon","t":60,"v":24.30622},{"u":"lat","t":60,"v":60.07965},
      {"t":120,"v":20.7},{"u":"lon","t":120,"v":24.30623},{"u":"lat","t":120,"v":60.07966},
      {"u":"%EL","t":150,"v":98},
      {"t":180,"v":21.2},{"u":"lon","t":180,"v":24.30628},{"u":"lat","t":180,"v":60.07967}]`;
    expect(decode(pack)).toEqual({
      readings: [
        { humidityPct: 20, timeMs: 1_320_067_464_000, timeFrom: 'board' },
        { humidityPct: 20.3, timeMs: 1_320_067_524_000, timeFrom: 'board' },
        { humidityPct: 20.7, timeMs: 1_320_067_584_000, timeFrom: 'board' },
        { humidityPct: 21.2, timeMs: 1_320_067_644_000, timeFrom: 'board' },
      ],
      unitStated: true,
      notes: ['9 other records left out'],
    });
  });

  it('§5.1.5 texts, switches and data beside a temperature are passed over', () => {
    const pack = `[{"bn":"urn:dev:ow:10e2073a01080063:","n":"temp","u":"Cel","v":23.1},
      {"n":"label","vs":"Machine Room"},{"n":"open","vb":false},{"n":"nfc-reader","vd":"aGkgCg"}]`;
    expect(decode(pack)).toMatchObject({ readings: [{ temperatureC: 23.1 }] });
  });

  it('§5.1.6 two devices in one pack: which one hangs in the house is not guessed', () => {
    const pack = `[{"bn":"2001:db8::2/","bt":1.320078429e+09,"n":"temperature","u":"Cel","v":27.2},
      {"n":"humidity","u":"%RH","v":80},
      {"bn":"2001:db8::1/","n":"temperature","u":"Cel","v":12.3},{"n":"humidity","u":"%RH","v":67}]`;
    expect(decode(pack)).toMatchObject({
      code: 'payload-unreadable',
      reason: expect.stringContaining('2001:db8::1/temperature'),
    });
  });
});

describe('SenML clauses', () => {
  it('§4.5.3 times below 2^28 are relative to now, also with a base time', () => {
    const pack = '[{"bn":"a","bu":"Cel","bt":-600,"v":18.5},{"t":300,"v":18.7}]';
    expect(decode(pack)).toMatchObject({
      readings: [
        { temperatureC: 18.5, timeMs: arrivedMs - 600_000, timeFrom: 'arrival' },
        { temperatureC: 18.7, timeMs: arrivedMs - 300_000, timeFrom: 'arrival' },
      ],
    });
  });

  it.each([
    [2 ** 28 - 1, 'arrival'],
    [2 ** 28, 'board'],
  ])('§4.5.3 the border: %i s', (t, timeFrom) => {
    expect(decode(JSON.stringify([{ u: 'Cel', v: 1, t }]))).toMatchObject({ readings: [{ timeFrom }] });
  });

  it('§4.1 a base value is added', () => {
    expect(decode('[{"bv":20,"bu":"Cel","t":-60,"v":1.5},{"v":-0.5}]')).toMatchObject({
      readings: [{ temperatureC: 21.5 }, { temperatureC: 19.5 }],
    });
  });

  it('temperature and humidity of one time are one reading, and kelvins are converted', () => {
    expect(decode('[{"bt":1778652600,"u":"K","v":292.55},{"u":"%RH","v":68}]')).toMatchObject({
      readings: [{ temperatureC: 19.4, humidityPct: 68, timeMs: Date.parse('2026-05-13T06:10:00Z') }],
    });
  });

  it('§4.4 a higher version or an extension that must be understood is not used', () => {
    expect(decode('[{"bver":11,"u":"Cel","v":20}]')).toMatchObject({ code: 'payload-unreadable' });
    expect(decode('[{"u":"Cel","v":20,"wave_":1}]')).toMatchObject({
      code: 'payload-unreadable',
      reason: expect.stringContaining('wave_'),
    });
    expect(decode('[{"u":"Cel","v":20,"wave":1}]')).toMatchObject({ readings: [{ temperatureC: 20 }] });
  });

  it('°F is in no registry of SenML: refused, never guessed', () => {
    expect(decode('[{"u":"Far","v":64}]')).toMatchObject({
      code: 'unit-unknown',
      issues: [{ path: 'u', received: 'Far' }],
    });
  });
});
