import type { PublishedRow, SpeciesRecord } from './record.ts';
import { bandsFrom, byTemperature, collectedLines, rowsFrom, thermalLine } from './rows.ts';
import { inJarosik, judgement } from './sources.ts';

const herbert1981 =
  'Herbert HJ 1981. Biology, life tables, and innate capacity for increase of the twospotted spider mite, Tetranychus urticae. Canadian Entomologist 113:371-378';
const egyptianStages =
  'Some biological aspects of the two-spotted spider mite, Tetranychus urticae, at constant temperatures. Egyptian Academic Journal of Biological Sciences A (authors not seen)';
const riahi2013 =
  'Riahi E, Shishehbor P, Nemati AR, Saeidi Z 2013. Temperature effects on development and life table parameters of Tetranychus urticae. Journal of Agricultural Science and Technology 15:661-672';
const sabelis1981 =
  'Sabelis MW 1981. Biological control of two-spotted spider mites using phytoseiid predators. Agricultural Research Reports 910, Wageningen';
const praslicka2004 =
  'Praslicka J, Huszar J 2004. Influence of temperature and host plants on the development and fecundity of the spider mite Tetranychus urticae. Plant Protection Science 40:141-144. doi 10.17221/465-PPS';
const onPear =
  'Effect of temperature degrees on the biology and life table parameters of Tetranychus urticae on two pear varieties. Egyptian Academic Journal of Biological Sciences B (authors not seen)';
const ameen =
  'Hamad Ameen KA, Hassan OO. The relationship between temperature, Tetranychus urticae and cucumber hybrids. Zanco Journal of Pure and Applied Sciences';
const rao1996 =
  'Rao PP et al. 1996. Effect of temperature and rearing method on development and fecundity of Tetranychus urticae. Biologia 51:509-516';
const krishna2014 =
  'Krishna AR, Bhaskar H 2014. Biology of two-spotted spider mite Tetranychus urticae on okra. Asian Journal of Biological and Life Sciences 3:97-101';
const onBeans2014 =
  'Life parameters of Tetranychus urticae on six common bean cultivars. Journal of Economic Entomology 107:614-622, 2014. doi 10.1603/ec11205 (authors not seen)';
const onHosts =
  'Biological responses of Tetranychus urticae to different host plants: an investigation on bottom-up effects (authors not seen)';
const bounfour2001 =
  'Bounfour M, Tanigoshi LK 2001. Effect of temperature on development and demographic parameters of Tetranychus urticae and Eotetranychus carpini borealis. Annals of the Entomological Society of America 94:400-404';
const gotoh2015 =
  'Gotoh et al. 2015. Experimental and Applied Acarology. doi 10.1007/s10493-015-9919-y (authors and title not seen)';
const razmjou2009 =
  'Razmjou J, Tavakkoli H, Nemati M 2009. Life history traits of Tetranychus urticae on three legumes. Munis Entomology & Zoology';
const inIobc =
  'Influence of temperature and host plant on the developmental time and fecundity of two-spotted spider mites in laboratory conditions. IOBC-WPRS Bulletin (authors not seen)';
const parkLee2002 =
  'Park YL, Lee JH 2002. Leaf cell and tissue damage of cucumber caused by twospotted spider mite. Journal of Economic Entomology 95:952-957';
const seasons =
  'Effects of host plants and seasons on the biology of the two-spotted spider mite, Tetranychus urticae. African Entomology 24(1) (authors not seen)';
const ferguson2009 =
  'Ferguson G 2009. The impact of fall conditions on spider mites. Ontario Ministry of Agriculture';

const rows: readonly PublishedRow[] = [
  ...thermalLine(herbert1981, 'SEEN', ['egg to adult', 10, 141, 'apple, females', 'in use']),
  ...byTemperature(
    herbert1981,
    'SEEN',
    ['degree-days at one temperature', 'degree-days', 'apple, females, above 10 °C'],
    { 15: 141.3, 18: 152.3, 21: 139.8 },
  ),
  ...collectedLines(inJarosik, 'egg to adult', 'host not stated', [
    ['Herbert HJ 1981', 10, 144.5],
    ['Bounfour M, Tanigoshi LK 2001', 10.32, 148.7],
    ['Carey JR, Bradley JW 1982', 11.74, 108.6],
  ]),
  ...thermalLine(egyptianStages, 'SEEN', ['egg to adult', 12.5, 146.48, '26 and 30 °C']),
  ...thermalLine(egyptianStages, 'SEEN', ['egg', 12.87, 63.35, '26 and 30 °C', 'two temperatures only']),
  ...thermalLine(egyptianStages, 'SEEN', ['larva', 12.92, 26.81, '26 and 30 °C']),
  ...thermalLine(egyptianStages, 'SEEN', ['protonymph', 9.45, 30.95, '26 and 30 °C']),
  ...thermalLine(egyptianStages, 'SEEN', ['deutonymph', 13.94, 26.17, '26 and 30 °C']),
  ...[
    ['egg', 4.82, 3.7],
    ['larva', 2.05, 1.57],
    ['protonymph', 1.87, 1.51],
    ['deutonymph', 2.17, 1.63],
  ].flatMap(([stage, at26C, at30C]) =>
    byTemperature(
      'lines of the Egyptian stage study at its two temperatures',
      'DER',
      [`days, ${stage}`, 'd', 'host not stated', 'split in use'],
      { 26: Number(at26C), 30: Number(at30C) },
    ),
  ),
  ...rowsFrom(riahi2013, 'SEEN', [
    ['degree-days, egg to adult', 136.43, 'degree-days', 'peach', 'its threshold was not seen'],
    ['no development at', 13, '°C', 'peach'],
    ['fastest', 27, '°C', 'peach', 'slower to 33 °C; 30 to 35 °C on other plants'],
  ]),
  ...byTemperature(
    praslicka2004,
    'SEEN',
    ['days, egg to adult', 'd', 'bean, cucumber, pepper', '15 °C far shorter than in every other source'],
    { 15: 16.23, 30: 6.93, 35: 6.5 },
  ),
  ...bandsFrom(onPear, 'SEEN', [['days, egg to adult', 30.6, 34, 'd', '15 °C, pear, females']]),
  ...byTemperature(ameen, 'SEEN', ['days, egg to adult', 'd', 'cucumber'], { 25: 9, 35: 6.8 }),
  ...byTemperature(
    inIobc,
    'SEEN',
    ['days, egg to adult', 'd', 'bean, cucumber, soybean', '15 °C doubtful, as above'],
    { 15: 15.28, 30: 6.01, 35: 5.36 },
  ),
  ...rowsFrom('days at 35 °C below those at 25 or 30 °C in three studies', 'DER', [
    ['fastest development at', 35, '°C', 'bean, cucumber, pepper, soybean', 'in use as start of the plateau'],
  ]),
  ...rowsFrom(parkLee2002, 'SEEN', [
    [
      'mite-days a cm2 that halve photosynthesis',
      167,
      'mite-days',
      'cucumber, young mites',
      'as many of adults take 95 %',
    ],
  ]),
  ...byTemperature(
    'eggs in a life of Praslicka & Huszar 2004 / (0.583 x 25.5 days x 10 / (T - 10)): laying falls in a line',
    'DER',
    ['eggs a day, first days', 'eggs', 'mean of three plants', 'in use, 30 °C as the best'],
    { 15: 1.97, 30: 12, 35: 11.9 },
  ),
  ...rowsFrom(seasons, 'SEEN', [
    ['days, egg to adult', 11.25, 'd', '27 to 36 °C, bean, room'],
    ['days, egg to adult', 41.94, 'd', '5 to 19 °C, cowpea, room'],
    ['mean eggs a day', 5.48, 'eggs', '27 to 36 °C, bean, room'],
  ]),
  ...rowsFrom(krishna2014, 'SEEN', [
    ['days, egg to adult', 7.52, 'd', 'temperature not seen, okra'],
    ['eggs in a life', 108, 'eggs', 'temperature not seen, okra', 'in 9 days'],
    ['share of females', 0.85, 'share', 'okra'],
  ]),
  ...rowsFrom(onHosts, 'SEEN', [
    ['days, egg to adult', 12.09, 'd', 'temperature not seen, tomato'],
    ['days, egg to adult', 8.37, 'd', 'temperature not seen, aubergine'],
    ['survival, egg to adult', 0.347, 'share', 'temperature not seen, tomato'],
  ]),
  ...rowsFrom(sabelis1981, 'MEM', [
    ['upper limit of development', 38, '°C', 'all stages'],
    ['eggs a day', 10, 'eggs', '25 °C, bean, rose', 'rounded'],
    ['share of females', 0.75, 'share', '25 °C, bean, rose', 'in use'],
  ]),
  ...rowsFrom(judgement, 'MEM', [
    [
      'adults a m2 of ground that halve laying',
      20000,
      'per m2',
      '0.8 a cm2 of leaf at 2.5 m2 of leaf',
      'in use',
    ],
    ['end of development', 39, '°C', 'all stages', 'in use; 38 by Sabelis 1981, 40 in relatives'],
  ]),
  ...rowsFrom(rao1996, 'SEEN', [
    [
      'survival, egg to adult',
      0.862,
      'share',
      '20 to 30 °C, bean',
      'in use; under 0.662 on cut leaves at 30',
    ],
    ['mean eggs a day', 16.4, 'eggs', '30 °C, bean, cut leaves'],
  ]),
  ...rowsFrom(onBeans2014, 'SEEN', [
    ['survival, egg', 0.91, 'share', '27 °C, bean'],
    ['mean eggs a day', 16.16, 'eggs', '27 °C, best bean cultivar'],
  ]),
  ...byTemperature(praslicka2004, 'SEEN', ['eggs in a life', 'eggs', 'mean of three plants'], {
    15: 58.6,
    30: 89.1,
    35: 71.08,
  }),
  ...byTemperature(ameen, 'SEEN', ['days before the first egg', 'd', 'cucumber', '25 °C in use'], {
    25: 1.5,
    30: 1.3,
    35: 0.9,
  }),
  ...byTemperature(ameen, 'SEEN', ['adult life', 'd', 'cucumber'], { 25: 17, 35: 13.8 }),
  ...rowsFrom('17 days at 25 °C moved to 20 °C by the rate of development', 'DER', [
    ['adult life', 25.5, 'd', '20 °C, cucumber', 'in use'],
  ]),
  ...rowsFrom(ferguson2009, 'SEEN', [
    [
      'half of the females rest at a day length of',
      14,
      'h',
      'cool nights',
      '13.5 h in Hokkaido; between them in use',
    ],
  ]),
  ...byTemperature(gotoh2015, 'SEEN', ['growth rate r', 'per day', 'host not stated'], {
    15: 0.0729,
    20: 0.1998,
    25: 0.2943,
    30: 0.3436,
    35: 0.2876,
  }),
  ...byTemperature(bounfour2001, 'SEEN', ['growth rate r', 'per day', 'raspberry'], { 15: 0.08, 30: 0.321 }),
  ...byTemperature(herbert1981, 'SEEN', ['growth rate r', 'per day', 'apple'], { 15: 0.069, 18: 0.156 }),
  ...rowsFrom(razmjou2009, 'SEEN', [
    ['growth rate r', 0.296, 'per day', '25 °C, soybean'],
    ['growth rate r', 0.242, 'per day', '25 °C, cowpea'],
    ['growth rate r', 0.23, 'per day', '25 °C, bean', 'its abstract prints 0.214 as well'],
  ]),
  ...rowsFrom(onHosts, 'SEEN', [
    ['growth rate r', 0.239, 'per day', 'temperature not seen, cucumber'],
    ['growth rate r', 0.104, 'per day', 'temperature not seen, tomato'],
  ]),
];

export const tetranychusUrticae: SpeciesRecord = {
  id: 'tetranychus-urticae',
  name: 'Tetranychus urticae Koch',
  commonName: 'two-spotted spider mite',
  shortName: 'spider mites',
  development: {
    lowerC: 10,
    plateauC: 35,
    zeroC: 39,
    // Survival: 0.862 from egg to adult (Rao et al. 1996, bean), shared out by degree-days.
    stages: [
      { name: 'egg', degreeDays: 62, cv: 0.1, survival: 0.937 },
      { name: 'larva', degreeDays: 26.5, cv: 0.1, survival: 0.972 },
      { name: 'protonymph', degreeDays: 25, cv: 0.1, survival: 0.974 },
      { name: 'deutonymph', degreeDays: 27.5, cv: 0.1, survival: 0.971 },
    ],
    source:
      'Threshold and total: Herbert 1981 (141 degree-days above 10 °C, apple). Shares of the stages: days at 26 and 30 °C of an Egyptian study (44, 19, 18 and 20 of a hundred), our derivation; its own degree-days stand on four thresholds and are no shares of time. Plateau: development is fastest at 35 °C, the warmest tried, in three studies. Spreads and end: judgement.',
  },
  traits: {
    kind: 'pest',
    adult: {
      // 1.5 days at 25 degC.
      preovipositionDegreeDays: 22.5,
      lifeDaysAt20C: 25.5,
      femaleShare: 0.75,
      eggsPerDay: 12,
      fecundityByTemperature: [
        [10, 0],
        [15, 0.16],
        [30, 1],
        [35, 1],
        [39, 0],
      ],
      source:
        'Before the first egg and life: Ameen & Hassan (1.5 and 17 days at 25 °C, cucumber). Eggs a day by temperature: eggs in a life on bean, cucumber and pepper (Praslicka & Huszar 2004), our derivation. Sex ratio: Sabelis 1981, from memory.',
    },
    heatFromC: 35,
    heatHazardAt39C: 0.02,
    // It has no wings.
    flightByTemperature: [
      [10, 0],
      [39, 0],
    ],
    // Tomato: survival 0.347 against 0.862 (authors not seen).
    hostFactor: { bean: 1, cucumber: 1, aubergine: 1, rose: 1, tomato: 0.4 },
    crowdingPerM2: 20000,
    winged: { always: 0, crowded: 0 },
    // Between 13.5 h (Hokkaido) and 14 h (Ferguson 2009).
    restsBelowDayLengthH: 13.75,
    harm: {
      bornePerM2: 400,
      pestDaysPerM2: 800_000,
      source:
        '0.0035 to 0.0123 g of cucumber a mite-day (Korea), the upper value, on two plants a m2 that bear 5 kg each: our derivation. Another study found nine times more.',
    },
    seen: { leaves: ['spider-mite'] },
  },
  rows,
  openQuestions: [
    'Development at 15 °C is printed as 16 days (bean, cucumber, pepper) and as 28 to 34 (apple, pear); the short one is doubtful.',
    'On peach it was fastest at 27 °C, on four other plants at 35 °C; on peach nothing developed at 13 °C, 3 degrees above the threshold in use.',
    'Herbert 1981 prints a generation of 10.9 days at 21 °C, shorter than its own 12.7 days from egg to adult: that row is not shown.',
    'Eggs a day differ by a factor of three between leaves and methods: printed means run from 5.5 to 16.4.',
    'How many young live at 35 °C was not read; without harm there it grows faster than one strain was found to (0.288 a day).',
    'Survival differs by plant: 0.86 on bean, 0.35 on tomato.',
    'The heat it endures was not read; it is set as a judgement. Cool nights help its rest in short days and warm ones put it off: only the day length is in use.',
  ],
};
