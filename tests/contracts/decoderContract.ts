/** What every decoder of readings promises; each runs this suite unchanged. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type Decoder, isRefusal } from '../../services/ingest/decoders/decoder.ts';
import { refusals } from '../../services/refusals.ts';

const arrivedMs = Date.UTC(2026, 4, 13, 6, 10);
const options = { arrivedMs, unit: 'Cel' } as const;

export interface DecoderCase {
  decode: Decoder;
  /** Writes one temperature as a board would. */
  write(temperatureC: number): string;
  /** Payloads of a dead probe. */
  dead: string[];
  /** Payloads of another format, or of none. */
  foreign: string[];
  /** Generates texts near the format, to look for throws. */
  nearby: fc.Arbitrary<string>;
}

export function decoderContract(name: string, { decode, write, dead, foreign, nearby }: DecoderCase): void {
  describe(`${name} keeps the contract of decoders`, () => {
    it('reads back the temperature that was written', () => {
      fc.assert(
        fc.property(fc.integer({ min: -3000, max: 6500 }), (hundredths) => {
          const decoded = decode(write(hundredths / 100), options);
          expect(decoded).toMatchObject({ readings: [{ temperatureC: hundredths / 100 }] });
        }),
        { seed: 1, numRuns: 200 },
      );
    });

    it('dates a reading without a time by its arrival, and says so', () => {
      expect(decode(write(19.4), options)).toMatchObject({
        readings: [{ timeMs: arrivedMs, timeFrom: 'arrival' }],
      });
    });

    it.each(dead)('never makes a temperature of the dead value in %s', (payload) => {
      const decoded = decode(payload, options);
      const temperatures = isRefusal(decoded) ? [] : decoded.readings.map((reading) => reading.temperatureC);
      expect(temperatures.filter((temperature) => temperature !== undefined)).toEqual([]);
      if (isRefusal(decoded)) expect(decoded.code).toMatch(/^value-/);
    });

    it.each(foreign)('refuses %s with a reason', (payload) => {
      const decoded = decode(payload, options);
      expect(isRefusal(decoded)).toBe(true);
      expect(decoded).toMatchObject({ reason: expect.stringMatching(/\.$/) });
    });

    it('never throws, and gives finite numbers or a refusal from the catalogue', () => {
      fc.assert(
        fc.property(fc.oneof(fc.string(), fc.string({ unit: 'binary' }), fc.json(), nearby), (text) => {
          const decoded = decode(text, options);
          if (isRefusal(decoded)) {
            expect(refusals).toHaveProperty(decoded.code);
            expect(decoded.reason).not.toBe('');
            return;
          }
          for (const { temperatureC = 0, humidityPct = 0, timeMs } of decoded.readings) {
            expect([temperatureC, humidityPct, timeMs].every(Number.isFinite)).toBe(true);
          }
        }),
        { seed: 2, numRuns: 2000 },
      );
    });
  });
}
