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

  it('another seed, other members or another place start anew', () => {
    const moved: Season = {
      ...season,
      place: { ...season.place, latitudeDeg: season.place.latitudeDeg - 4 },
    };
    for (const [other, drawn] of [
      [season, { members: 60, seed: 2 }],
      [season, { members: 50 }],
      [moved, options],
    ] as const) {
      const going = fitSeason(other, now, { ...drawn, earlier: first });
      expect(going.forecast).toEqual(fitSeason(other, now, drawn).forecast);
    }
  });
});
