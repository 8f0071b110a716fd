import { describe, expect, it } from 'vitest';
import {
  dayValue,
  factorAt,
  gridPosition,
  heatHazardPerHour,
  tabulateDays,
} from '../../services/model/population/dayTables.ts';
import { treatmentsByDay } from '../../services/model/population/treatments.ts';

const path = {
  hourlyC: Float64Array.from({ length: 48 }, (_, hour) => (hour < 24 ? 10 : 20) + (hour % 24 < 12 ? 0 : 4)),
  daylight: Uint8Array.from({ length: 48 }, (_, hour) => (hour % 24 < 12 ? 1 : 0)),
};

describe('day tables', () => {
  it('hold the mean over the hours, all or in daylight', () => {
    expect(
      dayValue(
        tabulateDays(path, (t) => t, 'all-hours'),
        0,
        gridPosition(0),
      ),
    ).toBeCloseTo(12, 12);
    expect(
      dayValue(
        tabulateDays(path, (t) => t, 'daylight'),
        1,
        gridPosition(0),
      ),
    ).toBeCloseTo(20, 12);
  });

  it('interpolate a linear function exactly between offsets, and hold beyond the grid', () => {
    const table = tabulateDays(path, (t) => 2 * t, 'all-hours');
    expect(dayValue(table, 0, gridPosition(0.73))).toBeCloseTo(2 * 12.73, 10);
    expect(dayValue(table, 0, gridPosition(50))).toBeCloseTo(2 * 21, 3);
  });

  it('read a factor between its points and hold it outside', () => {
    const factor = [
      [10, 0],
      [20, 1],
      [30, 0.5],
    ] as const;
    expect([5, 15, 20, 25, 40].map((t) => factorAt(factor, t))).toEqual([0, 0.5, 1, 0.75, 0.5]);
  });

  it('heat rises with the square from its threshold to 39 degC', () => {
    expect(heatHazardPerHour(33, 33, 0.05)).toBe(0);
    expect(heatHazardPerHour(36, 33, 0.05)).toBeCloseTo(0.0125, 12);
    expect(heatHazardPerHour(39, 33, 0.05)).toBeCloseTo(0.05, 12);
  });
});

describe('treatments by day', () => {
  const span = { startMs: 0, days: 12 };
  const spray = (kind: 'soap' | 'neem', day: number) =>
    ({ id: 't', kind, time: new Date((day + 0.4) * 86_400_000).toISOString(), coveredShare: 0.5 }) as const;

  it('act on their day and leave a residue for some', () => {
    const byDay = treatmentsByDay([spray('neem', 3)], span);
    expect(byDay[2]).toBeUndefined();
    expect(byDay[3]?.young).toBeCloseTo(0.15, 12);
    // 0.15 of those reached on the next day, then half of the day before, until less than 0.01 (by hand).
    expect(byDay[4]?.adults).toBeCloseTo(0.15 * 0.5, 12);
    expect(byDay[7]?.adults).toBeCloseTo((0.15 * 0.5) / 8, 12);
    expect(byDay[8]).toBeUndefined();
  });

  it('two on one day leave what both leave', () => {
    const byDay = treatmentsByDay([spray('soap', 1), spray('soap', 1)], span);
    expect(byDay[1]?.young).toBeCloseTo(1 - 0.65 * 0.65, 12);
  });
});
