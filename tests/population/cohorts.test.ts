import { describe, expect, it } from 'vitest';
import {
  adultsIn,
  ageAdults,
  boxCount,
  layingAdults,
  thinAdults,
} from '../../services/model/population/adults.ts';
import {
  addBirths,
  dropCohorts,
  growTo,
  inStage,
  noCohorts,
  standingNumber,
  takeFromStages,
} from '../../services/model/population/cohorts.ts';
import {
  type ShareTable,
  shareAt,
  standingShares,
  tabulateStages,
} from '../../services/model/population/stages.ts';

const stages = [
  { name: 'egg', exit: 0.28, survival: 0.9 },
  { name: 'larva', exit: 0.7, survival: 0.7 },
  { name: 'pupa', exit: 1, survival: 0.95 },
];
const table = tabulateStages(stages, 0.12);
const standing = standingShares(stages, 1);
const meanOver = (of: (pace: ShareTable) => number) =>
  table.paces.reduce((sum, pace) => sum + of(pace) / table.paces.length, 0);

describe('cohorts', () => {
  it('neither lose nor make insects: entries = alive + taken + matured, to 1e-9, where nobody dies by himself', () => {
    const cohorts = noCohorts(table, standingShares(stages, 0), 80);
    let [clock, entered, taken, out] = [0, 0, 0, 0];
    for (let day = 0; day < 70; day++) {
      const born = day < 60 ? 3 + ((day * 5) % 7) : 0;
      clock += 0.01 + (0.04 * ((day * 7) % 11)) / 11;
      out += growTo(cohorts, clock);
      addBirths(cohorts, clock, born);
      entered += born;
      taken += takeFromStages(cohorts, Float64Array.of(0.1, day % 3 === 0 ? 0.3 : 0, 0.02));
      const alive = standingNumber(cohorts);
      expect(Math.abs(alive + taken + out - entered) / entered).toBeLessThan(1e-9);
    }
    expect(out).toBeGreaterThan(1);
    expect(taken).toBeGreaterThan(1);
  });

  it('grow the same in the memory of others, whatever is left in it', () => {
    const season = (memory?: Float64Array): number[] => {
      const cohorts = noCohorts(table, standing, 60);
      if (memory) expect(cohorts.memory).toBe(memory);
      return Array.from({ length: 50 }, (_, day) => {
        const out = growTo(cohorts, 0.03 * day);
        // Every seventh day some are put in that are older than the last.
        addBirths(cohorts, 0.03 * (day % 7 === 3 ? day - 6 : day), 2);
        return out + standingNumber(cohorts);
      });
    };
    const fresh = season();
    const left = noCohorts(table, standing, 60);
    const { memory } = left;
    memory.fill(Number.NaN);
    dropCohorts(left);
    expect(season(memory)).toEqual(fresh);
  });

  it('stand as the table says while nobody takes from them: births x survival so far x share, any steps', () => {
    for (const step of [0.013, 0.05, 0.4]) {
      const cohorts = noCohorts(table, standing, 1);
      addBirths(cohorts, 0, 7);
      let out = 0;
      for (let clock = step; clock < 1.6; clock += step) {
        out += growTo(cohorts, clock);
        for (const i of stages.keys()) {
          const share = meanOver(({ inStage: of }) => shareAt(table, of[i]!, clock));
          expect(inStage(cohorts, i)).toBeCloseTo(7 * standing[i]! * share, 9);
        }
        expect(out).toBeCloseTo(
          7 * standing[3]! * meanOver(({ past }) => shareAt(table, past[2]!, clock)),
          9,
        );
      }
    }
  });

  it('lets the published share live to the end: the product over the stages', () => {
    const cohorts = noCohorts(table, standing, 1);
    addBirths(cohorts, 0, 1000);
    expect(growTo(cohorts, 5)).toBeCloseTo(1000 * 0.9 * 0.7 * 0.95, 6);
  });

  it('stands half in a stage at its mean exit, nearly (median of a gamma close to its mean)', () => {
    const cohorts = noCohorts(table, standingShares(stages, 0), 1);
    addBirths(cohorts, 0, 1);
    // P(done by mean) for cv 0.1 is 0.513 and for cv 0.2 is 0.527 (Erlang table, references/monitoring.md section 4).
    growTo(cohorts, 0.28);
    const left = 1 - inStage(cohorts, 0);
    expect(left).toBeGreaterThan(0.513);
    expect(left).toBeLessThan(0.527);
  });

  it('takes only from the stages named: who eats all eggs each day spares the larvae there', () => {
    const cohorts = noCohorts(table, standingShares(stages, 0), 1);
    addBirths(cohorts, 0, 10);
    // At age 0.28 about half are larvae already; the eggs are eaten, the larvae all mature.
    growTo(cohorts, 0.28);
    const larvae = inStage(cohorts, 1);
    expect(larvae).toBeGreaterThan(4);
    const eaten = takeFromStages(cohorts, Float64Array.of(1, 0, 0));
    expect(eaten + larvae).toBeCloseTo(10, 9);
    expect(growTo(cohorts, 5)).toBeCloseTo(larvae, 9);
  });

  it('stand the same whether an older cohort is put in late or was there from the start', () => {
    const [late, early] = [1, 0].map((after) => {
      const cohorts = noCohorts(table, standing, 4);
      if (!after) addBirths(cohorts, -0.6, 5);
      addBirths(cohorts, 0, 10);
      growTo(cohorts, 0.2);
      addBirths(cohorts, 0.15, 3);
      if (after) addBirths(cohorts, -0.6, 5);
      const matured = growTo(cohorts, 0.45);
      return [matured, ...stages.map((_, stage) => inStage(cohorts, stage))];
    });
    // The one put in late has matured by 0.2 already what the other let out then.
    for (const [stage, number] of late!.entries()) expect(number).toBeCloseTo(early![stage]!, 12);
  });

  it('those born at the same clock are one cohort, also when the first have grown', () => {
    const [together, apart] = [noCohorts(table, standing, 1), noCohorts(table, standing, 1)];
    addBirths(together, 0, 3);
    growTo(together, 0.4);
    addBirths(apart, 0, 1);
    growTo(apart, 0.4);
    addBirths(apart, 0, 2);
    table.stages.forEach((_, stage) => {
      expect(inStage(apart, stage)).toBeCloseTo(inStage(together, stage), 12);
    });
    expect(growTo(apart, 2)).toBeCloseTo(growTo(together, 2), 12);
  });

  it('refuses more births than there is room for', () => {
    const cohorts = noCohorts(table, standing, 1);
    addBirths(cohorts, 0, 1);
    expect(() => addBirths(cohorts, -0.1, 1)).toThrow(/room/);
  });
});

describe('adults in boxes', () => {
  it('live as long as the record says, on average, at any step (sum of survivors x step)', () => {
    for (const step of [0.3, 1, 2.5]) {
      const boxes = new Float64Array(boxCount);
      boxes[0] = 1;
      let lived = 0;
      for (let i = 0; i < 2000; i++) {
        const before = adultsIn(boxes);
        ageAdults(boxes, step, 30);
        lived += ((before + adultsIn(boxes)) / 2) * step;
      }
      expect(lived).toBeCloseTo(30, 2);
    }
  });

  it('move on alike in one step or four, as many boxes as a Poisson number says (by hand)', () => {
    const [once, often] = [Float64Array.of(1, 0, 0, 0, 0, 0), Float64Array.of(1, 0, 0, 0, 0, 0)];
    ageAdults(once, 10, 30);
    for (let i = 0; i < 4; i++) ageAdults(often, 2.5, 30);
    // Six boxes left at 6 / 30 a unit: two on average in ten units, so exp(-2) 2^n / n! stand n boxes on.
    for (const [n, poisson] of [1, 2, 2, 4 / 3, 2 / 3, 4 / 15].entries()) {
      expect(once[n]).toBeCloseTo(Math.exp(-2) * poisson, 12);
      expect(often[n]).toBeCloseTo(once[n]!, 12);
    }
  });

  it('lose nobody but the old and the thinned', () => {
    const boxes = Float64Array.of(5, 4, 3, 2, 1, 0.5);
    const before = adultsIn(boxes);
    const aged = ageAdults(boxes, 2, 30);
    const thinned = thinAdults(boxes, 0.8);
    expect(adultsIn(boxes) + aged + thinned).toBeCloseTo(before, 12);
  });

  it('lay less as they age', () => {
    expect(layingAdults(Float64Array.of(1, 0, 0, 0, 0, 0))).toBe(1);
    expect(layingAdults(Float64Array.of(0, 0, 0, 0, 0, 1))).toBeLessThan(0.2);
  });
});
