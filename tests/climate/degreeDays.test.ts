/** The exact integral against plain numerical integration of the textbook rate, on curves nobody chose. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { degreeDaysBetween, whenReached } from '../../services/model/climate/degreeDays.ts';
import type { DegreeDayLaw } from '../../services/model/climate/developmentRate.ts';
import { temperatureAt } from '../../services/model/climate/temperatureCurve.ts';
import { day, hour, throughPoints } from './curves.ts';

/** The rate as the textbooks put it, in cases. */
function textbookRate(law: DegreeDayLaw, t: number): number {
  if ('plateauC' in law) {
    if (t <= law.lowerC || t >= law.zeroC) return 0;
    if (t <= law.plateauC) return t - law.lowerC;
    return ((law.plateauC - law.lowerC) * (law.zeroC - t)) / (law.zeroC - law.plateauC);
  }
  const { lowerC, upperC, cutoff } = law;
  if (t <= lowerC) return 0;
  if (upperC === undefined || t <= upperC || cutoff === 'none') return t - lowerC;
  if (cutoff === 'vertical') return 0;
  return cutoff === 'intermediate' ? Math.max(0, 2 * upperC - t - lowerC) : upperC - lowerC;
}

/** Lopsided on purpose: readings minutes to hours apart, frost to heat, a flat stretch now and then. */
const steps = fc.array(
  fc.record({
    minutes: fc.integer({ min: 3, max: 200 }),
    temperatureC: fc.oneof(fc.double({ min: -8, max: 45, noNaN: true }), fc.constantFrom(8.5, 20, 28)),
  }),
  { minLength: 2, maxLength: 25 },
);
const curves = steps.map((all) => {
  let minutes = 0;
  return throughPoints(
    all.map((step) => {
      minutes += step.minutes;
      return [minutes / 60, step.temperatureC] as const;
    }),
  );
});
const laws = fc.oneof(
  fc.record({ lowerC: fc.double({ min: 2, max: 15, noNaN: true }) }),
  fc.record({
    lowerC: fc.double({ min: 2, max: 15, noNaN: true }),
    upperC: fc.double({ min: 16, max: 33, noNaN: true }),
    cutoff: fc.constantFrom(
      'none' as const,
      'horizontal' as const,
      'intermediate' as const,
      'vertical' as const,
    ),
  }),
  fc.record({
    lowerC: fc.double({ min: 2, max: 15, noNaN: true }),
    plateauC: fc.double({ min: 16, max: 30, noNaN: true }),
    zeroC: fc.double({ min: 31, max: 40, noNaN: true }),
  }),
);

describe('degree-days of a curve', () => {
  it('equal numerical integration of the textbook rate, whatever the cut-off', () => {
    fc.assert(
      fc.property(curves, laws, (curve, law) => {
        const [fromMs, toMs] = [curve.timesMs[0]! - hour, curve.timesMs.at(-1)! + hour];
        const slices = 20_000;
        const sliceMs = (toMs - fromMs) / slices;
        let sum = 0;
        for (let i = 0; i < slices; i += 1) {
          sum += textbookRate(law, temperatureAt(curve, fromMs + (i + 0.5) * sliceMs));
        }
        // A vertical cut-off jumps by up to 31 degrees a day, missed by at most a slice at each of 25 crossings.
        const tolerance = (26 * 31 * sliceMs) / day;
        expect(Math.abs(degreeDaysBetween(curve, law, fromMs, toMs) - (sum * sliceMs) / day)).toBeLessThan(
          tolerance,
        );
      }),
      { numRuns: 60, seed: 20260513 },
    );
  });

  it('add up over parts of the time', () => {
    const share = fc.double({ min: 0, max: 1, noNaN: true });
    fc.assert(
      fc.property(curves, laws, share, (curve, law, part) => {
        const [fromMs, toMs] = [curve.timesMs[0]!, curve.timesMs.at(-1)!];
        const middleMs = fromMs + part * (toMs - fromMs);
        const whole = degreeDaysBetween(curve, law, fromMs, toMs);
        const parts =
          degreeDaysBetween(curve, law, fromMs, middleMs) + degreeDaysBetween(curve, law, middleMs, toMs);
        expect(parts).toBeCloseTo(whole, 9);
      }),
      { seed: 20260513 },
    );
  });

  it('do not change when a reading is added that lies on the line', () => {
    fc.assert(
      fc.property(
        curves,
        laws,
        fc.nat(),
        fc.double({ min: 0.01, max: 0.99, noNaN: true }),
        (curve, law, which, share) => {
          const i = which % (curve.timesMs.length - 1);
          const addedMs = curve.timesMs[i]! + share * (curve.timesMs[i + 1]! - curve.timesMs[i]!);
          const points = Array.from(
            curve.timesMs,
            (timeMs, k) => [timeMs / hour, curve.temperaturesC[k]!] as const,
          );
          points.splice(i + 1, 0, [addedMs / hour, temperatureAt(curve, addedMs)]);
          const total = (c: typeof curve) =>
            degreeDaysBetween(c, law, curve.timesMs[0]!, curve.timesMs.at(-1)!);
          expect(total(throughPoints(points))).toBeCloseTo(total(curve), 9);
        },
      ),
      { seed: 20260513 },
    );
  });

  it('reach what they need exactly when the sum says so', () => {
    fc.assert(
      fc.property(curves, laws, fc.double({ min: 0.01, max: 0.99, noNaN: true }), (curve, law, share) => {
        const fromMs = curve.timesMs[0]!;
        const total = degreeDaysBetween(curve, law, fromMs, curve.timesMs.at(-1)!);
        fc.pre(total > 1e-6);
        const reachedMs = whenReached(curve, law, fromMs, share * total);
        expect(degreeDaysBetween(curve, law, fromMs, reachedMs!)).toBeCloseTo(share * total, 7);
      }),
      { seed: 20260513 },
    );
  });

  it('are never reached when the curve ends before, and at once when nothing is needed', () => {
    const curve = throughPoints([
      [0, 20],
      [24, 20],
    ]);
    expect(whenReached(curve, { lowerC: 10 }, 0, 10.01)).toBeUndefined();
    expect(whenReached(curve, { lowerC: 10 }, 5 * hour, 0)).toBe(5 * hour);
  });

  it('refuse thresholds in the wrong order', () => {
    const curve = throughPoints([
      [0, 20],
      [24, 20],
    ]);
    expect(() => degreeDaysBetween(curve, { lowerC: 20, upperC: 10 }, 0, day)).toThrow(/upper threshold/);
    expect(() => degreeDaysBetween(curve, { lowerC: 8, plateauC: 36, zeroC: 35 }, 0, day)).toThrow(/plateau/);
  });
});
