import type { PublishedRow, SpeciesRecord } from './record.ts';
import { bandsFrom, byTemperature, rowsFrom, thermalLine } from './rows.ts';
import { commonPractice, fromMemory, inForage, qassim } from './sources.ts';

const onPollen2021 =
  'Temperature-dependent development of Neoseiulus cucumeris on cattail and almond pollen. Environmental Entomology 2021. doi 10.1093/ee/nvab130';
const column = 'Neoseiulus cucumeris, university extension column in a greenhouse trade magazine';
const inrae = 'INRAE e-phytia, Amblyseius (Neoseiulus) cucumeris';
const shipp1991 = 'Shipp JL, Whitfield GH 1991, Environmental Entomology';

const rows: readonly PublishedRow[] = [
  ...thermalLine(onPollen2021, 'SEEN', ['egg to adult', 10.97, 112.8, 'almond pollen']),
  ...thermalLine(onPollen2021, 'SEEN', ['egg to adult', 10.29, 123.5, 'cattail pollen']),
  ...thermalLine('midway between the two lines on pollen', 'DER', [
    'egg to adult',
    10.5,
    118,
    'pollen',
    'in use',
  ]),
  ...thermalLine(`least squares on the means of: ${qassim}`, 'DER', [
    'egg to adult',
    9.99,
    163.1,
    'date palm mite',
    'slow prey',
  ]),
  ...rowsFrom(onPollen2021, 'SEEN', [
    ['no development at', 10, '°C', 'pollen'],
    ['fastest development at', 33.9, '°C', 'cattail pollen', '31.9 on almond; plateau in use: 34'],
    ['no development at', 38, '°C', 'pollen', 'in use as zero'],
  ]),
  ...byTemperature(column, 'SEEN', ['days, egg to adult', 'd', 'prey not stated', 'rounded'], {
    20: 11,
    25: 8,
    30: 6,
  }),
  ...byTemperature(qassim, 'SEEN', ['days, egg to adult', 'd', 'date palm mite, 50 % humidity'], {
    25: 10.67,
    30: 8.38,
    35: 6.45,
  }),
  ...byTemperature(qassim, 'SEEN', ['eggs in a life', 'eggs', 'date palm mite'], {
    25: 21.75,
    30: 26.84,
    35: 30.56,
  }),
  ...byTemperature(qassim, 'SEEN', ['adult life', 'd', 'date palm mite'], {
    25: 25.42,
    30: 21.94,
    35: 17.39,
  }),
  ...rowsFrom(
    '25.42 days at 25 °C (Qassim) less 2 before the first egg, moved to 20 °C by the rate of development',
    'DER',
    [['adult life from the first egg', 35.7, 'd', '20 °C', 'in use']],
  ),
  ...rowsFrom('2.2 in the first days x 0.583 x 23.4 days at 25 °C', 'DER', [
    ['eggs in a life', 30, 'eggs', '25 °C', '2.2 as a mean of 20 days would be 44, more than any total read'],
  ]),
  ...rowsFrom(column, 'SEEN', [['eggs in a life', 35, 'eggs', 'up to, in 35 days']]),
  ...rowsFrom('2.1 eggs a day with pollen against 2.2 on thrips (INRAE)', 'DER', [
    ['share of laying without prey', 0.95, 'share', 'pollen', 'in use'],
  ]),
  ...rowsFrom(inrae, 'SEEN', [
    [
      'eggs a day',
      2.2,
      'eggs',
      'thrips larvae, temperature not stated',
      'in use for the first days; 2.1 with pollen, 20 days',
    ],
    ['days before the first egg', 2, 'd', 'temperature not stated', 'in use'],
    ['lives from', 8, '°C', 'to 34 °C', 'in use as "lives above"'],
    ['critical humidity for eggs', 65, '%', 'eggs', 'over 70 % is best'],
  ]),
  ...rowsFrom(`${shipp1991}${inForage}`, 'SEEN', [
    ['most prey a day', 7.75, 'first-instar thrips', '26 °C, mated female'],
    ['most prey a day', 15.9, 'first-instar thrips', '26 °C, mated female, second series'],
  ]),
  ...rowsFrom(shipp1991, 'SEEN', [
    ['most prey a day', 6.21, 'first-instar thrips', '26 °C, cucumber leaf', 'in use'],
    ['most prey a day', 10.12, 'first-instar thrips', '26 °C, sweet pepper leaf'],
  ]),
  ...rowsFrom(`Dalir et al. 2021, Pest Management Science${inForage}`, 'SEEN', [
    ['most prey a day', 38.9, 'thrips', '25 °C', 'arena not given; dish values do not scale to plants'],
  ]),
  ...rowsFrom(fromMemory, 'MEM', [
    ['most prey a day', 3, 'young swirskii mites', '25 °C', 'in use; it takes fewer than it loses'],
    ['first-instar thrips eaten per egg laid, at least', 2, 'thrips', 'by the weights of both'],
    ['wild strains rest below a day length of', 12.5, 'h', '18 to 22 °C', 'strains sold do not'],
  ]),
  ...bandsFrom(commonPractice, 'MEM', [
    ['release before the pest', 50, 100, 'per m2', 'every 2 weeks', '75 in use'],
    ['release on a light attack', 100, 250, 'per m2', 'weekly, 4 weeks'],
  ]),
  ...rowsFrom('half of 2.2 eggs a day, two first instars an egg, of 6.21 eaten a day', 'DER', [
    ['lays half at', 0.35, 'share of its fill', '25 °C', 'in use'],
  ]),
  ...rowsFrom('as Phytoseiulus persimilis, with water', 'DER', [
    ['adults live without food for', 7.5, 'd', '20 °C', '5 to 10; in use'],
  ]),
  ...rowsFrom('2 days of INRAE, read as at 25 °C', 'DER', [
    ['days before the first egg', 2, 'd', '25 °C', 'in use'],
  ]),
];

export const neoseiulusCucumeris: SpeciesRecord = {
  id: 'neoseiulus-cucumeris',
  name: 'Neoseiulus cucumeris (Oudemans)',
  commonName: 'thrips predatory mite',
  shortName: 'cucumeris mites',
  development: {
    lowerC: 10.5,
    plateauC: 34,
    zeroC: 38,
    // Shares of the stages and survival 0.9: judgement; no table by stage was read.
    stages: [
      { name: 'egg', degreeDays: 36, cv: 0.12, survival: 0.95 },
      { name: 'larva', degreeDays: 16, cv: 0.15, survival: 0.98 },
      { name: 'protonymph', degreeDays: 33, cv: 0.15, survival: 0.98 },
      { name: 'deutonymph', degreeDays: 33, cv: 0.15, survival: 0.98 },
    ],
    source:
      'Midway between the lines on almond pollen (10.97 °C, 112.8) and cattail pollen (10.29 °C, 123.5) of one study (Environmental Entomology 2021), our derivation. Upper end: develops to 35 °C, not at 38 °C (same study). Shares of the stages: judgement.',
  },
  traits: {
    kind: 'enemy',
    adult: {
      // 2 days at 25 degC.
      preovipositionDegreeDays: 29,
      lifeDaysAt20C: 35.7,
      femaleShare: 0.6,
      eggsPerDay: 2.2,
      fecundityByTemperature: [
        [10.5, 0],
        [15, 0.2],
        [20, 0.6],
        [25, 1],
        [34, 1],
        [38, 0],
      ],
      source:
        'Eggs a day and time before the first egg: INRAE (2.2 on thrips larvae; 2 days), temperature taken as 25 °C and read as that of the first days. Life: 25.4 days at 25 °C (Qassim study) moved to 20 °C by the rate of development. Sex ratio, shape by temperature: judgement.',
    },
    attacks: [
      {
        prey: 'frankliniella-occidentalis',
        stages: ['L1'],
        kind: 'predation',
        ceilingPerDay: 6.21,
        source: 'Shipp & Whitfield 1991, cucumber leaf: 6.21 a day at 26 °C',
      },
      {
        prey: 'amblyseius-swirskii',
        stages: ['larva'],
        kind: 'predation',
        ceilingPerDay: 3,
        source: 'from memory: Buitenhuis et al. 2010, each eats the young of the other',
      },
    ],
    activityByTemperature: [
      [8, 0],
      [15, 0.4],
      [20, 0.8],
      [24, 1],
      [32, 1],
      [37, 0],
    ],
    livesAboveC: 8,
    huntsAboveC: 10.5,
    searchM2PerDay: 0.005,
    // Read across from Phytoseiulus persimilis.
    starvesInDays: 7.5,
    // At least two first instars for an egg.
    halfFedAt: 0.35,
    livesOnPollen: 0.95,
    release: {
      form: 'mixed stages in sachets',
      verb: 'hang',
      piece: ['sachet', 'sachets'],
      perPiece: 100,
      perM2: 75,
      where: 'in the leaves, out of the sun',
      establishes: 0.8,
      lookAfterDays: 21,
      lookFor: 'predatory mites under the leaves',
      outdoors: 'native or long resident in Europe, from memory',
      source:
        'common practice, no source: 50 to 100 a m2 before the pest, sachets renewed every 4 to 6 weeks',
    },
  },
  rows,
  openQuestions: [
    'Days by stage were not read; the shares are a judgement.',
    'It also eats some whitefly and spider mite eggs; no ceiling that holds on plants was found, so neither counts.',
    'The humidity at which eggs fail is stated (65 %), not measured as a deficit, so no figure in kPa is in use.',
    'In the Qassim study eggs a day go on rising to 35 °C; the flat course from 25 °C up is a judgement.',
  ],
};
