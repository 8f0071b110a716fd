/** The rose trial on spider mites, by the forecast's population: no place follows mites yet, the records can. */
import { simulate } from '../../../services/model/population/simulate.ts';
import { worldOf } from '../../../services/model/population/world.ts';
import type { Release } from '../../../services/model/season.ts';
import { neoseiulusCalifornicus } from '../../../services/model/species/neoseiulus-californicus.ts';
import { phytoseiulusPersimilis } from '../../../services/model/species/phytoseiulus-persimilis.ts';
import type { SpeciesRecord } from '../../../services/model/species/record.ts';
import { tetranychusUrticae } from '../../../services/model/species/tetranychus-urticae.ts';
import { allDays, constantPath, middleMember } from '../../population/house.ts';
import type { OutcomeRow, Row } from './row.ts';
import * as from from './sources.ts';

/** Not printed, so assumed: 100 leaves a m2, 21 °C, crowded at 6 adults a leaf, looked at after ten weeks. */
const leavesPerM2 = 100;
const days = 71;

/** Types of the forecast name only what a place can follow; its population asks for no more than a record. */
const asRecord = (record: SpeciesRecord) => record as unknown as SpeciesRecord;
const mites = asRecord(tetranychusUrticae);
const predators = [phytoseiulusPersimilis, asRecord(neoseiulusCalifornicus)];

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
  const world = worldOf(mites, predators, {
    startMs: 0,
    areaM2: 1,
    path: constantPath(21, days),
    releases,
    treatments: [],
  });
  // The member of the tests knows pests of places only; all that is the pest's own is given here.
  const member = middleMember(
    { ...world, pestId: 'myzus-persicae', enemies: [] },
    {
      eggsPerDay: mites.traits.adult.eggsPerDay,
      startingPerM2: mitesPerLeaf * leavesPerM2,
      crowdingPerM2: 6 * leavesPerM2,
      enemies: world.enemies.map(() => ({ searchM2PerDay: 0.005, establishes: 1 })),
    },
  );
  const track = simulate(world, member, days, allDays(world));
  return track.adults[days - 1]! + track.young[days - 1]! < mitesPerLeaf * leavesPerM2;
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
