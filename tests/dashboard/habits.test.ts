import { getWeek } from 'date-fns';
import { afterEach, describe, expect, it } from 'vitest';
import { dayWords, rangeWords, weekNumber } from '../../dashboard/words/dates.ts';
import {
  areaSign,
  areaTyped,
  celsiusTyped,
  habits,
  habitsOf,
  inOwnHabits,
  ownArea,
  toFahrenheit,
} from '../../dashboard/words/habits.ts';
import { degrees, unbroken } from '../../dashboard/words/numbers.ts';

const british = habits.value;
const american = { degrees: 'F', dayFirst: false, weekStart: 7, area: 'ft2' } as const;
afterEach(() => {
  habits.value = british;
});
/** Spaces that do not break read as others. */
const plain = (text: string) => text.replaceAll('\u00a0', ' ');

describe('habits', () => {
  it('begin as the language of the browser has them', () => {
    expect(habitsOf('en-US')).toEqual(american);
    expect(habitsOf('en-GB')).toEqual({ degrees: 'C', dayFirst: true, weekStart: 1, area: 'm2' });
    expect(habitsOf('fr-CA')).toEqual({ degrees: 'C', dayFirst: true, weekStart: 7, area: 'm2' });
    expect(habitsOf('de-Latn-DE')).toEqual({ degrees: 'C', dayFirst: true, weekStart: 1, area: 'm2' });
    expect(habitsOf('en')).toEqual(british);
  });

  it('leave everything as it is for whoever reads as the house writes', () => {
    const text = 'Hang it Thu 21 May: it stays above 18 °C from 4 to 11 June.';
    expect(inOwnHabits(text)).toBe(text);
  });
});

describe('degrees Fahrenheit', () => {
  // The scale's own fixed points (SI Brochure and NIST SP 811, B.8): 0 °C is 32 °F, 100 °C is 212 °F, -40 is -40.
  it.each([
    [0, 32],
    [100, 212],
    [-40, -40],
  ])('%d °C is %d °F, typed in and shown', (c, f) => {
    habits.value = american;
    expect(toFahrenheit(c)).toBe(f);
    expect(celsiusTyped(f)).toBe(c);
    expect(degrees(c)).toBe(`${f}.0 °F`);
  });

  it('stand in the sentences of the house, ranges whole, differences without the 32', () => {
    habits.value = american;
    expect(inOwnHabits('It hunts above 20 °C.')).toBe('It hunts above 68 °F.');
    expect(inOwnHabits('10 to 25 °C; above 18.5\u00a0°C')).toBe('50 to 77 °F; above 65.3 °F');
    expect(inOwnHabits('Below -30 or above 65 °C: no plant grows there.')).toBe(
      'Below -22 or above 149 °F: no plant grows there.',
    );
    // An interval of 1 °C is one of 1.8 °F (NIST SP 811, B.8): 8 °C are 14.4, 15 °C are 27.
    expect(inOwnHabits('More than 8 °C above the other sensor.')).toBe(
      'More than 14 °F above the other sensor.',
    );
    expect(inOwnHabits('by more than 15 °C within')).toBe('by more than 27 °F within');
  });
});

describe('square feet', () => {
  // 1 ft² = 0.092 903 04 m² exactly (NIST SP 811, B.8).
  it('are typed in and shown, and kept in m²', () => {
    habits.value = american;
    expect(areaSign()).toBe('ft²');
    expect(ownArea(0.09290304)).toBe('1');
    expect(areaTyped(1000)).toBe(92.903);
    expect([40, 129.5, 130, 1600].map((typed) => ownArea(areaTyped(typed)))).toEqual([
      '40',
      '129.5',
      '130',
      '1600',
    ]);
    habits.value = british;
    expect([ownArea(12), String(areaTyped(12.25)), areaSign()]).toEqual(['12', '12.25', 'm²']);
  });
});

describe('month before day', () => {
  it('in own words and in the sentences of the house', () => {
    habits.value = american;
    expect(dayWords('2026-05-21')).toBe('Thu May 21');
    expect(rangeWords('2026-06-04', '2026-06-11')).toBe('June 4 to 11');
    expect(rangeWords('2026-05-30', '2026-06-08')).toBe('May 30 to June 8');
    expect(
      plain(unbroken('Order by Mon 18 May; adults fly 4 to 11 June, or 30 May to 8 June (8 of 10).')),
    ).toBe('Order by Mon May 18; adults fly June 4 to 11, or May 30 to June 8 (8 of 10).');
    expect(unbroken(dayWords('2026-05-21'))).toBe('Thu\u00a0May\u00a021');
  });
});

it('weeks from Sunday are numbered as date-fns does with week 1 holding 1 January, through years of every kind', () => {
  habits.value = american;
  for (let ms = Date.UTC(2023, 11, 1); ms < Date.UTC(2029, 1, 1); ms += 86_400_000) {
    const day = new Date(ms).toISOString().slice(0, 10);
    const expected = getWeek(new Date(`${day}T12:00:00`), { weekStartsOn: 0, firstWeekContainsDate: 1 });
    expect([day, weekNumber(day)]).toEqual([day, expected]);
  }
});
