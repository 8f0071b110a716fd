/** Suggestions for the next season, each with its evidence; none where that is thin. */
import { describe, expect, it } from 'vitest';
import type { Effect, PestHeld, ReleaseFollowUp } from '../../services/model/followUps.ts';
import { nextYear } from '../../services/model/planning/followUp/nextYear.ts';
import type { TellingPest, Told } from '../../services/model/planning/followUp/told.ts';
import { encarsia, seasonAt } from './followUpSeason.ts';
import { fixedFit } from './season.ts';

const pest = 'trialeurodes-vaporariorum' as const;
const [ahead] = fixedFit({ left: 0.5 }).forecast.pests;

const followed = (on: string, changes: Partial<ReleaseFollowUp> = {}): ReleaseFollowUp => ({
  releaseId: `release-${on}`,
  enemy: 'encarsia-formosa',
  number: 120,
  on,
  against: [pest],
  look: { lookFor: 'black scales', from: '2026-06-30', surelyBy: '2026-07-07', by: 'development' },
  settlement: 'settled',
  evidence: ['On Fri 3 July: 8 of 20 scales are black.'],
  next: { what: 'wait', text: '' },
  effects: [],
  ...changes,
});
/** Over the limit in the weeks that end on these days. */
const past = (over: readonly string[]) =>
  ['2026-05-27', '2026-06-03', '2026-06-10', '2026-06-17'].map((day) => ({
    ...ahead!.weeks[0]!,
    end: `${day}T09:00:00Z`,
    probabilityOverLimit: over.includes(day) ? 0.9 : 0.1,
  }));
const weekly = (from: number, to: number) =>
  Array.from({ length: to - from + 1 }, (_, i) =>
    new Date(Date.parse('2026-04-29') + 7 * (from + i) * 86_400_000).toISOString().slice(0, 10),
  );

function suggested(changes: Partial<Told> = {}, whitefly: Partial<TellingPest> = {}) {
  const own = { ahead: { ...ahead!, past: past([]) }, seenOn: ['2026-05-06', '2026-05-13'], ...whitefly };
  return nextYear({
    season: seasonAt(undefined, {}),
    from: '2025-10-15',
    today: '2026-08-01',
    pests: [own],
    releases: [],
    countDays: weekly(0, 13),
    ...changes,
  });
}
const effect = (verdict: Effect['verdict']): Effect => ({
  pest,
  verdict,
  chanceClearlyFewer: 0.9,
  countNow: { with: { q10: 1, q50: 1, q90: 1 }, without: { q10: 1, q50: 1, q90: 1 } },
  weeksSpared: { soFar: { q10: 0, q50: 0, q90: 0 }, ahead: { q10: 0, q50: 0, q90: 0 } },
  text: '',
});
const held = (withThem: number, without: number): PestHeld => ({
  pest,
  releases: 1,
  money: 15,
  unpriced: 0,
  weeks: 12,
  weeksHeld: {
    with: { q10: withThem, q50: withThem, q90: withThem },
    without: { q10: without, q50: without, q90: without },
  },
  text: '',
});

describe('for next year', () => {
  it('a season that went well and was counted weekly suggests nothing', () => {
    expect(suggested()).toEqual([]);
  });

  it('with fewer than six days of counting nothing is suggested at all', () => {
    const late = { releases: [followed('2026-06-12')] };
    const over = { ahead: { ...ahead!, past: past(['2026-06-03']) } };
    expect(suggested({ ...late, countDays: weekly(0, 4) }, over)).toEqual([]);
    expect(suggested({ ...late, countDays: weekly(0, 5) }, over)).toHaveLength(1);
  });

  it('the wave came before the friends could show: order so many weeks earlier', () => {
    const [first, ...more] = suggested(
      { releases: [followed('2026-06-12')] },
      { ahead: { ...ahead!, past: past(['2026-06-10']) } },
    );
    expect(more).toEqual([]);
    expect(first).toEqual({
      code: 'order-earlier',
      text: 'Order against whitefly 3 weeks earlier, once they are seen on two days.',
      evidence:
        'Whitefly passed your limit in the week to Wed 10 June; the Encarsia of Fri 12 June could show from Tue 30 June on. Seen on two days by Wed 13 May.',
    });
  });

  it('but never earlier than the pest was known, and not when friends were in time', () => {
    const releases = [followed('2026-06-12')];
    const over = { ahead: { ...ahead!, past: past(['2026-06-10']) } };
    expect(suggested({ releases }, { ...over, seenOn: ['2026-05-27', '2026-06-03'] })[0]?.text).toContain(
      'a week earlier',
    );
    expect(suggested({ releases }, { ...over, seenOn: ['2026-06-03', '2026-06-10'] })).toEqual([]);
    expect(suggested({ releases }, { ...over, seenOn: ['2026-06-03'] })).toEqual([]);
    const inTime = [followed('2026-05-06', { look: { ...followed('2026-05-06').look, from: '2026-05-24' } })];
    expect(suggested({ releases: inTime }, over)).toEqual([]);
  });

  it('friends set out while neem could still harm them', () => {
    const treatments = [{ id: 'n', kind: 'neem', time: '2026-06-08T09:00:00Z' }];
    const season = seasonAt(undefined, { treatments, releases: [encarsia('2026-06-12')] });
    expect(suggested({ season, releases: [followed('2026-06-12')] })).toEqual([
      {
        code: 'spray-before',
        text: 'Keep 14 days between neem and setting Encarsia out.',
        evidence: 'Neem on Mon 8 June, Encarsia on Fri 12 June.',
      },
    ]);
  });

  it('twice not settled, and never: another friend; once is thin', () => {
    const none = (on: string) => followed(on, { settlement: 'not-settled' });
    expect(suggested({ releases: [none('2026-06-26'), none('2026-05-12')] })).toEqual([
      {
        code: 'another-friend',
        text: 'Try another friend than Encarsia, or set it out in a warmer week.',
        evidence: '2 of 2 releases of Encarsia did not settle: Fri 26 June, Tue 12 May.',
      },
    ]);
    expect(suggested({ releases: [none('2026-05-12')] })).toEqual([]);
    expect(suggested({ releases: [none('2026-06-26'), none('2026-05-12'), followed('2026-04-12')] })).toEqual(
      [],
    );
  });

  it('nobody looked in time', () => {
    const untold = followed('2026-06-12', {
      settlement: 'cannot-say',
      evidence: ['Nobody has looked for black scales since Tue 30 June.'],
    });
    expect(suggested({ releases: [untold] })).toEqual([
      {
        code: 'look-in-time',
        text: 'Look for black scales about 18 days after setting Encarsia out.',
        evidence: '1 of 1 set out cannot be judged. Nobody has looked for black scales since Tue 30 June.',
      },
    ]);
    expect(suggested({ releases: [untold], today: '2026-07-01' })).toEqual([]);
  });

  it('not needed: hardly a difference, and within the limit without friends too', () => {
    const releases = [followed('2026-06-12', { effects: [effect('hardly')] })];
    expect(suggested({ releases }, { held: held(12, 12) })).toEqual([
      {
        code: 'not-needed',
        text: 'Wait longer before ordering against whitefly.',
        evidence: 'Without friends too whitefly would have been within your limit in all 12 weeks.',
      },
    ]);
    expect(suggested({ releases }, { held: held(12, 11) })).toEqual([]);
  });

  it('the same again where it clearly won weeks', () => {
    const releases = [followed('2026-05-12', { effects: [effect('helped')] })];
    expect(suggested({ releases }, { held: held(11, 6) })).toEqual([
      {
        code: 'same-again',
        text: 'The same again against whitefly: Encarsia, 120, once seen on two days.',
        evidence: 'Within your limit in 11 of 12 weeks, without friends in 6.',
      },
    ]);
    expect(suggested({ releases }, { held: held(11, 11) })).toEqual([]);
  });

  it('a gap in counting of more than two weeks', () => {
    const countDays = [...weekly(0, 5), ...weekly(9, 13)];
    expect(suggested({ countDays })).toEqual([
      {
        code: 'count-weekly',
        text: 'Count every week: a wave can come and go in three.',
        evidence: 'Nothing was counted between Wed 3 June and Wed 1 July.',
      },
    ]);
  });
});
