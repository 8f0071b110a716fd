/** Chances in words and counts, always the same pair (docs/forecast.md, Words). */
import type { PestForecast } from '../outcome.ts';
import { verbFor } from './grammar.ts';

/** The count of ten in the sentence, such as `8 of 10`; the ends name rarer counts. */
export function chanceCount(probability: number): string {
  if (probability < 0.03) return 'fewer than 1 of 30';
  if (probability < 0.1) return 'fewer than 1 of 10';
  if (probability > 0.97) return 'more than 29 of 30';
  if (probability > 0.9) return 'more than 9 of 10';
  return `${Math.round(probability * 10)} of 10`;
}

export function chanceWord(probability: number): string {
  if (probability < 0.03) return 'hardly ever';
  if (probability < 0.1) return 'very unlikely';
  if (probability < 0.35) return 'unlikely';
  if (probability < 0.65) return 'may or may not';
  if (probability <= 0.9) return 'probably';
  if (probability <= 0.97) return 'very probably';
  return 'almost surely';
}

/**
 * What goes between a pest's name and a verb: `will probably (8 of 10)`, `is unlikely (2 of 10) to`,
 * `may or may not (5 of 10)`.
 */
export function chancePhrase(probability: number, name: string): string {
  const word = chanceWord(probability);
  const count = `(${chanceCount(probability)})`;
  if (word === 'may or may not') return `may or may not ${count}`;
  if (word.endsWith('unlikely')) return `${verbFor(name, 'is', 'are')} ${word} ${count} to`;
  return `will ${word} ${count}`;
}

/** `whitefly will probably (8 of 10) pass your limit`; counted over it lately, `whitefly is over your limit`: nothing is left to pass. */
export function limitPhrase(
  { counted, passesLimit }: Pick<PestForecast, 'counted' | 'passesLimit'>,
  name: string,
  lastCount: number | undefined,
): string {
  if (isCountedOver(counted.limit, lastCount)) return `${name} ${verbFor(name, 'is', 'are')} over your limit`;
  return `${name} ${chancePhrase(passesLimit.probability, name)} pass your limit`;
}

/** Over the limit as it was counted last: nothing is left to pass. */
export const isCountedOver = (limit: number, lastCount: number | undefined): boolean =>
  (lastCount ?? 0) > limit;
