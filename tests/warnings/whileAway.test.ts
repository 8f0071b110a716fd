import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { dayMs, hourMs, openHouse, place, placeId, wednesdayMs } from './house.ts';

let house: ReturnType<typeof openHouse>;
const goAway = (from: string, to: string) =>
  house.put('place', { ...place, awayDays: [{ from, to }] }, placeId);
beforeEach(() => {
  house = openHouse();
  house.count('2026-05-13');
  house.issue(wednesdayMs);
});
afterEach(() => house.store.close());
/** Days of the calendar by title; those called off are left out. */
const calendar = () =>
  house.store.telling.calendar
    .list(placeId)
    .filter(({ cancelled }) => !cancelled)
    .map(({ content }) => JSON.parse(content) as { from: string; title: string; text: string });

describe('a count that falls on days away', () => {
  // The count of Wed 13 May asks for the next a week later, Wed 20 May.
  it('is told on the last three days at home, by the days of the place', async () => {
    goAway('2026-05-19', '2026-05-22');
    // Sat 16 May begins in London at 23:00 UTC of the day before.
    const saturdayMs = Date.parse('2026-05-15T23:00:00Z');
    expect(await house.open(saturdayMs - 1)).toEqual([]);
    expect(await house.open(saturdayMs)).toEqual(['while-away']);
    expect(house.one('while-away')).toMatchObject({
      text: 'You are away on Wed 20 May, when the next count is due: count by Mon 18 May, before you leave, or on Sat 23 May, when you are back.',
      deadlineMs: Date.parse('2026-05-18T23:00:00Z') - 1,
    });
    expect(calendar().map(({ from, title }) => `${from} ${title}`)).toEqual([
      '2026-05-18 Count the traps before you leave',
      '2026-05-23 Count the traps, look under ten leaves',
    ]);
  });

  it('is asked for on the day back, not while away', async () => {
    goAway('2026-05-19', '2026-05-22');
    await house.open(Date.parse('2026-05-18T12:00:00Z'));
    expect(await house.open(Date.parse('2026-05-20T12:00:00Z'))).toEqual([]);
    expect(house.one('while-away')).toMatchObject({ state: 'done', ended: 'You are away.' });
    const backMs = Date.parse('2026-05-23T07:00:00Z');
    expect(await house.open(backMs)).toEqual(['count-due']);
    expect(house.one('count-due')).toMatchObject({
      text: 'Count the traps: due Wed 20 May.',
      deadlineMs: Date.parse('2026-05-23T23:00:00Z') - 1,
    });
  });

  it('is done with the count before leaving, and withdrawn when you stay', async () => {
    goAway('2026-05-19', '2026-05-22');
    const mondayMs = Date.parse('2026-05-18T12:00:00Z');
    await house.open(mondayMs);
    goAway('2026-05-26', '2026-05-29');
    await house.open(mondayMs + hourMs);
    expect(house.one('while-away')).toMatchObject({
      state: 'withdrawn',
      ended: 'It no longer falls on days away.',
    });
    goAway('2026-05-19', '2026-05-22');
    expect(await house.open(mondayMs + 2 * hourMs)).toEqual(['while-away']);
    house.count('2026-05-18');
    await house.open(mondayMs + 3 * hourMs);
    expect(house.one('while-away')).toMatchObject({ state: 'done', ended: 'It was counted.' });
  });

  it('is not asked for again when it was counted just before leaving for two weeks', async () => {
    goAway('2026-05-19', '2026-06-02');
    house.count('2026-05-18');
    const mondayMs = Date.parse('2026-05-18T12:00:00Z');
    expect(await house.open(mondayMs)).toEqual([]);
    expect(calendar().map(({ from, title }) => `${from} ${title}`)).toEqual([
      '2026-06-03 Count the traps, look under ten leaves',
    ]);
  });

  it('was due at home and missed: waits for the day back', async () => {
    goAway('2026-05-21', '2026-05-29');
    expect(await house.open(Date.parse('2026-05-20T12:00:00Z'))).toEqual(['count-due']);
    await house.open(Date.parse('2026-05-22T12:00:00Z'));
    expect(house.one('count-due')).toMatchObject({
      deadlineMs: Date.parse('2026-05-30T23:00:00Z') - 1,
      text: 'Count the traps: due Wed 20 May; you are back Sat 30 May.',
    });
  });

  it('is not told when the house rests', async () => {
    goAway('2026-05-19', '2026-05-22');
    house.issue(wednesdayMs + hourMs, { advice: { daysToKeep: [] } });
    expect(await house.open(wednesdayMs + 4 * dayMs)).toEqual([]);
  });
});

describe('a parcel that falls on days away', () => {
  it('is told at once, in the calendar too, until it comes on another day', async () => {
    goAway('2026-05-19', '2026-05-20');
    house.order({ expectedOn: '2026-05-20' });
    const thursdayMs = wednesdayMs + dayMs;
    expect(await house.open(thursdayMs)).toEqual(['while-away']);
    expect(house.one('while-away')).toMatchObject({
      text: 'You are away on Wed 20 May, when the parcel of Encarsia is due: ask for a day from Thu 21 May on, or let somebody set them out.',
      deadlineMs: Date.parse('2026-05-19T23:00:00Z'),
      urgentFromMs: Date.parse('2026-05-16T23:00:00Z'),
    });
    expect(calendar()).toContainEqual(
      expect.objectContaining({ from: '2026-05-20', title: 'Parcel of Encarsia while you are away' }),
    );
    house.order({ expectedOn: '2026-05-21' });
    expect(await house.open(thursdayMs + hourMs)).toEqual([]);
    expect(house.one('while-away')?.state).toBe('withdrawn');
  });

  it('by the usual days of the supplier where none was said', async () => {
    goAway('2026-05-20', '2026-05-20');
    house.order();
    expect(await house.open(wednesdayMs + 2 * hourMs)).toEqual(['while-away']);
  });
});
