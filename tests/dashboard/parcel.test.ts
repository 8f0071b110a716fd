import { expect, it } from 'vitest';
import { parcelCare } from '../../dashboard/words/parcel.ts';

it('names the last day to tell the supplier, and how long animals keep', () => {
  // The day after it comes: common practice, no source. Over the end of a month.
  expect(parcelCare('2026-05-31')).toContain('tell the supplier by Mon 1 June.');
  expect(parcelCare(undefined)).toContain('tell the supplier by the next day.');
  // Same day, those with food a few days: an article of the trade; two days at most, no sun: common practice, no source.
  expect(parcelCare(undefined)).toMatch(
    /that day.* a few days.* two days at most.* never in sun or a kitchen refrigerator/,
  );
});
