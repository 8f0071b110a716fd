/** What stands under the roof; chances in the fixed words of the design's voice. */
import { describe, expect, it } from 'vitest';
import { otherPestWords, planApart, roofCaption, warningWords } from '../../dashboard/pages/week/captions.ts';
import { planned, wayOf, weeksOver } from '../../dashboard/words/ways.ts';
import { advice, forecast } from '../pages/fixtureSeason.ts';

describe('under the roof', () => {
  it('the chance is named before its panes', () => {
    const { lead, text } = roofCaption(
      { ...advice, chanceIfLeft: 0.01, passesLimitBy: '2026-08-03' },
      'within',
    );
    expect(lead).toBe('Chance that whitefly passes your limit by 3 August if left:');
    expect(text).toBe('no pane of 10 shaded; 3 with Encarsia.');
    expect(roofCaption({ ...advice, pest: 'myzus-persicae' }, 'within').lead).toMatch(
      /^Chance that peach aphids pass your/,
    );
  });

  it('of a limit that is passed already says that it is over it on a day ahead', () => {
    expect(roofCaption(advice, 'over').lead).toMatch(
      /^Chance that whitefly is over your limit on any day until /,
    );
  });

  it('ordering and leaving are told apart by a later week, or by weeks over it, and by what each may cost', () => {
    const habits = { currency: 'EUR', timeZone: 'Europe/London' };
    const chances = (all: number[]) =>
      forecast.pests[0]!.weeks.map((week, i) => ({ ...week, probabilityOverLimit: all[i] ?? 1 }));
    const way = (left: number[], other: number[]) => {
      const [first] = advice.candidates;
      const own = { ...first!, weeks: chances(other) };
      const leave = { id: 'leave', label: 'Leave it', passesLimit: 0.8, weeks: chances(left) };
      return planApart({ ...advice, candidates: [own, leave] }, own, habits);
    };
    const costs = 'Crop and money together, about €61 may be lost if left, about €22 with them.';
    expect(way([1, 1, 1, 1], [1, 0.9, 0.7, 0.2])).toBe(
      `Over it in the week to 10 June: more than 29 of 30 if left, 2 of 10 with them. ${costs}`,
    );
    expect(way([1, 1], [1, 0.9])).toBe(
      `Over it: for about 12 more weeks this season if left, for about 3 with them. ${costs}`,
    );
  });

  it('with a wash before the parcel, weeks and loss are those of both', () => {
    const alone = advice.candidates.find(({ plan }) => plan)!;
    const washed = { ...alone, washFirst: true, weeks: [] };
    const both = { ...advice, washFirst: true, candidates: [washed, ...advice.candidates] };
    expect(planned(both)).toBe(washed);
    expect(planned({ ...both, washFirst: undefined })).toBe(alone);
    expect(planned(advice)).toBe(alone);
    expect(planApart(both, washed, { currency: 'EUR', timeZone: 'Europe/London' })).toBe(
      'Over it: for about 12 more weeks this season if left, for about 2 after a wash and with them. ' +
        'Crop and money together, about €61 may be lost if left, about €21 after a wash and with them.',
    );
  });

  it('over the limit either way, the weeks of the season tell what the panes do not', () => {
    const habits = { currency: 'EUR', timeZone: 'Europe/London' };
    const { candidates } = advice;
    const sure = candidates.map((each) => ({ ...each, passesLimit: 0.99 }));
    const own = sure.find(({ plan }) => plan)!;
    const words = (ways: typeof advice.ways) => planApart({ ...advice, candidates: sure, ways }, own, habits);
    expect(words(advice.ways)).toContain(
      'Over your limit either way: for about 12 more weeks this season if left, for about 3 with them. Crop',
    );
    const alike = advice.ways!.map((way) => ({ ...way, weeksOver: 1.2 }));
    expect(words(alike)).toContain('Over your limit either way, for about 1 more week this season. Crop');
  });

  it('weeks over the limit stand in a table as of one span, the one of the sentence', () => {
    const weighed = advice.candidates.map((each) => ({ ...each, way: wayOf(advice, each) }));
    expect(weeksOver(weighed)).toEqual({
      cells: ['about 3', 'not weighed', 'about 12'],
      note: 'Weeks over your limit: still to come this season.',
    });
    const weeks = forecast.pests[0]!.weeks.slice(0, 2).map((week) => ({
      ...week,
      probabilityOverLimit: 0.7,
    }));
    expect(weeksOver([{ weeks }])).toEqual({
      cells: ['1 of 2'],
      note: 'Weeks over your limit: of the next 2.',
    });
  });

  it('without a chance says that too little is known', () => {
    const { chanceIfLeft: _, ...unknown } = advice;
    expect(roofCaption(unknown, 'within').lead).toBe('Dotted panes:');
  });

  it('another pest is told with its last count, its limit and its chance', () => {
    const aphids = forecast.pests.find((each) => each.pest === 'myzus-persicae');
    const week = { endMs: 0, middle: 2, low: 2, high: 2, part: false };
    const chance = 'over your limit of 10: very unlikely (fewer than 1 of 10).';
    expect(aphids && otherPestWords(aphids, week, true)).toBe(`last count 2; ${chance}`);
    const usually = `as seasons usually go, ${chance}`;
    expect(aphids && otherPestWords(aphids, week, false)).toBe(`none found so far; ${usually}`);
    expect(aphids && otherPestWords(aphids, undefined, false)).toBe(`not counted yet; ${usually}`);
  });
});

it('a warning repeats neither the sentence of the page nor itself', () => {
  const sentence = 'Order 2 cards of Encarsia by Mon 18 May.';
  const ends = 'Ends when the order is entered.';
  const reason = 'The last counts were 4 then 9 whitefly a trap and week.';
  expect(warningWords({ text: `Order by Mon 18 May. ${sentence}`, reason, ends }, sentence)).toEqual({
    words: 'The order of this week',
    note: `${reason} ${ends}`,
  });
  const text = 'Count again: due Wed 20 May.';
  expect(warningWords({ text, reason: sentence, ends }, sentence)).toEqual({ words: text, note: ends });
  expect(warningWords({ text: `${text} ${reason}`, reason, ends }, sentence).note).toBe(ends);
});
