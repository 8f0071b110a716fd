import { afterEach, expect, it } from 'vitest';
import { habits } from '../../dashboard/words/habits.ts';
import { orderSumWords, parcelCare } from '../../dashboard/words/parcel.ts';

it('names the last day to tell the supplier, and how long animals keep', () => {
  // The day after it comes: common practice, no source. Over the end of a month.
  expect(parcelCare('2026-05-31', '2026-05-31')).toContain('tell the supplier by Mon 1 June.');
  // Overdue: not by a day that is gone.
  expect(parcelCare('2026-05-31', '2026-06-04')).toContain('tell the supplier by the next day.');
  expect(parcelCare(undefined, '2026-05-31')).toContain('tell the supplier by the next day.');
  // Common practice, no source.
  expect(parcelCare(undefined, '2026-05-31')).toMatch(
    /that day.* a few days.* two days at most.* never in sun or a kitchen refrigerator/,
  );
});

const british = habits.value;
afterEach(() => {
  habits.value = british;
});

it('says the sum behind a number, with whole packs where they are more', () => {
  // By hand: 11 x 6 = 66, two packs of 60 are 120; 10 x 25 = 250.
  expect(orderSumWords({ areaM2: 11, perM2: 6 }, 120)).toBe('11 m² times 6 a m² is 66, in whole packs 120');
  expect(orderSumWords({ areaM2: 10, perM2: 25 }, 250)).toBe('10 m² times 25 a m² is 250');
  // 0.3048² m² is a square foot: 11 m² are 118.4, and 6 a m² are 0.56 each.
  habits.value = { ...british, area: 'ft2' };
  expect(orderSumWords({ areaM2: 11, perM2: 6 }, 120)).toBe(
    '118.4 ft² times 0.56 a ft² is 66, in whole packs 120',
  );
});
