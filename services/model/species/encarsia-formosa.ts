import type { PublishedRow, SpeciesRecord } from './record.ts';
import { bandsFrom, byTemperature, collectedLines, rowsFrom } from './rows.ts';
import {
  commonPractice,
  deVis2002,
  fromMemory,
  inNietschke,
  judgement,
  madueke1984,
  osborne1982,
} from './sources.ts';

const qiu2004 =
  'Qiu YT, van Lenteren JC, Drost YC, Posthuma-Doodeman JAM 2004. Life-history parameters of Encarsia formosa, Eretmocerus eremicus and E. mundus. European Journal of Entomology 101:83-94';
const enkegaard1993 =
  'Enkegaard A 1993. Encarsia formosa parasitizing the poinsettia strain of Bemisia tabaci: bionomics in relation to temperature. Entomologia Experimentalis et Applicata 69:251-261';
const vanRoermund1995 =
  'van Roermund HJW, van Lenteren JC 1995. Individual Encarsia formosa parasitoids observed on tomato leaflets. Journal of Applied Entomology 119:465-471';
const inIndia =
  'Relative preference and demographic parameters of Encarsia formosa against Trialeurodes vaporariorum. Egyptian Journal of Biological Pest Control (authors not seen)';
const arakawa1982 =
  'Arakawa R 1982. Reproductive capacity and amount of host-feeding of Encarsia formosa. Zeitschrift fuer angewandte Entomologie 93:175-182';
const vermont2001 =
  'Grubinger V 2001. Biological controls for the greenhouse. University of Vermont Extension';

const rows: readonly PublishedRow[] = [
  ...collectedLines(inNietschke, 'egg to adult', 'greenhouse whitefly', [
    [osborne1982, 12.8, 188.9, 'in use, total rounded to 189'],
  ]),
  ...collectedLines(inNietschke, 'egg to adult', 'other whiteflies', [
    [enkegaard1993, 13.3, 207.4, 'Bemisia tabaci on poinsettia'],
    [
      'Shishehbor P, Brennan PA 1996. Bulletin of Entomological Research 86:67-72',
      12,
      241,
      'Trialeurodes ricini',
    ],
  ]),
  ...rowsFrom(madueke1984, 'SEEN', [['lower threshold, egg to adult', 13, '°C', 'greenhouse whitefly']]),
  ...rowsFrom(qiu2004, 'SEEN', [
    ['lower threshold, egg to adult', 11.5, '°C', 'Bemisia argentifolii, strain D'],
    ['lower threshold, egg to adult', 8.1, '°C', 'Bemisia argentifolii, strain B'],
    ['days, egg to adult', 48, 'd', '15 °C, Bemisia, strain B', 'the line in use gives 86'],
    ['days, egg to adult', 62.8, 'd', '15 °C, Bemisia, strain D', 'the line in use gives 86'],
    ['days, egg to adult', 14, 'd', '32 °C, Bemisia, all strains', 'no faster than at 28 °C: hence the bend'],
  ]),
  ...rowsFrom(enkegaard1993, 'SEEN', [
    ['days, egg to adult', 14, 'd', '28 °C, Bemisia on poinsettia'],
    ['survival, egg to adult', 0.5, 'share', '16 °C, Bemisia'],
    ['survival, egg to adult', 0.7, 'share', '22 and 28 °C, Bemisia'],
    ['adult life', 30, 'd', '16 °C, Bemisia'],
    ['adult life', 9, 'd', '28 °C, Bemisia'],
  ]),
  ...rowsFrom(inIndia, 'SEEN', [
    [
      'days, egg to adult',
      18.8,
      'd',
      'N3 of greenhouse whitefly, temperature not seen',
      '11 white, 7.8 black',
    ],
    [
      'days, egg to adult',
      16.2,
      'd',
      'N4 of greenhouse whitefly, temperature not seen',
      '8.5 white, 7.6 black',
    ],
    ['days before the first egg', 1.2, 'd', 'temperature not seen', 'in use'],
  ]),
  ...rowsFrom('mean of 11/18.8 and 8.5/16.2 of the study above', 'DER', [
    ['share of development before the scale is black', 0.55, 'share', 'greenhouse whitefly', 'in use'],
  ]),
  ...rowsFrom(arakawa1982, 'SEEN', [['adult life', 36.8, 'd', '25 °C, greenhouse whitefly, 36 hosts a day']]),
  ...rowsFrom(judgement, 'MEM', [
    ['adult life', 20, 'd', '20 °C', 'in use, published 9 to 37'],
    ['start of the plateau', 29, '°C', 'all stages', 'in use'],
    ['upper limit of development', 40, '°C', 'all stages', 'in use'],
    ['survival, egg to adult', 0.75, 'share', 'greenhouse whitefly', 'in use'],
    ['one parcel of', 6, 'per m2', 'small house', 'in use; did best in trials on simulated seasons'],
  ]),
  ...rowsFrom(fromMemory, 'MEM', [
    ['mean eggs a day', 5, 'eggs', '20 °C', '100 in a life of 20 days'],
    ['mean eggs a day', 10, 'eggs', '25 °C', 'in use for the hunt, which does not fall with age'],
    [
      'search for N2 against N3',
      0.4,
      'share',
      'van Roermund & van Lenteren 1992',
      'in use; N3 and young N4 preferred',
    ],
    [
      'decline of search with the number of wasps',
      0.4,
      'exponent',
      'cages, m of Hassell & Varley 1969',
      'wasps in general 0.3 to 0.8',
    ],
    ['hosts fed on a day', 2, 'scales', '25 °C', 'in use'],
  ]),
  ...rowsFrom('10 / 0.583: laying falls in a line', 'DER', [
    ['eggs a day, first days', 17.1, 'eggs', '25 °C', 'in use'],
  ]),
  ...rowsFrom(
    'search with exponent 0.4 near 5 wasps a plant, 2.5 plants a m2: 12.5 x 0.6 / 0.4, rounded',
    'DER',
    [['search halves among', 20, 'wasps per m2', 'tomato', 'in use, rests on memory']],
  ),
  ...rowsFrom(
    'Tello P, Cantor F, Rodriguez D, Cure JR. Densidades y frecuencias de liberacion de Encarsia formosa sobre Trialeurodes vaporariorum en tomate (Bogota plateau)',
    'SEEN',
    [['more wasps no better from', 6, 'wasps per plant', 'tomato, three times a week', '70 % parasitised']],
  ),
  ...byTemperature(deVis2002, 'SEEN', ['growth rate r', 'per day', 'tomato', 'probably regression values'], {
    15: 0.085,
    20: 0.149,
    25: 0.213,
    30: 0.277,
  }),
  ...rowsFrom(vanRoermund1995, 'SEEN', [
    ['walking and flight hardly seen at', 15, '°C', 'clean tomato leaflets'],
    ['walking and flight hardly seen at', 18, '°C', 'clean tomato leaflets', 'in use as "hunts above"'],
  ]),
  ...rowsFrom(vermont2001, 'SEEN', [
    ['do not release when days stay below', 22.2, '°C', 'glasshouse', 'and nights below 15 °C'],
  ]),
  ...bandsFrom(commonPractice, 'MEM', [
    ['release before the pest', 1, 2, 'per m2', 'weekly, 6 to 8 weeks'],
    ['release on a light attack', 3, 5, 'per m2', 'weekly, 6 weeks'],
    ['release on a heavy attack', 9, 10, 'per m2', 'weekly, 6 weeks'],
  ]),
];

export const encarsiaFormosa: SpeciesRecord = {
  id: 'encarsia-formosa',
  name: 'Encarsia formosa Gahan',
  commonName: 'whitefly parasitic wasp',
  shortName: 'Encarsia',
  development: {
    lowerC: 12.8,
    plateauC: 29,
    zeroC: 40,
    // The scale turns black after 0.55 of the time; survival 0.75 (0.7 published on another whitefly).
    stages: [
      { name: 'egg-larva (white scale)', degreeDays: 104, cv: 0.12, survival: 0.854 },
      { name: 'pupa (black scale)', degreeDays: 85, cv: 0.12, survival: 0.878 },
    ],
    source:
      'Threshold and total: Osborne 1982 on greenhouse whitefly (12.8 °C, 188.9 degree-days). Black after 0.55 of it: mean of two hosts of a study on greenhouse whitefly. Bend above 29 °C: judgement, since about 14 days at 32 °C (Qiu et al. 2004) are no fewer than at 28 °C.',
  },
  traits: {
    kind: 'enemy',
    adult: {
      // 1.2 days at 20 degC.
      preovipositionDegreeDays: 8.6,
      lifeDaysAt20C: 20,
      femaleShare: 1,
      eggsPerDay: 17.1,
      fecundityByTemperature: [
        [12.8, 0],
        [15, 0.1],
        [20, 0.5],
        [25, 1],
        [30, 1],
        [36, 0],
      ],
      source:
        'Eggs a day (5 at 20 °C, 10 at 25 °C as means of a life): from memory. Life: between 9 days (28 °C) and 37 days (25 °C) as published, a judgement. Nearly all are females: from memory. Before the first egg: 1.2 days, temperature not given.',
    },
    attacks: [
      {
        prey: 'trialeurodes-vaporariorum',
        stages: ['N3', 'N4/pupa'],
        kind: 'parasitism',
        ceilingPerDay: 10,
        source: 'from memory: 10 eggs a day at 25 °C',
      },
      {
        prey: 'trialeurodes-vaporariorum',
        stages: ['N2'],
        kind: 'parasitism',
        ceilingPerDay: 10,
        preference: 0.4,
        source: 'from memory: 10 eggs a day at 25 °C; N3 and young N4 are preferred',
      },
      {
        prey: 'trialeurodes-vaporariorum',
        stages: ['N1', 'N2', 'N3', 'N4/pupa'],
        kind: 'host-feeding',
        ceilingPerDay: 2,
        source: 'from memory: 1 to 2 a day at 25 °C; stages as measured on Bemisia',
      },
      {
        prey: 'bemisia-tabaci',
        stages: ['N3', 'N4/pupa'],
        kind: 'parasitism',
        ceilingPerDay: 10,
        preference: 0.5,
        source: 'from memory: a poorer host, N4 preferred; eggs as on greenhouse whitefly',
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
    searchM2PerDay: 0.3,
    interferencePerM2: 20,
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
  rows,
  openQuestions: [
    'Below 17 °C the strains differ by weeks: 48 and 63 days measured at 15 °C on another whitefly, 86 by the line in use.',
    'Adult life between 9 and 37 days: food and hosts decide.',
    'How wasps disturb each other on plants was not read; the number in use rests on an exponent from cages.',
    'Eggs a day by temperature and feeding on hosts are from memory.',
    'Search depends on warmth more than development does: hardly any below 18 °C.',
  ],
};
