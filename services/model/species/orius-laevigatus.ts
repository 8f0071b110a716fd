import type { PublishedRow, SpeciesRecord } from './record.ts';
import { bandsFrom, byTemperature, collectedLines, rowsFrom } from './rows.ts';
import { commonPractice, fromMemory, inForage, inNietschke, judgement } from './sources.ts';

const sanchez2002 =
  'Sanchez JA, Lacasa A 2002. Modelling population dynamics of Orius laevigatus and O. albidipennis. Bulletin of Entomological Research 92:77-88 (authors from memory)';
const alauzet1992 = 'Alauzet C, Dardagnon D, Hatte M 1992. Entomophaga 37:249-252';
const mouratidis2022 =
  'Mouratidis A, de Lima AP, Dicke M, Messelink GJ 2022. Predator-prey interactions and life history of Orius laevigatus and O. majusculus feeding on flower and leaf-inhabiting thrips. Biological Control (year from memory)';
const montserrat2000 = `Montserrat et al. 2000, Environmental Entomology${inForage}`;
const inrae = 'INRAE e-phytia, Orius laevigatus';
const relative = 'Orius majusculus, a relative';

const rows: readonly PublishedRow[] = [
  ...rowsFrom(sanchez2002, 'SEEN', [
    ['lower threshold, egg to adult', 11.3, '°C', 'moth eggs', 'in use; standard error 0.7'],
    ['no eggs laid above', 35.5, '°C', 'moth eggs', 'in use'],
  ]),
  ...byTemperature(sanchez2002, 'SEEN', ['days, egg to adult', 'd', 'moth eggs'], { 20: 34.6, 35: 12.3 }),
  ...rowsFrom('34.6 days at 20 °C are 301, 12.3 days at 35 °C are 292 (Sanchez & Lacasa 2002)', 'DER', [
    ['degree-days, egg to adult', 297, 'degree-days', 'above 11.3 °C', 'in use'],
    ['fastest development read at', 35, '°C', 'still on the line', 'in use as start of the plateau'],
  ]),
  ...collectedLines(inNietschke, 'egg to adult', relative, [
    [alauzet1992, 5.8, 397.4],
    [alauzet1992, 8.5, 341.5],
    [alauzet1992, 9.4, 261.2],
  ]),
  ...collectedLines(inNietschke, 'egg', relative, [[alauzet1992, 4.9, 91.2, 'in use for the split']]),
  ...collectedLines(inNietschke, 'nymph', relative, [
    [alauzet1992, 6.5, 297.8],
    [alauzet1992, 8.1, 276.9, 'in use for the split'],
    [alauzet1992, 9, 198],
  ]),
  ...rowsFrom('6 of 29 days at 20 °C by the lines of Alauzet et al. 1992', 'DER', [
    ['share of development as an egg', 0.21, 'share', `20 °C, ${relative}`, 'in use'],
  ]),
  ...bandsFrom(inrae, 'SEEN', [
    ['mean eggs a day', 1, 3, 'eggs', 'temperature not given', '3 in use as the best'],
    ['lays best between', 20, 30, '°C', 'females', 'in use'],
  ]),
  ...rowsFrom(inrae, 'SEEN', [
    ['eggs in a life', 165, 'eggs', 'at most'],
    ['lays eggs from', 15, '°C', 'females', 'in use as "hunts above"'],
    ['development stops at', 11, '°C', 'all stages'],
  ]),
  ...rowsFrom(mouratidis2022, 'SEEN', [
    ['growth rate r', 0.148, 'per day', 'western flower thrips'],
    ['growth rate r', 0.162, 'per day', 'Echinothrips americanus'],
    ['most prey a day', 18, 'adult thrips', 'western flower thrips', 'in use'],
    ['most prey a day', 36, 'adult thrips', 'leaf thrips', 'about twice'],
  ]),
  ...bandsFrom(montserrat2000, 'SEEN', [
    ['most prey a day', 93.5, 110, 'second-instar thrips', '25 °C, female', 'no firm plateau'],
    ['prey a day, highest mean eaten', 49.9, 56.4, 'second-instar thrips', '25 °C, female', '56 in use'],
    ['most prey a day', 16.3, 35.1, 'whitefly pupae', '25 °C, female', '16.3 in use'],
  ]),
  ...rowsFrom(judgement, 'MEM', [
    ['upper limit of development', 40, '°C', 'all stages', 'in use'],
    ['survival, egg to adult', 0.6, 'share', 'thrips and pollen', 'in use'],
    ['adult life', 40, 'd', '20 °C'],
  ]),
  ...rowsFrom('40 days less 4.7 before the first egg; 3 / 0.583: laying falls in a line', 'DER', [
    ['adult life from the first egg', 35.3, 'd', '20 °C', 'in use'],
    ['eggs a day, first days', 5.1, 'eggs', '20 to 30 °C', 'in use; 105 in a life, 165 at most by INRAE'],
  ]),
  ...rowsFrom(fromMemory, 'MEM', [
    ['share of laying without prey', 0.4, 'share', 'pollen', 'in use'],
    [
      'prey a day',
      10,
      'predatory mites',
      'female',
      'in use, a tenth as readily as thrips; relatives eat them, both live in one house',
    ],
  ]),
  ...bandsFrom(commonPractice, 'MEM', [
    ['release before the pest', 1, 2, 'per m2', 'pepper in flower, twice'],
    ['release on a light attack', 3, 5, 'per m2', 'twice, 2 weeks apart', '5 in use'],
  ]),
  ...rowsFrom(commonPractice, 'MEM', [['release on a heavy attack', 10, 'per m2', 'twice, a week apart']]),
  ...rowsFrom(judgement, 'MEM', [['days before the first egg', 3, 'd', '25 °C', 'in use']]),
];

export const oriusLaevigatus: SpeciesRecord = {
  id: 'orius-laevigatus',
  name: 'Orius laevigatus (Fieber)',
  commonName: 'thrips predatory bug',
  shortName: 'Orius',
  development: {
    lowerC: 11.3,
    plateauC: 35,
    zeroC: 40,
    stages: [
      { name: 'egg', degreeDays: 62, cv: 0.12, survival: 0.85 },
      { name: 'nymph', degreeDays: 235, cv: 0.12, survival: 0.706 },
    ],
    source:
      'Threshold 11.3 °C and days at 20 and 35 °C: Sanchez & Lacasa 2002; the 297 degree-days are our derivation from these two. Split: lines of the related Orius majusculus at 20 °C (Alauzet et al. 1992). Upper limit and survival: judgement.',
  },
  traits: {
    kind: 'enemy',
    adult: {
      // 3 days at 25 degC, judgement.
      preovipositionDegreeDays: 41,
      lifeDaysAt20C: 35.3,
      femaleShare: 0.5,
      eggsPerDay: 5.1,
      fecundityByTemperature: [
        [15, 0],
        [20, 1],
        [30, 1],
        [35.5, 0],
      ],
      source:
        'Eggs a day (3, read as a mean), none below 15 °C, best between 20 and 30 °C: INRAE. None above 35.5 °C: Sanchez & Lacasa 2002. Life, sex ratio and time before the first egg: judgement.',
    },
    attacks: [
      {
        prey: 'frankliniella-occidentalis',
        stages: ['L1', 'L2'],
        kind: 'predation',
        ceilingPerDay: 56,
        source: 'Montserrat et al. 2000: most second instars eaten at 25 °C; the fitted ceiling is 94 to 110',
      },
      {
        prey: 'frankliniella-occidentalis',
        stages: ['adult'],
        kind: 'predation',
        ceilingPerDay: 18,
        source: 'Mouratidis et al. 2022: 18 adults a day',
      },
      {
        prey: 'trialeurodes-vaporariorum',
        stages: ['N4/pupa'],
        kind: 'predation',
        ceilingPerDay: 16.3,
        source: 'Montserrat et al. 2000, refitted in FoRAGE v4, the lower of two; a side effect',
      },
      {
        prey: 'aphidoletes-aphidimyza',
        stages: ['egg'],
        kind: 'predation',
        ceilingPerDay: 16.3,
        source: 'from memory: it eats eggs of the midge; number of whitefly pupae (Montserrat et al. 2000)',
      },
      ...(['amblyseius-swirskii', 'neoseiulus-cucumeris'] as const).map((prey) => ({
        prey,
        stages: ['larva', 'protonymph', 'deutonymph', 'adult'],
        kind: 'predation' as const,
        ceilingPerDay: 10,
        preference: 0.1,
        source:
          'from memory: relatives eat predatory mites beside thrips (Chow et al. 2010); numbers a judgement',
      })),
    ],
    activityByTemperature: [
      [11, 0],
      [15, 0.4],
      [20, 1],
      [30, 1],
      [35.5, 0],
    ],
    livesAboveC: 11.3,
    huntsAboveC: 15,
    searchM2PerDay: 0.05,
    huntingStages: ['nymph', 'adult'],
    livesOnPollen: 0.4,
    release: {
      form: 'adults and old nymphs',
      verb: 'put out',
      piece: ['bottle of Orius', 'bottles of Orius'],
      perPiece: 500,
      perM2: 5,
      where: 'on plants in flower',
      establishes: 0.7,
      lookAfterDays: 21,
      lookFor: 'orange nymphs in the flowers',
      source: 'common practice, no source: 3 to 5 a m2 on a light attack, twice',
    },
  },
  rows,
  openQuestions: [
    'Development rests on a threshold and on days at two temperatures; the full table has to be read.',
    'The split into egg and nymph is that of a relative.',
    'Adult life and survival of the young are judgements.',
    'A Hungarian pepper house did not see it settle in the first year (Farkas et al. 2016).',
    'The strain sold does not rest in short days (INRAE); its relatives do.',
    'How many spider mite eggs and aphids it takes was not read.',
  ],
};
