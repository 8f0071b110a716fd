/** The same possible seasons with and without a release, by the whole forecast. */
import { describe, expect, it } from 'vitest';
import { type Fit, fit as fitSeason } from '../../services/model/index.ts';
import { effectOf } from '../../services/model/planning/followUp/effect.ts';
import { onDay, sampleSeason } from '../forecast/sample.ts';

const pest = 'trialeurodes-vaporariorum';
const release = {
  id: 'r',
  enemy: 'encarsia-formosa' as const,
  form: 'pupa on card',
  number: 120,
  time: onDay(40),
  aliveShare: 1,
  price: 24,
};
const season = sampleSeason({
  weeks: 11,
  whitefly: [0, 1, 2, 4, 6, 9, 14, 18, 16, 12, 9],
  limit: 10,
  more: { releases: [release] },
});
const asOf = onDay(77);
const fitted = fitSeason(season, asOf, { members: 40 });

describe('with and without a release', () => {
  const made = fitted.without(pest, []);
  const none = fitted.without(pest, ['r']);
  const releasedMs = Date.parse(release.time);

  it('a week ends now, and the same weeks stand on both sides', () => {
    expect(made.ends).toContain(new Date(asOf).toISOString());
    expect(none.ends).toEqual(made.ends);
    expect(none.counts).toHaveLength(made.counts.length);
  });

  it('until it was set out nothing differs; from then on there are never fewer without it', () => {
    made.ends.forEach((end, week) => {
      made.counts.forEach((own, member) => {
        const [had, wouldHave] = [own[week]!, none.counts[member]![week]!];
        if (Date.parse(end) <= releasedMs) expect(wouldHave).toBe(had);
        else expect(wouldHave).toBeGreaterThanOrEqual(had * (1 - 1e-9));
      });
    });
  });

  it('the release helped, as the fall of the counts says; a single wasp is not taken to have', () => {
    const judged = (own: Fit) =>
      effectOf(
        own.forecast.pests[0]!,
        { with: own.without(pest, []), without: own.without(pest, ['r']) },
        { releasedMs, asOfMs: Date.parse(asOf), tooEarly: false, counted: true },
      );
    expect(judged(fitted).verdict).toBe('helped');
    const one = { ...season, releases: [{ ...release, number: 1 }] };
    expect(judged(fitSeason(one, asOf, { members: 40 })).verdict).not.toBe('helped');
  });
});
