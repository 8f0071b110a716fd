import { expect, it } from 'vitest';
import { chanceCount, chancePhrase, chanceWord } from '../../services/model/planning/chances.ts';

it('word and count always belong together', () => {
  const table = [0.01, 0.05, 0.2, 0.5, 0.8, 0.95, 0.99].map((p) => `${chanceWord(p)}, ${chanceCount(p)}`);
  expect(table).toEqual([
    'hardly ever, fewer than 1 of 30',
    'very unlikely, fewer than 1 of 10',
    'unlikely, 2 of 10',
    'may or may not, 5 of 10',
    'probably, 8 of 10',
    'very probably, more than 9 of 10',
    'almost surely, more than 29 of 30',
  ]);
});

it('reads as a sentence for one and for many', () => {
  expect(`Whitefly ${chancePhrase(0.2, 'whitefly')} pass`).toBe('Whitefly is unlikely (2 of 10) to pass');
  expect(`Aphids ${chancePhrase(0.2, 'aphids')} pass`).toBe('Aphids are unlikely (2 of 10) to pass');
  expect(`Aphids ${chancePhrase(0.7, 'aphids')} pass`).toBe('Aphids will probably (7 of 10) pass');
});
