/** A release that would be wasted is refused for the reason that holds: by its code and in the sentence. */
import { describe, expect, it } from 'vitest';
import { adviseFrom, type Fit, type Season } from '../../services/model/index.ts';
import { decide } from '../../services/model/planning/decide.ts';
import { leaves, ledgerOn, seasonAt } from './followUpSeason.ts';
import { asOf, asOfMs, count, fixedFit, invented } from './season.ts';

function refused(season: Season, fit: Fit) {
  const { because, conditions } = decide(season, fit, fit.forecast.pests[0]!, asOfMs);
  const { decision, sentence, toOrder } = adviseFrom(season, fit, asOf);
  expect(toOrder).toEqual([]);
  expect(['order', 'top-up', 'release']).not.toContain(decision);
  const failing = conditions.filter(({ verdict }) => verdict === 'fails').map(({ rule }) => rule);
  return { because, failing, sentence };
}
const likely = fixedFit({ left: 0.8, released: 0.1 });

describe('a release is refused', () => {
  it('in the cold', () => {
    const { because, failing, sentence } = refused(
      invented(),
      fixedFit({ left: 0.8, released: 0.1 }, { minC: 6, maxC: 12 }),
    );
    expect(because).toBe('no-enemy');
    expect(failing).toContain('warmth');
    expect(sentence).toContain('it is too cold for the friends that could help');
  });

  it('of a parcel that has come, on the residue of a spray', () => {
    const order = {
      id: 'o',
      enemy: 'amblyseius-swirskii',
      number: 1200,
      orderedAt: '2026-05-10T08:00:00Z',
      arrivedAt: '2026-05-13T08:00:00Z',
    };
    const treatments = [{ id: 't', kind: 'neem', time: '2026-05-11T08:00:00Z' }];
    const { because, failing, sentence } = refused(invented({ orders: [order], treatments }), likely);
    expect(because).toBe('parcel-held-back');
    expect(failing).toContain('residue');
    expect(sentence).toContain('residue of a spray');
    expect(refusalOfOrderWithout(order)).toBe('release');
  });

  it('with ants about', () => {
    const counts = ['2026-05-06', '2026-05-13'].map((day) => count(day, 0, { counts: { aphid: 9 } }));
    const { supplier } = invented().place;
    const season = invented(
      { trapCounts: counts, sightings: [{ id: 's', time: '2026-05-12T08:00:00Z', what: 'ants' }] },
      {
        pests: ['myzus-persicae'],
        limits: {},
        supplier: { ...supplier, pricePerAnimal: { 'aphidius-colemani': 0.1 } },
      },
    );
    const fit = fixedFit({ left: 0.8, released: 0.1 }, undefined, 'myzus-persicae');
    const { because, failing, sentence } = refused(season, fit);
    expect(because).toBe('no-enemy');
    expect(failing).toEqual(['ants']);
    expect(sentence).toContain('ants would drive friends away');
  });

  it('of the wrong stage: adults and eggs alone, where the wasps need scales', () => {
    // First seen on 6 May: at 15 °C egg and first scale take 154 degree-days above 8.3 °C, 23 days; the parcel comes
    // on the 20th.
    const { supplier } = invented().place;
    const onlyWasps = { supplier: { ...supplier, pricePerAnimal: { 'encarsia-formosa': 0.15 } } };
    const withLeaves = (scales: number) =>
      seasonAt(
        15,
        {
          trapCounts: [count('2026-05-06', 9), count('2026-05-13', 14)],
          leafChecks: [
            leaves('2026-05-13', [
              { kind: 'whitefly-adult', infestedLeaves: 4 },
              { kind: 'whitefly-scale', infestedLeaves: scales },
            ]),
          ],
        },
        onlyWasps,
      );
    const fitOf = (season: Season): Fit => ({
      ...likely,
      forecast: { ...likely.forecast, ledger: ledgerOn(season, asOfMs) },
    });
    const season = withLeaves(0);
    const { because, failing, sentence } = refused(season, fitOf(season));
    expect(because).toBe('no-enemy');
    expect(failing).toEqual(['prey']);
    expect(sentence).toContain('their young are still too small for friends to help');
    const { text } = decide(season, fitOf(season), likely.forecast.pests[0]!, asOfMs).conditions.find(
      ({ rule }) => rule === 'prey',
    )!;
    expect(text).toMatch(
      /^No young ones on 10 leaves, and none are old enough before .* May: Encarsia needs them, not eggs or adults\.$/,
    );
    expect(adviseFrom(withLeaves(3), fitOf(withLeaves(3)), asOf).decision).toBe('order');
  });

  it('too late in the season', () => {
    const { because, sentence } = refused(invented({}, { seasonEnd: '06-20' }), likely);
    expect(because).toBe('late-in-season');
    expect(sentence).toContain('the season ends before a release would pay');
  });

  it('without a pest', () => {
    const none = ['2026-04-29', '2026-05-06', '2026-05-13'].map((day) => count(day, 0));
    const { because, sentence } = refused(invented({ trapCounts: none }), likely);
    expect(because).toBe('not-seen');
    expect(sentence).toContain('none were seen');
  });

  it('that would cost about what it spares', () => {
    const { because, sentence } = refused(invented(), fixedFit({ left: 0.5, released: 0.48 }));
    expect(because).toBe('no-clear-gain');
    const advice = adviseFrom(invented(), fixedFit({ left: 0.5, released: 0.48 }), asOf);
    expect(advice.wayAdvised).toBe('leave');
    expect(sentence).toContain('a parcel now would cost about as much as it spares');
  });
});

/** The same parcel in a house that was not sprayed. */
const refusalOfOrderWithout = (order: object) =>
  adviseFrom(invented({ orders: [order] }), likely, asOf).decision;
