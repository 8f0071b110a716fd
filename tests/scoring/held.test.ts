import { expect, it } from 'vitest';
import type { Forecast, Place, TrapCount } from '../../services/model/index.ts';
import { heldRounds } from '../../services/model/index.ts';

const place: Place = {
  id: 'lean-to',
  name: 'Lean-to',
  kind: 'glasshouse',
  areaM2: 11,
  latitudeDeg: 51,
  longitudeDeg: 0,
  timeZone: 'Europe/London',
  pests: ['trialeurodes-vaporariorum'],
  limits: {},
  seasonEnd: '10-15',
};
const count = (time: string, whitefly: number, trapId = 'door'): TrapCount => ({
  id: `${trapId} ${time}`,
  trapId,
  time,
  exposureDays: 7,
  countedFraction: 1,
  card: 'new',
  counts: { whitefly },
});
const traps = ['door', 'mid'].map((id) => ({ id, name: id, hungAt: '2025-04-01T08:00:00Z' }));
const trapCounts = [
  count('2025-08-01T09:00:00Z', 40),
  count('2026-05-04T09:00:00Z', 4),
  count('2026-05-11T09:00:00Z', 8),
  count('2026-05-11T09:05:00Z', 10, 'mid'),
  count('2026-05-18T08:30:00Z', 20),
];
/** A forecast that names itself by the middle of its first week. */
const kept = (issued: Record<string, number>) => ({
  times: Object.keys(issued).map((time) => Date.parse(time)),
  at: (asOfMs: number) => {
    const asOf = new Date(asOfMs).toISOString();
    const week = { count: { q50: issued[asOf] } };
    return { asOf, pests: [{ pest: place.pests[0], weeks: [week] }] } as unknown as Forecast;
  },
});
const nowMs = Date.parse('2026-05-20T12:00:00Z');
const rounds = (issued: Record<string, number>) =>
  heldRounds({ place, traps, trapCounts, leafChecks: [] }, kept(issued), nowMs);
const saidOf = (issued: Record<string, number>) => rounds(issued).map(({ said }) => said?.count.q50);

it('gives each round of this season with its cards and the mean of the round before', () => {
  expect(rounds({}).map(({ counts, last }) => ({ counts, last }))).toEqual([
    { counts: [4], last: undefined },
    { counts: [8, 10], last: 4 },
    { counts: [20], last: 9 },
  ]);
});

it('holds a round against the forecast of a week before that knew the round before', () => {
  // On 11 May one was kept before the count of that day and one after it.
  const issued = {
    '2026-05-11T08:00:00.000Z': 11,
    '2026-05-11T22:00:00.000Z': 18,
    '2026-05-17T22:00:00.000Z': 21,
  };
  expect(saidOf(issued)).toEqual([undefined, undefined, 18]);
  expect(saidOf({ '2026-05-10T22:00:00.000Z': 11 })).toEqual([undefined, undefined, 11]);
});

it('never takes one made within four days of the count, nor one older than ten days', () => {
  expect(saidOf({ '2026-05-08T08:00:00.000Z': 1, '2026-05-14T09:00:00.000Z': 2 })).toEqual([
    undefined,
    undefined,
    undefined,
  ]);
  expect(saidOf({ '2026-05-08T09:00:00.000Z': 1, '2026-05-14T08:00:00.000Z': 2 })).toEqual([
    undefined,
    undefined,
    2,
  ]);
});

it('a round missed leaves the next one of two weeks, reckoned to one, and held', () => {
  const twice = [
    count('2026-05-04T09:00:00Z', 4),
    { ...count('2026-05-18T09:00:00Z', 20), exposureDays: 14 },
    { ...count('2026-06-08T09:00:00Z', 30), exposureDays: 21 },
  ];
  const issued = kept({ '2026-05-11T09:00:00.000Z': 9 });
  const later = Date.parse('2026-06-09T12:00:00Z');
  const held = heldRounds({ place, traps, trapCounts: twice, leafChecks: [] }, issued, later);
  expect(held.map(({ counts, said }) => [counts[0], said?.count.q50])).toEqual([
    [4, undefined],
    [10, 9],
  ]);
});
