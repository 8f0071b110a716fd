/**
 * The pea aphid, for the cages with ladybirds of check E29 alone. No place follows it: in the engine it stands in for
 * the peach-potato aphid and wears its id. Every value is from memory, none was checked in its paper, and none was
 * taken from the cages.
 */
import type { SpeciesRecord } from '../../../services/model/species/record.ts';

export const acyrthosiphonPisum: SpeciesRecord = {
  id: 'myzus-persicae',
  name: 'Acyrthosiphon pisum (Harris)',
  commonName: 'pea aphid',
  shortName: 'pea aphids',
  development: {
    lowerC: 4.5,
    plateauC: 25,
    zeroC: 32,
    stages: ['N1', 'N2', 'N3', 'N4'].map((name) => ({ name, degreeDays: 28, cv: 0.1, survival: 0.97 })),
    source:
      'from memory: 7 to 8 days from birth to adult at 20 degC, threshold between 4 and 5 degC (Campbell et al. 1974, J Appl Ecol 11:431)',
  },
  traits: {
    kind: 'pest',
    adult: {
      preovipositionDegreeDays: 16,
      lifeDaysAt20C: 20,
      femaleShare: 1,
      eggsPerDay: 7,
      fecundityByTemperature: [
        [5, 0],
        [15, 0.8],
        [20, 1],
        [25, 0.9],
        [30, 0.1],
        [32, 0],
      ],
      source: 'from memory: 70 to 100 young in a life at 20 degC, six to eight a day at first',
    },
    heatFromC: 28,
    heatHazardAt39C: 0.12,
    flightByTemperature: [
      [13, 0],
      [20, 1],
    ],
    hostFactor: {},
    crowdingPerM2: 1500,
    winged: { always: 0.03, crowded: 0.33 },
    antsAttend: true,
    seen: { trap: 'aphid', leaves: ['aphid'], parasitised: { host: 'aphid', sign: 'mummy' } },
  },
  rows: [],
  openQuestions: ['Every value is from memory.'],
};
