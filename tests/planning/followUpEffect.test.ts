/** With and without a release, what it cost, and what it held. */
import { describe, expect, it } from 'vitest';
import type { Courses } from '../../services/model/inference/courses.ts';
import { effectOf } from '../../services/model/planning/followUp/effect.ts';
import { heldOf } from '../../services/model/planning/followUp/held.ts';
import { costOfReleases } from '../../services/model/planning/spending.ts';
import { asOfMs, fixedFit, invented } from './season.ts';

/** Four weeks up to now and two ahead, of ten possible seasons that are all `weeks` but the last few, `others`. */
function coursesOf(weeks: readonly number[], others: readonly number[] = weeks, few = 0): Courses {
  const dayMs = 86_400_000;
  const counts = Array.from({ length: 10 }, (_, season) => (season < 10 - few ? weeks : others));
  return {
    ends: weeks.map((_, i) => new Date(asOfMs + 7 * (i - 3) * dayMs).toISOString()),
    counts,
    numbers: counts,
  };
}
const [whitefly] = fixedFit({ left: 0.5 }).forecast.pests;
/** Set out before the last four weeks; the limit is 30. */
const since = { releasedMs: asOfMs - 25 * 86_400_000, asOfMs, tooEarly: false, counted: true };
const effect = (made: Courses, without: Courses, changes: object = {}) =>
  effectOf(whitefly!, { with: made, without }, { ...since, ...changes });

describe('did it work', () => {
  const falling = coursesOf([20, 18, 12, 6, 4, 2]);

  it('at least a third fewer since then in most possible seasons: it helped', () => {
    const helped = effect(falling, coursesOf([20, 30, 60, 90, 120, 150], [20, 18, 12, 6, 4, 2], 2));
    // 0.8 of the possible seasons, less a tenth of doubt.
    expect(helped).toMatchObject({ verdict: 'helped', chanceClearlyFewer: 0.9 * 0.8 });
    expect(helped.text).toBe(
      'It probably helped: at least a third fewer whitefly since then in 7 of 10 possible seasons. Now 6 a trap and week; without it 6 to 90.',
    );
    // 60 and 90 lie over the limit of 30, 18 and 12 do not; both weeks ahead likewise.
    expect(helped.weeksSpared).toEqual({
      soFar: { q10: 0, q50: 2, q90: 2 },
      ahead: { q10: 0, q50: 2, q90: 2 },
    });
  });

  it('a third is a third: 24 of 36 is not fewer than two thirds, 23 is', () => {
    expect(effect(coursesOf([0, 8, 8, 8]), coursesOf([0, 12, 12, 12])).chanceClearlyFewer).toBe(0);
    expect(effect(coursesOf([0, 8, 8, 7]), coursesOf([0, 12, 12, 12])).chanceClearlyFewer).toBe(0.9);
  });

  it('the same with and without: hardly a difference', () => {
    expect(effect(falling, falling).text).toBe(
      'It has hardly made a difference: at least a third fewer whitefly since then in fewer than 1 of 30 possible seasons. Now 6 a trap and week; without it 6.',
    );
  });

  it('where hardly any are counted both ways, nobody can say either', () => {
    const few = coursesOf([0.5, 0.5, 0.4, 0.3, 0.2, 0.1]);
    expect(effect(few, few)).toMatchObject({
      verdict: 'cannot-say',
      text: 'These counts of whitefly cannot tell whether it helped. Now 0 a trap and week; without it 0.',
    });
  });

  it('no difference is not claimed of a pest whose forecast has not proved itself', () => {
    const thrips = fixedFit({ left: 0.5 }, undefined, 'frankliniella-occidentalis').forecast.pests[0]!;
    expect(effectOf(thrips, { with: falling, without: falling }, since).verdict).toBe('cannot-say');
    expect(effect(falling, falling).verdict).toBe('hardly');
  });

  it('of ten leaves insects a m2 are compared: 9 of ten against 9.9 may be half as many', () => {
    const mites = fixedFit({ left: 0.5 }, undefined, 'tetranychus-urticae').forecast.pests[0]!;
    const on = (leaves: number, perM2: number) => ({
      ...coursesOf([leaves, leaves, leaves, leaves, leaves]),
      numbers: coursesOf([perM2, perM2, perM2, perM2, perM2]).counts,
    });
    const pair = { with: on(9, 230), without: on(9.9, 460) };
    const found = effectOf(mites, pair, since);
    expect(found).toMatchObject({ verdict: 'helped', chanceClearlyFewer: 0.7 });
    expect(found.text).toMatch(/Now 9 of ten leaves; without it 10\.$/);
  });

  it('in between nobody can say, nor without a count, nor too early', () => {
    const half = coursesOf([20, 30, 60, 90, 120, 150], [20, 18, 12, 6, 4, 2], 6);
    expect(effect(falling, half).verdict).toBe('cannot-say');
    expect(effect(falling, half).text).toMatch(/^It may or may not have helped: .* in 4 of 10 /);
    expect(effect(falling, half, { counted: false }).text).toBe(
      'No count of whitefly since, so nobody can say whether it helped.',
    );
    expect(effect(falling, half, { tooEarly: true }).text).toBe(
      'Too early to tell what it does to the whitefly.',
    );
  });
});

describe('what a release cost', () => {
  const order = {
    id: 'o',
    enemy: 'encarsia-formosa',
    number: 300,
    orderedAt: '2026-04-20T08:00:00Z',
    price: 30,
  };
  const release = (id: string, day: string, number: number, more: object = {}) => ({
    id,
    enemy: 'encarsia-formosa',
    form: 'pupa on card',
    number,
    time: `${day}T08:00:00Z`,
    ...more,
  });
  const costs = (releases: object[], orders: object[] = [order]) => {
    const season = invented({ releases, orders });
    return Object.fromEntries(costOfReleases(season.place, season));
  };

  it('two releases share their order by number', () => {
    expect(costs([release('a', '2026-04-23', 100), release('b', '2026-05-01', 200)])).toEqual({
      a: 10,
      b: 20,
    });
  });

  it('its own price without an order; none where none is noted', () => {
    expect(costs([release('a', '2026-06-23', 100, { price: 12.5 })])).toEqual({ a: 12.5 });
    expect(costs([release('a', '2026-06-23', 100)])).toEqual({});
    const { price: _, ...unpriced } = order;
    expect(costs([release('a', '2026-04-23', 100, { price: 99 })], [unpriced])).toEqual({});
  });
});

describe('what was held for the money', () => {
  const { place } = invented();
  const weeks = [0, 1, 2, 3];
  const pair = { with: coursesOf([20, 31, 12, 6]), without: coursesOf([20, 31, 60, 90]) };
  const against = ['trialeurodes-vaporariorum'];

  it('weeks within the limit with and without, and the money for a week won', () => {
    const held = heldOf(place, whitefly!, { bought: [{ money: 15, against }], pair, weeks });
    expect(held).toMatchObject({
      weeks: 4,
      weeksHeld: { with: { q50: 3 }, without: { q50: 1 } },
      money: 15,
      moneyPerWeekWon: 7.5,
    });
    expect(held.text).toBe(
      'Whitefly was within your limit in 3 of 4 weeks, without friends in 1. Spent: 15.00 EUR, about 7.50 EUR for each week won.',
    );
  });

  it('of a pest whose forecast has not proved itself, friends may have won more', () => {
    const thrips = fixedFit({ left: 0.5 }, undefined, 'frankliniella-occidentalis').forecast.pests[0]!;
    expect(heldOf(place, thrips, { bought: [{ money: 15, against: [thrips.pest] }], pair, weeks }).text).toBe(
      'Thrips were within your limit in 3 of 4 weeks, without friends in 1 or fewer, since this forecast has not proved itself. Spent: 15.00 EUR, about 7.50 EUR for each week won.',
    );
  });

  it('a release against two pests counts half for each; without a price it says so', () => {
    const both = { money: 15, against: [...against, 'frankliniella-occidentalis'] };
    expect(heldOf(place, whitefly!, { bought: [both, { against }], pair, weeks })).toMatchObject({
      money: 7.5,
      unpriced: 1,
      releases: 2,
    });
    expect(heldOf(place, whitefly!, { bought: [{ against }], pair, weeks }).text).toMatch(
      /No price is noted\.$/,
    );
  });

  it('where nothing was won no price of a week is made up', () => {
    const same = { with: pair.with, without: pair.with };
    const held = heldOf(place, whitefly!, { bought: [{ money: 15, against }], pair: same, weeks });
    expect(held.moneyPerWeekWon).toBeUndefined();
  });
});
