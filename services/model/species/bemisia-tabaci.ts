import type { PublishedRow, SpeciesRecord } from './record.ts';
import { byTemperature, collectedLines, rowsFrom, thermalLine } from './rows.ts';
import { fromMemory, inJarosik, judgement } from './sources.ts';

const zalom1985 = 'Zalom FG, Natwick ET, Toscano NC 1985';
const enkegaard1993 =
  'Enkegaard A 1993. The poinsettia strain of the cotton whitefly, Bemisia tabaci: biological and demographic parameters on poinsettia in relation to temperature. Bulletin of Entomological Research 83:535-546. doi 10.1017/S0007485300039961';
const takalloozadeh =
  'Takalloozadeh HM. Effect of different constant temperatures on the development and reproduction of Bemisia tabaci. Munis Entomology & Zoology';
const wangTsai1996 =
  'Wang K, Tsai JH 1996. Temperature effect on development and reproduction of silverleaf whitefly. Annals of the Entomological Society of America 89:375-384. doi 10.1093/aesa/89.3.375';
const tsaiWang1996 =
  'Tsai JH, Wang K 1996. Development and reproduction of Bemisia argentifolii on five host plants. Environmental Entomology 25:810-816';
const mansoura2014 =
  'Temperature-dependent development of Bemisia tabaci B biotype on cotton and eggplant and field heat units. Acta Phytopathologica et Entomologica Hungarica 49:289 (authors not seen)';
const albergaria2002 =
  'Albergaria NMMS, Cividanes FJ 2002. Exigencias termicas de Bemisia tabaci biotipo B. Neotropical Entomology 31:359-363. doi 10.1590/S1519-566X2002000300003';
const cui2008 =
  'Cui X, Wan F, Xie M, Liu T 2008. Effects of heat shock on survival and reproduction of two whitefly species. Journal of Insect Science 8:24. doi 10.1673/031.008.2401';
const biotypes2014 =
  'Biological traits and life table parameters of A and B biotype of Bemisia tabaci on cotton and rapeseed. Brazilian Archives of Biology and Technology 2014 (authors not seen)';

const rows: readonly PublishedRow[] = [
  ...collectedLines(inJarosik, 'egg to adult', 'host not stated', [
    [zalom1985, 10, 316, 'in use'],
    ['Wang K, Tsai JH 1996', 12.71, 222.6, 'MEAM1'],
    ['Nava-Camberos U, Riley DG, Harris MK 2001', 13.89, 245.4, 'MEAM1'],
    ['Nava-Camberos U, Riley DG, Harris MK 2001', 12.99, 250.5, 'MEAM1'],
    ['Nava-Camberos U, Riley DG, Harris MK 2001', 12.19, 284.9, 'MEAM1'],
    ['Nava-Camberos U, Riley DG, Harris MK 2001', 10.02, 351.8, 'MEAM1'],
    ['Greenberg SM, Legaspi BC, et al. 2000', 10.34, 319.7, 'MEAM1; from a study of its parasitoid'],
    ['Powell DA, Bellows TS 1992', 14.4, 214.8],
    ['Powell DA, Bellows TS 1992', 11.9, 231.1],
    ['Ahn K, Lee K, et al. 2001', 11.1, 317.3],
    ['Butler GD, Henneberry TJ, Clayton TE 1983', 10.2, 327.3],
    ['von Arx R, Baumgaertner JU, Delucchi V 1983', 11.2, 422.4],
    ['Muniz M, Nombela G 2001', 8.17, 375.2],
    ['Muniz M, Nombela G 2001', 8.06, 404],
    ['Muniz M 2000', 8.7, 404],
  ]),
  ...thermalLine(enkegaard1993, 'SEEN', ['egg to adult', 14, 327, 'poinsettia, 16 to 28 °C']),
  ...thermalLine(enkegaard1993, 'SEEN', ['egg', 12, 126, 'poinsettia']),
  ...thermalLine(enkegaard1993, 'SEEN', [
    'moult to first egg',
    8,
    40,
    'poinsettia',
    '3.3 days at 20 °C, in use',
  ]),
  ...thermalLine(enkegaard1993, 'SEEN', ['adult life', 8, 360, 'poinsettia', '30 days at 20 °C']),
  ...thermalLine(albergaria2002, 'SEEN', ['egg to adult', 8.3, 472.6, 'soybean']),
  ...thermalLine(albergaria2002, 'SEEN', ['egg', 11.1, 98.8, 'soybean']),
  ...thermalLine(albergaria2002, 'SEEN', ['nymph', 6.8, 383.8, 'soybean']),
  ...thermalLine(mansoura2014, 'SEEN', ['egg to adult', 11.94, 299.1, 'cotton']),
  ...thermalLine(mansoura2014, 'SEEN', ['egg to adult', 12.33, 313.3, 'aubergine']),
  ...thermalLine('line through the two temperatures of Takalloozadeh', 'DER', [
    'egg to adult',
    9.2,
    316,
    'tomato, 20 and 32 °C',
  ]),
  ...thermalLine('middle of the lines of Takalloozadeh (tomato) and of the Egyptian study', 'DER', [
    'egg to adult',
    10.5,
    310,
    'tomato, cotton, aubergine',
    'no line of one study; the line in use is the published one nearest to it in days',
  ]),
  ...byTemperature(takalloozadeh, 'SEEN', ['days, egg to adult', 'd', 'tomato'], { 20: 29.14, 32: 13.84 }),
  ...byTemperature(takalloozadeh, 'SEEN', ['days, N1 to N3', 'd', 'tomato', 'split in use'], {
    20: 16.68,
    32: 6.74,
  }),
  ...byTemperature(takalloozadeh, 'SEEN', ['days, N4/pupa', 'd', 'tomato', 'split in use'], {
    20: 5.53,
    32: 2.34,
  }),
  ...rowsFrom('whole less nymphs and pupa of Takalloozadeh', 'DER', [
    ['days, egg', 6.93, 'd', '20 °C, tomato', 'split in use'],
  ]),
  ...byTemperature(wangTsai1996, 'SEEN', ['days, egg to adult', 'd', 'aubergine, MEAM1'], {
    15: 104.9,
    20: 29.8,
    25: 17.6,
    27: 16,
    30: 13.6,
    35: 18.8,
  }),
  ...rowsFrom(tsaiWang1996, 'SEEN', [
    ['days, egg to adult', 17.3, 'd', '25 °C, aubergine'],
    ['days, egg to adult', 20.9, 'd', '25 °C, bean'],
  ]),
  ...rowsFrom(takalloozadeh, 'SEEN', [
    ['fastest of 20 to 32 °C', 32, '°C', 'tomato', 'start of the plateau in use'],
  ]),
  ...rowsFrom('Briere curve fitted to the days of Wang & Tsai 1996', 'DER', [
    ['upper limit of development', 36.6, '°C', 'aubergine', 'in use'],
  ]),
  ...rowsFrom(fromMemory, 'MEM', [['upper limit of development', 36, '°C', 'all stages']]),
  ...byTemperature(
    takalloozadeh,
    'SEEN',
    ['survival, egg to adult', 'share', 'tomato', '24 °C in use; the fall at 32 °C sets the heat damage'],
    { 20: 0.797, 24: 0.825, 28: 0.827, 32: 0.589 },
  ),
  ...byTemperature(wangTsai1996, 'SEEN', ['survival, egg to adult', 'share', 'aubergine'], {
    15: 0.398,
    20: 0.648,
    25: 0.887,
    27: 0.657,
    30: 0.592,
    35: 0.368,
  }),
  ...rowsFrom(enkegaard1993, 'SEEN', [
    ['survival, egg to adult', 0.05, 'share', '16 °C, poinsettia'],
    ['no eggs below', 14, '°C', 'poinsettia', 'in use'],
  ]),
  ...rowsFrom(tsaiWang1996, 'SEEN', [
    ['survival, egg to adult', 0.887, 'share', '25 °C, aubergine'],
    ['survival, egg to adult', 0.602, 'share', '25 °C, tomato'],
    ['survival, egg to adult', 0.464, 'share', '25 °C, cucumber'],
    ['survival, egg to adult', 0.458, 'share', '25 °C, bean'],
    ['eggs in a life', 223.7, 'eggs', '25 °C, aubergine', 'adult life 24.0 days'],
    ['eggs in a life', 167.5, 'eggs', '25 °C, tomato', 'adult life 20.5 days'],
    ['eggs in a life', 66, 'eggs', '25 °C, cucumber', 'adult life 9.8 days'],
    ['eggs in a life', 83.5, 'eggs', '25 °C, bean', 'adult life 13.4 days'],
  ]),
  ...rowsFrom(takalloozadeh, 'SEEN', [
    ['adult life', 17.64, 'd', '20 °C, tomato', 'in use; 44 on aubergine, 30 by the poinsettia line'],
    ['adult life', 6.64, 'd', '32 °C, tomato'],
    ['eggs in a life', 92.58, 'eggs', '24 °C, tomato'],
    ['eggs in a life', 44.74, 'eggs', '32 °C, tomato'],
    ['mean eggs a day', 6.8, 'eggs', '28 °C, tomato'],
    ['mean eggs a day', 4.92, 'eggs', '32 °C, tomato', '44.74 eggs in 6.64 days would be 6.7'],
  ]),
  ...rowsFrom('92.58 eggs of Takalloozadeh at 24 °C over a life of 11.1 days, falling in a line', 'DER', [
    ['eggs a day', 14.3, 'eggs', '24 °C, tomato, first days', 'in use; 17.64 days at 20 °C moved by the law'],
  ]),
  ...byTemperature(
    wangTsai1996,
    'SEEN',
    ['eggs in a life', 'eggs', 'aubergine', 'over the life below: the shape by temperature in use'],
    { 20: 324.4, 25: 223.7, 27: 186.4, 30: 57.8, 35: 21.7 },
  ),
  ...byTemperature(wangTsai1996, 'SEEN', ['adult life', 'd', 'aubergine'], {
    20: 44.36,
    25: 24.03,
    27: 17.87,
    30: 12.73,
    35: 10.43,
  }),
  ...rowsFrom(cui2008, 'SEEN', [
    ['survival falls from', 41, '°C', '1 hour, adults', 'fecundity unharmed up to 45 °C'],
  ]),
  ...rowsFrom(judgement, 'MEM', [
    ['adults a m2 of ground that halve laying', 300, 'per m2', 'all plants', 'in use'],
    ['share of females', 0.5, 'share', 'all plants'],
    ['flight starts', 14, '°C', 'daylight', 'no measurement was read'],
  ]),
  ...byTemperature(wangTsai1996, 'SEEN', ['growth rate r', 'per day', 'aubergine'], {
    20: 0.107,
    25: 0.192,
    27: 0.191,
    30: 0.169,
    35: 0.073,
  }),
  ...rowsFrom(tsaiWang1996, 'SEEN', [['growth rate r', 0.12, 'per day', '25 °C, bean']]),
  ...rowsFrom(biotypes2014, 'SEEN', [
    ['growth rate r', 0.1033, 'per day', '24 °C, cotton'],
    ['growth rate r', 0.175, 'per day', '24 °C, rapeseed'],
  ]),
];

export const bemisiaTabaci: SpeciesRecord = {
  id: 'bemisia-tabaci',
  name: 'Bemisia tabaci (Gennadius)',
  commonName: 'tobacco whitefly',
  shortName: 'tobacco whitefly',
  development: {
    lowerC: 10,
    plateauC: 32,
    zeroC: 36.6,
    // Of the laws that turn in the heat and end on both sides the one with the lowest AICc.
    fitted: {
      table: 'bemisia-tabaci-wang',
      law: { kind: 'briere-1', a: 5.27525e-5, lowerC: 12.37609, lethalC: 36.63209 },
      spanDegreeDays: 316,
    },
    // Survival: 0.825 from egg to adult (Takalloozadeh, 24 °C, tomato), shared out by degree-days. N1 to N3 are one
    // stage in print: three equal parts, each of 0.2, give its spread of 0.12.
    stages: [
      { name: 'egg', degreeDays: 75, cv: 0.12, survival: 0.955 },
      { name: 'N1', degreeDays: 60, cv: 0.2, survival: 0.964 },
      { name: 'N2', degreeDays: 60, cv: 0.2, survival: 0.964 },
      { name: 'N3', degreeDays: 61, cv: 0.2, survival: 0.964 },
      { name: 'N4/pupa', degreeDays: 60, cv: 0.12, survival: 0.964 },
    ],
    source:
      'Threshold and total: Zalom et al. 1985 (10 °C, 316 degree-days), the published line nearest in days to the middle of two direct ones. Shares of the stages: days at 20 °C on tomato of Takalloozadeh (6.93, 16.68, 5.53), our derivation; equal N1 to N3 and the spreads are a judgement. Plateau: fastest at 32 °C (Takalloozadeh); end and law of the population: fitted to Wang & Tsai 1996 (aubergine, 15 to 35 °C), which agrees with both temperatures on tomato.',
  },
  traits: {
    kind: 'pest',
    adult: {
      // 3.3 days at 20 degC.
      preovipositionDegreeDays: 33.3,
      lifeDaysAt20C: 17.64,
      femaleShare: 0.5,
      eggsPerDay: 14.3,
      fecundityByTemperature: [
        [14, 0],
        [20, 0.7],
        [24, 1],
        [27, 1],
        [30, 0.44],
        [35, 0.2],
      ],
      source:
        'Life and eggs: Takalloozadeh on tomato (92.58 eggs at 24 °C, 17.64 days at 20 °C). Before the first egg: Enkegaard 1993, 3.3 days at 20 °C. Shape: eggs a day of life on aubergine (Wang & Tsai 1996), none below 14 °C (Enkegaard 1993).',
    },
    // Chosen so that 0.83 of the young becomes 0.59 at 32 degC (Takalloozadeh).
    heatFromC: 28,
    heatHazardAt39C: 0.008,
    flightByTemperature: [
      [14, 0],
      [20, 1],
      [30, 1],
      [40, 0],
    ],
    // Eggs in a life x survival at 25 degC against tomato (Tsai & Wang 1996).
    hostFactor: { aubergine: 2, tomato: 1, bean: 0.4, cucumber: 0.3 },
    crowdingPerM2: 300,
    seen: {
      trap: 'whitefly',
      leaves: ['whitefly-adult', 'whitefly-scale'],
      parasitised: { host: 'whitefly-scale', sign: 'black-scale' },
    },
  },
  rows,
  openQuestions: [
    'Twenty lines give 17.6 to 30.6 days at 25 °C: strain and plant decide. The one in use is near the fast side of the middle.',
    'The law of the forecast is that of aubergine, a fast plant: 17.6 days at 25 °C, where bean took 20.9. On tomato it agrees (29.1 and 13.8 days at 20 and 32 °C).',
    'At 15 °C aubergine took 105 days, where the line of the ledger gives 63.',
    'Instars N1 to N3 were not found apart, and no measurement of flight by temperature was read.',
    'One line comes from a study of a wasp on this whitefly; whether it is the line of the whitefly was not seen. It is not in use.',
    'Eggs a day on tomato are printed as a mean of 4.9 at 32 °C, which does not fit the eggs in a life and the life of the same abstract.',
  ],
};
