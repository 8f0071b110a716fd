/** The fixed table of chances, words, counts and panes of the design's voice; bounds tried on both sides. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  chanceCounts,
  chanceWord,
  paneNumber,
  paneWords,
  shadedPanes,
} from '../../dashboard/words/chances.ts';

describe('the same word always for the same chance', () => {
  it.each([
    [0, 'hardly ever', 'fewer than 1 of 30', 0],
    [0.029, 'hardly ever', 'fewer than 1 of 30', 0],
    [0.03, 'very unlikely', 'fewer than 1 of 10', 0.5],
    [0.099, 'very unlikely', 'fewer than 1 of 10', 0.5],
    [0.1, 'unlikely', '1 of 10', 1],
    [0.349, 'unlikely', '3 of 10', 3],
    [0.35, 'may or may not', '4 of 10', 4],
    [0.649, 'may or may not', '6 of 10', 6],
    [0.65, 'probably', '7 of 10', 7],
    [0.9, 'probably', '9 of 10', 9],
    [0.901, 'very probably', 'more than 9 of 10', 9.5],
    [0.97, 'very probably', 'more than 9 of 10', 9.5],
    [0.971, 'almost surely', 'more than 29 of 30', 10],
    [1, 'almost surely', 'more than 29 of 30', 10],
  ])('%d is "%s", %s', (chance, word, counts, panes) => {
    expect(chanceWord(chance)).toBe(word);
    expect(chanceCounts(chance)).toBe(counts);
    expect(shadedPanes(chance)).toBe(panes);
  });

  it('more chance never shades fewer panes', () => {
    const share = fc.double({ min: 0, max: 1, noNaN: true });
    fc.assert(
      fc.property(share, share, (a, b) => {
        expect(shadedPanes(Math.min(a, b))).toBeLessThanOrEqual(shadedPanes(Math.max(a, b)));
      }),
      { seed: 5, numRuns: 500 },
    );
  });

  it('says the panes for those who do not see them', () => {
    expect(paneWords(0.8)).toBe('8 panes of 10 shaded');
    expect(paneWords(0.1)).toBe('1 pane of 10 shaded');
    expect(paneWords(0.05)).toBe('Half a pane of 10 shaded');
    expect(paneWords(0.95)).toBe('More than 9 panes of 10 shaded');
    expect([0, 0.05, 0.3, 0.95].map(paneNumber)).toEqual(['none', 'half a pane', '3', 'more than 9']);
  });
});
