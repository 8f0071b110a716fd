import { describe, expect, it } from 'vitest';
import { daysLeft, endOfSeason } from '../../services/model/planning/growingSeason.ts';
import { invented } from './season.ts';

const house = (seasonEnd: string, latitudeDeg: number) => invented({}, { seasonEnd, latitudeDeg }).place;

describe('the season a day belongs to', () => {
  it.each([
    ['north, in season', '10-15', 51, '2026-05-13', '2026-10-15'],
    ['north, its last day', '10-15', 51, '2026-10-15', '2026-10-15'],
    ['north, resting', '10-15', 51, '2026-12-31', '2026-10-15'],
    ['north, the new year', '10-15', 51, '2027-01-01', '2027-10-15'],
    ['all year round', '12-31', 51, '2027-01-01', '2027-12-31'],
    ['a winter crop rests three months only', '03-31', 51, '2026-07-01', '2027-03-31'],
    ['south, spring', '04-30', -37, '2026-10-20', '2027-04-30'],
    ['south, autumn', '04-30', -37, '2027-03-01', '2027-04-30'],
    ['south, resting', '04-30', -37, '2027-06-30', '2027-04-30'],
    ['south, the new season', '04-30', -37, '2027-07-01', '2028-04-30'],
  ])('%s', (_, seasonEnd, latitudeDeg, day, end) => {
    expect(endOfSeason(house(seasonEnd, latitudeDeg), day)).toBe(end);
  });

  it('days left are counted in the calendar of the place, below zero while it rests', () => {
    const place = house('10-15', 51);
    expect(daysLeft(place, Date.parse('2026-10-14T23:30:00Z'))).toBe(0);
    expect(daysLeft(place, Date.parse('2026-11-14T12:00:00Z'))).toBe(-30);
  });

  it('a 29 February of a common year is the day after', () => {
    expect(daysLeft(house('02-29', -37), Date.parse('2026-02-27T12:00:00Z'))).toBe(2);
  });
});
