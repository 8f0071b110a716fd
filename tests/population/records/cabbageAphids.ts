/**
 * Two aphids of cabbage and its kin, for the counts of tests/data/aphid-parasitoid-cages alone. No place follows
 * them: in the engine they stand in for an aphid of the catalogue and wear its id. Every value is from memory, none
 * was checked in its paper, and none was taken from the cages.
 */
import type { SpeciesRecord } from '../../../services/model/species/record.ts';

const instars = (degreeDays: number, survival: number) =>
  ['N1', 'N2', 'N3', 'N4'].map((name) => ({ name, degreeDays, cv: 0.12, survival }));

const heat = { heatFromC: 28, heatHazardAt39C: 0.12 };
const flight = [
  [13, 0],
  [20, 1],
] as const;
const openQuestions = ['Every value is from memory.'];

export const brevicoryneBrassicae: SpeciesRecord = {
  id: 'aphis-gossypii',
  name: 'Brevicoryne brassicae (Linnaeus)',
  commonName: 'cabbage aphid',
  shortName: 'cabbage aphids',
  development: {
    lowerC: 4.7,
    plateauC: 26,
    zeroC: 32,
    stages: instars(35, 0.945),
    source:
      'from memory: first births after about 10 days at 20 degC and 8 at 25 (DeLoach 1974, Ann Entomol Soc Am 67:332), threshold between 4 and 5 degC (Campbell et al. 1974, J Appl Ecol 11:431)',
  },
  traits: {
    kind: 'pest',
    adult: {
      preovipositionDegreeDays: 13,
      lifeDaysAt20C: 18,
      femaleShare: 1,
      eggsPerDay: 3,
      fecundityByTemperature: [
        [5, 0],
        [15, 0.8],
        [20, 1],
        [25, 1],
        [30, 0.3],
        [32, 0],
      ],
      source: 'from memory: 30 to 45 young in a life at 20 degC',
    },
    ...heat,
    flightByTemperature: flight,
    hostFactor: {},
    crowdingPerM2: 1500,
    winged: { always: 0.03, crowded: 0.33 },
    antsAttend: true,
    seen: { trap: 'aphid', leaves: ['aphid'], parasitised: { host: 'aphid', sign: 'mummy' } },
  },
  rows: [],
  openQuestions,
};

export const lipaphisErysimi: SpeciesRecord = {
  id: 'aphis-gossypii',
  name: 'Lipaphis erysimi (Kaltenbach)',
  commonName: 'turnip aphid',
  shortName: 'turnip aphids',
  development: {
    lowerC: 6,
    plateauC: 28,
    zeroC: 35,
    stages: instars(28, 0.96),
    source:
      'from memory: 8 days from birth to adult at 20 degC, 6 at 25 (Liu & Meng 2000, Bull Entomol Res 90:337)',
  },
  traits: {
    kind: 'pest',
    adult: {
      preovipositionDegreeDays: 12,
      lifeDaysAt20C: 18,
      femaleShare: 1,
      eggsPerDay: 6,
      fecundityByTemperature: [
        [6, 0],
        [15, 0.6],
        [20, 0.8],
        [25, 1],
        [30, 0.5],
        [35, 0],
      ],
      source: 'from memory: 50 to 90 young in a life between 20 and 25 degC (DeLoach 1974)',
    },
    ...heat,
    flightByTemperature: flight,
    hostFactor: {},
    crowdingPerM2: 1500,
    winged: { always: 0.03, crowded: 0.33 },
    antsAttend: true,
    seen: { trap: 'aphid', leaves: ['aphid'], parasitised: { host: 'aphid', sign: 'mummy' } },
  },
  rows: [],
  openQuestions,
};
