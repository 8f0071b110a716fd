/**
 * A small fixed part of the forecast study (docs/forecast-scores.md), played again: five seasons of single insects, a
 * model other than the forecast's. The stored numbers are our own, written by `npm run study:forecast -- --fixed`: they
 * prove that nothing changed unseen, not that it is right.
 */
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { type FixedScore, fixedSummary, fixedTasks } from '../../studies/fixedForecasts.ts';
import { scoreSeason } from '../../studies/forecastSeason.ts';

const stored: FixedScore[] = JSON.parse(
  readFileSync(new URL('./fixed-forecasts.json', import.meta.url), 'utf8'),
);
/** Relative, or in units of the score where that is small. */
const tolerance = 0.1;
const leastTolerance = 0.02;

describe('the fixed part of the forecast study', { timeout: 180_000 }, () => {
  const found = fixedSummary(fixedTasks.map((task) => scoreSeason(task, () => 0)));

  it('plays the same seasons and scores the same counts', () => {
    const named = ({ trial, pest, counts }: FixedScore) => ({ trial, pest, counts });
    expect(found.map(named)).toEqual(stored.map(named));
  });

  it.each(stored.map((score) => [`${score.trial}, ${score.pest}`, score] as const))(
    '%s: forecast and limit score as stored, within a tenth',
    (_, score) => {
      const now = found.find(({ trial, pest }) => trial === score.trial && pest === score.pest)!;
      for (const of of ['ours', 'limit'] as const)
        expect(Math.abs(now[of] - score[of])).toBeLessThan(Math.max(tolerance * score[of], leastTolerance));
    },
  );

  it('nobody beats who knows the insects, over the seasons together', () => {
    const sum = (of: 'ours' | 'limit') => found.reduce((total, score) => total + score[of] * score.counts, 0);
    expect(sum('ours')).toBeGreaterThan(sum('limit'));
  });
});
