import type { PublishedRow, SpeciesRecord } from './record.ts';
import { bandsFrom, byTemperature, rowsFrom, thermalLine } from './rows.ts';
import { fromMemory, inForage, judgement } from './sources.ts';

const bufour =
  'Bufour M, Harizanova V. Investigation on Anthocoris nemoralis, the most important predator on the psyllid. Agricultural University Plovdiv, Scientific Works (year not seen)';
const yanik2011 =
  'Yanik E 2011. The effects of different temperatures and relative humidity on the nymphal development, mortality and prey consumption of Anthocoris nemoralis. Selcuk Journal of Agriculture and Food Sciences 25(4):21-26';
const reeves2023 = `Reeves et al. 2023, Journal of Insect Behavior${inForage}`;

const rows: readonly PublishedRow[] = [
  ...byTemperature(bufour, 'SEEN', ['days, egg to adult', 'd', 'male, pear psyllid'], { 24: 20, 28: 14 }),
  ...byTemperature(bufour, 'SEEN', ['days, egg to adult', 'd', 'female, pear psyllid'], { 24: 22, 28: 15 }),
  ...byTemperature(bufour, 'SEEN', ['days, egg', 'd', 'pear psyllid', 'in use for the split'], {
    24: 5,
    28: 3,
  }),
  ...byTemperature(yanik2011, 'SEEN', ['days, nymph', 'd', 'moth eggs, 60 % humidity'], {
    20: 16.47,
    25: 13,
  }),
  ...byTemperature(yanik2011, 'SEEN', ['days, nymph', 'd', 'moth eggs, 30 % humidity'], {
    20: 19.17,
    25: 13.75,
  }),
  ...thermalLine(`the two points of: ${bufour}`, 'DER', ['egg to adult', 14.7, 200, 'mean of the sexes']),
  ...thermalLine(`the two points of: ${yanik2011}`, 'DER', ['nymph', 1.3, 308, 'moth eggs, 60 % humidity']),
  ...rowsFrom('rough, between the two studies above, which contradict each other', 'DER', [
    ['lower threshold, egg to adult', 10, '°C', 'only for recognising it', 'in use, also as "lives above"'],
    ['degree-days, egg to adult', 300, 'degree-days', 'above 10 °C', 'in use'],
  ]),
  ...rowsFrom(yanik2011, 'SEEN', [
    ['nymphs that die', 0.67, 'share', '20 °C, 30 % humidity', 'the most'],
    ['prey in a nymphal life', 139.74, 'moth eggs', '20 °C, 60 % humidity'],
    ['prey in a nymphal life', 123.22, 'moth eggs', '25 °C, 60 % humidity'],
  ]),
  ...rowsFrom(bufour, 'SEEN', [
    ['eggs in a life', 53, 'eggs', 'pear psyllid'],
    ['days before the first egg', 2, 'd', 'pear psyllid', 'at 24 °C in use'],
    ['prey a day', 176, 'psyllid eggs', 'adult'],
    ['prey a day', 140, 'young psyllid nymphs', 'adult'],
    ['prey a day', 50, 'old psyllid nymphs', 'adult'],
  ]),
  ...byTemperature(
    reeves2023,
    'SEEN',
    ['most prey a day', 'old psyllid nymphs', 'adult, first of two series'],
    { 18: 14.4, 21: 13.8, 23: 15.8 },
  ),
  ...bandsFrom(reeves2023, 'SEEN', [
    ['most prey a day', 8.33, 15.8, 'old psyllid nymphs', '18 to 23 °C, both series', '12 in use'],
  ]),
  ...rowsFrom(fromMemory, 'MEM', [
    ['adult life', 30, 'd', '20 °C, summer'],
    ['hunts from', 12, '°C', 'adults', 'in use as "hunts above"'],
  ]),
  ...rowsFrom('53 eggs (Bufour & Harizanova) / (0.583 x 27.2 days): laying falls in a line', 'DER', [
    ['adult life from the first egg', 27.2, 'd', '20 °C', 'in use: 30 less 2.8'],
    ['eggs a day, first days', 3.34, 'eggs', '20 °C', 'in use'],
  ]),
  ...rowsFrom(judgement, 'MEM', [
    ['start of the plateau', 30, '°C', 'all stages', 'in use'],
    ['upper limit of development', 35, '°C', 'all stages', 'in use'],
    ['survival, egg to adult', 0.5, 'share', 'moist air', 'in use'],
  ]),
  ...rowsFrom('2 days of Bufour & Harizanova, read as at 24 °C', 'DER', [
    ['days before the first egg', 2, 'd', '24 °C', 'in use'],
  ]),
];

const aphids = [
  'myzus-persicae',
  'aphis-gossypii',
  'macrosiphum-euphorbiae',
  'aulacorthum-solani',
  'macrosiphum-rosae',
] as const;

export const anthocorisNemoralis: SpeciesRecord = {
  id: 'anthocoris-nemoralis',
  name: 'Anthocoris nemoralis (Fabricius)',
  commonName: 'common flower bug',
  shortName: 'flower bugs',
  development: {
    lowerC: 10,
    plateauC: 30,
    zeroC: 35,
    stages: [
      { name: 'egg', degreeDays: 66, cv: 0.15, survival: 0.8 },
      { name: 'nymph', degreeDays: 234, cv: 0.15, survival: 0.625 },
    ],
    source:
      'Rough: our derivation between Bufour & Harizanova (22 and 15 days at 24 and 28 °C) and Yanik 2011 (nymph 16.5 and 13 days at 20 and 25 °C), whose lines through two points contradict each other (14.7 and 1.3 °C). Split: egg 5 of 22 days at 24 °C. Upper end and survival: judgement.',
  },
  traits: {
    kind: 'enemy',
    adult: {
      // 2 days at 24 degC.
      preovipositionDegreeDays: 28,
      lifeDaysAt20C: 27.2,
      femaleShare: 0.5,
      eggsPerDay: 3.34,
      fecundityByTemperature: [
        [12, 0],
        [20, 1],
        [28, 1],
        [35, 0],
      ],
      source:
        'Eggs and time before the first egg: Bufour & Harizanova on pear psyllid. Life: from memory. Course with temperature and sex ratio: judgement.',
    },
    attacks: aphids.map((prey) => ({
      prey,
      stages: ['N1', 'N2', 'N3', 'N4'],
      kind: 'predation' as const,
      ceilingPerDay: 12,
      source:
        'Reeves et al. 2023, refitted in FoRAGE v4, on old pear psyllid nymphs; none on aphids was read',
    })),
    activityByTemperature: [
      [10, 0],
      [12, 0.4],
      [18, 1],
      [28, 1],
      [35, 0],
    ],
    livesAboveC: 10,
    huntsAboveC: 12,
    searchM2PerDay: 0.05,
    huntingStages: ['nymph', 'adult'],
  },
  rows,
  notAdvised: 'it comes by itself, and its development is known only roughly.',
  openQuestions: [
    'The two studies read contradict each other; no threshold can be given with them.',
    'No ceiling on aphids was read; those on pear psyllid stand in.',
    'Dry air costs nymphs: two in three die at 20 °C and 30 % humidity.',
    'Adult life is from memory and much longer in winter.',
  ],
};
