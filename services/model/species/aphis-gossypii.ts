import type { SpeciesRecord } from './record.ts';

export const aphisGossypii: SpeciesRecord = {
  id: 'aphis-gossypii',
  name: 'Aphis gossypii Glover',
  commonName: 'melon and cotton aphid',
  shortName: 'melon aphids',
  development: {
    lowerC: 6.2,
    plateauC: 30,
    zeroC: 36,
    // Survival: 0.81 from birth to adult (Xia et al. 1999), the same for each instar.
    stages: [
      { name: 'N1', degreeDays: 27.2, cv: 0.12, survival: 0.949 },
      { name: 'N2', degreeDays: 27.2, cv: 0.12, survival: 0.949 },
      { name: 'N3', degreeDays: 27.2, cv: 0.12, survival: 0.949 },
      { name: 'N4', degreeDays: 27.3, cv: 0.12, survival: 0.949 },
    ],
    source:
      'Threshold and total: Kersting et al. 1999 (6.2 °C, 108.9 degree-days). Equal instars: our derivation after Xia et al. 1999 (23.0 to 25.5 degree-days each). Survival: Xia et al. 1999, 25 °C. Best 30 °C: Parajulee 2007; zero at 36 °C is a judgement.',
  },
  traits: {
    kind: 'pest',
    adult: {
      // One day at 20 degC.
      preovipositionDegreeDays: 13.8,
      lifeDaysAt20C: 21,
      femaleShare: 1,
      eggsPerDay: 3.1,
      fecundityByTemperature: [
        [6.2, 0],
        [10, 0.2],
        [20, 0.8],
        [25, 1],
        [28, 1],
        [32, 0.5],
        [36, 0],
      ],
      source:
        'Births a day: Xia et al. 1999 (3.1 at 25 °C). Life: 17 days at 25 °C on cucumber (Zamani et al. 2006), 14 at 20 °C in the same table; 168.8 degree-days above 7.9 °C (Xia et al. 1999) is 14 at 20 °C, Parajulee 2007 has 39: the middle is a judgement. Before the first birth, shape by temperature: judgement.',
    },
    heatFromC: 30,
    heatHazardAt39C: 0.1,
    flightByTemperature: [
      [13, 0],
      [16, 0.5],
      [20, 1],
      [30, 1],
      [34, 0.2],
      [38, 0],
    ],
    hostFactor: { cucumber: 1, melon: 1, courgette: 1, pepper: 0.9, aubergine: 0.9, okra: 0.3 },
  },
  rows: [],
  openQuestions: [],
};
