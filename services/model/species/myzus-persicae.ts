import type { SpeciesRecord } from './record.ts';

export const myzusPersicae: SpeciesRecord = {
  id: 'myzus-persicae',
  name: 'Myzus persicae (Sulzer)',
  commonName: 'peach-potato aphid',
  shortName: 'peach aphids',
  development: {
    lowerC: 4,
    plateauC: 26,
    zeroC: 32.5,
    // Survival: 0.782 from birth to adult (Whalon & Smilowitz 1979), shared out by degree-days.
    stages: [
      { name: 'N1', degreeDays: 25.2, cv: 0.12, survival: 0.947 },
      { name: 'N2', degreeDays: 27.1, cv: 0.12, survival: 0.943 },
      { name: 'N3', degreeDays: 30.9, cv: 0.12, survival: 0.935 },
      { name: 'N4', degreeDays: 30.7, cv: 0.12, survival: 0.936 },
    ],
    source:
      'Whalon & Smilowitz 1979 (every instar above 4 °C, survival 0.782). Upper end: no young live through constant 32.5 °C (Satar et al. 2008); the plateau from 26 °C is a judgement.',
  },
  traits: {
    kind: 'pest',
    adult: {
      preovipositionDegreeDays: 20.4,
      lifeDaysAt20C: 20,
      femaleShare: 1,
      eggsPerDay: 3,
      fecundityByTemperature: [
        [4, 0],
        [10, 0.4],
        [17, 1],
        [25, 1],
        [29, 0.4],
        [32.5, 0],
      ],
      source:
        'Before the first birth: Whalon & Smilowitz 1979 (20.4 degree-days above 4 °C). Life: 15 days at 25 °C on sweet pepper, moved to 20 °C by the rate of development. Births a day: from memory; the best temperature is 15.6 °C in one paper and 25 °C in another, so it is flat between.',
    },
    // Chosen so that 0.78 of the nymphs becomes 0.27 at 29.4 degC (Whalon & Smilowitz 1979).
    heatFromC: 26,
    heatHazardAt39C: 0.12,
    flightByTemperature: [
      [13, 0],
      [16, 0.5],
      [20, 1],
      [28, 1],
      [32, 0.2],
      [36, 0],
    ],
    hostFactor: { pepper: 1, aubergine: 1, potato: 1, cabbage: 0.7 },
  },
  rows: [],
  openQuestions: [],
};
