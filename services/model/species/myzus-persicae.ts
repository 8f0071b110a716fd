import type { PublishedRow, SpeciesRecord } from './record.ts';
import { bandsFrom, byTemperature, collectedLines, rowsFrom, thermalLine } from './rows.ts';
import { barlow1962, fromMemory, inJarosik, judgement, satar2008 } from './sources.ts';

const whalon1979 =
  'Whalon ME, Smilowitz Z 1979. The interaction of temperature and biotype on development of the green peach aphid. American Potato Journal 56:591-596. doi 10.1007/BF02853990';
const kim2012 =
  'Kim DI, Choi DS, Ko SJ, et al. 2012. Development times of Myzus persicae at constant and variable temperatures. Korean Journal of Applied Entomology 51:431-438. doi 10.5656/KSAE.2012.10.0.032';
const onCabbage =
  'Effects of temperature on development of Myzus persicae on cabbage, age-stage two-sex life table (authors not seen)';
const deLoach1974 =
  'DeLoach CJ 1974. Rate of increase of populations of cabbage, green peach, and turnip aphids at constant temperatures. Annals of the Entomological Society of America 67:332-340';
const davis2006 =
  'Davis JA, Radcliffe EB, Ragsdale DW 2006. Effects of high and fluctuating temperatures on Myzus persicae. Environmental Entomology 35:1461-1468. doi 10.1093/ee/35.6.1461';
const elDin1976 =
  'El Din NS 1976. Effects of temperature on the aphid Myzus persicae. Zeitschrift fuer angewandte Entomologie. doi 10.1111/j.1439-0418.1976.tb03292.x';
const bellPepper =
  'Impact of fertilizing bell pepper with micronutrients on life history of Myzus persicae. 3rd Iranian International Congress of Entomology';

const rows: readonly PublishedRow[] = [
  ...rowsFrom(whalon1979, 'SEEN', [
    ['lower threshold, all stages', 4, '°C', 'potato, fixed at 4 °C', 'in use'],
    ['degree-days, N1', 25.2, 'degree-days', 'above 4 °C', 'in use'],
    ['degree-days, N2', 27.1, 'degree-days', 'above 4 °C', 'in use'],
    ['degree-days, N3', 30.9, 'degree-days', 'above 4 °C', 'in use'],
    ['degree-days, N4', 30.7, 'degree-days', 'above 4 °C', 'in use'],
    ['degree-days, moult to first birth', 20.4, 'degree-days', 'above 4 °C', 'in use'],
    ['degree-days, birth to first birth', 135.7, 'degree-days', 'above 4 °C'],
    ['degree-days, reproductive life', 74.2, 'degree-days', 'above 4 °C', 'short'],
    ['survival, birth to adult', 0.782, 'share', '12.4 to 27 °C, potato', 'in use'],
    ['survival, birth to adult', 0.267, 'share', '29.4 °C, potato', 'the heat damage in use meets it'],
    ['best temperature for births', 15.6, '°C', 'potato', 'El Din 1976 has 25 °C, DeLoach 1974 20 °C'],
  ]),
  ...rowsFrom('sum of the four instars of Whalon & Smilowitz 1979', 'DER', [
    ['degree-days, birth to adult', 113.9, 'degree-days', 'above 4 °C', 'in use'],
  ]),
  ...thermalLine(kim2012, 'SEEN', ['birth to adult', 3, 111.1, 'sweet pepper, laboratory']),
  ...thermalLine(onCabbage, 'SEEN', [
    'birth to adult',
    0.29,
    194.6,
    'cabbage, 17 to 29 °C',
    'narrow warm range',
  ]),
  ...collectedLines(inJarosik, 'birth to adult', 'host not stated', [
    ['Liu S, Meng X 1990', 5.6, 103.7],
    ['Chen W, Cui Z, Li B 2002', 5.19, 106.4],
    ['Qin X, Li Z 2006', 5.24, 117.7],
    ['Gu D, Yu M, Zhang W 1995', 4.4, 107.2],
    ['Liu SS, Meng XD 1999', 4.36, 132],
    ['Nakata T 1996', 4.2, 144.3],
    ['Tamaki G, Annis B, Fox L, Gupta RK, Meszleny A 1982', 3.1, 127.4],
    ['Ohto I, Ohtaishi M 2002', 3.1, 134.9],
    ['El Din NS 1976', 3, 132.1],
    ['Cividanes FJ, Souza VP 2003', 2.2, 165.6],
  ]),
  ...byTemperature(deLoach1974, 'SEEN', ['days, birth to first birth', 'd', 'cabbage or turnip'], {
    5: 68,
    10: 26.2,
    15: 13.9,
    20: 8.8,
    25: 7.7,
    30: 9.2,
  }),
  ...byTemperature(barlow1962, 'SEEN', ['days, birth to adult', 'd', 'potato'], {
    5: 41.3,
    10: 16.1,
    15: 14,
    20: 9.1,
    25: 7.7,
  }),
  ...byTemperature(
    kim2012,
    'SEEN',
    ['days, birth to adult', 'd', 'sweet pepper, plastic house', 'field cages'],
    { 14.6: 14.4, 26.7: 6 },
  ),
  ...byTemperature(deLoach1974, 'SEEN', ['survival, birth to adult', 'share', 'cabbage or turnip'], {
    5: 0.35,
    10: 0.54,
    15: 0.78,
    20: 0.8,
    25: 0.75,
    30: 0.28,
  }),
  ...byTemperature(barlow1962, 'SEEN', ['young in a life', 'young', 'potato'], {
    5: 28.6,
    10: 37,
    15: 80.1,
    20: 101,
    25: 30.9,
  }),
  ...rowsFrom(elDin1976, 'SEEN', [
    ['young in a life', 39, 'young', '20 °C, Brussels sprout', 'most at 25 °C'],
  ]),
  ...bandsFrom(bellPepper, 'SEEN', [
    ['adult life', 15.1, 19.3, 'd', '25 °C, sweet pepper'],
    ['days, moult to first birth', 1.27, 1.75, 'd', '25 °C, sweet pepper'],
  ]),
  ...rowsFrom('15 days at 25 °C moved to 20 °C by the rate of development', 'DER', [
    ['adult life', 20, 'd', '20 °C, sweet pepper'],
  ]),
  ...byTemperature(deLoach1974, 'SEEN', ['young a newborn leaves, R0', 'young', 'cabbage or turnip'], {
    10: 14.38,
    15: 33.14,
    20: 38.82,
    25: 26.86,
    30: 0.03,
  }),
  ...byTemperature(deLoach1974, 'SEEN', ['days, generation', 'd', 'cabbage or turnip'], {
    10: 39.25,
    15: 27.41,
    20: 18.21,
    25: 15.35,
  }),
  ...byTemperature(
    deLoach1974,
    'SEEN',
    ['adult life', 'd', 'cabbage or turnip', 'the last weeks bear next to nothing'],
    { 10: 65, 15: 58, 20: 45, 25: 35, 30: 15 },
  ),
  ...rowsFrom(
    'three times the days from first birth to the middle of the births, 18.21 less 8.8 (DeLoach 1974)',
    'DER',
    [
      [
        'adult life, as used',
        28,
        'd',
        '20 °C, cabbage or turnip',
        'in use: births falling in a line have their middle at a third',
      ],
    ],
  ),
  ...byTemperature(
    'R0 / survival / (0.583 x laying life), laying life three times generation less first birth: DeLoach 1974',
    'DER',
    ['young a day, first days', 'young', 'cabbage or turnip', 'in use, 20 °C as the best'],
    { 10: 1.17, 15: 1.8, 20: 2.97, 25: 2.67, 30: 0.03 },
  ),
  ...rowsFrom(fromMemory, 'MEM', [
    ['young a day', 3, 'young', '20 °C'],
    ['flight starts', 13, '°C', 'daylight', '13 to 16 °C'],
  ]),
  ...rowsFrom(satar2008, 'SEEN', [
    ['no young live through', 32.5, '°C', 'sweet pepper, constant', 'in use as zero'],
  ]),
  ...rowsFrom(judgement, 'MEM', [
    ['adults a m2 of ground that halve laying', 300, 'per m2', 'as whitefly', 'in use'],
    ['start of the plateau', 26, '°C', 'all stages', 'in use; also the start of heat damage'],
  ]),
  ...byTemperature(deLoach1974, 'SEEN', ['growth rate r', 'per day', 'cabbage or turnip'], {
    10: 0.074,
    15: 0.167,
    20: 0.27,
    25: 0.277,
    30: -0.119,
  }),
  ...byTemperature(davis2006, 'SEEN', ['growth rate r', 'per day', 'constant temperature'], {
    10: 0.085,
    15: 0.125,
    20: 0.256,
    25: 0.225,
    30: 0.217,
  }),
];

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
    // Of the laws that reach zero at both ends the one with the lowest AICc.
    fitted: {
      table: 'myzus-persicae-deloach',
      law: { kind: 'briere-1', a: 7.255e-5, lowerC: -1.415, lethalC: 32.52 },
      spanDegreeDays: 134.3,
    },
    source:
      'Whalon & Smilowitz 1979 (every instar above 4 °C, survival 0.782). Upper end: no young live through constant 32.5 °C (Satar et al. 2008); the plateau from 26 °C is a judgement. Law of the population: fitted to DeLoach 1974 (birth to first birth, 5 to 30 °C).',
  },
  traits: {
    kind: 'pest',
    adult: {
      preovipositionDegreeDays: 20.4,
      lifeDaysAt20C: 28,
      femaleShare: 1,
      eggsPerDay: 2.97,
      fecundityByTemperature: [
        [4, 0],
        [10, 0.39],
        [15, 0.61],
        [20, 1],
        [25, 0.9],
        [30, 0.01],
      ],
      source:
        'Before the first birth: Whalon & Smilowitz 1979 (20.4 degree-days above 4 °C). Births by temperature and laying life: DeLoach 1974, the paper of the law of the forecast, our derivation from its R0, survival and generation.',
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
    // Order: chili first, aubergine between, cabbage last of five (authors not seen); the numbers are a judgement.
    hostFactor: { pepper: 1.4, aubergine: 1.2, potato: 1, cabbage: 1 },
    crowdingPerM2: 300,
    winged: { always: 0.03, crowded: 0.33 },
    antsAttend: true,
    seen: { trap: 'aphid', leaves: ['aphid'], parasitised: { host: 'aphid', sign: 'mummy' } },
  },
  rows,
  openQuestions: [
    'Fourteen lines differ in threshold (0.3 to 5.6 °C) and constant (104 to 195), but hardly in days between 15 and 25 °C: compare days.',
    'Above 26 °C the papers part: at 30 °C DeLoach 1974 has first births after 9.2 days, Barlow 1962 no survivors. The days in use follow the former; how many live follows Whalon & Smilowitz 1979, near the latter.',
    'In a plastic house development took 1.3 to 1.5 times as long as in the laboratory (Kim 2012).',
    'The days of Barlow 1962 at 15 °C and above are longer than every line.',
    'Births and life are those on cabbage or turnip, its least suitable plants; by how much pepper is better is a judgement.',
    'On cabbage another life table has 0.32 a day at 29 °C, where the law, births and survival in use leave no growth.',
    'The temperature of the first flight is from memory.',
  ],
};
