import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  attackHazard,
  shareEaten,
  shareParasitised,
} from '../../services/model/population/functionalResponse.ts';

const hunt = { hunters: 1, activity: 1, searchM2PerDay: 0.1, ceilingPerDay: 20, exposed: 100 };
const positive = fc.double({ min: 1e-3, max: 1e4, noNaN: true });
const share = fc.double({ min: 0, max: 1, noNaN: true });

describe('attacks', () => {
  it('follow the disc equation: 0.1 x 100 / (1 + 0.1 x 100 / 20) = 6.67 a day (by hand)', () => {
    expect(attackHazard(hunt) * hunt.exposed).toBeCloseTo(20 / 3, 9);
  });

  it('reach the ceiling when prey is plenty, and half of it at ceiling / search', () => {
    expect(attackHazard({ ...hunt, exposed: 1e9 }) * 1e9).toBeCloseTo(20, 3);
    expect(attackHazard({ ...hunt, exposed: 200 }) * 200).toBeCloseTo(10, 9);
  });

  it('are nothing in the cold', () => {
    expect(attackHazard({ ...hunt, activity: 0 })).toBe(0);
  });

  it('more hunters never leave more prey, and never take more than there is', () => {
    fc.assert(
      fc.property(
        positive,
        positive,
        positive,
        positive,
        positive,
        share,
        (n, more, search, ceiling, exposed, activity) => {
          const of = (hunters: number) =>
            attackHazard({ hunters, activity, searchM2PerDay: search, ceilingPerDay: ceiling, exposed });
          for (const taken of [shareEaten, (hazard: number) => shareParasitised(hazard, 1.5)]) {
            expect(taken(of(n + more))).toBeGreaterThanOrEqual(taken(of(n)));
            expect(taken(of(n + more))).toBeLessThanOrEqual(1);
          }
        },
      ),
      { seed: 7, numRuns: 300 },
    );
  });

  it('uneven risk lets more escape than even risk, the less so the larger k', () => {
    expect(shareParasitised(2, 1.5)).toBeLessThan(shareParasitised(2, 10));
    expect(shareParasitised(2, 1e7)).toBeCloseTo(shareEaten(2), 5);
    // (1 + 2 / 1)^-1 = 1/3 escape when k = 1 (by hand).
    expect(shareParasitised(2, 1)).toBeCloseTo(2 / 3, 12);
  });
});
