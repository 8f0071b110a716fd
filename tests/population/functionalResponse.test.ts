import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  attackHazard,
  evenHazard,
  handlingTime,
  meanLeft,
  searchAt,
  shareTaken,
} from '../../services/model/population/functionalResponse.ts';

const kind = { searchM2PerDay: 0.1, ceilingPerDay: 20, halfSearchPerM2: 0 };
/** Attacks a day of one hunter on one kind alone. */
const attacks = (density: number, of = kind, activity = 1) =>
  density *
  attackHazard(
    activity,
    searchAt(of, density),
    handlingTime(searchAt(of, density), density, of.ceilingPerDay),
  );
const positive = fc.double({ min: 1e-3, max: 1e4, noNaN: true });

describe('attacks', () => {
  it('follow the disc equation: 0.1 x 100 / (1 + 0.1 x 100 / 20) = 6.67 a day (by hand)', () => {
    expect(attacks(100)).toBeCloseTo(20 / 3, 9);
  });

  it('reach the ceiling when prey is plenty, and half of it at ceiling / search', () => {
    expect(attacks(1e9)).toBeCloseTo(20, 3);
    expect(attacks(200)).toBeCloseTo(10, 9);
  });

  it('are nothing in the cold', () => {
    expect(attacks(100, kind, 0)).toBe(0);
  });

  it('of type III spare what is rare: at the half density half the search (by hand)', () => {
    const third = { ...kind, halfSearchPerM2: 50 };
    expect(searchAt(third, 50)).toBeCloseTo(0.05, 12);
    expect(searchAt(third, 0)).toBe(0);
    // 0.05 x 50 / (1 + 0.05 x 50 / 20).
    expect(attacks(50, third)).toBeCloseTo(2.5 / 1.125, 9);
  });

  it('on two kinds share one time: 10 and 5 a day found, 1 / 20 and 1 / 10 of a day each (by hand)', () => {
    const other = { searchM2PerDay: 0.05, ceilingPerDay: 10, halfSearchPerM2: 0 };
    const busy = handlingTime(0.1, 100, 20) + handlingTime(0.05, 100, 10);
    expect(busy).toBeCloseTo(1, 12);
    // 100 x 0.1 / 2 and 100 x 0.05 / 2 a day.
    expect(100 * attackHazard(1, searchAt(kind, 100), busy)).toBeCloseTo(5, 12);
    expect(100 * attackHazard(1, searchAt(other, 100), busy)).toBeCloseTo(2.5, 12);
  });

  it('are half when as many hunters meet as halve the search, prey being rare (Beddington 1975)', () => {
    const [hunters, halving] = [20, 20];
    expect(attackHazard(hunters, 0.1, hunters / halving)).toBeCloseTo(attackHazard(hunters, 0.1, 0) / 2, 12);
  });

  it('more hunters never leave more prey, and never take more than there is', () => {
    fc.assert(
      fc.property(positive, positive, positive, positive, positive, (n, more, search, ceiling, density) => {
        const of = (hunters: number) => attackHazard(hunters, search, handlingTime(search, density, ceiling));
        for (const hazard of [(h: number) => h, (h: number) => evenHazard(h, 1.5)]) {
          expect(shareTaken(hazard(of(n + more)))).toBeGreaterThanOrEqual(shareTaken(hazard(of(n))));
          expect(shareTaken(hazard(of(n + more)))).toBeLessThanOrEqual(1);
        }
      }),
      { seed: 7, numRuns: 300 },
    );
  });

  it('uneven risk lets more escape than even risk, the less so the larger k', () => {
    expect(evenHazard(2, 1.5)).toBeLessThan(evenHazard(2, 10));
    expect(evenHazard(2, 1e7)).toBeCloseTo(2, 5);
    // (1 + 2 / 1)^-1 = 1/3 escape when k = 1 (by hand).
    expect(shareTaken(evenHazard(2, 1))).toBeCloseTo(2 / 3, 12);
  });

  it('leave on average (1 - exp(-h)) / h over the day, one where nothing is taken', () => {
    expect(meanLeft(0)).toBe(1);
    expect(meanLeft(Math.LN2)).toBeCloseTo(0.5 / Math.LN2, 12);
    expect(meanLeft(1e-4 * 0.999)).toBeCloseTo(meanLeft(1e-4), 6);
  });
});
