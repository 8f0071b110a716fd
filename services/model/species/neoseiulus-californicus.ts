import type { PublishedRow, SpeciesRecord } from './record.ts';
import { bandsFrom, byTemperature, rowsFrom, thermalLine } from './rows.ts';
import { commonPractice, fromMemory, inForage, inNietschke, judgement } from './sources.ts';

const hart2002 =
  'Hart AJ, Bale JS, Tullett AG, Worland MR, Walters KFA 2002. Effects of temperature on the establishment potential of the predatory mite Amblyseius californicus in the UK. Journal of Insect Physiology 48:593-599';
const gotoh2004 =
  'Gotoh T, Yamaguchi K, Mori K 2004. Effect of temperature on life history of the predatory mite Amblyseius (Neoseiulus) californicus. Experimental and Applied Acarology 32:15-30';
const rencken1998 =
  'Rencken IC, Pringle KL 1998. Developmental biology of Amblyseius californicus, a predator of tetranychid mites, at three temperatures. African Entomology 6 (journal from memory)';
const aydin =
  'Development, fecundity, and prey consumption of the Aydin Neoseiulus californicus population feeding on Tetranychus cinnabarinus. Turkish Journal of Agriculture and Forestry 33 (authors not seen)';
const egypt =
  'Thermal requirements and life table parameters of the predatory mite Neoseiulus californicus fed on Tetranychus urticae, Egypt (authors not seen)';
const inrae = 'INRAE e-phytia, Amblyseius (Neoseiulus) californicus';
const elTaj2011 =
  'El Taj HF, Jung C 2011. A Korean population of Neoseiulus californicus that is non-diapausing. International Journal of Acarology 37:411-419';
const ahn2010 = `Ahn et al. 2010, Journal of Applied Entomology${inForage}`;

const rows: readonly PublishedRow[] = [
  ...thermalLine(`${hart2002}${inNietschke}`, 'SEEN', [
    'egg to adult',
    8.6,
    142.9,
    'strain sold in the UK',
    'a generation in the abstract; threshold in use as "lives above"',
  ]),
  ...rowsFrom(hart2002, 'SEEN', [
    ['lower threshold, egg to adult', 9.9, '°C', 'simple regression', 'weighted: 8.6'],
  ]),
  ...thermalLine(gotoh2004, 'SEEN', ['egg to first egg', 10.3, 86.2, 'two-spotted mite, Japan']),
  ...rowsFrom(rencken1998, 'SEEN', [['lower threshold, egg to adult', 8.3, '°C', 'South Africa']]),
  ...thermalLine(aydin, 'SEEN', ['egg to adult', 7.8, 83.3, 'carmine mite']),
  ...rowsFrom(egypt, 'SEEN', [
    ['lower threshold, egg to adult', 6.66, '°C', 'soybean', 'its 500 degree-days cannot be: not used'],
  ]),
  ...byTemperature(egypt, 'SEEN', ['days, young stages of the female', 'd', 'two-spotted mite'], {
    20: 7.35,
    30: 4.22,
  }),
  ...rowsFrom(
    'the line of Gotoh et al. 2004 less the 1.1 days at 24 °C (15.1 degree-days) of El Taj & Jung 2011',
    'DER',
    [
      ['lower threshold, egg to adult', 10.3, '°C', 'two-spotted mite', 'in use'],
      ['degree-days, egg to adult', 71.1, 'degree-days', 'above 10.3 °C', 'in use'],
    ],
  ),
  ...rowsFrom(gotoh2004, 'SEEN', [
    ['survival, egg', 0.973, 'share', '15 to 35 °C', 'at least; in use'],
    ['survival, larva to adult', 0.816, 'share', '15 to 35 °C', 'at least; in use'],
    ['no development at', 37.5, '°C', 'eggs', 'none hatch; in use as zero'],
    ['no eggs laid at', 40, '°C', 'females'],
    ['eggs in a life', 41.6, 'eggs', '25 °C, mite eggs'],
    ['days of egg-laying', 19.4, 'd', '25 °C, mite eggs'],
  ]),
  ...rowsFrom('41.6 eggs in 19.4 days at 25 °C (Gotoh et al. 2004)', 'DER', [
    ['mean eggs a day', 2.14, 'eggs', '25 °C'],
    ['eggs a day, first days', 3.68, 'eggs', '25 °C', '41.6 / (0.583 x 19.4): laying falls in a line'],
    [
      'adult life from the first egg',
      29.4,
      'd',
      '20 °C',
      'in use: 19.4 days of laying at 25 °C moved by the rate of development',
    ],
  ]),
  ...byTemperature(
    rencken1998,
    'SEEN',
    ['females in the next generation', 'females', 'South Africa', 'nearly level: course of laying in use'],
    { 20: 9.71, 25: 11.18, 30: 10.54 },
  ),
  ...byTemperature(
    '3.68 eggs at 25 °C moved by the rate of development and by R0 of Rencken & Pringle 1998',
    'DER',
    ['eggs a day, first days', 'eggs', 'two-spotted mite', 'in use, 30 °C as the best'],
    { 20: 2.11, 30: 4.65 },
  ),
  ...rowsFrom('0.7 eggs a day on pollen against 2.2 on mite eggs at 23 °C (INRAE)', 'DER', [
    ['share of laying without prey', 0.32, 'share', '23 °C, pollen', 'in use'],
  ]),
  ...rowsFrom(inrae, 'SEEN', [
    ['mean eggs a day', 2.2, 'eggs', '23 °C, mite eggs'],
    ['mean eggs a day', 0.7, 'eggs', '23 °C, pollen'],
    ['useful from', 10, '°C', 'release', 'in use as "hunts above"'],
  ]),
  ...bandsFrom(inrae, 'SEEN', [
    ['share of females', 0.55, 0.65, 'share', '23 °C', '0.6 in use'],
    ['best between', 25, 33, '°C', 'hot and dry', '33 in use as start of the plateau'],
    ['eggs need a humidity above', 60, 70, '%', 'less marked than in persimilis'],
  ]),
  ...byTemperature(
    elTaj2011,
    'SEEN',
    ['days before the first egg', 'd', 'Korea, no rest in short days', 'in use'],
    { 15: 5.7, 24: 1.1 },
  ),
  ...byTemperature(gotoh2004, 'SEEN', ['growth rate r', 'per day', 'two-spotted mite'], {
    20: 0.173,
    25: 0.274,
    30: 0.34,
  }),
  ...byTemperature(rencken1998, 'SEEN', ['growth rate r', 'per day', 'South Africa'], {
    20: 0.122,
    30: 0.251,
  }),
  ...byTemperature(aydin, 'SEEN', ['growth rate r', 'per day', 'carmine mite'], { 20: 0.2467, 25: 0.3373 }),
  ...byTemperature(
    ahn2010,
    'SEEN',
    ['most prey a day', 'eggs', 'two-spotted mite, strawberry', '15 in use'],
    { 15: 5.68, 20: 12.7, 25: 15, 30: 19.5, 35: 29.4 },
  ),
  ...bandsFrom(ahn2010, 'SEEN', [
    ['most prey a day', 12, 13.8, 'nymphs', '25 °C, two cultivars', '13 in use'],
    ['most prey a day', 15.8, 16.1, 'larvae', '25 °C, two cultivars', '16 in use'],
  ]),
  ...byTemperature(`${gotoh2004}${inForage}`, 'SEEN', ['most prey a day', 'eggs', 'two-spotted mite'], {
    20: 28.7,
    25: 34.5,
    30: 48.5,
  }),
  ...rowsFrom(`Cedola et al. 2001, Experimental and Applied Acarology${inForage}`, 'SEEN', [
    ['most prey a day', 6.58, 'young females', '26 °C, tomato with few hairs', 'in use'],
    ['most prey a day', 5.95, 'young females', '26 °C, tomato with many hairs'],
  ]),
  ...rowsFrom(`Song 2016, Systematic and Applied Acarology${inForage}`, 'SEEN', [
    ['most prey a day', 44.6, 'larvae', '25 °C, two-spotted mite', '13 eggs, 30.1 protonymphs'],
  ]),
  ...rowsFrom('attack rates 1.36 on females (Cedola et al. 2001) and 8.17 on eggs (Ahn et al. 2010)', 'DER', [
    ['search for females against eggs', 0.17, 'share', '25 to 26 °C', 'in use'],
  ]),
  ...rowsFrom(fromMemory, 'MEM', [
    ['prey a day', 3, 'young persimilis mites', 'short of spider mites', 'in use, a judgement'],
    ['sachet holds', 100, 'mites', 'a typical sachet', 'in use'],
  ]),
  ...bandsFrom(commonPractice, 'MEM', [
    ['release before the pest', 2, 10, 'per m2', 'every 4 weeks'],
    ['release on a light attack', 10, 25, 'per m2', 'twice, a week apart', '25 in use'],
  ]),
  ...rowsFrom(judgement, 'MEM', [['share that settles', 0.8, 'share', 'sachets', 'in use']]),
];

export const neoseiulusCalifornicus: SpeciesRecord = {
  id: 'neoseiulus-californicus',
  name: 'Neoseiulus (Amblyseius) californicus (McGregor)',
  commonName: 'californicus predatory mite',
  shortName: 'californicus mites',
  development: {
    lowerC: 10.3,
    plateauC: 33,
    zeroC: 37.5,
    // Shares of the stages: judgement, as in swirskii; no table by stage was read.
    stages: [
      { name: 'egg', degreeDays: 23.5, cv: 0.12, survival: 0.973 },
      { name: 'larva', degreeDays: 10, cv: 0.15, survival: 0.934 },
      { name: 'protonymph', degreeDays: 18.4, cv: 0.15, survival: 0.934 },
      { name: 'deutonymph', degreeDays: 19.2, cv: 0.15, survival: 0.934 },
    ],
    source:
      'Gotoh et al. 2004, the paper of the eggs in use (10.3 °C, 86.2 degree-days from egg to first egg), less the time before the first egg (El Taj & Jung 2011). Survival and no hatch at 37.5 °C: Gotoh et al. 2004. Start of the plateau: best between 25 and 33 °C (INRAE). Shares of the stages: judgement.',
  },
  traits: {
    kind: 'enemy',
    adult: {
      // 1.1 days at 24 degC.
      preovipositionDegreeDays: 15.1,
      lifeDaysAt20C: 29.4,
      femaleShare: 0.6,
      eggsPerDay: 4.65,
      fecundityByTemperature: [
        [10.3, 0],
        [20, 0.454],
        [25, 0.79],
        [30, 1],
        [35, 1],
        [40, 0],
      ],
      source:
        'Eggs: Gotoh et al. 2004 (41.6 in 19.4 days at 25 °C, none at 40 °C). Course with temperature: eggs in a life nearly level from 20 to 30 °C (Rencken & Pringle 1998), our derivation; level above 30 °C is a judgement. Before the first egg: El Taj & Jung 2011. Sex ratio: INRAE. Life after the last egg was not read and is not counted.',
    },
    attacks: [
      {
        prey: 'tetranychus-urticae',
        stages: ['egg'],
        kind: 'predation',
        ceilingPerDay: 15,
        source: 'Ahn et al. 2010, refitted in FoRAGE v4: 15 eggs a day at 25 °C',
      },
      {
        prey: 'tetranychus-urticae',
        stages: ['larva'],
        kind: 'predation',
        ceilingPerDay: 16,
        source:
          'Ahn et al. 2010, refitted in FoRAGE v4: 15.8 and 16.1 larvae a day at 25 °C, searched like eggs',
      },
      {
        prey: 'tetranychus-urticae',
        stages: ['protonymph', 'deutonymph'],
        kind: 'predation',
        ceilingPerDay: 13,
        source: 'Ahn et al. 2010, refitted in FoRAGE v4: 12 and 13.8 nymphs a day at 25 °C',
      },
      {
        prey: 'tetranychus-urticae',
        stages: ['adult'],
        kind: 'predation',
        ceilingPerDay: 6.58,
        preference: 0.17,
        source:
          'Cedola et al. 2001, refitted in FoRAGE v4: young females at 26 °C; search 1.36 against 8.17 for eggs (Ahn et al. 2010)',
      },
      {
        prey: 'phytoseiulus-persimilis',
        stages: ['larva', 'protonymph'],
        kind: 'predation',
        ceilingPerDay: 3,
        source:
          'from memory: Walzer & Schausberger 1999, the generalist eats young of the specialist; numbers a judgement',
      },
    ],
    // Ahn et al. 2010 to 25 degC; they find still more at 35 degC, which is not counted.
    activityByTemperature: [
      [10, 0],
      [15, 0.38],
      [20, 0.85],
      [25, 1],
      [35, 1],
      [40, 0],
    ],
    livesAboveC: 8.6,
    huntsAboveC: 10,
    searchM2PerDay: 0.005,
    livesOnPollen: 0.32,
    release: {
      form: 'mixed stages in sachets',
      verb: 'hang',
      piece: ['sachet', 'sachets'],
      perPiece: 100,
      perM2: 25,
      where: 'in the leaves, out of the sun',
      establishes: 0.8,
      lookAfterDays: 14,
      lookFor: 'predatory mites among the spider mites',
      source: 'common practice, no source: 10 to 25 a m2 on a light attack, twice',
    },
  },
  rows,
  openQuestions: [
    'Thresholds range from 6.7 to 10.3 °C and constants from 83 to 143 degree-days; the UK line, the slowest, is of a generation in its abstract and of egg to adult in the database.',
    'The growth rate at 20 °C is 0.122, 0.173 or 0.247 by strain and prey.',
    'The humidity at which half the eggs fail was not read: 60 to 70 % is a statement.',
    'Whether short days stop it depends on the strain; a Korean one goes on.',
    'In roses under glass it did not hold many spider mites alone (Bluemel & Walzer 2002).',
  ],
};
