import type { PublishedRow, SpeciesRecord } from './record.ts';
import { bandsFrom, byTemperature, collectedLines, rowsFrom } from './rows.ts';
import { commonPractice, fromMemory, inNietschke, judgement } from './sources.ts';

const bassoleil1988 = 'Bassoleil JP 1988. Thesis, ENSA Rennes and INRA Antibes, 227 pp';
const herbea = 'Herbea, French knowledge base of beneficial arthropods, Aphelinus abdominalis';

const rows: readonly PublishedRow[] = [
  ...collectedLines(inNietschke, 'egg to adult', 'France, host not stated', [
    [bassoleil1988, 8.3, 249.9, 'in use'],
  ]),
  ...byTemperature(herbea, 'SEEN', ['days, egg to adult', 'd', 'aphids'], { 21: 21, 24: 16 }),
  ...rowsFrom(herbea, 'SEEN', [
    ['days, egg', 7, 'd', 'temperature not given', 'about; seems to hold the young larva too'],
    ['adult life', 21, 'd', 'temperature not given', 'read at 20 °C, less 3.5 days before the first egg'],
  ]),
  ...bandsFrom(herbea, 'SEEN', [
    ['eggs a day', 5, 10, 'eggs', 'temperature not given', '10 in use as the best'],
    ['days before the first egg', 3, 4, 'd', 'temperature not given', '3.5 at 21 °C in use'],
  ]),
  ...rowsFrom(fromMemory, 'MEM', [
    ['eggs in a life', 200, 'eggs', 'plenty of hosts', 'order of magnitude'],
    ['aphids fed on in a life', 40, 'aphids', 'young aphids', 'order of magnitude'],
    ['useful from', 15, '°C', 'release', 'in use as "hunts above"'],
  ]),
  ...rowsFrom('21 days less 3.5 before the first egg, both as above', 'DER', [
    ['adult life from the first egg', 17.5, 'd', '20 °C', 'in use'],
  ]),
  ...rowsFrom('40 aphids in a life of 21 days, both as above', 'DER', [
    ['hosts fed on a day', 1.9, 'aphids', 'young aphids', 'in use'],
  ]),
  ...rowsFrom(judgement, 'MEM', [
    ['share of development before the mummy', 0.5, 'share', 'all hosts', 'in use'],
    ['start of the plateau', 30, '°C', 'as in Aphidius', 'in use'],
    ['upper limit of development', 35, '°C', 'likes warmth', 'in use'],
    ['survival, egg to adult', 0.8, 'share', 'as in Aphidius', 'in use'],
  ]),
  ...bandsFrom(commonPractice, 'MEM', [
    ['release on a light attack', 0.5, 2, 'per m2', 'weekly, 3 weeks', '2 in use'],
    ['release on a heavy attack', 2, 4, 'per m2', 'weekly, 4 weeks'],
  ]),
  ...rowsFrom('middle of the 3 to 4 days of Herbea, read as at 21 °C', 'DER', [
    ['days before the first egg', 3.5, 'd', '21 °C', 'in use'],
  ]),
];

const hosts = [
  ['macrosiphum-euphorbiae', ['N1', 'N2', 'N3', 'N4', 'adult']],
  ['aulacorthum-solani', ['N1', 'N2', 'N3', 'N4']],
  ['myzus-persicae', ['N2', 'N3']],
] as const;

export const aphelinusAbdominalis: SpeciesRecord = {
  id: 'aphelinus-abdominalis',
  name: 'Aphelinus abdominalis (Dalman)',
  commonName: 'black-mummy aphid wasp',
  shortName: 'Aphelinus',
  development: {
    lowerC: 8.3,
    plateauC: 30,
    zeroC: 35,
    stages: [
      { name: 'egg-larva (in the aphid)', degreeDays: 125, cv: 0.12, survival: 0.88 },
      { name: 'pupa (black mummy)', degreeDays: 124.9, cv: 0.12, survival: 0.91 },
    ],
    source:
      'Bassoleil 1988 (8.3 °C, 249.9 degree-days), the only line found. Split at the mummy, upper end and survival: judgement.',
  },
  traits: {
    kind: 'enemy',
    adult: {
      // 3.5 days at 21 degC.
      preovipositionDegreeDays: 44.5,
      lifeDaysAt20C: 17.5,
      femaleShare: 0.5,
      eggsPerDay: 10,
      fecundityByTemperature: [
        [8.3, 0],
        [15, 0.4],
        [21, 1],
        [28, 1],
        [35, 0],
      ],
      source:
        'Eggs a day, life and time before the first egg: Herbea sheet, temperature not given. Course with temperature and sex ratio: judgement.',
    },
    attacks: [
      ...hosts.map(([prey, stages]) => ({
        prey,
        stages,
        kind: 'parasitism' as const,
        ceilingPerDay: 10,
        ...(prey === 'myzus-persicae' && { preference: 0.5 }),
        source: 'Herbea sheet: 5 to 10 eggs a day',
      })),
      {
        prey: 'macrosiphum-euphorbiae',
        stages: ['N1', 'N2'],
        kind: 'host-feeding',
        ceilingPerDay: 1.9,
        source: 'from memory: 40 aphids in a life',
      },
    ],
    activityByTemperature: [
      [10, 0],
      [15, 0.4],
      [20, 1],
      [28, 1],
      [35, 0],
    ],
    livesAboveC: 8.3,
    huntsAboveC: 15,
    searchM2PerDay: 0.1,
    release: {
      form: 'black mummies in a tube',
      verb: 'stand out',
      piece: ['tube', 'tubes'],
      perPiece: 250,
      perM2: 2,
      where: 'at plant height in the evening, ants kept off',
      establishes: 0.8,
      lookAfterDays: 16,
      lookFor: 'black mummies',
      outdoors: 'native in Europe, from memory',
      source: 'common practice, no source: 0.5 to 2 a m2 a week on a light attack',
    },
  },
  rows,
  openQuestions: [
    'How much less it seeks the peach-potato aphid, its second choice, is a judgement (half).',
    'One line of development, from a thesis; an independent sheet gives 16 days at 24 °C and 21 at 21 °C.',
    'Eggs a day, life and time before the first egg come without a temperature.',
    'When the mummy turns black is a judgement.',
    'Slow to build up and long-lived; how much it searches by temperature was not read.',
  ],
};
