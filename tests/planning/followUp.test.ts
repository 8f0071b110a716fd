/** Following up in the advice: what follows from a settled check, and the sentences a grower reads. */
import { describe, expect, it } from 'vitest';
import { adviceSchema, adviseFrom, type Fit, type Season } from '../../services/model/index.ts';
import { encarsia, instant, leaves, ledgerOn, scales, seasonAt } from './followUpSeason.ts';
import { count, fixedFit } from './season.ts';

const dayMs = 86_400_000;

/** The fixed fit at another day, with the ledger of the season's own warmth; left alone the pest would double weekly. */
function fitOn(season: Season, day: string, chances: { left: number; released?: number }): Fit {
  const nowMs = Date.parse(instant(day));
  const fit = fixedFit(chances);
  const ends = Array.from({ length: 10 }, (_, i) => new Date(nowMs + 7 * (i - 7) * dayMs).toISOString());
  const rising = ends.map((_, i) => 2 ** i);
  const flat = ends.map(() => 4);
  return {
    ...fit,
    forecast: { ...fit.forecast, ledger: ledgerOn(season, nowMs) },
    without: (_, ids) => {
      const counts = Array.from({ length: 10 }, () => (ids.length > 0 ? rising : flat));
      return { ends, counts, numbers: counts };
    },
  };
}

function advised(
  {
    on,
    leafChecks = [],
    chances = { left: 0.8, released: 0.1 },
  }: {
    on: string;
    leafChecks?: object[];
    chances?: { left: number; released?: number };
  },
  changes: object = {},
) {
  const season = seasonAt(22, {
    releases: [encarsia('2026-05-01', { price: 24 })],
    trapCounts: ['2026-05-12', '2026-05-19', '2026-05-26', '2026-06-02'].map((day) => count(day, 9)),
    leafChecks,
    ...changes,
  });
  const advice = adviseFrom(season, fitOn(season, on, chances), instant(on));
  expect(adviceSchema.parse(advice)).toEqual(advice);
  return advice;
}

describe('what follows, in the words of the advice', () => {
  it('too early: look on the day', () => {
    const { followUp, daysToKeep, reasons } = advised({ on: '2026-05-20' });
    expect(followUp?.releases).toMatchObject([
      {
        releaseId: 'release-2026-05-01',
        settlement: 'too-early',
        next: {
          what: 'look',
          on: '2026-05-25',
          text: 'Look under ten leaves for black scales on Mon 25 May.',
        },
        money: 24,
      },
    ]);
    expect(daysToKeep).toContainEqual({
      day: '2026-05-25',
      verb: 'Look',
      text: 'for black scales',
      isNext: true,
    });
    expect(reasons.join(' ')).not.toContain('settled');
  });

  it('not settled, and another parcel spares more than it costs: top up, with the check among the reasons', () => {
    const { decision, sentence, reasons, followUp } = advised({
      on: '2026-06-03',
      leafChecks: [scales('2026-06-02', 0, 20)],
    });
    expect(decision).toBe('top-up');
    expect(sentence).toMatch(/^Top up with /);
    expect(reasons[1]).toBe(
      'The Encarsia of Fri 1 May has not settled. No black scales on 10 leaves since Mon 25 May.',
    );
    expect(reasons).toContain(
      'That is reckoned as if in 3 of 10 cases the Encarsia set out do nothing more, since how well they work in your house is not sure.',
    );
    expect(followUp?.releases[0]?.next).toEqual({ what: 'top-up', text: 'Top up, as advised.' });
  });

  it('not settled within four weeks of the release: from when a top-up is weighed', () => {
    const { followUp } = advised({ on: '2026-05-27', leafChecks: [scales('2026-05-26', 0, 20)] });
    expect(followUp?.releases[0]?.next).toEqual({
      what: 'wait',
      on: '2026-05-29',
      text: 'A top-up is weighed from Fri 29 May on.',
    });
  });

  it('not settled, but the pest is unlikely to pass the limit: stop', () => {
    const { followUp } = advised({
      on: '2026-06-03',
      leafChecks: [scales('2026-06-02', 0, 20)],
      chances: { left: 0.2 },
    });
    expect(followUp?.releases[0]?.next).toEqual({
      what: 'stop',
      text: 'Buy no more for now: whitefly is unlikely (2 of 10) to pass your limit.',
    });
  });

  it('settled, and the pest is unlikely to pass the limit: buy no more', () => {
    const { followUp, reasons } = advised({
      on: '2026-06-03',
      leafChecks: [scales('2026-06-02', 8, 12)],
      chances: { left: 0.2 },
    });
    expect(followUp?.releases[0]).toMatchObject({
      settlement: 'settled',
      next: { what: 'stop', text: 'Buy no more: whitefly is unlikely (2 of 10) to pass your limit.' },
    });
    expect(reasons).toContain(
      'The Encarsia of Fri 1 May has settled. On Tue 2 June: 8 of 20 scales are black.',
    );
    // Told once.
    expect(reasons.filter((reason) => reason.includes('scales are black'))).toHaveLength(1);
  });

  it('settled, yet another parcel pays: top up all the same', () => {
    const { decision, followUp } = advised({ on: '2026-06-03', leafChecks: [scales('2026-06-02', 3, 17)] });
    expect(decision).toBe('top-up');
    expect(followUp?.releases[0]?.next).toEqual({
      what: 'top-up',
      text: 'Top up all the same: whitefly will probably (8 of 10) pass your limit.',
    });
  });

  it('nobody can say: look with the next count', () => {
    const { followUp } = advised({
      on: '2026-06-03',
      leafChecks: [leaves('2026-06-02', [{ kind: 'whitefly-scale', infestedLeaves: 3 }])],
      chances: { left: 0.2 },
    });
    expect(followUp?.releases[0]).toMatchObject({
      settlement: 'cannot-say',
      next: {
        what: 'look',
        on: '2026-06-09',
        text: 'Look under ten leaves for black scales on Tue 9 June.',
      },
    });
  });

  it('six weeks after it should show, a look tells little of one release', () => {
    const { followUp } = advised({ on: '2026-07-10', chances: { left: 0.2 } });
    expect(followUp?.releases[0]).toMatchObject({
      settlement: 'cannot-say',
      next: { what: 'wait', text: 'The next counts tell whether they did their work.' },
    });
  });

  it('a parcel already ordered is the top-up', () => {
    const order = { id: 'o', enemy: 'encarsia-formosa', number: 120, orderedAt: instant('2026-06-02') };
    const { followUp } = advised(
      { on: '2026-06-03', leafChecks: [scales('2026-06-02', 0, 20)] },
      { orders: [order] },
    );
    expect(followUp?.releases[0]?.next.text).toBe('The parcel already ordered is the top-up.');
  });

  it('whether it worked, and what was held for the money', () => {
    const { followUp } = advised({ on: '2026-06-03', leafChecks: [scales('2026-06-02', 8, 12)] });
    const [released] = followUp!.releases;
    // 4 a week against 1, 2, 4 ... 128; the limit is 30.
    expect(released?.effects).toMatchObject([
      { verdict: 'helped', chanceClearlyFewer: 0.9, weeksSpared: { soFar: { q50: 3 }, ahead: { q50: 2 } } },
    ]);
    expect(followUp?.pests).toMatchObject([
      { weeks: 8, weeksHeld: { with: { q50: 8 }, without: { q50: 5 } }, money: 24, moneyPerWeekWon: 8 },
    ]);
    expect(followUp?.currency).toBe('EUR');
  });

  it('without a release there is nothing to follow up', () => {
    expect(advised({ on: '2026-06-03' }, { releases: [] }).followUp).toBeUndefined();
  });

  it('a release against no pest of the place is left out', () => {
    const mites = { ...encarsia('2026-05-01'), enemy: 'phytoseiulus-persimilis', form: 'adults in a tube' };
    expect(advised({ on: '2026-06-03' }, { releases: [mites] }).followUp).toBeUndefined();
  });
});
