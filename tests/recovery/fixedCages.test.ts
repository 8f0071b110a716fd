/**
 * A small fixed part of the cages that others counted (docs/real-counts.md), replayed: the stored numbers are our own,
 * written by `npm run study:cages -- --fixed`; they prove that nothing changed unseen, not that it is right.
 */
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { type FixedCage, fixedCages } from '../../studies/cageScores.ts';
import { allCages, type SeriesId } from '../../studies/cages.ts';

const stored: FixedCage[] = JSON.parse(readFileSync(new URL('./fixed-cages.json', import.meta.url), 'utf8'));
/** Relative, or in units of the score where that is small. */
const tolerance = 0.1;
const leastTolerance = 0.02;

describe('the fixed part of the cages', { timeout: 60_000 }, () => {
  const found = fixedCages();

  it('replays the same cages and scores the same counts', () => {
    const named = ({ cage, counts }: FixedCage) => ({ cage, counts });
    expect(found.map(named)).toEqual(stored.map(named));
  });

  it.each(stored.map((score) => [score.cage, score] as const))(
    '%s: forecast and baseline score as stored, within a tenth',
    (cage, score) => {
      const now = found.find((each) => each.cage === cage)!;
      for (const of of ['ours', 'last'] as const)
        expect(Math.abs(now[of] - score[of])).toBeLessThan(Math.max(tolerance * score[of], leastTolerance));
    },
  );
});

describe('cages as seasons', () => {
  const cages = allCages();
  const of = (series: SeriesId) => cages.filter((cage) => cage.series === series);
  const totalsOn = (series: SeriesId, index: number) =>
    of(series).map(({ season }) => season.leafChecks[index]!.seen[0]!.total as number);
  const mean = (values: readonly number[]) => values.reduce((sum, value) => sum + value, 0) / values.length;

  it('are all there, each with its wasps or ladybirds', () => {
    const series: SeriesId[] = ['wasps-20', 'wasps-23', 'ervi', 'ladybirds'];
    expect(series.map((each) => of(each).length)).toEqual([15, 15, 4, 15]);
    expect(cages.every(({ season }) => season.releases.length === 1)).toBe(true);
  });

  it('hold what the descriptions of the data say was counted', () => {
    // Week 2: about 230 aphids at 20 and 630 at 23 degC; 64 pea aphids put in; 20 two days before the ladybirds.
    expect(Math.abs(mean(totalsOn('wasps-20', 1)) - 230)).toBeLessThan(10);
    expect(Math.abs(mean(totalsOn('wasps-23', 1)) - 630)).toBeLessThan(10);
    expect(new Set(totalsOn('ervi', 0))).toEqual(new Set([64]));
    expect(new Set(totalsOn('ladybirds', 0))).toEqual(new Set([20]));
    // Means of Dropper, Non-dropper and Mix, five cages each, on day 0: 165, 147 and 125.
    expect(Math.abs(mean(totalsOn('ladybirds', 1)) - (165 + 147 + 125) / 3)).toBeLessThan(1);
  });

  it('keep to the temperature of the chamber', () => {
    for (const { series, season } of cages) {
      const set = series === 'wasps-23' ? 23 : 20;
      expect(mean(season.readings.map(({ temperatureC }) => temperatureC))).toBeCloseTo(set, 9);
      expect(season.readings.every(({ temperatureC }) => Math.abs(temperatureC - set) < 0.11)).toBe(true);
    }
  });
});
