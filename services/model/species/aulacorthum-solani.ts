import type { PublishedRow, SpeciesRecord } from './record.ts';
import { byTemperature, collectedLines, rowsFrom, thermalLine } from './rows.ts';
import { deConti2010, fromMemory, inJarosik, judgement } from './sources.ts';

const seo2020 =
  'Seo BY, Kim EY, Ahn JJ, Kim Y, Kang S, Jung JK 2020. Development, reproduction, and life table parameters of the foxglove aphid, Aulacorthum solani, on soybean at constant temperatures. Insects 11(5):296';
const jandricic2010 =
  'Jandricic SE, Wraight SP, Bennett KC, Sanderson JP 2010. Developmental times and life table statistics of Aulacorthum solani at six constant temperatures. Environmental Entomology 39:1631-1642. doi 10.1603/EN09351';
const lee2008 =
  'Lee et al. 2008. Korean Journal of Applied Entomology 47:365. doi 10.5656/KSAE.2008.47.4.365 (authors and title not seen)';

const rows: readonly PublishedRow[] = [
  ...thermalLine(seo2020, 'SEEN', ['birth to adult', 5.02, 131.2, 'soybean', 'in use']),
  ...collectedLines(inJarosik, 'birth to adult', 'host not stated', [
    ['Nakata T 1996', 4.18, 145.8],
    ['Kim DH, Lee GH, et al. 1991', 2.69, 149.7],
    ['Jandricic SE, Wraight SP, Bennett KC, Sanderson JP 2010', 3.58, 138.6],
  ]),
  ...byTemperature(jandricic2010, 'SEEN', ['days, birth to adult', 'd', 'pansy'], {
    10: 21.81,
    15: 11.37,
    20: 8.37,
    25: 6.88,
    30: 9.48,
  }),
  ...rowsFrom(seo2020, 'SEEN', [
    ['fastest by the fitted curve', 26.9, '°C', 'soybean'],
    ['upper limit of the fitted curve', 33.9, '°C', 'soybean', 'not in use: nothing lived above 27.5 °C'],
    ['lives and breeds up to', 27.5, '°C', 'soybean', 'from 5 °C'],
    ['survival, birth to adult', 0.77, 'share', '7.5 °C, soybean'],
    ['young in a life', 76.9, 'young', '18.1 °C, soybean', 'fitted maximum'],
    ['young a day', 6.1, 'young', '21.3 °C, soybean', 'fitted maximum, at adult age 5.2 days; in use'],
  ]),
  ...rowsFrom(judgement, 'MEM', [
    ['adults a m2 of ground that halve laying', 300, 'per m2', 'as whitefly', 'in use'],
    ['start of the plateau', 25, '°C', 'all stages', 'in use'],
    ['end of development', 29, '°C', 'constant', 'in use; between 27.5 and the few adults at 30 °C'],
  ]),
  ...byTemperature(
    jandricic2010,
    'SEEN',
    ['survival, birth to adult', 'share', 'pansy', '20 °C in use; none at 35 °C'],
    { 10: 0.72, 15: 1, 20: 0.94, 25: 0.97, 30: 0.25 },
  ),
  ...byTemperature(deConti2010, 'SEEN', ['survival, birth to adult', 'share', 'lettuce'], {
    16: 0.8,
    19: 0.85,
    22: 0.9,
    25: 0.55,
  }),
  ...byTemperature(
    deConti2010,
    'SEEN',
    ['young in a life', 'young', 'lettuce', 'over the life below: the shape by temperature in use'],
    { 16: 64.69, 19: 75, 22: 66.56, 25: 18.13, 28: 1.88 },
  ),
  ...byTemperature(deConti2010, 'SEEN', ['adult life', 'd', 'lettuce'], {
    16: 19.01,
    19: 18.83,
    22: 18.01,
    25: 10.96,
    28: 1.66,
  }),
  ...rowsFrom('between 19 and 22 °C of De Conti et al. 2010', 'DER', [
    ['adult life', 18.6, 'd', '20 °C, lettuce', 'in use; 45 on pansy'],
  ]),
  ...byTemperature(jandricic2010, 'SEEN', ['young in a life', 'young', 'pansy'], {
    10: 74.4,
    15: 74.9,
    20: 68.4,
    25: 39.1,
    30: 0,
  }),
  ...byTemperature(
    jandricic2010,
    'SEEN',
    ['mean young a day', 'young', 'pansy', '10 °C against 20 °C in use'],
    { 10: 0.91, 15: 1.11, 20: 1.58, 25: 1.48 },
  ),
  ...byTemperature(jandricic2010, 'SEEN', ['adult life', 'd', 'pansy'], {
    10: 82.98,
    15: 70.08,
    20: 45.47,
    25: 28.16,
    30: 11.39,
  }),
  ...rowsFrom('0.80, 0.85, 0.90 and 0.55 alive on lettuce against 0.94 to 1 on pansy', 'DER', [
    ['survival on lettuce against pansy', 0.82, 'share', '16 to 25 °C', '0.8 in use'],
  ]),
  ...rowsFrom(judgement, 'MEM', [['days before the first birth', 1, 'd', '20 °C', 'in use']]),
  ...rowsFrom(fromMemory, 'MEM', [
    ['flight starts', 13, '°C', 'daylight', '13 to 16 °C'],
    ['colonies that ants attend', 0, 'share', 'all plants', 'they let it be; in use'],
  ]),
  ...byTemperature(deConti2010, 'SEEN', ['growth rate r', 'per day', 'lettuce'], {
    16: 0.179,
    19: 0.232,
    22: 0.27,
    25: 0.185,
  }),
  ...byTemperature(lee2008, 'SEEN', ['growth rate r', 'per day', 'host not stated'], {
    12.5: 0.1292,
    15: 0.2284,
    17.5: 0.2631,
    20: 0.2747,
    22.5: 0.2625,
    25: 0.1794,
  }),
  ...byTemperature(
    jandricic2010,
    'SEEN',
    ['growth rate r', 'per day', 'pansy', 'from 15 °C up probably too high for its own life table'],
    { 10: 0.0964, 15: 0.3045, 20: 0.4098, 25: 0.4435 },
  ),
];

export const aulacorthumSolani: SpeciesRecord = {
  id: 'aulacorthum-solani',
  name: 'Aulacorthum solani (Kaltenbach)',
  commonName: 'foxglove aphid',
  shortName: 'foxglove aphids',
  development: {
    lowerC: 5.02,
    plateauC: 25,
    zeroC: 29,
    // Survival: 0.94 from birth to adult (Jandricic et al. 2010, 20 °C), the same for each instar.
    stages: [
      { name: 'N1', degreeDays: 32.8, cv: 0.1, survival: 0.985 },
      { name: 'N2', degreeDays: 32.8, cv: 0.1, survival: 0.985 },
      { name: 'N3', degreeDays: 32.8, cv: 0.1, survival: 0.985 },
      { name: 'N4', degreeDays: 32.8, cv: 0.1, survival: 0.985 },
    ],
    source:
      'Threshold and total: Seo et al. 2020 (5.02 °C, 131.2 degree-days). Equal instars and their spread: judgement. Survival: Jandricic et al. 2010. Upper end: judgement between 27.5 °C, above which Seo et al. found no survivors, and the few adults of Jandricic et al. at 30 °C.',
  },
  traits: {
    kind: 'pest',
    adult: {
      // One day at 20 degC.
      preovipositionDegreeDays: 15,
      lifeDaysAt20C: 18.6,
      femaleShare: 1,
      eggsPerDay: 6.1,
      fecundityByTemperature: [
        [5, 0],
        [10, 0.58],
        [16, 0.85],
        [20, 1],
        [22, 0.93],
        [25, 0.41],
        [28, 0.28],
        [30, 0],
      ],
      source:
        'Births a day: Seo et al. 2020 (at most 6.1 a day). Life and shape from 16 to 28 °C: De Conti et al. 2010, young divided by life; at 10 °C and none at 30 °C: Jandricic et al. 2010; none below 5 °C: Seo et al. 2020. Before the first birth: judgement.',
    },
    // Chosen so that 0.94 of the nymphs becomes 0.25 in 9.5 days at 30 degC (Jandricic et al. 2010).
    heatFromC: 25,
    heatHazardAt39C: 0.045,
    flightByTemperature: [
      [13, 0],
      [16, 0.5],
      [20, 1],
      [27, 1],
      [32, 0],
    ],
    // Lettuce: survival against pansy at 16 to 25 degC (De Conti et al. 2010, Jandricic et al. 2010).
    hostFactor: { pepper: 1, lettuce: 0.8, potato: 1 },
    crowdingPerM2: 300,
    winged: { always: 0.03, crowded: 0.33 },
    seen: { trap: 'aphid', leaves: ['aphid'], parasitised: { host: 'aphid', sign: 'mummy' } },
  },
  rows,
  openQuestions: [
    'At 30 °C a quarter of the nymphs became adult on pansy (9.5 days); on soybean nothing lived above 27.5 °C. The end in use at 29 °C is a judgement.',
    'Adults lived 45 days at 20 °C on pansy and 18 on lettuce; the young in a life are nearly the same.',
    'At 25 °C 0.97 of the nymphs lived on pansy, 0.55 on lettuce.',
    'The growth rates of Jandricic et al. 2010 from 15 °C up do not fit its own life table; compare the other two.',
    'The instars were not found apart, and the temperature of the first flight is from memory of other aphids.',
  ],
};
