import { describe, expect, it } from 'vitest';
import { howGood, howGoodWords, roundsOver, toldRounds } from '../../dashboard/figures/heldWords.ts';
import { csvOf } from '../../dashboard/words/csv.ts';
import type { HeldRound } from '../../services/model/index.ts';

const round = (counts: number[], middle?: number, last?: number): HeldRound => ({
  pest: 'trialeurodes-vaporariorum',
  time: '2026-05-13T08:00:00Z',
  counts,
  ...(middle !== undefined && {
    said: {
      asOf: '2026-05-06T08:00:00Z',
      count: {
        q025: middle / 4,
        q10: middle / 2,
        q25: middle,
        q50: middle,
        q75: middle,
        q90: middle * 2,
        q975: middle * 4,
      },
    },
  }),
  ...(last !== undefined && { last }),
});

describe('how good the forecasts were', () => {
  it('counts each card against the range for 8 of 10, ends included, and leaves out what nothing was said of', () => {
    const rounds = [round([5]), round([5, 20, 21], 10, 9), round([4], 10, 9)];
    expect(howGood(rounds)).toMatchObject({ counts: 4, held: 2 });
  });

  it('compares the middle with "as last time" by shares, and tells when both are as near', () => {
    // 10 is nearer to 12 than 6 is; 30 is farther from 12 than 6 is (2.5 times against 2); 8 and 8 are the same.
    const rounds = [round([12], 10, 6), round([12], 30, 6), round([12], 8, 8)];
    expect(howGood(rounds)).toMatchObject({ rounds: 3, nearer: 1, asNear: 1 });
  });

  it('says it the same way when it is bad, and when it is too early', () => {
    expect(howGoodWords({ counts: 10, held: 3, rounds: 10, nearer: 2, asNear: 0 })).toBe(
      'Of 10 counts, each by itself, 3 lay in the range for 8 of 10; about 8 should. Taking a round together, the middle was nearer than guessing "as last time" in 2 of 10 rounds.',
    );
    expect(howGoodWords(howGood([]))).toMatch(/^No count has a forecast/);
    expect(howGoodWords({ counts: 2, held: 2, rounds: 1, nearer: 1, asNear: 0 })).toMatch(/Too few yet/);
  });
});

it('a round is told as its day is told elsewhere, and over the limit when that is; else by its mean', () => {
  const week = { endMs: Date.parse('2026-05-13T10:00:00Z'), middle: 18, low: 18, high: 18, part: false };
  const rounds = [round([10, 20]), round([10, 31]), round([20])];
  expect(toldRounds(rounds, [], 'UTC').map(({ told }) => told)).toEqual([15, 20.5, 20]);
  expect(roundsOver(toldRounds(rounds, [], 'UTC'), 20)).toBe(1);
  expect(toldRounds([round([10, 31])], [week], 'UTC')[0]?.told).toBe(18);
});

it('a table becomes CSV with quotes only where RFC 4180 asks for them', () => {
  expect(csvOf(['Week to', 'Left, middle'], [['13\u00a0May', 'say "0"']])).toBe(
    'Week to,"Left, middle"\r\n13 May,"say ""0"""\r\n',
  );
});
