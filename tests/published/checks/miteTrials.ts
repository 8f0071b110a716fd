/** Trials with predatory mites on spider mites, by the forecast's population. */

import type { Release } from '../../../services/model/season.ts';
import type { Answer, OutcomeRow, Row } from './row.ts';
import * as from from './sources.ts';
import { dayWhen, outcomeOf, released } from './trials.ts';

/** Not printed, so assumed: 100 leaves a m2, crowded at 6 adults a leaf; on roses looked at after ten weeks. */
const leavesPerM2 = 100;
const days = 71;
const persimilis = 'phytoseiulus-persimilis';

const onMites = (temperatureC: number, days: number, mitesPerLeaf: number, releases: readonly Release[]) =>
  outcomeOf({
    pest: 'tetranychus-urticae',
    temperatureC,
    days,
    releases,
    start: { startingPerM2: mitesPerLeaf * leavesPerM2, crowdingPerM2: 6 * leavesPerM2 },
  });

/** Whether fewer mites are left on the leaves than at the start. */
const held = (mitesPerLeaf: number, releases: readonly Release[]) =>
  onMites(21, days, mitesPerLeaf, releases).all[days - 1]! < mitesPerLeaf * leavesPerM2;

const roses = {
  kind: 'outcome',
  id: 'E13',
  source: from.blumel2002,
  mark: 'SEEN',
  note: 'assumed: 100 leaves a m2, 21 °C, ten weeks',
} as const;

const onRoses: readonly OutcomeRow[] = [
  {
    ...roses,
    species: persimilis,
    what: 'roses, 23.9 mites a leaf, 26 persimilis and 24 californicus a m2: fewer mites in the end',
    published: 'controlled',
    ours: () => held(23.9, [released(persimilis, 26), released('neoseiulus-californicus', 24)]),
  },
  {
    ...roses,
    species: persimilis,
    what: 'roses, 0.16 mites a leaf, 32 persimilis a m2 alone: more mites in the end',
    published: 'lost',
    ours: () => !held(0.16, [released(persimilis, 32)]),
    reason: 'lost for some weeks, then the predators left overtake the mites',
  },
  {
    ...roses,
    species: 'neoseiulus-californicus',
    what: 'roses, 10.2 mites a leaf, 51 californicus a m2 alone: more mites in the end',
    published: 'lost',
    ours: () => !held(10.2, [released('neoseiulus-californicus', 51)]),
    reason:
      'ours overtakes the mites in the second week; search is a judgement, and the trial had no replicates',
  },
];

/**
 * The vinery: 8,000 persimilis on 1000 m2 in late May and early June, nearly no prey in early July, mites back in
 * August. Assumed: 25 °C, one mite a leaf, half of the predators ten days after the others.
 */
function vinery(): Record<'gone' | 'diedOut' | 'back', Answer> {
  const start = leavesPerM2;
  const { all, of } = onMites(25, 130, 1, [released(persimilis, 4), released(persimilis, 4, 10)]);
  const { hunters } = of(persimilis);
  const most = Math.max(...hunters);
  const gone = dayWhen(all, 0, (mites) => mites < start / 10);
  if (gone === 'never') return { gone, diedOut: gone, back: gone };
  const diedOut = dayWhen(hunters, hunters.indexOf(most), (number) => number < most / 100);
  const back = dayWhen(all, gone, (mites) => mites > start / 10);
  return { gone, diedOut, back: back === 'never' ? back : back - gone };
}

const vine = {
  id: 'E14',
  species: persimilis,
  source: from.vinery1998,
  mark: 'SEEN',
  note: 'assumed: 25 °C, one mite a leaf, 100 leaves a m2',
} as const;
const noRefuge =
  'mites in ours have no refuge: so few are left (below 1e-13 a m2) that they need five months';

const inVinery: readonly Row[] = [
  {
    ...vine,
    kind: 'number',
    what: 'vinery, 8 persimilis a m2 in two releases: days until prey is below a tenth of the start',
    published: 35,
    printed: 'about 5 weeks',
    unit: 'd',
    tolerance: { within: 14 },
    ours: () => vinery().gone,
  },
  {
    ...vine,
    kind: 'outcome',
    what: 'vinery: then the predators fall below a hundredth of their most',
    published: 'die out',
    ours: () => {
      const { gone, diedOut } = vinery();
      return typeof gone === 'number' && typeof diedOut === 'number' && diedOut > gone;
    },
  },
  {
    ...vine,
    kind: 'number',
    what: 'vinery: days from there until the mites are back at a tenth of the start',
    published: 30,
    printed: 'a month',
    unit: 'd',
    tolerance: { within: 14 },
    ours: () => vinery().back,
    reason: noRefuge,
  },
];

export const miteTrials: readonly Row[] = [...onRoses, ...inVinery];
