import type { PublishedRow, SpeciesRecord } from './record.ts';
import { bandsFrom, byTemperature, collectedLines, rowsFrom } from './rows.ts';
import { commonPractice, fromMemory, inNietschke, judgement } from './sources.ts';

const sampaio2003 = 'Sampaio MV, Bueno VHP, et al. 2003. IOBC/WPRS Bulletin 26:85-88';
const vanSteenis1993 =
  'van Steenis MJ 1993. Intrinsic rate of increase of Aphidius colemani, a parasitoid of Aphis gossypii, at different temperatures. Journal of Applied Entomology 116:192-198';
const herbea = 'Herbea, aphid parasitoid sheet: Aphidius colemani';
const ahn2024 = 'Ahn et al. 2024, type III functional response on Myzus persicae';

const rows: readonly PublishedRow[] = [
  ...collectedLines(inNietschke, 'egg to adult', 'aphids', [
    [`${sampaio2003} (Sao Gotardo)`, 2.36, 238.09, 'in use, rounded to 2.4 and 238'],
    [`${sampaio2003} (Lavras)`, 2.19, 238.1],
    [`${sampaio2003} (Juramento)`, 4.3, 217.39],
    [vanSteenis1993, 1.5, 235.2],
    [vanSteenis1993, 4, 201.6],
  ]),
  ...rowsFrom(herbea, 'SEEN', [
    ['days, egg to adult', 14, 'd', '21 °C, aphids', 'larva 4 to 7 days, then mummy'],
    ['best from', 18, '°C', 'adults', 'to 25 °C, 60 to 80 % humidity'],
  ]),
  ...byTemperature(ahn2024, 'SEEN', ['most hosts a day', 'aphids', 'peach-potato aphid'], {
    15: 29.1,
    20: 31.9,
    25: 59.3,
    30: 25.9,
  }),
  ...rowsFrom('59.3 of Ahn et al. 2024, rounded', 'DER', [
    ['eggs a day, first days', 59, 'eggs', '25 °C', 'in use; the hunt does not fall with age'],
  ]),
  ...rowsFrom(vanSteenis1993, 'MEM', [
    ['eggs in a life', 302, 'eggs', '20 °C', 'to be verified'],
    ['eggs in a life', 388, 'eggs', '25 °C', 'to be verified; 59 a day over 4.7 days would be 277'],
    ['growth rate r', 0.352, 'per day', '20 °C', 'to be verified'],
    ['growth rate r', 0.438, 'per day', '25 °C', 'to be verified'],
  ]),
  ...rowsFrom(fromMemory, 'MEM', [
    ['adult life', 6, 'd', '20 °C', 'in use; up to two weeks with honeydew'],
    ['flies and searches from', 10, '°C', 'adults', 'in use as "hunts above"'],
  ]),
  ...rowsFrom(judgement, 'MEM', [
    ['share of development before the mummy', 0.6, 'share', 'aphids', 'in use'],
    [
      'search is half at',
      30,
      'aphids per m2',
      'a small colony on each plant',
      'in use; type III by Ahn et al. 2024, whose arena was not read',
    ],
    ['start of the plateau', 30, '°C', 'all stages', 'in use'],
    ['upper limit of development', 34, '°C', 'all stages', 'in use'],
  ]),
  ...bandsFrom('Colinet H, Hance T, Vernon P 2006. Environmental Entomology 35:228-236', 'SEEN', [
    ['mummies keep in the cold', 7, 21, 'd', '2 to 4 °C', 'each week costs survival: release on arrival'],
  ]),
  ...bandsFrom(commonPractice, 'MEM', [
    ['release before the pest', 0.15, 0.25, 'per m2', 'weekly'],
    ['release on a light attack', 0.5, 1, 'per m2', 'weekly, 3 weeks', '1 in use'],
    ['release on a heavy attack', 1, 2, 'per m2', 'weekly, 6 weeks'],
  ]),
  ...rowsFrom(judgement, 'MEM', [['days before the first egg', 0.5, 'd', '20 °C', 'in use']]),
];

export const aphidiusColemani: SpeciesRecord = {
  id: 'aphidius-colemani',
  name: 'Aphidius colemani Viereck',
  commonName: 'small aphid parasitic wasp',
  shortName: 'Aphidius',
  development: {
    lowerC: 2.4,
    plateauC: 30,
    zeroC: 34,
    // Mummy after 0.6 of the time and survival 0.8: judgement.
    stages: [
      { name: 'egg-larva (in the aphid)', degreeDays: 143, cv: 0.12, survival: 0.88 },
      { name: 'pupa (mummy)', degreeDays: 95, cv: 0.12, survival: 0.91 },
    ],
    source:
      'Sampaio et al. 2003 (2.36 °C, 238.1 degree-days; a second strain 2.19 °C, 238.1). Split at the mummy and the bend above 30 °C: judgement.',
  },
  traits: {
    kind: 'enemy',
    adult: {
      // Half a day at 20 degC, judgement.
      preovipositionDegreeDays: 9,
      lifeDaysAt20C: 6,
      femaleShare: 0.6,
      eggsPerDay: 59,
      fecundityByTemperature: [
        [5, 0],
        [15, 0.49],
        [20, 0.54],
        [25, 1],
        [30, 0.44],
        [34, 0],
      ],
      source:
        'Hosts a day by temperature: Ahn et al. 2024 (29.1, 31.9, 59.3, 25.9 at 15, 20, 25, 30 °C). Life 6 days at 20 °C: from memory. Sex ratio and time before the first egg: judgement.',
    },
    attacks: [
      {
        prey: 'myzus-persicae',
        stages: ['N1', 'N2', 'N3', 'N4', 'adult'],
        kind: 'parasitism',
        ceilingPerDay: 59,
        halfSearchPerM2: 30,
        source: 'Ahn et al. 2024: 59.3 a day at 25 °C, type III',
      },
      {
        prey: 'aphis-gossypii',
        stages: ['N1', 'N2', 'N3', 'N4', 'adult'],
        kind: 'parasitism',
        ceilingPerDay: 59,
        halfSearchPerM2: 30,
        source: 'Ahn et al. 2024, measured on Myzus persicae, type III',
      },
    ],
    activityByTemperature: [
      [5, 0],
      [10, 0.25],
      [18, 1],
      [25, 1],
      [30, 0.5],
      [35, 0],
    ],
    livesAboveC: 2.4,
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
      source: 'common practice, no source: 0.5 to 1 a m2 a week on a light attack',
    },
  },
  rows,
  openQuestions: [
    'Nothing was read on activity in the cold; 10 °C is from memory. Another aphid wasp still walks at 0 °C.',
    'The split at the mummy is a judgement.',
    'Most hosts a day fall from 59 at 25 °C to 26 at 30 °C in one study, while another finds the most fertile eggs at 30 °C.',
  ],
};
