import type { PublishedRow, SpeciesRecord } from './record.ts';
import { bandsFrom, byTemperature, collectedLines, rowsFrom, thermalLine } from './rows.ts';
import { commonPractice, fromMemory, inForage, inNietschke, judgement, wyss1999 } from './sources.ts';

const obrycki1981 =
  'Obrycki JJ, Tauber MJ 1981. Phenology of three coccinellid species: thermal requirements for development. Annals of the Entomological Society of America 74:31-36';
const olszak1987 = 'Olszak RW 1987. Ekologia Polska 35:755-765';
const schueder2004 =
  'Schueder I, Hommes M, Larink O 2004. The influence of temperature and food supply on the development of Adalia bipunctata. European Journal of Entomology 101:379-384. doi 10.14411/eje.2004.054';
const jalali2010 =
  'Jalali MA, Tirry L, Arbab A, De Clercq P 2010. Temperature-dependent development of the two-spotted ladybeetle on the green peach aphid and a factitious food. Journal of Insect Science 10:124';
const timms2008 = 'Timms et al. 2008, Biological Control, on the spruce aphid Elatobium abietinum';

const rows: readonly PublishedRow[] = [
  ...collectedLines(inNietschke, 'egg to adult', 'aphids', [
    [obrycki1981, 9.2, 256.3],
    [olszak1987, 9.4, 245.6],
    [schueder2004, 9.2, 251.81],
    [schueder2004, 8.36, 314.22, 'one food level, left out of the choice'],
  ]),
  ...thermalLine(obrycki1981, 'SEEN', [
    'egg to adult',
    9,
    263,
    'abstract',
    'the same paper as 9.2 and 256.3',
  ]),
  ...thermalLine(jalali2010, 'DER', [
    'egg to adult',
    10.26,
    267.9,
    'peach-potato aphid',
    'middle of the printed range',
  ]),
  ...thermalLine(jalali2010, 'DER', [
    'egg to adult',
    10.35,
    266.3,
    'moth eggs',
    'middle of the printed range',
  ]),
  ...thermalLine('between the lines above without 8.36 and 314', 'DER', [
    'egg to adult',
    9.4,
    257,
    'aphids',
    'in use',
  ]),
  ...collectedLines(inNietschke, 'egg', 'aphids', [
    [obrycki1981, 9.1, 43.9, 'shares of the stages in use'],
    [olszak1987, 12.8, 25.3],
    [schueder2004, 6.19, 56.47],
  ]),
  ...collectedLines(inNietschke, 'larva', 'aphids', [
    [obrycki1981, 8.8, 151, 'shares of the stages in use'],
    [olszak1987, 5.9, 166.1],
    [schueder2004, 9.67, 119.43],
  ]),
  ...collectedLines(inNietschke, 'pupa', 'aphids', [
    [obrycki1981, 10.2, 61.6, 'shares of the stages in use'],
    [olszak1987, 10.7, 67.8],
    [schueder2004, 9.53, 81.24],
  ]),
  ...bandsFrom(jalali2010, 'SEEN', [
    ['mortality, egg to adult', 0.243, 0.694, 'share', '15 to 30 °C', 'the lowest in use: survival 0.757'],
  ]),
  ...rowsFrom(jalali2010, 'SEEN', [
    ['no adults at', 35, '°C', 'peach-potato aphid', 'in use as zero'],
    ['linear up to', 30, '°C', 'peach-potato aphid', 'in use as start of the plateau'],
  ]),
  ...byTemperature(
    `Jalali et al. 2010, Biological Control${inForage}`,
    'SEEN',
    ['most prey a day', 'aphids', 'adult'],
    { 19: 76.3, 23: 98 },
  ),
  ...rowsFrom(`${timms2008}${inForage}`, 'SEEN', [
    ['most prey a day', 27.5, 'aphids', '15 °C, first instar'],
    ['most prey a day', 37, 'aphids', '15 °C, third instar', 'in use for the larvae released'],
    ['most prey a day', 148, 'aphids', '15 °C, fourth instar'],
    ['most prey a day', 109, 'aphids', '15 °C, adult'],
  ]),
  ...rowsFrom(schueder2004, 'SEEN', [
    ['prey in a larval life', 190, 'aphids', 'small cereal aphids', 'growers say 400 to 500'],
  ]),
  ...rowsFrom(fromMemory, 'MEM', [
    ['larvae search from', 10, '°C', 'larvae', 'in use as "hunts above"; best 18 to 27 °C'],
    ['eggs a day, first days', 20, 'eggs', 'female', 'in use'],
    ['adult life', 60, 'd', '20 °C'],
  ]),
  ...rowsFrom('60 days less 7 before the first egg', 'DER', [
    ['adult life from the first egg', 53, 'd', '20 °C', 'in use'],
  ]),
  ...rowsFrom(wyss1999, 'SEEN', [
    ['aphids left where ants attended', 1.3, 'times', 'apple, larvae released', 'larvae worked less well'],
  ]),
  ...rowsFrom('between lacewing larvae (removed twice as often) and ladybird eggs (2.5 times fewer)', 'DER', [
    ['search lost to ants', 0.5, 'share', 'larvae', 'in use, a judgement'],
  ]),
  ...rowsFrom(commonPractice, 'MEM', [['release on a light attack', 10, 'per m2', 'once', 'in use']]),
  ...bandsFrom(commonPractice, 'MEM', [['release on a heavy attack', 20, 50, 'per m2', 'on the aphids']]),
  ...rowsFrom(judgement, 'MEM', [['days before the first egg', 7, 'd', '20 °C', 'in use']]),
];

const aphids = [
  'myzus-persicae',
  'aphis-gossypii',
  'macrosiphum-euphorbiae',
  'aulacorthum-solani',
  'macrosiphum-rosae',
] as const;
const everyStage = ['N1', 'N2', 'N3', 'N4', 'adult'];

export const adaliaBipunctata: SpeciesRecord = {
  id: 'adalia-bipunctata',
  name: 'Adalia bipunctata (Linnaeus)',
  commonName: 'two-spot ladybird',
  shortName: 'ladybirds',
  development: {
    lowerC: 9.4,
    plateauC: 30,
    zeroC: 35,
    // Survival: 0.757 from egg to adult at the best temperature (Jalali et al. 2010), split by judgement.
    stages: [
      { name: 'egg', degreeDays: 44, cv: 0.12, survival: 0.9 },
      { name: 'larva', degreeDays: 151, cv: 0.12, survival: 0.9 },
      { name: 'pupa', degreeDays: 62, cv: 0.12, survival: 0.935 },
    ],
    source:
      'Between six lines (thresholds 9 to 10.35 °C, constants 246 to 268), our derivation. Shares of the stages: Obrycki & Tauber 1981 (43.9, 151, 61.6). No adults at 35 °C, linear to 30 °C: Jalali et al. 2010.',
  },
  traits: {
    kind: 'enemy',
    adult: {
      // A week at 20 degC, judgement.
      preovipositionDegreeDays: 74,
      lifeDaysAt20C: 53,
      femaleShare: 0.5,
      eggsPerDay: 20,
      fecundityByTemperature: [
        [12, 0],
        [20, 0.8],
        [25, 1],
        [30, 0.5],
        [35, 0],
      ],
      source:
        'From memory and judgement: larvae are released and the adults fly off, so these count for little.',
    },
    attacks: aphids.map((prey) => ({
      prey,
      stages: everyStage,
      kind: 'predation' as const,
      ceilingPerDay: 37,
      source: 'Timms et al. 2008, refitted in FoRAGE v4: 37 a day, third instar at 15 °C, on spruce aphid',
    })),
    activityByTemperature: [
      [10, 0],
      [18, 1],
      [27, 1],
      [33, 0],
    ],
    livesAboveC: 9.4,
    huntsAboveC: 10,
    searchM2PerDay: 0.1,
    huntingStages: ['larva'],
    antsTake: 0.5,
    adultsLeave: true,
    release: {
      form: 'larvae',
      verb: 'put out',
      piece: ['tube', 'tubes'],
      perPiece: 50,
      perM2: 10,
      where: 'on the aphids, spread out, ants kept off',
      establishes: 0.6,
      lookAfterDays: 7,
      lookFor: 'ladybird larvae among the aphids',
      outdoors: 'native in Europe, from memory',
      source: 'common practice, no source: 10 a m2 on a light attack',
    },
  },
  rows,
  openQuestions: [
    'The most prey a day depends on the instar: 37 for the third, 148 for the fourth.',
    'Thresholds by stage run from 5.9 to 12.8 °C between papers; one threshold for all stages is in use.',
    'Egg-laying and adult life are from memory; the adults fly off.',
  ],
};
