import type { PublishedRow, SpeciesRecord } from './record.ts';
import { bandsFrom, collectedLines, rowsFrom, thermalLine } from './rows.ts';
import { fromMemory, inForage, inNietschke, judgement } from './sources.ts';

const butler1970 = 'Butler GD, Ritchie PL 1970. Journal of Economic Entomology 63:1028-1030';
const sheldon1974 = 'Sheldon JK, MacLeod EG 1974. Entomological News 85:159-169';
const sundby1966 = 'Sundby RA 1966. Entomophaga 11:395-404';
const iranian =
  'Temperature-dependent development and thermal indices for immature stages of Chrysoperla carnea, using linear models. Biological Control of Pests and Plant Diseases (authors not seen)';
const egyptian2020 =
  'Modeling of the effect of temperature on developmental rate of common green lacewing. Egyptian Journal of Biological Pest Control 30, 2020. doi 10.1186/s41938-020-00341-x';
const liuChen2001 =
  'Liu TX, Chen TY 2001. Effects of three aphid species on development, survival and predation of Chrysoperla carnea. Applied Entomology and Zoology 36:361-366';

const rows: readonly PublishedRow[] = [
  ...collectedLines(inNietschke, 'egg to adult', 'food not stated', [
    [butler1970, 10.1, 342, 'in use, with the next one'],
    [butler1970, 10.1, 339.1, 'in use'],
    [sundby1966, 10.8, 357.2],
    [sheldon1974, 5.6, 488.3, 'outlier'],
  ]),
  ...rowsFrom('between the two lines of Butler & Ritchie 1970', 'DER', [
    ['degree-days, egg to adult', 341, 'degree-days', 'above 10.1 °C', 'in use'],
  ]),
  ...thermalLine(iranian, 'SEEN', ['egg to adult', 11.624, 290.986, 'constant temperatures']),
  ...collectedLines(inNietschke, 'egg', 'food not stated', [[butler1970, 10.3, 61.8, 'in use']]),
  ...collectedLines(inNietschke, 'larva', 'food not stated', [
    [butler1970, 10.1, 189.1, 'in use'],
    [sundby1966, 10.6, 152.5],
  ]),
  ...collectedLines(inNietschke, 'pupa', 'food not stated', [
    [butler1970, 9.8, 92, 'in use, with the next one'],
    [butler1970, 9.8, 89],
  ]),
  ...thermalLine(iranian, 'SEEN', ['egg', 10.848, 56.821, 'constant temperatures']),
  ...thermalLine(iranian, 'SEEN', ['third instar', 12.514, 33.199, 'constant temperatures']),
  ...thermalLine(iranian, 'SEEN', ['larva', 11.487, 115.47, 'constant temperatures']),
  ...thermalLine(iranian, 'SEEN', ['pupa', 12.004, 120.432, 'constant temperatures']),
  ...rowsFrom(egyptian2020, 'SEEN', [
    ['lower threshold, egg to adult', 11.3, '°C', 'curve, not a line'],
    ['fastest development at', 31.72, '°C', 'egg to adult', 'plateau in use: 31'],
    ['upper limit of development', 32.18, '°C', 'egg to adult'],
    ['upper limit of development', 34.04, '°C', 'third instar', '34 in use as zero'],
  ]),
  ...rowsFrom(liuChen2001, 'SEEN', [
    ['days, first instar to adult', 19.8, 'd', 'melon aphid, temperature not seen'],
    ['days, first instar to adult', 22.8, 'd', 'peach-potato aphid, temperature not seen'],
    ['survival, first instar to adult', 0.944, 'share', 'melon aphid'],
    ['survival, first instar to adult', 0.876, 'share', 'peach-potato aphid'],
    ['prey in a larval life', 292.4, 'aphids', 'large melon aphids'],
    ['prey in a larval life', 272.6, 'aphids', 'large peach-potato aphids'],
  ]),
  ...rowsFrom('0.8 of 272.6 in the 2.7 days of the third instar (Liu & Chen 2001; Iranian line)', 'DER', [
    ['most prey a day', 82, 'aphids', '25 °C, third instar', 'not in use: younger larvae eat a tenth of it'],
  ]),
  ...rowsFrom('272.6 aphids of Liu & Chen 2001 in 12.7 days of the larva at 25 °C', 'DER', [
    [
      'prey a day, mean of the larva',
      21.5,
      'aphids',
      '25 °C',
      'in use: larvae of all ages hunt alike in the forecast',
    ],
  ]),
  ...bandsFrom('Shrestha G, Enkegaard A 2013. Journal of Insect Science 13:94', 'SEEN', [
    ['share of 90 aphids eaten', 0.52, 0.98, 'share', '25 °C, third instar, aphids and thrips offered'],
    [
      'share of 90 thrips eaten',
      0.4,
      0.9,
      'share',
      '25 °C, third instar, aphids and thrips offered',
      'middle against that of aphids: 0.87 in use',
    ],
  ]),
  ...rowsFrom(
    'Argentine ants on plants with aphids and larvae of Chrysoperla rufilabris (authors not seen)',
    'SEEN',
    [['larvae removed where ants attend', 2, 'times', 'plants with aphids against plants without']],
  ),
  ...rowsFrom('half as many left where twice as many are removed', 'DER', [
    ['search lost to ants', 0.5, 'share', 'larvae', 'in use'],
  ]),
  ...rowsFrom(`Saljoqi et al. 2016, Pakistan Journal of Zoology${inForage}`, 'SEEN', [
    ['most prey a day', 158, 'cabbage aphids', '28 °C, third instar'],
  ]),
  ...rowsFrom(`Shrestha G, Enkegaard A 2013. Journal of Insect Science 13:94${inForage}`, 'SEEN', [
    ['most prey a day', 813, 'lettuce aphids', '25 °C, third instar', 'no plateau was reached'],
  ]),
  ...rowsFrom(fromMemory, 'MEM', [
    ['larvae hunt from', 12, '°C', 'larvae', 'in use as "hunts above"'],
    ['eggs a day, first days', 15, 'eggs', 'female', 'in use'],
    ['adult life', 40, 'd', '20 °C'],
  ]),
  ...rowsFrom('40 days less 7 before the first egg', 'DER', [
    ['adult life from the first egg', 33, 'd', '20 °C', 'in use'],
  ]),
  ...rowsFrom('greenhouse floriculture plant-protection textbook (title not seen)', 'SEEN', [
    ['release on a light attack', 10, 'per m2', 'glasshouse', 'in use'],
    ['release on a severe attack', 20, 'per m2', 'glasshouse'],
  ]),
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

export const chrysoperlaCarnea: SpeciesRecord = {
  id: 'chrysoperla-carnea',
  name: 'Chrysoperla carnea (Stephens) group',
  commonName: 'green lacewing',
  shortName: 'lacewings',
  development: {
    lowerC: 10.1,
    plateauC: 31,
    zeroC: 34,
    // Survival of larva and pupa together 0.91 (Liu & Chen 2001: 0.876 and 0.944); egg 0.9, judgement.
    stages: [
      { name: 'egg', degreeDays: 62, cv: 0.12, survival: 0.9 },
      { name: 'larva', degreeDays: 189, cv: 0.12, survival: 0.94 },
      { name: 'pupa', degreeDays: 90, cv: 0.12, survival: 0.968 },
    ],
    source:
      'Butler & Ritchie 1970 (10.1 °C, 342 and 339.1 degree-days; egg 61.8, larva 189.1, pupa 92 and 89). Upper end: fastest at 31.7 °C, limits of the stages 32 to 34 °C (Egyptian study of 2020).',
  },
  traits: {
    kind: 'enemy',
    adult: {
      // A week at 20 degC, judgement.
      preovipositionDegreeDays: 69,
      lifeDaysAt20C: 33,
      femaleShare: 0.5,
      eggsPerDay: 15,
      fecundityByTemperature: [
        [12, 0],
        [20, 0.7],
        [25, 1],
        [30, 0.5],
        [34, 0],
      ],
      source:
        'From memory and judgement: larvae are released and do not breed under glass, so these count for little.',
    },
    attacks: [
      ...aphids.map((prey) => ({
        prey,
        stages: everyStage,
        kind: 'predation' as const,
        ceilingPerDay: 21.5,
        source:
          'Liu & Chen 2001 (273 large peach-potato aphids or 292 melon aphids in a larval life), our derivation',
      })),
      {
        prey: 'frankliniella-occidentalis',
        stages: ['L1', 'L2'],
        kind: 'predation',
        ceilingPerDay: 21.5,
        preference: 0.87,
        source: 'as for aphids; thrips are taken a little less readily (Shrestha & Enkegaard 2013)',
      },
    ],
    activityByTemperature: [
      [12, 0],
      [20, 1],
      [28, 1],
      [34, 0],
    ],
    livesAboveC: 10.1,
    huntsAboveC: 12,
    searchM2PerDay: 0.05,
    huntingStages: ['larva'],
    antsTake: 0.5,
    adultsLeave: true,
    release: {
      form: 'larvae',
      verb: 'put out',
      piece: ['tube', 'tubes'],
      perPiece: 100,
      perM2: 10,
      where: 'on the aphids, spread out, ants kept off',
      establishes: 0.6,
      lookAfterDays: 7,
      lookFor: 'lacewing larvae among the aphids',
      outdoors: 'native in Europe, from memory',
      source: 'greenhouse textbook: 10 a m2 on a light attack, 20 on a severe one',
    },
  },
  rows,
  openQuestions: [
    'A group of species that look alike: lines differ by a third.',
    'Its larvae also take young whitefly, mealybugs and spider mites; how many was not read, so they do not count.',
    'Egg-laying and adult life are from memory; it does not breed under glass.',
  ],
};
