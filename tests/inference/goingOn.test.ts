/** A fit that goes on from an earlier one finds the members that it would have found from the start. */
import { describe, expect, it } from 'vitest';
import { fit as fitSeason } from '../../services/model/forecast.ts';
import type { Season } from '../../services/model/season.ts';
import { startGarden } from '../../simulators/startGarden.ts';
import { trialByName } from '../../simulators/trials.ts';

const garden = startGarden(trialByName('managed-whitefly'), 5);
while (garden.week() < 13) garden.advanceWeek();
const season = garden.season();
const rounds = [...new Set(season.trapCounts.map(({ time }) => time))].sort();
const [before, now] = [rounds.at(-2)!, rounds.at(-1)!];
const options = { members: 60 };
const first = fitSeason(season, before, options);
const pest = 'trialeurodes-vaporariorum';

/** The counts of a round mended. */
const withCountsOf = (round: string, counted: number): Season => ({
  ...season,
  trapCounts: season.trapCounts.map((count) =>
    count.time === round ? { ...count, counts: { ...count.counts, whitefly: counted } } : count,
  ),
});

describe('going on from an earlier fit', () => {
  it('gives the forecast of a fit from the start, bit for bit, and reads only what is new', () => {
    const going = fitSeason(season, now, { ...options, earlier: first });
    const anew = fitSeason(season, now, options);
    expect(going.forecast).toEqual(anew.forecast);
    const [older] = first.read.get(pest)!.slice(-2);
    expect(going.read.get(pest)).toContain(older);
    expect(anew.read.get(pest)).not.toContain(older);
  });

  it.each([
    ['the round before last', rounds.at(-3)!],
    ['the third round', rounds[2]!],
  ])('a count of %s mended since then changes the forecast as if it had always been so', (_, round) => {
    const mended = withCountsOf(round, 40);
    const going = fitSeason(mended, now, { ...options, earlier: first });
    expect(going.forecast).toEqual(fitSeason(mended, now, options).forecast);
    expect(going.forecast.pests).not.toEqual(fitSeason(season, now, options).forecast.pests);
  });

  const time = rounds[3]!;
  const before4 = (record: object) => ({ id: 'late entry', time, ...record });
  it.each<[string, Partial<Season>]>([
    [
      'a release',
      {
        releases: [
          ...season.releases,
          before4({
            enemy: 'encarsia-formosa',
            form: 'pupa on card',
            number: 500,
            aliveShare: 1,
          }) as Season['releases'][number],
        ],
      },
    ],
    [
      'a wash',
      { treatments: [before4({ kind: 'soap', coveredShare: 0.9 }) as Season['treatments'][number]] },
    ],
    [
      'a card that had been taken down',
      { traps: season.traps.map((trap) => ({ ...trap, takenDownAt: time })) },
    ],
    ['a larger house', { place: { ...season.place, areaM2: 3 * season.place.areaM2 } }],
    ['another place on earth', { place: { ...season.place, latitudeDeg: season.place.latitudeDeg - 4 } }],
    [
      'a warmer past',
      {
        readings: season.readings.map((one) => ({
          ...one,
          ...(one.temperatureC !== undefined && one.time < time
            ? { temperatureC: one.temperatureC + 2 }
            : {}),
        })),
      },
    ],
  ])('%s entered afterwards changes the forecast as if it had always stood there', (_, entered) => {
    const mended: Season = { ...season, ...entered };
    const going = fitSeason(mended, now, { ...options, earlier: first });
    expect(going.forecast).toEqual(fitSeason(mended, now, options).forecast);
    expect(going.forecast.pests).not.toEqual(fitSeason(season, now, options).forecast.pests);
  });

  it('another seed or other members start anew', () => {
    for (const drawn of [{ members: 60, seed: 2 }, { members: 50 }]) {
      const going = fitSeason(season, now, { ...drawn, earlier: first });
      expect(going.forecast).toEqual(fitSeason(season, now, drawn).forecast);
    }
  });
});
