/** A count a tenth higher or lower hardly ever changes what is advised, in seasons of single insects. */
import { expect, it } from 'vitest';
import { advise, adviseFrom, fit as fitSeason, type Season } from '../../services/model/index.ts';
import { startGarden } from '../../simulators/startGarden.ts';
import { trialByName } from '../../simulators/trials.ts';

const dayMs = 86_400_000;

/** The season with its last round of trap counts made higher or lower. */
function withLastRound(season: Season, factor: number): Season {
  const lastMs = Math.max(...season.trapCounts.map(({ time }) => Date.parse(time)));
  const changed = (counted: NonNullable<Season['trapCounts'][number]['counts']['whitefly']>) =>
    typeof counted === 'number'
      ? Math.round(counted * factor)
      : { low: Math.round(counted.low * factor), high: Math.round(counted.high * factor) };
  const trapCounts = season.trapCounts.map((round) =>
    Date.parse(round.time) < lastMs - dayMs
      ? round
      : {
          ...round,
          counts: Object.fromEntries(
            Object.entries(round.counts).map(([kind, number]) => [kind, changed(number)]),
          ),
        },
  );
  return { ...season, trapCounts };
}

it('decides alike in nine weeks of ten', { timeout: 120_000 }, () => {
  const decided = [
    ['early-whitefly', 171],
    ['summer-thrips', 176],
  ] as const;
  const pairs = decided.flatMap(([trial, seed]) => {
    const garden = startGarden(trialByName(trial), seed);
    return Array.from({ length: 6 }, () => {
      garden.advanceWeek();
      garden.advanceWeek();
      const asOf = new Date(garden.nowMs()).toISOString();
      const earlier = fitSeason(garden.season(), asOf, { members: 20 });
      const as = adviseFrom(garden.season(), earlier, asOf).decision;
      return [0.9, 1.1].map((factor) => {
        const changed = withLastRound(garden.season(), factor);
        return advise(changed, asOf, { members: 20, earlier }).decision === as;
      });
    }).flat();
  });
  const changed = pairs.filter((alike) => !alike).length;
  expect(changed / pairs.length).toBeLessThan(0.1);
});
