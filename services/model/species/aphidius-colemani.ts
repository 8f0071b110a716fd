import type { SpeciesRecord } from './record.ts';

export const aphidiusColemani: SpeciesRecord = {
  id: 'aphidius-colemani',
  name: 'Aphidius colemani Viereck',
  commonName: 'small aphid parasitic wasp',
  shortName: 'Aphidius',
  development: {
    lowerC: 2.4,
    plateauC: 28,
    zeroC: 34,
    // Mummy after 0.6 of the time and survival 0.8: judgement.
    stages: [
      { name: 'egg-larva (in the aphid)', degreeDays: 143, cv: 0.12, survival: 0.88 },
      { name: 'pupa (mummy)', degreeDays: 95, cv: 0.12, survival: 0.91 },
    ],
    source:
      'Sampaio et al. 2003 (2.36 °C, 238.1 degree-days; a second strain 2.19 °C, 238.1). Split at the mummy and the bend above 28 °C: judgement.',
  },
  traits: {
    kind: 'enemy',
    adult: {
      // Half a day at 20 degC, judgement.
      preovipositionDegreeDays: 9,
      lifeDaysAt20C: 6,
      femaleShare: 0.6,
      eggsPerDay: 59,
      fecundityByTemperature: [
        [5, 0],
        [15, 0.49],
        [20, 0.54],
        [25, 1],
        [30, 0.44],
        [34, 0],
      ],
      source:
        'Hosts a day by temperature: Ahn et al. 2024 (29.1, 31.9, 59.3, 25.9 at 15, 20, 25, 30 °C). Life 6 days at 20 °C: from memory. Sex ratio and time before the first egg: judgement.',
    },
    attacks: [
      {
        pest: 'myzus-persicae',
        stages: ['N1', 'N2', 'N3', 'N4', 'adult'],
        kind: 'parasitism',
        ceilingPerDay: 59,
        source: 'Ahn et al. 2024: 59.3 a day at 25 °C',
      },
      {
        pest: 'aphis-gossypii',
        stages: ['N1', 'N2', 'N3', 'N4', 'adult'],
        kind: 'parasitism',
        ceilingPerDay: 59,
        source: 'Ahn et al. 2024, measured on Myzus persicae',
      },
    ],
    activityByTemperature: [
      [5, 0],
      [10, 0.25],
      [18, 1],
      [25, 1],
      [30, 0.5],
      [35, 0],
    ],
    livesAboveC: 2.4,
    huntsAboveC: 10,
    release: {
      form: 'mummies in a tube',
      verb: 'stand out',
      piece: ['tube', 'tubes'],
      perPiece: 250,
      perM2: 1,
      where: 'at plant height in the evening, ants kept off',
      establishes: 0.8,
      lookAfterDays: 14,
      lookFor: 'mummies',
      source: 'common practice, no source: 0.5 to 1 a m2 a week on a light attack',
    },
  },
  rows: [],
  openQuestions: [],
};
