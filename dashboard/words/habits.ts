/** How this person reads degrees, days and areas. The house keeps °C, calendar days and m²; only what is shown changes. */
import { signal } from '@preact/signals';

export interface Habits {
  degrees: 'C' | 'F';
  /** `21 May` or `May 21`. */
  dayFirst: boolean;
  /** ISO weekday: 1 = Monday, 7 = Sunday. */
  weekStart: 1 | 7;
  area: 'm2' | 'ft2';
}

export const habits = signal<Habits>({ degrees: 'C', dayFirst: true, weekStart: 1, area: 'm2' });

/** Regions that read weather in Fahrenheit and rooms in square feet (CLDR unit preferences, from memory). */
const fahrenheitRegions = ['US', 'BS', 'BZ', 'KY', 'PR', 'PW', 'AS', 'GU', 'MP', 'VI', 'UM'];

/** First day of the week in a region as the browser knows it; not every browser tells. */
function weekStartOf(locale: Intl.Locale): Habits['weekStart'] {
  const telling = locale as { getWeekInfo?(): { firstDay: number }; weekInfo?: { firstDay: number } };
  const told = telling.getWeekInfo?.() ?? telling.weekInfo;
  return told?.firstDay === 7 ? 7 : 1;
}

/** What people with a language tag such as `en-US` are used to; a tag without a region says nothing of it. */
export function habitsOf(language: string): Habits {
  const locale = new Intl.Locale(language);
  if (!locale.region) return { degrees: 'C', dayFirst: true, weekStart: 1, area: 'm2' };
  // A whole style: parts asked for one by one cost a slow phone a quarter of a second the first time.
  const parts = new Intl.DateTimeFormat(language, { dateStyle: 'long' }).formatToParts(0);
  const dayAt = parts.findIndex(({ type }) => type === 'day');
  const american = fahrenheitRegions.includes(locale.region);
  return {
    degrees: american ? 'F' : 'C',
    dayFirst: dayAt < parts.findIndex(({ type }) => type === 'month'),
    weekStart: weekStartOf(locale),
    area: american ? 'ft2' : 'm2',
  };
}

export const toFahrenheit = (temperatureC: number): number => (temperatureC * 9) / 5 + 32;

/** A temperature in the person's own degrees, without the unit. */
export const ownDegrees = (temperatureC: number): number =>
  habits.value.degrees === 'F' ? toFahrenheit(temperatureC) : temperatureC;

export const degreeSign = (): string => `°${habits.value.degrees}`;

/** What was typed in own degrees, as kept, to a tenth. */
export const celsiusTyped = (typed: number): number =>
  habits.value.degrees === 'F' ? Math.round(((typed - 32) * 50) / 9) / 10 : typed;

/** A difference in the person's own degrees, without the unit: a degree Fahrenheit is five ninths of one Celsius. */
export const ownStep = (differenceC: number): number =>
  habits.value.degrees === 'F' ? (differenceC * 9) / 5 : differenceC;

/** A difference typed in own degrees, as kept, to a hundredth. */
export const celsiusStepTyped = (typed: number): number =>
  habits.value.degrees === 'F' ? Math.round((typed * 500) / 9) / 100 : typed;

/** The international foot is 0.3048 m (NIST SP 811, B.6, note 7; from memory). */
const m2PerFt2 = 0.3048 ** 2;

export const areaSign = (): string => (habits.value.area === 'ft2' ? 'ft²' : 'm²');

/** An area in the person's own unit, ft² to a tenth, without the unit. */
export const ownArea = (areaM2: number): string =>
  String(habits.value.area === 'ft2' ? Math.round((areaM2 / m2PerFt2) * 10) / 10 : areaM2);

/** What was typed in the own unit, as kept: to a thousandth, so that it is shown again as it was typed. */
export const areaTyped = (typed: number): number =>
  habits.value.area === 'ft2' ? Math.round(typed * m2PerFt2 * 1000) / 1000 : typed;

const number = '-?\\d+(?:\\.\\d+)?';
const temperatures = new RegExp(
  `([Mm]ore than )?(?:(${number})( to | and | or above ))?(${number})\\s°C`,
  'g',
);
const months = 'January|February|March|April|May|June|July|August|September|October|November|December';
const dayRange = new RegExp(`\\b(\\d{1,2}) to (\\d{1,2})\\s(${months})\\b`, 'g');
const dayAndMonth = new RegExp(`\\b(\\d{1,2})\\s(${months})\\b`, 'g');

/** `18.5` becomes `65.3`, `18` becomes `64`: as many decimals as were there. */
function converted(text: string, into: (numberC: number) => number): string {
  const decimals = text.split('.')[1]?.length ?? 0;
  return into(Number(text)).toFixed(decimals);
}

/** Sentences come from the house in °C and with the day first: the same in the person's own way. */
export function inOwnHabits(text: string): string {
  const { degrees, dayFirst } = habits.value;
  let own = text;
  if (degrees === 'F')
    own = own.replace(temperatures, (_, difference = '', low, between, high) => {
      // "more than 8 °C above the other" is a difference.
      const into = difference === '' ? toFahrenheit : ownStep;
      const from = low === undefined ? '' : `${converted(low, into)}${between}`;
      return `${difference}${from}${converted(high, into)} °F`;
    });
  if (!dayFirst) own = own.replace(dayRange, '$3 $1 to $2').replace(dayAndMonth, '$2 $1');
  return own;
}
