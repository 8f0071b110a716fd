/** The rose trial on spider mites, by the forecast's population. */
import { createWorld } from '../../../services/model/population/world.ts';
import type { Release } from '../../../services/model/season.ts';
import { constantPath, courseIn, middleMember } from '../../population/house.ts';
import type { OutcomeRow, Row } from './row.ts';
import * as from from './sources.ts';

/** Not printed, so assumed: 100 leaves a m2, 21 °C, crowded at 6 adults a leaf, looked at after ten weeks. */
const leavesPerM2 = 100;
const days = 71;

const released = (enemy: string, perM2: number): Release => ({
  id: enemy,
  enemy: enemy as Release['enemy'],
  form: 'adults',
  number: perM2,
  time: new Date(0).toISOString(),
  aliveShare: 1,
});

/** Whether fewer mites are left on the leaves than at the start. */
function held(mitesPerLeaf: number, releases: Release[]): boolean {
  const world = createWorld(['tetranychus-urticae'], {
    startMs: 0,
    areaM2: 1,
    path: constantPath(21, days),
    releases,
    treatments: [],
  });
  const member = middleMember(world, {
    startingPerM2: mitesPerLeaf * leavesPerM2,
    crowdingPerM2: 6 * leavesPerM2,
    enemies: world.enemies.map(({ traits }) => ({ searchM2PerDay: traits.searchM2PerDay, establishes: 1 })),
  });
  const { adults, young } = courseIn(world, member);
  return adults[days - 1]! + young[days - 1]! < mitesPerLeaf * leavesPerM2;
}

const roses = {
  kind: 'outcome',
  id: 'E13',
  source: from.blumel2002,
  mark: 'SEEN',
  note: 'assumed: 100 leaves a m2, 21 °C, ten weeks',
} as const;

export const miteTrials: readonly Row[] = [
  {
    ...roses,
    species: 'phytoseiulus-persimilis',
    what: 'roses, 23.9 mites a leaf, 26 persimilis and 24 californicus a m2: fewer mites in the end',
    published: 'controlled',
    ours: () =>
      held(23.9, [released('phytoseiulus-persimilis', 26), released('neoseiulus-californicus', 24)]),
  },
  {
    ...roses,
    species: 'phytoseiulus-persimilis',
    what: 'roses, 0.16 mites a leaf, 32 persimilis a m2 alone: more mites in the end',
    published: 'lost',
    ours: () => !held(0.16, [released('phytoseiulus-persimilis', 32)]),
  },
  {
    ...roses,
    species: 'neoseiulus-californicus',
    what: 'roses, 10.2 mites a leaf, 51 californicus a m2 alone: more mites in the end',
    published: 'lost',
    ours: () => !held(10.2, [released('neoseiulus-californicus', 51)]),
    reason:
      'in ours californicus overtakes the mites after four weeks; its search on m2 of ground is a judgement, and the trial had no replicates',
  },
] satisfies readonly OutcomeRow[];
