/** Seasons side by side, of an invented house; every number below is counted by hand from the entries. */
import { describe, expect, it } from 'vitest';
import { type Season, seasonsCompared } from '../../services/model/index.ts';
import { place } from '../warnings/house.ts';

const whitefly = (day: string, n: number): Season['trapCounts'][number] => ({
  id: `count-${day}`,
  trapId: 'door',
  time: `${day}T09:00:00Z`,
  exposureDays: 7,
  countedFraction: 1,
  card: 'new',
  counts: { whitefly: n },
});
const season: Season = {
  format: 'glasstide-season',
  version: 1,
  place,
  plantings: [],
  sensors: [],
  readings: [],
  dailyExtremes: [],
  traps: [{ id: 'door', name: 'Door', hungAt: '2025-04-01T09:00:00Z' }],
  trapCounts: [
    whitefly('2025-05-01', 0),
    whitefly('2025-05-08', 3),
    whitefly('2025-05-15', 40),
    whitefly('2026-05-04', 0),
    whitefly('2026-05-11', 2),
  ],
  leafChecks: [],
  sightings: [],
  releases: [
    {
      id: 'r',
      enemy: 'encarsia-formosa',
      form: 'pupae on cards',
      number: 100,
      time: '2025-05-20T09:00:00Z',
      aliveShare: 1,
      price: 21,
    },
  ],
  orders: [{ id: 'o', enemy: 'encarsia-formosa', number: 100, orderedAt: '2026-05-12T09:00:00Z' }],
  treatments: [{ id: 't', kind: 'soap', time: '2025-06-01T09:00:00Z', coveredShare: 0.8 }],
  outlook: [],
  outdoor: [],
};
const none = { times: [], at: () => undefined };
const nowMs = Date.parse('2026-05-13T09:00:00Z');

describe('seasons side by side', () => {
  it('each has its own first sighting, rounds, deeds and money, the newest first', () => {
    const found = seasonsCompared(season, none, nowMs);
    const pest = 'trialeurodes-vaporariorum';
    expect(found).toEqual([
      {
        seasonEnd: '2026-10-15',
        pests: [{ pest, firstSeen: '2026-05-11', rounds: [0, 2], foretold: 0, inside: 0 }],
        releases: 0,
        treatments: 0,
        spent: 0,
        unpriced: 1,
      },
      {
        seasonEnd: '2025-10-15',
        pests: [{ pest, firstSeen: '2025-05-08', rounds: [0, 3, 40], foretold: 0, inside: 0 }],
        releases: 1,
        treatments: 1,
        spent: 21,
        unpriced: 0,
      },
    ]);
  });

  it('an insect named by the key counts as seen, one of the person’s own words does not', () => {
    const noted = (what: string) => {
      const sightings = [{ id: 's', time: '2026-05-02T09:00:00Z', what }];
      return seasonsCompared({ ...season, sightings }, none, nowMs)[0]?.pests[0]?.firstSeen;
    };
    expect(noted('glasshouse whitefly')).toBe('2026-05-02');
    expect(noted('something small')).toBe('2026-05-11');
  });

  it('counts what lay in the range that was kept a week before', () => {
    const range = (q10: number, q90: number) => ({
      q025: q10,
      q10,
      q25: q10,
      q50: q10,
      q75: q90,
      q90,
      q975: q90,
    });
    const asOf = '2026-05-04T10:00:00Z';
    const kept = {
      times: [Date.parse(asOf)],
      at: () =>
        ({
          asOf,
          pests: [{ pest: 'trialeurodes-vaporariorum', weeks: [{ count: range(1, 5) }] }],
        }) as never,
    };
    expect(seasonsCompared(season, kept, nowMs)[0]?.pests[0]).toMatchObject({ foretold: 1, inside: 1 });
  });
});
