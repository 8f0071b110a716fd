import type { SpeciesRecord } from './record.ts';

export const trialeurodesVaporariorum: SpeciesRecord = {
  id: 'trialeurodes-vaporariorum',
  name: 'Trialeurodes vaporariorum (Westwood)',
  commonName: 'greenhouse whitefly',
  shortName: 'whitefly',
  development: {
    lowerC: 8.3,
    plateauC: 28,
    zeroC: 35,
    // Survival: 0.75 from egg to adult (judgement, published 0.81 and lower), shared out by degree-days.
    stages: [
      { name: 'egg', degreeDays: 107, cv: 0.1, survival: 0.922 },
      { name: 'N1', degreeDays: 47, cv: 0.15, survival: 0.965 },
      { name: 'N2', degreeDays: 60, cv: 0.15, survival: 0.956 },
      { name: 'N3', degreeDays: 60, cv: 0.15, survival: 0.956 },
      { name: 'N4/pupa', degreeDays: 107, cv: 0.1, survival: 0.922 },
    ],
    source:
      'Threshold and total: Osborne 1982 (8.3 °C, 380.7 degree-days). Shares of the stages: days at 21.1 °C of an extension table (8, 3.5, 4.5, 4.5, 8), our derivation. Plateau and zero: judgement, 35 °C as upper limit from a secondary page.',
  },
  traits: {
    kind: 'pest',
    adult: {
      // 1.5 days at 20 degC.
      preovipositionDegreeDays: 17.6,
      lifeDaysAt20C: 32,
      femaleShare: 0.5,
      eggsPerDay: 5,
      fecundityByTemperature: [
        [10, 0],
        [20, 1],
        [25, 1],
        [31, 0.1],
        [35, 0],
      ],
      source:
        'Life, eggs a day and sex ratio: van Roermund & van Lenteren 1992, from memory, true to a factor of 2. Before the first egg: under 2 days above 20 °C (Capinera 2008). Fall above 24 °C: Xie 2011; its shape is a judgement.',
    },
    heatFromC: 33,
    heatHazardAt39C: 0.05,
    flightByTemperature: [
      [12.3, 0],
      [20, 1],
      [26, 1],
      [35, 0.2],
      [39, 0],
    ],
    hostFactor: { aubergine: 1.5, cucumber: 1.3, tomato: 1, bean: 0.6, pepper: 0.1 },
  },
  rows: [],
  openQuestions: [],
};
