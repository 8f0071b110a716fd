import type { PublishedRow, SpeciesRecord } from './record.ts';
import { byTemperature, collectedLines, rowsFrom, thermalLine } from './rows.ts';
import { inJarosik, judgement, satar2008 } from './sources.ts';

const kersting1999 =
  'Kersting U, Satar S, Uygun N 1999. Effect of temperature on development rate and fecundity of apterous Aphis gossypii reared on Gossypium hirsutum. Journal of Applied Entomology 123:23-27. doi 10.1046/j.1439-0418.1999.00309.x';
const xia1999 =
  'Xia JY, van der Werf W, Rabbinge R 1999. Influence of temperature on bionomics of cotton aphid on cotton. Entomologia Experimentalis et Applicata 90:25-35';
const parajulee2007 =
  'Parajulee MN 2007. Influence of constant temperatures on life history parameters of the cotton aphid infesting cotton. Environmental Entomology 36:666-672';
const zamani2006 =
  'Zamani AA, Talebi AA, Fathipour Y, Baniameri V 2006. Effect of temperature on biology and population growth parameters of Aphis gossypii on greenhouse cucumber. Journal of Applied Entomology 130:453-460. doi 10.1111/j.1439-0418.2006.01088.x';
const komazaki1982 =
  'Komazaki S 1982. Effects of constant temperatures on population growth of three aphid species on citrus. Applied Entomology and Zoology 17:75-81';
const soglia2002 =
  'Soglia MCM, Bueno VHP, Sampaio MV 2002. Desenvolvimento e sobrevivencia de Aphis gossypii em crisantemo. Neotropical Entomology 31:211-216';
const satar2005 =
  'Satar S, Kersting U, Uygun N 2005. Effect of temperature on development and fecundity of Aphis gossypii on cucumber. Journal of Pest Science. doi 10.1007/s10340-005-0082-9';
const parajulee2004 =
  'Parajulee MN, Sapkota AP 2004. Development and reproduction of cotton aphids in the field. Proceedings Beltwide Cotton Conferences';
const akkopru2018 =
  'Akkopru E 2018. The effect of some cucumber cultivars on the biology of Aphis gossypii. Phytoparasitica 46:511-520. doi 10.1007/s12600-018-0689-z';
const forghani2020 =
  'Forghani SHR, Hassani F, Ahadiyat A, Rezvani A 2020. Effect of host plant on development and fecundity of Aphis gossypii. Munis Entomology & Zoology 15(1)';
const onMallows =
  'Development and fecundity of Aphis gossypii on three Malvaceae hosts. Turkish Journal of Agriculture and Forestry (authors not seen)';
const onFiveHosts =
  'Influence of five host plants on development and life table parameters of Aphis gossypii. Egyptian Academic Journal of Biological Sciences A (authors not seen)';
const onTwoHosts =
  'Bottom-up effect of two host plants on life table parameters of Aphis gossypii. Journal of Agricultural Science and Technology 18:179-190, 2016 (authors not seen)';
const onMelon =
  'Population parameters of Aphis gossypii fed on melon at different temperature, 2011 (authors not seen)';

const rows: readonly PublishedRow[] = [
  ...thermalLine(kersting1999, 'SEEN', ['birth to adult', 6.2, 108.9, 'cotton']),
  ...thermalLine(xia1999, 'SEEN', ['N1', 8.2, 24.2, 'cotton']),
  ...thermalLine(xia1999, 'SEEN', ['N2', 8, 23.7, 'cotton']),
  ...thermalLine(xia1999, 'SEEN', ['N3', 7.2, 23, 'cotton']),
  ...thermalLine(xia1999, 'SEEN', ['N4', 6.2, 25.5, 'cotton', 'nearly equal instars: the split in use']),
  ...thermalLine(xia1999, 'SEEN', ['adult life', 7.9, 168.8, 'cotton']),
  ...thermalLine(onMelon, 'SEEN', ['birth to first birth', 2.22, 143.05, 'melon', 'outlier']),
  ...thermalLine(parajulee2004, 'SEEN', [
    'birth to adult',
    5.8,
    147,
    'cotton, field cages',
    'slower than in the laboratory',
  ]),
  ...collectedLines(inJarosik, 'birth to adult', 'host not stated', [
    [zamani2006, 6.19, 97.1, 'cucumber; in use'],
    ['van Steenis MJ, El-Khawass KAMH 1995', 6.5, 64.6],
    ['van Steenis MJ, El-Khawass KAMH 1995', 12.6, 107.1, 'outlier'],
    [satar2005, 7.52, 81.3, 'cucumber; faster than three other cucumber studies'],
    ['Kocourek F, Havelka J, et al. 1994', 7, 90.1],
    ['Komazaki S 1982', 7.9, 110.8],
    ['Liu YC, Kuo MH, et al. 2000', 5.9, 106.6],
    ['Narai Y, Murai T 1991', 4.94, 101.5],
    ['Ji-Soo K, Yong-Heon K, et al. 2004', 5, 106.8],
    ['Xia J 1997', 2.28, 144.3],
  ]),
  ...rowsFrom(parajulee2007, 'SEEN', [
    ['lower threshold, birth to adult', 6.3, '°C', 'cotton'],
    [
      'best temperature, birth to adult',
      30.2,
      '°C',
      'cotton',
      'start of the plateau in use: 30, fastest on cucumber too',
    ],
  ]),
  ...byTemperature(kersting1999, 'SEEN', ['days, birth to adult', 'd', 'cotton'], { 15: 12, 30: 4.5 }),
  ...byTemperature(soglia2002, 'SEEN', ['days, birth to adult', 'd', 'chrysanthemum'], { 15: 13.5, 30: 5 }),
  ...byTemperature(zamani2006, 'SEEN', ['days, birth to adult', 'd', 'cucumber'], {
    10: 20.7,
    15: 11.09,
    20: 7.44,
    25: 5.6,
    30: 3.81,
  }),
  ...byTemperature(xia1999, 'SEEN', ['days, birth to adult', 'd', 'cotton'], {
    10: 25.9,
    15: 15.1,
    20: 9.7,
    25: 5.6,
    30: 4.9,
    35: 7.2,
  }),
  ...byTemperature(komazaki1982, 'SEEN', ['days, birth to adult', 'd', 'citrus'], {
    15.2: 14.17,
    19.8: 7.57,
    24.5: 6.93,
    27.5: 6.88,
    29.7: 6.17,
  }),
  ...byTemperature(
    parajulee2007,
    'SEEN',
    ['days, birth to first birth', 'd', 'cotton', 'abstract, rounded'],
    { 10: 26, 15: 15, 20: 8, 25: 5, 30: 5, 35: 5 },
  ),
  ...byTemperature(
    parajulee2007,
    'SEEN',
    ['days, birth to first birth', 'd', 'cotton', 'table; longer than its abstract'],
    { 10: 32.53, 15: 18.35, 20: 10.11, 25: 7.55, 30: 7.03, 35: 7.43 },
  ),
  ...rowsFrom(xia1999, 'SEEN', [
    ['survival, birth to adult', 0.81, 'share', '25 °C, cotton', 'highest of 10 to 35 °C'],
    ['mean young a day', 3.1, 'young', '25 °C, cotton'],
    ['young in a life', 28.3, 'young', '25 °C, cotton'],
  ]),
  ...byTemperature(
    zamani2006,
    'SEEN',
    [
      'survival, birth to adult',
      'share',
      'cucumber',
      'none at 35 °C; 20 and 25 °C in use, 30 °C sets the heat damage',
    ],
    { 10: 0.62, 15: 0.79, 20: 0.87, 25: 0.93, 30: 0.56 },
  ),
  ...byTemperature(zamani2006, 'SEEN', ['adult life', 'd', 'cucumber'], {
    10: 14.9,
    15: 14.45,
    20: 14,
    25: 17,
    30: 8.56,
  }),
  ...rowsFrom('mean of the lives from 15 to 30 °C, each moved to 20 °C by the rate of development', 'DER', [
    ['adult life, as used', 15.3, 'd', '20 °C, cucumber', 'in use; 9 to 23'],
  ]),
  ...byTemperature(zamani2006, 'SEEN', ['young a newborn leaves, R0', 'young', 'cucumber'], {
    10: 5.42,
    15: 23.29,
    20: 35.98,
    25: 57.07,
    30: 7.76,
  }),
  ...byTemperature(
    'R0 / survival / (0.583 x 15.3 days x 13.81 / (T - 6.19)); at 30 °C / 3.5 days, since heat shortens laying',
    'DER',
    ['young a day, first days', 'young', 'cucumber', 'in use, 25 °C as the best'],
    { 10: 0.27, 15: 2.11, 20: 4.64, 25: 9.4, 30: 4 },
  ),
  ...byTemperature(zamani2006, 'SEEN', ['growth rate r', 'per day', 'cucumber'], {
    10: 0.064,
    15: 0.18,
    20: 0.325,
    25: 0.419,
    30: 0.363,
  }),
  ...rowsFrom(akkopru2018, 'SEEN', [
    ['growth rate r', 0.4214, 'per day', '25 °C, best of several cucumbers'],
  ]),
  ...rowsFrom(forghani2020, 'SEEN', [
    ['growth rate r', 0.481, 'per day', '26 °C, cucumber'],
    ['days, birth to adult', 4.75, 'd', '26 °C, cucumber'],
  ]),
  ...rowsFrom(onMallows, 'SEEN', [
    ['young in a life', 62.8, 'young', '25 °C, mallow'],
    ['young in a life', 37.9, 'young', '25 °C, cotton', 'against 61.4 on cucumber: 0.6 in use'],
    ['young in a life', 4.5, 'young', '25 °C, okra', 'against 61.4 on cucumber: 0.07 in use'],
    ['growth rate r', 0.129, 'per day', '25 °C, okra'],
  ]),
  ...rowsFrom(onFiveHosts, 'SEEN', [
    ['young in a life', 62.6, 'young', '25 °C, sweet pepper'],
    ['young in a life', 55.2, 'young', '25 °C, aubergine', 'against 61.4 on cucumber: 0.9 in use'],
  ]),
  ...rowsFrom(onTwoHosts, 'SEEN', [
    ['survival, birth to adult', 0.94, 'share', 'cucumber'],
    ['survival, birth to adult', 0.66, 'share', 'pepper', 'with as many young: 0.7 in use'],
  ]),
  ...byTemperature(parajulee2007, 'SEEN', ['young in a life', 'young', 'cotton'], {
    10: 9.76,
    15: 35.95,
    20: 46.32,
    25: 50.51,
    30: 58.93,
    35: 17.32,
  }),
  ...rowsFrom(judgement, 'MEM', [
    ['adults a m2 of ground that halve laying', 300, 'per m2', 'as whitefly', 'in use'],
    ['days before the first birth', 1, 'd', '20 °C', 'in use'],
    [
      'end of development',
      35,
      '°C',
      'constant',
      'in use; lethal there on cucumber (Zamani et al. 2006) and cotton (Kersting et al. 1999), not in two others',
    ],
  ]),
  ...rowsFrom(satar2008, 'SEEN', [
    ['grows faster than the peach-potato aphid above', 17.5, '°C', 'sweet pepper'],
  ]),
  ...byTemperature(satar2005, 'SEEN', ['growth rate r', 'per day', 'cucumber'], {
    15: 0.208,
    20: 0.358,
    25: 0.526,
    30: 0.431,
    32.5: 0.132,
  }),
];

export const aphisGossypii: SpeciesRecord = {
  id: 'aphis-gossypii',
  name: 'Aphis gossypii Glover',
  commonName: 'melon and cotton aphid',
  shortName: 'melon aphids',
  development: {
    lowerC: 6.19,
    plateauC: 30,
    zeroC: 35,
    // Survival: 0.9 from birth to adult (0.87 at 20 and 0.93 at 25 °C, Zamani et al. 2006), the same for each instar.
    stages: [
      { name: 'N1', degreeDays: 24.3, cv: 0.12, survival: 0.974 },
      { name: 'N2', degreeDays: 24.3, cv: 0.12, survival: 0.974 },
      { name: 'N3', degreeDays: 24.3, cv: 0.12, survival: 0.974 },
      { name: 'N4', degreeDays: 24.2, cv: 0.12, survival: 0.974 },
    ],
    source:
      'Cucumber, the crop under glass, and one paper for line, survival, life and births: Zamani et al. 2006 (6.19 °C, 97.1 degree-days, fastest at 30 °C, none at 35 °C). Equal instars: our derivation after Xia et al. 1999 (23.0 to 25.5 degree-days each).',
  },
  traits: {
    kind: 'pest',
    adult: {
      // One day at 20 degC.
      preovipositionDegreeDays: 13.8,
      lifeDaysAt20C: 15.3,
      femaleShare: 1,
      eggsPerDay: 9.4,
      fecundityByTemperature: [
        [6.2, 0],
        [10, 0.03],
        [15, 0.22],
        [20, 0.49],
        [25, 1],
        [30, 0.43],
        [35, 0],
      ],
      source:
        'Births by temperature and life: Zamani et al. 2006 on cucumber, R0 by survival and life, our derivation. Before the first birth: judgement.',
    },
    // Chosen so that 0.9 of the nymphs becomes 0.56 at 30 degC (Zamani et al. 2006), none being harmed at 25 degC.
    heatFromC: 25,
    heatHazardAt39C: 0.038,
    flightByTemperature: [
      [13, 0],
      [16, 0.5],
      [20, 1],
      [30, 1],
      [34, 0.2],
      [38, 0],
    ],
    hostFactor: {
      cucumber: 1,
      melon: 1,
      courgette: 1,
      aubergine: 0.9,
      pepper: 0.7,
      cotton: 0.6,
      okra: 0.07,
    },
    crowdingPerM2: 300,
    winged: { always: 0.03, crowded: 0.33 },
    antsAttend: true,
    seen: { trap: 'aphid', leaves: ['aphid'], parasitised: { host: 'aphid', sign: 'mummy' } },
  },
  rows,
  openQuestions: [
    'The line is that of cucumber; on cotton development takes about a tenth longer.',
    'At 35 °C development is lethal (Kersting 1999, Zamani 2006) or goes on (Xia 1999, Parajulee 2007): populations differ.',
    'Parajulee 2007 prints shorter days to the first birth in the abstract (8 at 20 °C) than in the table (10.1).',
    'In field cages development took 1.3 times as many degree-days as in the laboratory.',
    'Growth at 25 °C runs from 0.13 (okra) to 0.53 (cucumber): the plant decides.',
  ],
};
