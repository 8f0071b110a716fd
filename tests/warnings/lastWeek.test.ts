import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { enteredSeason } from '../../services/store/store.ts';
import { againstRepeating, isInside, scoredCounts } from '../../services/warnings/lastWeek.ts';
import { letter } from '../../services/warnings/letter.ts';
import { dayMs, openHouse, pestAhead, place, placeId, wednesdayMs } from './house.ts';

let house: ReturnType<typeof openHouse>;
beforeEach(() => {
  house = openHouse();
});
afterEach(() => house.store.close());

const expected = { q025: 1, q10: 2, q25: 4, q50: 6, q75: 9, q90: 14, q975: 20 };
const week = (endMs: number, count = expected) => ({
  end: new Date(endMs).toISOString(),
  count,
  adultsPerM2: count,
  youngPerM2: count,
  probabilityOverLimit: 0,
});
const issue = (atMs: number, count = expected) =>
  house.issue(atMs, {
    pests: [pestAhead({ weeks: [week(atMs + 7 * dayMs, count), week(atMs + 14 * dayMs, count)] })],
  });
function scored() {
  const season = enteredSeason(house.store, placeId);
  if (!season) throw new Error('no season');
  return scoredCounts(season, house.store.issued.list(placeId), Date.parse('2026-05-21T08:00:00Z'));
}

describe('a forecast is held against the count a week later', () => {
  it('by the first forecast of the week before, which knew the count before; the same as on the season’s page', () => {
    issue(wednesdayMs - dayMs, { ...expected, q50: 99 });
    issue(wednesdayMs, { ...expected, q50: 7 });
    issue(wednesdayMs + dayMs, { ...expected, q50: 8 });
    issue(wednesdayMs + 6 * dayMs, { ...expected, q50: 99 });
    house.count('2026-05-13', 4);
    house.count('2026-05-20', 9);
    expect(scored()).toEqual([
      {
        pest: 'trialeurodes-vaporariorum',
        timeMs: Date.parse('2026-05-20T08:00:00Z'),
        counted: 9,
        expected: { ...expected, q50: 7 },
        before: 4,
      },
    ]);
  });

  it('as insects on a whole card in a week; bands by their middle; other cards are left out', () => {
    issue(wednesdayMs);
    const count = (id: string, more: object) =>
      house.put(
        'trapCount',
        {
          id,
          trapId: id,
          time: '2026-05-20T08:00:00Z',
          exposureDays: 14,
          countedFraction: 0.5,
          card: 'new',
          counts: { whitefly: { low: 6, high: 20 } },
          ...more,
        },
        id,
      );
    count('a', {});
    count('b', { card: 'lost', counts: {} });
    count('c', { counts: { thrips: 3 } });
    // (6 + 20) / 2 in 14 days on half a card: 13 / 14 * 7 / 0.5.
    expect(scored().map(({ counted }) => counted)).toEqual([13]);
  });

  it('and against repeating the last count, by CRPS on log(1 + count)', () => {
    const one = {
      pest: 'trialeurodes-vaporariorum' as const,
      timeMs: 0,
      counted: 3,
      expected: { q025: 3, q10: 3, q25: 3, q50: 3, q75: 3, q90: 3, q975: 3 },
      before: 7,
    };
    // A forecast that is sure and right has no error; repeating 7 for 3 misses by log 8 - log 4.
    expect(againstRepeating([one])?.forecast).toBeCloseTo(0, 12);
    expect(againstRepeating([one])?.repeating).toBeCloseTo(Math.log(2), 12);
    const { before: _before, ...first } = one;
    expect(againstRepeating([first])).toBeUndefined();
    expect([1.9, 2, 14, 14.1].map((counted) => isInside({ ...one, counted, expected }))).toEqual([
      false,
      true,
      true,
      false,
    ]);
  });
});

describe('the letter says how last week’s forecast did', () => {
  const sunday = Date.parse('2026-05-24T17:00:00Z');
  const lines = () =>
    letter(house.store, place, { raised: [], withdrawn: [] }, sunday).parts.find(({ title }) =>
      title.startsWith('How'),
    )?.lines;

  it('when it held', () => {
    issue(wednesdayMs);
    house.count('2026-05-13', 40);
    house.count('2026-05-20', 9);
    expect(lines()).toEqual([
      'Whitefly: 2 to 14 on a trap were expected (8 of 10); you counted 9, so 1 of 1 lay inside.',
      'This season 1 of 1 counts lay inside ranges that promise 8 of 10.',
      'So far it came nearer than repeating the last count would have.',
    ]);
  });

  it('and as plainly when it did not', () => {
    issue(wednesdayMs);
    house.count('2026-05-13', 38);
    house.count('2026-05-20', 41);
    expect(lines()).toEqual([
      'Whitefly: 2 to 14 on a trap were expected (8 of 10); you counted 41, so 0 of 1 lay inside.',
      'This season 0 of 1 counts lay inside ranges that promise 8 of 10.',
      'So far repeating the last count would have come as near: trust your own eyes as much.',
    ]);
  });
});

describe('a pest counted on leaves', () => {
  it('is told in leaves of ten', () => {
    house.store.close();
    const mites = 'tetranychus-urticae' as const;
    house = openHouse({ pests: [mites] });
    const counted = { unit: 'ten-leaves' as const, kind: 'spider-mite' as const, limit: 3 };
    house.issue(wednesdayMs, {
      pests: [pestAhead({ pest: mites, counted, weeks: [week(wednesdayMs + 7 * dayMs)] })],
    });
    const check = (time: string, leaves: number, infestedLeaves: number) =>
      house.put(
        'leafCheck',
        { id: time, time, leaves, seen: [{ kind: 'spider-mite', infestedLeaves }] },
        time,
      );
    check('2026-05-13T08:00:00Z', 10, 1);
    // 3 of 20 leaves are 1.5 of ten, whole counts are told: 2.
    check('2026-05-20T08:30:00Z', 20, 3);
    const { parts } = letter(
      house.store,
      { ...place, pests: [mites] },
      { raised: [], withdrawn: [] },
      wednesdayMs + 8 * dayMs,
    );
    expect(parts[1]?.lines[0]).toBe(
      'Spider mites: 2 to 14 of ten leaves were expected (8 of 10); you counted 2, so 1 of 1 lay inside.',
    );
  });
});
