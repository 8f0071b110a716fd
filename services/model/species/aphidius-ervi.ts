import type { PublishedRow, SpeciesRecord } from './record.ts';
import { bandsFrom, byTemperature, collectedLines, rowsFrom, thermalLine } from './rows.ts';
import { commonPractice, fromMemory, inNietschke, judgement } from './sources.ts';

const campbell1975 = 'Campbell A, Mackauer M 1975. Canadian Entomologist 107:419-423';
const campbell1974 =
  'Campbell A, Frazer BD, Gilbert N, Gutierrez AP, Mackauer M 1974. Journal of Applied Ecology 11:431-438';
const hofsvang1975 = 'Hofsvang T, Hågvar EB 1975. Entomophaga 20:11-22';
const malina2008 =
  'Malina R, Praslicka J 2008. Effect of temperature on the developmental rate, longevity and parasitism of Aphidius ervi. Plant Protection Science 44:19-24';
const malina2010 =
  'Malina R, Praslicka J, Schlarmannova J 2010. Developmental rates of the aphid Aphis pomi and its parasitoid Aphidius ervi. Biologia 65:899-902';

const rows: readonly PublishedRow[] = [
  ...collectedLines(inNietschke, 'egg to adult', 'pea aphid, British Columbia', [
    [campbell1975, 6, 197],
    [campbell1975, 6.2, 198.1, 'in use'],
    [campbell1975, 4.9, 216.7],
    [campbell1975, 6.1, 188],
    [campbell1974, 4.2, 230],
  ]),
  ...collectedLines(inNietschke, 'egg to adult', 'Norway', [[hofsvang1975, 3.2, 333.7, 'outlier']]),
  ...collectedLines(inNietschke, 'pupa', 'Norway', [[hofsvang1975, 8, 70.4]]),
  ...thermalLine(malina2010, 'SEEN', ['egg to adult', 5.98, 229.73, 'green apple aphid, a poor host']),
  ...thermalLine(malina2008, 'SEEN', [
    'egg to mummy',
    6.8,
    146.3,
    'green apple aphid',
    'in use for the split',
  ]),
  ...thermalLine(malina2008, 'SEEN', [
    'mummy to adult',
    3.9,
    85.3,
    'green apple aphid',
    'in use for the split',
  ]),
  ...rowsFrom('11.1 and 5.3 days at 20 °C by the two lines of Malina & Praslicka 2008', 'DER', [
    ['share of development before the mummy', 0.677, 'share', '20 °C', 'in use'],
  ]),
  ...byTemperature(
    malina2008,
    'SEEN',
    ['adult life', 'd', 'green apple aphid', 'longer when warm, contrary to other wasps'],
    { 15: 8, 25: 15, 30: 11 },
  ),
  ...rowsFrom('middle of the even rise from 15 to 25 °C that Malina & Praslicka 2008 print', 'DER', [
    ['adult life', 11.5, 'd', '20 °C', 'in use'],
  ]),
  ...byTemperature(
    malina2008,
    'SEEN',
    ['share of aphids mummified', 'share', 'green apple aphid, a poor host'],
    { 15: 0.108, 25: 0.159, 30: 0.146 },
  ),
  ...rowsFrom(fromMemory, 'MEM', [
    ['eggs in a life', 300, 'eggs', '20 °C', 'order of magnitude, most in five days'],
    ['eggs a day', 48, 'eggs', 'four fifths of 300 in five days', 'in use'],
    [
      'mean eggs a day',
      26,
      'eggs',
      '20 °C, 300 in 11.5 days',
      'in use for the hunt, which does not fall with age',
    ],
    ['searches from', 10, '°C', 'adults', 'in use as "hunts above"'],
    ['searches up to', 28, '°C', 'adults', 'in use'],
  ]),
  ...rowsFrom(judgement, 'MEM', [
    ['start of the plateau', 30, '°C', 'as in colemani', 'in use'],
    ['upper limit of development', 34, '°C', 'as in colemani', 'in use'],
    ['survival, egg to adult', 0.8, 'share', 'as in colemani', 'in use'],
  ]),
  ...bandsFrom(commonPractice, 'MEM', [
    ['release before the pest', 0.15, 0.25, 'per m2', 'weekly'],
    ['release on a light attack', 0.5, 1, 'per m2', 'weekly, 3 weeks', '1 in use'],
  ]),
  ...rowsFrom(judgement, 'MEM', [['days before the first egg', 0.5, 'd', '20 °C', 'in use']]),
];

const hosts = [
  ['macrosiphum-euphorbiae', ['N1', 'N2', 'N3', 'N4', 'adult'], 'second and third instars preferred'],
  ['aulacorthum-solani', ['N1', 'N2', 'N3', 'N4'], 'as on the potato aphid'],
  ['macrosiphum-rosae', ['N2', 'N3'], 'accepted'],
  ['myzus-persicae', ['N2', 'N3'], 'second choice'],
] as const;

export const aphidiusErvi: SpeciesRecord = {
  id: 'aphidius-ervi',
  name: 'Aphidius ervi Haliday',
  commonName: 'large aphid parasitic wasp',
  shortName: 'Aphidius ervi',
  development: {
    lowerC: 6.2,
    plateauC: 30,
    zeroC: 34,
    stages: [
      { name: 'egg-larva (in the aphid)', degreeDays: 134.1, cv: 0.12, survival: 0.88 },
      { name: 'pupa (mummy)', degreeDays: 64, cv: 0.12, survival: 0.91 },
    ],
    source:
      'Campbell & Mackauer 1975 on pea aphid (6.2 °C, 198.1 degree-days; a second line 6.0 °C, 197). Split at the mummy: Malina & Praslicka 2008 at 20 °C. Upper end and survival: judgement.',
  },
  traits: {
    kind: 'enemy',
    adult: {
      // Half a day at 20 degC, judgement.
      preovipositionDegreeDays: 7,
      lifeDaysAt20C: 11.5,
      femaleShare: 0.6,
      eggsPerDay: 48,
      fecundityByTemperature: [
        [6.2, 0],
        [10, 0.25],
        [20, 1],
        [25, 1],
        [34, 0],
      ],
      source:
        'Life: Malina & Praslicka 2008. Eggs: 300 in a life, most in five days, from memory. Their course with temperature, sex ratio and time before the first egg: judgement.',
    },
    attacks: hosts.map(([prey, stages, remark]) => ({
      prey,
      stages,
      kind: 'parasitism' as const,
      ceilingPerDay: 26,
      ...(remark === 'second choice' && { preference: 0.5 }),
      source: `from memory: mean eggs a day of a life; ${remark}`,
    })),
    activityByTemperature: [
      [6.2, 0],
      [10, 0.25],
      [18, 1],
      [28, 1],
      [34, 0],
    ],
    livesAboveC: 6.2,
    huntsAboveC: 10,
    searchM2PerDay: 0.3,
    // Common practice, no source: wild wasps of the genus come in through the vents.
    alsoWild: true,
    release: {
      form: 'mummies in a tube',
      verb: 'stand out',
      piece: ['tube', 'tubes'],
      perPiece: 250,
      perM2: 1,
      where: 'at plant height in the evening, ants kept off',
      establishes: 0.8,
      lookAfterDays: 14,
      lookFor: 'mummies',
      outdoors: 'native in Europe, from memory',
      source: 'common practice, no source: 0.5 to 1 a m2 a week on a light attack',
    },
  },
  rows,
  notAdvised:
    'how many aphids it stings in a day was not read anywhere for a good host; the number is from memory.',
  openQuestions: [
    'How much less it seeks the peach-potato aphid, its second choice, is a judgement (half).',
    'Adult life rises from 8 days at 15 °C to 15 days at 25 °C in the one study read, contrary to other wasps.',
    'On green apple aphid, a poor host, development takes 229.7 degree-days, a sixth longer.',
    'Activity in the cold and at the warm end is from memory.',
    'Native strains rest as mummies in autumn; the day length was not read.',
  ],
};
