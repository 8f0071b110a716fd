import type { SpeciesRecord } from './record.ts';

export const encarsiaFormosa: SpeciesRecord = {
  id: 'encarsia-formosa',
  name: 'Encarsia formosa Gahan',
  commonName: 'whitefly parasitic wasp',
  shortName: 'Encarsia',
  development: {
    lowerC: 12.8,
    plateauC: 30,
    zeroC: 38,
    // The scale turns black after 0.55 of the time; survival 0.75 (0.7 published on another whitefly).
    stages: [
      { name: 'egg-larva (white scale)', degreeDays: 104, cv: 0.12, survival: 0.854 },
      { name: 'pupa (black scale)', degreeDays: 85, cv: 0.12, survival: 0.878 },
    ],
    source:
      'Threshold and total: Osborne 1982 on greenhouse whitefly (12.8 °C, 188.9 degree-days). Black after 0.55 of it: judgement. Bend above 30 °C: judgement, since about 14 days at 32 °C (Qiu et al. 2004) are no fewer than at 28 °C.',
  },
  traits: {
    kind: 'enemy',
    adult: {
      // 1.2 days at 20 degC.
      preovipositionDegreeDays: 8.6,
      lifeDaysAt20C: 20,
      femaleShare: 1,
      eggsPerDay: 10,
      fecundityByTemperature: [
        [12.8, 0],
        [15, 0.1],
        [20, 0.5],
        [25, 1],
        [30, 1],
        [36, 0],
      ],
      source:
        'Eggs a day (5 at 20 °C, 10 at 25 °C): from memory. Life: between 9 days (28 °C) and 37 days (25 °C) as published, a judgement. Nearly all are females: from memory. Before the first egg: 1.2 days, temperature not given.',
    },
    attacks: [
      {
        pest: 'trialeurodes-vaporariorum',
        stages: ['N2', 'N3', 'N4/pupa'],
        kind: 'parasitism',
        ceilingPerDay: 10,
        source: 'from memory: 10 eggs a day at 25 °C; prefers N3 and young N4',
      },
      {
        pest: 'trialeurodes-vaporariorum',
        stages: ['N1', 'N2', 'N3', 'N4/pupa'],
        kind: 'host-feeding',
        ceilingPerDay: 2,
        source: 'from memory: 1 to 2 a day at 25 °C; stages as measured on Bemisia',
      },
    ],
    activityByTemperature: [
      [15, 0],
      [18, 0.15],
      [21, 1],
      [30, 1],
      [36, 0],
    ],
    livesAboveC: 12.8,
    huntsAboveC: 18,
    release: {
      form: 'pupa on card',
      verb: 'hang',
      piece: ['card', 'cards'],
      perPiece: 60,
      perM2: 6,
      where: 'low and in shade',
      establishes: 0.8,
      lookAfterDays: 21,
      lookFor: 'black scales',
      source: 'judgement: one parcel of 6 a m2 did best in trials on simulated seasons of a small house',
    },
  },
  rows: [],
  openQuestions: [],
};
