/**
 * Degree-days of single days: worked rows printed by extension services, and closed forms that follow by
 * calculus from the definition of each method. Degrees are the source's own (many print Fahrenheit): the
 * methods work in any unit.
 */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  averageDegreeDays,
  doubleDegreeDays,
  fourCaseDegreeDays,
  modifiedDegreeDays,
  shapedDegreeDays,
} from '../../services/model/climate/dailyDegreeDays.ts';
import { sine, triangle } from '../../services/model/climate/dayShape.ts';
import { degreeDaysBetween } from '../../services/model/climate/degreeDays.ts';
import { type Cutoff, degreeDayRate } from '../../services/model/climate/developmentRate.ts';
import { celsiusDegreeDays } from '../../services/model/units.ts';
import { hour, throughPoints } from '../climate/curves.ts';

const day = (minC: number, maxC: number) => ({ minC, maxC });
const within = (cutoff: Cutoff) => ({ lowerC: 15, upperC: 25, cutoff });
const wide = (cutoff: Cutoff) => ({ lowerC: 10, upperC: 30, cutoff });

describe('printed worked rows', () => {
  // Nugent, Michigan State University extension, on growing degree-days.
  it('check 11: average of 40 and 65 °F above 50 is 2.5, of 35 and 60 it is 0', () => {
    expect(averageDegreeDays(day(40, 65), 50)).toBeCloseTo(2.5, 9);
    expect(averageDegreeDays(day(35, 60), 50)).toBe(0);
  });

  // Iowa State University, Agronomy 541, lesson 2b.
  it('check 12: average of 50 and 70 °F above 50 is 10', () => {
    expect(averageDegreeDays(day(50, 70), 50)).toBeCloseTo(10, 9);
  });

  // UC citrus pest management guideline, table cit-t01; University of Kentucky ENTFACT-123.
  it('a mean of 64 °F above 53 is 11, of 49 above 48 is 1', () => {
    expect(averageDegreeDays(day(64, 64), 53)).toBeCloseTo(11, 9);
    expect(averageDegreeDays(day(49, 49), 48)).toBeCloseTo(1, 9);
  });

  // University of Wisconsin county extension column on corn growing degree-days, 50/86 °F.
  it('check 13: modified average of three days is 25.5, 11, 6.5 and 43 in all', () => {
    const days = [day(65, 90), day(46, 72), day(42, 63)].map((d) =>
      modifiedDegreeDays(d, { lowerC: 50, upperC: 86 }),
    );
    expect(days.map((value) => Number(value.toFixed(9)))).toEqual([25.5, 11, 6.5]);
    expect(days[0]! + days[1]! + days[2]!).toBeCloseTo(43, 9);
  });

  // Karhoff, Ohio State University extension (first row); an agronomist's column on 50/86 °F (two rows).
  it('check 14: modified average of 63/87, 63/81 and 44/68 is 24.5, 22 and 9', () => {
    const modified = (minC: number, maxC: number) =>
      modifiedDegreeDays({ minC, maxC }, { lowerC: 50, upperC: 86 });
    expect(modified(63, 87)).toBeCloseTo(24.5, 9);
    expect(modified(63, 81)).toBeCloseTo(22, 9);
    expect(modified(44, 68)).toBeCloseTo(9, 9);
  });

  // Iowa State University, Agronomy 541, lesson 2b: the most a day can give.
  it('check 15: modified average of a day at 86 °F or above is 36', () => {
    expect(modifiedDegreeDays(day(86, 86), { lowerC: 50, upperC: 86 })).toBeCloseTo(36, 9);
    expect(modifiedDegreeDays(day(88, 97), { lowerC: 50, upperC: 86 })).toBeCloseTo(36, 9);
  });

  // Met Éireann, description of its degree-day data: the four cases.
  it('check 58: four cases above base 10', () => {
    expect(fourCaseDegreeDays(day(8, 14), 10)).toBeCloseTo(1.5, 9);
    expect(fourCaseDegreeDays(day(5, 15), 10)).toBeCloseTo(1.25, 9);
    expect(fourCaseDegreeDays(day(2, 12), 10)).toBeCloseTo(0.5, 9);
    expect(fourCaseDegreeDays(day(12, 20), 10)).toBeCloseTo(6, 9);
    expect(fourCaseDegreeDays(day(2, 10), 10)).toBe(0);
  });

  // Oregon State University, Entomology 442/542 handout: 350.8 Fahrenheit degree-days; x 5/9 by definition.
  it('check 18: 350.8 Fahrenheit degree-days are 194.89 Celsius degree-days', () => {
    expect(Math.abs(celsiusDegreeDays(350.8) - 194.89)).toBeLessThan(0.01);
  });
});

describe('closed forms', () => {
  // Threshold at the mean: the positive half of a sine has the area (b - a) / (2 pi).
  it('check 1: sine 10/30 above 20 is 20 / (2 pi)', () => {
    expect(shapedDegreeDays(sine, day(10, 30), { lowerC: 20 })).toBeCloseTo(3.183099, 6);
    expect(shapedDegreeDays(sine, day(10, 30), { lowerC: 20 })).toBeCloseTo(20 / (2 * Math.PI), 12);
  });

  // Crossing angle pi/6: (1/pi) (-5 pi/3 + 10 cos(pi/6)) and its mirror image.
  it('check 2: sine 10/30 above 25 is 1.089978, above 15 it is 6.089978', () => {
    expect(shapedDegreeDays(sine, day(10, 30), { lowerC: 25 })).toBeCloseTo(1.089978, 6);
    expect(shapedDegreeDays(sine, day(10, 30), { lowerC: 15 })).toBeCloseTo(6.089978, 6);
  });

  // Areas of triangles.
  it('check 3: triangle 10/30 above 20, 25 and 15 is 2.5, 0.625 and 5.625', () => {
    const above = (lowerC: number) => shapedDegreeDays(triangle, day(10, 30), { lowerC });
    expect([above(20), above(25), above(15)]).toEqual([2.5, 0.625, 5.625]);
  });

  it('check 4: sine 10/30 between 15 and 25 by the three cut-offs', () => {
    const by = (cutoff: Cutoff) => shapedDegreeDays(sine, day(10, 30), within(cutoff));
    expect(by('horizontal')).toBeCloseTo(5, 5);
    expect(by('intermediate')).toBeCloseTo(3.910022, 5);
    expect(by('vertical')).toBeCloseTo(1.666667, 5);
    expect(by('none')).toBeCloseTo(6.089978, 5);
  });

  it('check 5: triangle 10/30 between 15 and 25 by the three cut-offs', () => {
    const by = (cutoff: Cutoff) => shapedDegreeDays(triangle, day(10, 30), within(cutoff));
    expect(by('horizontal')).toBeCloseTo(5, 9);
    expect(by('intermediate')).toBeCloseTo(4.375, 9);
    expect(by('vertical')).toBeCloseTo(2.5, 9);
  });

  it('check 6: sine 12/34 between 10 and 30', () => {
    const by = (cutoff: Cutoff) => shapedDegreeDays(sine, day(12, 34), wide(cutoff));
    expect(by('horizontal')).toBeCloseTo(12.26212, 4);
    expect(by('vertical')).toBeCloseTo(6.65336, 4);
  });

  it('check 7: sine 5/35 between 10 and 30', () => {
    const by = (cutoff: Cutoff) => shapedDegreeDays(sine, day(5, 35), wide(cutoff));
    expect(by('horizontal')).toBeCloseTo(10, 4);
    expect(by('intermediate')).toBeCloseTo(9.11839, 4);
    expect(by('vertical')).toBeCloseTo(4.64559, 4);
  });

  // Half of the sine 5/25 (6.089978) and half of the sine 11/25, which lies above 10 throughout (8).
  it('check 8: double sine 5/25 and then 11 above 10 is 7.044989', () => {
    const double = doubleDegreeDays(sine, { minC: 5, maxC: 25, nextMinC: 11 }, { lowerC: 10 });
    expect(double).toBeCloseTo(7.044989, 5);
  });

  it('double triangle 10/30 and then 14 above 20 is 2.8125', () => {
    const double = doubleDegreeDays(triangle, { minC: 10, maxC: 30, nextMinC: 14 }, { lowerC: 20 });
    expect(double).toBeCloseTo(2.8125, 9);
  });

  // Whatever the shape, if it is symmetric about its mean M then A(M - d) - A(M + d) = d.
  it('check 9: a symmetric day gives d more at d below its mean than at d above', () => {
    const cases = fc.record({
      minC: temperature,
      range: positive,
      share: fc.double({ min: 0, max: 1.5, noNaN: true }),
    });
    fc.assert(
      fc.property(cases, fc.constantFrom(sine, triangle), ({ minC, range, share }, shape) => {
        const meanC = minC + range / 2;
        const d = (share * range) / 2;
        const above = (lowerC: number) => shape.degreesAbove({ minC, maxC: minC + range }, lowerC);
        expect(above(meanC - d) - above(meanC + d)).toBeCloseTo(d, 9);
      }),
    );
  });

  // T - L, 0 and, for the intermediate cut-off, (T - L) - 2 (T - U) = -1 stopped at 0.
  it('check 10: a constant 31 °C between 10 and 20 gives 10, 0 and never less than 0', () => {
    const law = (cutoff: Cutoff) => ({ lowerC: 10, upperC: 20, cutoff });
    for (const shape of [sine, triangle]) {
      expect(shapedDegreeDays(shape, day(31, 31), law('horizontal'))).toBeCloseTo(10, 9);
      expect(shapedDegreeDays(shape, day(31, 31), law('vertical'))).toBeCloseTo(0, 9);
      expect(shapedDegreeDays(shape, day(31, 31), law('intermediate'))).toBeCloseTo(0, 9);
    }
    expect(degreeDayRate(law('intermediate'), 31)).toBe(0);
  });

  // McMaster & Wilhelm 1997, Agric For Meteorol 87:291-300, on the two readings of one equation.
  it('check 16: one day 5/15 above 10 has four answers: 0, 1.25, 1.591549 and 2.5', () => {
    expect(averageDegreeDays(day(5, 15), 10)).toBe(0);
    expect(shapedDegreeDays(triangle, day(5, 15), { lowerC: 10 })).toBeCloseTo(1.25, 6);
    expect(shapedDegreeDays(sine, day(5, 15), { lowerC: 10 })).toBeCloseTo(1.591549, 6);
    expect(modifiedDegreeDays(day(5, 15), { lowerC: 10 })).toBeCloseTo(2.5, 6);
  });

  // (10/24) cot(pi/24): half a percent below the integral, because straight lines cut the crest.
  it('check 17: the line through hourly readings of 20 + 10 sin gives 3.164898 above 20', () => {
    const points = Array.from(
      { length: 25 },
      (_, k) => [k, 20 + 10 * Math.sin((2 * Math.PI * k) / 24)] as const,
    );
    const sum = degreeDaysBetween(throughPoints(points), { lowerC: 20 }, 0, 24 * hour);
    expect(sum).toBeCloseTo(3.164898, 6);
    expect(sum).toBeCloseTo(10 / 24 / Math.tan(Math.PI / 24), 9);
  });

  // Jensen's inequality: the more of the day a method spreads around the threshold, the more it finds above it.
  it('check 59: method 1 < triangle < sine < method 2 whenever the lower threshold lies inside the day', () => {
    const inside = fc.record({
      minC: temperature,
      range: positive,
      share: fc.double({ min: 0.02, max: 0.98, noNaN: true }),
    });
    fc.assert(
      fc.property(inside, ({ minC, range, share }) => {
        const extremes = day(minC, minC + range);
        const lowerC = minC + share * range;
        const values = [
          averageDegreeDays(extremes, lowerC),
          shapedDegreeDays(triangle, extremes, { lowerC }),
          shapedDegreeDays(sine, extremes, { lowerC }),
          modifiedDegreeDays(extremes, { lowerC }),
        ];
        for (let i = 1; i < values.length; i += 1) expect(values[i]!).toBeGreaterThan(values[i - 1]!);
      }),
    );
  });

  it('a day wholly between the thresholds is its mean minus the lower one, by every method', () => {
    for (const shape of [sine, triangle]) {
      expect(shapedDegreeDays(shape, day(12, 20), wide('vertical'))).toBeCloseTo(6, 12);
    }
    expect(averageDegreeDays(day(12, 20), 10)).toBe(6);
    expect(modifiedDegreeDays(day(12, 20), { lowerC: 10, upperC: 30 })).toBe(6);
  });
});

const temperature = fc.double({ min: -20, max: 30, noNaN: true });
const positive = fc.double({ min: 0.5, max: 35, noNaN: true });
