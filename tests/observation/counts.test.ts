import { describe, expect, it } from 'vitest';
import { middleOf, shownOf, trapWindows } from '../../services/model/observation/counts.ts';
import { seasonSchema, type TrapCount } from '../../services/model/season.ts';

const day = 86_400_000;
const startMs = Date.parse('2026-05-01T00:00:00Z');
const on = (days: number) => new Date(startMs + days * day).toISOString();
const count = (days: number, more: Partial<TrapCount>): TrapCount => ({
  id: `c${days}`,
  trapId: 'a',
  time: on(days),
  exposureDays: 7,
  countedFraction: 1,
  card: 'new',
  counts: {},
  ...more,
});
const windows = (...counts: TrapCount[]) => trapWindows(counts, 'whitefly', startMs);

describe('trap counts as windows', () => {
  it('a new card is exposed for the days said, with fractions of days', () => {
    expect(windows(count(10.25, { exposureDays: 6.5, counts: { whitefly: 4 } }))).toEqual([
      { timeMs: startMs + 10.25 * day, fromDay: 3.75, toDay: 10.25, countedFraction: 1, low: 4, high: 4 },
    ]);
  });

  it('a card that hung on gives the difference since the earlier count', () => {
    const [, second] = windows(
      count(7, { counts: { whitefly: 5 } }),
      count(12, { counts: { whitefly: 9 }, card: 'same', exposureDays: 12 }),
    );
    expect(second).toMatchObject({ fromDay: 7, toDay: 12, low: 4, high: 4 });
  });

  it('a smaller later total counts as none added', () => {
    const [, second] = windows(
      count(7, { counts: { whitefly: 5 } }),
      count(14, { counts: { whitefly: 4 }, card: 'same' }),
    );
    expect(second).toMatchObject({ low: 0, high: 0 });
  });

  it('bands subtract to a wider band', () => {
    const [, second] = windows(
      count(7, { counts: { whitefly: { low: 1, high: 5 } } }),
      count(14, { counts: { whitefly: { low: 6, high: 20 } }, card: 'same' }),
    );
    expect(second).toMatchObject({ low: 1, high: 19 });
  });

  it('lost and taken-down traps are gaps, not zeros, and break the chain of a card', () => {
    const found = windows(
      count(7, { counts: { whitefly: 5 } }),
      count(14, { card: 'lost' }),
      count(21, { counts: { whitefly: 9 }, card: 'same' }),
    );
    expect(found.map((window) => window.low)).toEqual([5, 9]);
    expect(found[1]).toMatchObject({ fromDay: 14, toDay: 21 });
  });

  it('a new card not counted for this kind breaks the chain too', () => {
    const [, second] = windows(
      count(7, { counts: { whitefly: 10 } }),
      count(14, { counts: { aphid: 1 } }),
      count(21, { counts: { whitefly: 5 }, card: 'same' }),
    );
    expect(second).toMatchObject({ fromDay: 14, toDay: 21, low: 5, high: 5 });
  });

  it('a kind left out once on a card that hangs on is caught up with later', () => {
    const [, second] = windows(
      count(7, { counts: { whitefly: 10 } }),
      count(14, { counts: { aphid: 1 }, card: 'same' }),
      count(21, { counts: { whitefly: 16 }, card: 'same' }),
    );
    expect(second).toMatchObject({ fromDay: 7, toDay: 21, low: 6, high: 6 });
  });

  it('a kind that was not counted is missing, a 0 is a 0', () => {
    expect(windows(count(7, { counts: { aphid: 3 } }))).toEqual([]);
    expect(windows(count(7, { counts: { whitefly: 0 } }))).toHaveLength(1);
  });

  it('the order in which counts were sent does not matter', () => {
    const early = count(7, { counts: { whitefly: 5 } });
    const late = count(14, { counts: { whitefly: 9 }, card: 'same' });
    expect(windows(late, early)).toEqual(windows(early, late));
  });
});

it('a band stands for its middle, an open one for little more than its low end', () => {
  expect(middleOf({ low: 4, high: 4 })).toBe(4);
  expect(middleOf({ low: 6, high: 20 })).toBe(13);
  expect(middleOf({ low: 101, high: 100_000 })).toBeLessThan(200);
});

describe('what a season shows of a pest', () => {
  const season = seasonSchema.parse({
    format: 'glasstide-season',
    version: 1,
    place: {
      id: 'house',
      name: 'House',
      kind: 'glasshouse',
      areaM2: 10,
      latitudeDeg: 50,
      longitudeDeg: 5,
      timeZone: 'UTC',
      pests: ['trialeurodes-vaporariorum', 'myzus-persicae'],
      limits: {},
      seasonEnd: '10-15',
    },
    trapCounts: [count(7, { counts: { whitefly: 2, aphid: 1, 'small-wasp': 9 } })],
    leafChecks: [
      {
        id: 'l',
        time: on(8.5),
        leaves: 10,
        seen: [
          { kind: 'whitefly-scale', total: 12 },
          { kind: 'black-scale', total: { low: 1, high: 5 } },
          { kind: 'aphid', infestedLeaves: 3 },
        ],
      },
      { id: 'm', time: on(9), leaves: 10, seen: [{ kind: 'spider-mite', total: 40 }] },
    ],
  });

  it('whitefly: trap kind, scales and black scales; checks that say nothing of it are left out', () => {
    const shown = shownOf(season, 'trialeurodes-vaporariorum', startMs);
    expect(shown.traps.map((window) => window.low)).toEqual([2]);
    expect(shown.leaves).toEqual([
      {
        timeMs: startMs + 8.5 * day,
        day: 8.5,
        leaves: 10,
        young: { low: 12, high: 12 },
        visible: { low: 1, high: 5 },
      },
    ]);
  });

  it('a trap of another make, hung as its own, has its own number and takes nothing off the first', () => {
    const traps = [
      { id: 'door', name: 'By the door', hungAt: on(0), takenDownAt: on(7) },
      { id: 'door-small', name: 'By the door, small', hungAt: on(7) },
    ];
    const counts = { whitefly: 9 };
    const trapCounts = [
      count(7, { trapId: 'door', counts }),
      count(14, { trapId: 'door-small', card: 'same', counts: { whitefly: 4 } }),
    ];
    const shown = shownOf({ ...season, traps, trapCounts }, 'trialeurodes-vaporariorum', startMs);
    expect(shown.traps.map(({ trap, low }) => [shown.trapIds[trap], low])).toEqual([
      ['door', 9],
      ['door-small', 4],
    ]);
  });

  it('aphids: winged ones on traps, infested leaves', () => {
    const shown = shownOf(season, 'myzus-persicae', startMs);
    expect(shown.traps.map((window) => window.low)).toEqual([1]);
    expect(shown.leaves).toEqual([{ timeMs: startMs + 8.5 * day, day: 8.5, leaves: 10, infestedLeaves: 3 }]);
  });
});
