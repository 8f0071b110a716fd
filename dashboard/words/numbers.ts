/** Numbers a grower can act on: whole insects, halves of degrees where expected, tenths where measured. */
import type { Counted } from '../../services/model/index.ts';
import { degreeSign, inOwnHabits, ownDegrees } from './habits.ts';

/** `14`, or a band `6–20`; the open band ends in `or more`. */
export function countedWords(counted: Counted): string {
  if (typeof counted === 'number') return String(counted);
  if (counted.low === counted.high) return String(counted.low);
  return counted.high >= openBandHigh ? `${counted.low} or more` : `${counted.low}–${counted.high}`;
}

/** "more" needs an upper end for the schema: far above what a trap can hold. */
export const openBandHigh = 2000;

/** The six keys of the round. */
export const bands: readonly { label: string; counted: Counted }[] = [
  { label: '0', counted: 0 },
  { label: '1–5', counted: { low: 1, high: 5 } },
  { label: '6–20', counted: { low: 6, high: 20 } },
  { label: '21–50', counted: { low: 21, high: 50 } },
  { label: '51–100', counted: { low: 51, high: 100 } },
  { label: 'more', counted: { low: 101, high: openBandHigh } },
];

/**
 * What a count on part of a trap stands for on the whole: the missing part given the counted one is
 * negative binomial with mean (n + 1)(1 - f) / f and variance (n + 1)(1 - f) / f²; normal 8 of 10.
 */
export function wholeTrap(n: number, fraction: number): { about: number; from: number; to: number } {
  const spread = 1.28 * (Math.sqrt((n + 1) * (1 - fraction)) / fraction);
  const about = n / fraction;
  return {
    about: Math.round(about),
    from: Math.max(n, Math.round(about - spread)),
    to: Math.round(about + spread),
  };
}

export const degrees = (temperatureC: number): string =>
  `${ownDegrees(temperatureC).toFixed(1)} ${degreeSign()}`;

/** `€17.30`, or with no decimals `€17`. */
export function money(amount: number, currency: string | undefined, decimals = 2): string {
  if (!currency) return amount.toFixed(decimals);
  const digits = { minimumFractionDigits: decimals, maximumFractionDigits: decimals };
  return new Intl.NumberFormat('en-GB', { style: 'currency', currency, ...digits }).format(amount);
}

const currencies = Intl.supportedValuesOf('currency');
/** Sentences from the house name the currency behind the sum: `94 EUR`. */
const sumsOfMoney = new RegExp(`\\b(\\d+)(\\.\\d\\d)? (${currencies.join('|')})\\b`, 'g');

/** From here on a trap is full: those caught last hide the others, and nobody counts on. Judgement. */
export const trapFull = 1000;

/** Whole insects from a forecast, never more than a trap can hold. */
export const insects = (n: number): string => {
  if (n >= trapFull) return 'a full trap';
  return n < 0.5 ? '0' : String(Math.round(n));
};

/** `12 to 31`, `160 to a full trap`; one figure when both ends are the same. */
export const insectRange = (low: number, high: number): string =>
  insects(low) === insects(high) ? insects(low) : `${insects(low)} to ${insects(high)}`;

/** The person's own degrees and order of days, money as the pages write it; keeps dates, counts and figures with their units on one line. */
export function unbroken(text: string): string {
  const space = '\u00a0';
  return inOwnHabits(text)
    .replace(sumsOfMoney, (_, whole: string, part: string | undefined, currency: string) =>
      money(Number(`${whole}${part ?? ''}`), currency, part === undefined ? 0 : 2),
    )
    .replace(/\b(Mon|Tue|Wed|Thu|Fri|Sat|Sun) (?=\d{1,2} [A-Z]|[A-Z])/g, `$1${space}`)
    .replace(
      /\b(\d{1,2}) (?=(January|February|March|April|May|June|July|August|September|October|November|December)\b)/g,
      `$1${space}`,
    )
    .replace(
      /\b(January|February|March|April|May|June|July|August|September|October|November|December) (?=\d{1,2}\b)/g,
      `$1${space}`,
    )
    .replace(/\b(\d+) of (\d+)\b/g, `$1${space}of${space}$2`)
    .replace(/(\d) (?=(°C|°F|m2|m²|%))/g, `$1${space}`);
}
