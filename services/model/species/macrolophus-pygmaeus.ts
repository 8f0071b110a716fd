import type { Attack, PublishedRow, SpeciesRecord } from './record.ts';
import { bandsFrom, byTemperature, collectedLines, rowsFrom, thermalLine } from './rows.ts';
import { commonPractice, fromMemory, inForage, inNietschke, judgement } from './sources.ts';

const perdikis2002 =
  'Perdikis DC, Lykouressis DP 2002. Thermal requirements for development of the polyphagous predator Macrolophus pygmaeus. Environmental Entomology 31:661-667';
const lifeTable2002 =
  'Perdikis DC, Lykouressis DP 2002. Life table and biological characteristics of Macrolophus pygmaeus when feeding on Myzus persicae and Trialeurodes vaporariorum. Entomologia Experimentalis et Applicata 102:261-272. doi 10.1046/j.1570-7458.2002.00947.x';
const hart2002 =
  'Hart AJ, Tullett AG, Bale JS, Walters KFA 2002. Effects of temperature on the establishment potential in the UK of Macrolophus caliginosus. Physiological Entomology 27:112-123';
const lykouressis2009 =
  'Lykouressis DP, Perdikis DC, Konstantinou AD 2009. Predation rates of Macrolophus pygmaeus on different densities of eggs and nymphal instars of the greenhouse whitefly. Entomologia Generalis 32:105-112';
const montserrat2000 = `Montserrat et al. 2000, Environmental Entomology${inForage}`;
const onWhitefly = 'greenhouse whitefly on tomato';

const rows: readonly PublishedRow[] = [
  ...thermalLine(perdikis2002, 'SEEN', ['egg to adult', 8.79, 431, onWhitefly, 'in use']),
  ...thermalLine(perdikis2002, 'SEEN', ['egg', 6.92, 182, onWhitefly, 'in use for the split']),
  ...thermalLine(perdikis2002, 'SEEN', ['nymph', 9.19, 253, onWhitefly, 'in use for the split']),
  ...thermalLine(perdikis2002, 'SEEN', ['nymph without prey', 9.29, 306, 'tomato alone']),
  ...thermalLine(perdikis2002, 'SEEN', ['adult to first egg', 6.96, 98, onWhitefly, 'in use']),
  ...thermalLine(perdikis2002, 'SEEN', ['egg to first egg', 8.51, 533, onWhitefly]),
  ...thermalLine(perdikis2002, 'SEEN', ['egg to adult', 8.68, 439, 'peach-potato aphid on aubergine']),
  ...collectedLines(inNietschke, 'egg to adult', 'United Kingdom', [[hart2002, 8.4, 472]]),
  ...collectedLines(inNietschke, 'egg', 'United Kingdom', [[hart2002, 9.5, 175.4]]),
  ...collectedLines(inNietschke, 'nymph', 'United Kingdom', [[hart2002, 8.1, 279.3]]),
  ...rowsFrom('13.9 and 23.4 days at 20 °C by the two stage lines of Perdikis & Lykouressis 2002', 'DER', [
    ['share of development as an egg', 0.373, 'share', '20 °C', 'in use'],
  ]),
  ...byTemperature(lifeTable2002, 'SEEN', ['survival of the young', 'share', onWhitefly, '0.5 in use'], {
    15: 0.72,
    20: 0.49,
    25: 0.51,
    27.5: 0.42,
  }),
  ...byTemperature(lifeTable2002, 'SEEN', ['adult life', 'd', onWhitefly], {
    15: 129.35,
    20: 97.65,
    25: 49.25,
    27.5: 45.5,
  }),
  ...byTemperature(lifeTable2002, 'SEEN', ['eggs in a life', 'eggs', onWhitefly], {
    15: 129.16,
    20: 228.25,
    25: 146.85,
    27.5: 138.2,
  }),
  ...byTemperature(lifeTable2002, 'SEEN', ['adult life', 'd', 'peach-potato aphid'], {
    15: 122.4,
    20: 85.1,
    25: 63.65,
    27.5: 54.31,
    30: 48.45,
  }),
  ...byTemperature(lifeTable2002, 'SEEN', ['eggs in a life', 'eggs', 'peach-potato aphid'], {
    15: 134.75,
    20: 213.9,
    25: 162.2,
    27.5: 146.58,
    30: 85.1,
  }),
  ...rowsFrom(
    'mean of the nine lives less the days before the first egg, each moved to 20 °C by the rate of development',
    'DER',
    [['adult life from the first egg', 75, 'd', '20 °C', 'in use; 61 to 90']],
  ),
  ...byTemperature(
    'eggs in a life / (0.583 x 75 days x 11.21 / (T - 8.79)), mean of both prey; at 30 °C on aphids',
    'DER',
    ['eggs a day, first days', 'eggs', 'laying falls in a line', 'in use, 27.5 °C as the best'],
    { 15: 1.67, 20: 5.05, 25: 5.1, 27.5: 5.43, 30: 3.68 },
  ),
  ...rowsFrom(lifeTable2002, 'SEEN', [
    [
      'offspring in the next generation',
      140.61,
      'offspring',
      '20 °C, peach-potato aphid',
      'near 213.9 eggs x 0.7 alive: sons seem to be counted, so its growth rates are too high by ln 2 / generation',
    ],
  ]),
  ...byTemperature(lifeTable2002, 'SEEN', ['growth rate r', 'per day', 'greenhouse whitefly'], {
    15: 0.0393,
    20: 0.0647,
    25: 0.0969,
    27.5: 0.104,
    30: 0.0683,
  }),
  ...byTemperature(lifeTable2002, 'SEEN', ['growth rate r', 'per day', 'peach-potato aphid'], {
    15: 0.0376,
    20: 0.0696,
    25: 0.0975,
    27.5: 0.0981,
    30: 0.0754,
  }),
  ...rowsFrom(
    'Perdikis D, Lykouressis D 2000. Biological Control 17:55-60 (year and volume from memory)',
    'SEEN',
    [['nymphs do best at', 30, '°C', 'plants alone, 15 to 30 °C', 'in use as start of the plateau']],
  ),
  ...rowsFrom(judgement, 'MEM', [['upper limit of development', 34, '°C', 'all stages', 'in use']]),
  ...rowsFrom(lykouressis2009, 'SEEN', [
    ['most prey a day', 94, 'whitefly eggs', '25 °C, fifth-instar nymph', 'in use'],
    ['most prey a day', 56.5, 'second-instar whitefly', '25 °C, fifth-instar nymph', 'in use'],
    ['most prey a day', 24.4, 'third-instar whitefly', '25 °C, fifth-instar nymph', 'in use'],
    ['most prey a day', 11.8, 'fourth-instar whitefly', '25 °C, fifth-instar nymph', 'in use'],
  ]),
  ...rowsFrom(montserrat2000, 'SEEN', [
    ['most prey a day', 21.1, 'whitefly pupae', '25 °C, female', 'poor fit'],
    ['prey a day, highest mean eaten', 36.8, 'second-instar thrips', '25 °C, female', 'in use'],
  ]),
  ...bandsFrom(`Maselou et al. 2015, Bulletin of Insectology${inForage}`, 'SEEN', [
    ['most prey a day', 52.4, 124, 'second-instar peach-potato aphids', 'temperature not given'],
    ['prey a day, highest mean eaten', 21.7, 27, 'second-instar peach-potato aphids', 'female', '24 in use'],
  ]),
  ...rowsFrom(`Enkegaard et al. 2001, Entomologia Experimentalis et Applicata${inForage}`, 'SEEN', [
    [
      'prey a day, highest mean eaten',
      73.6,
      'first-instar whitefly',
      '22 °C, female',
      'no plateau was reached; in use',
    ],
  ]),
  ...bandsFrom('spider mite eggs eaten in a life, from sweet pepper or tomato (authors not seen)', 'SEEN', [
    ['prey in a whole life', 382, 548, 'spider mite eggs', 'sweet pepper or tomato'],
  ]),
  ...rowsFrom('465 eggs, the middle, in 70 days of nymph and adult at 25 °C', 'DER', [
    ['prey a day, mean of the life', 6.6, 'spider mite eggs', '25 °C', 'in use'],
  ]),
  ...rowsFrom(`Sharifan et al. 2016, Archives of Phytopathology and Plant Protection${inForage}`, 'SEEN', [
    ['most prey a day', 15.4, 'moth eggs', '26 °C, adult', 'in use for eggs of the aphid midge'],
  ]),
  ...rowsFrom(fromMemory, 'MEM', [
    ['hunts from', 12, '°C', 'adults and nymphs', 'in use as "hunts above"'],
    ['share of laying without prey', 0.1, 'share', 'plant alone', 'in use; more with pollen'],
  ]),
  ...bandsFrom(commonPractice, 'MEM', [
    ['release before the pest', 0.5, 1, 'per m2', 'twice, 2 weeks apart', 'with moth eggs as food'],
    ['release on a light attack', 1, 2, 'per m2', 'twice, 2 weeks apart', '2 in use'],
    ['release on a heavy attack', 5, 10, 'per m2', 'hot spots'],
  ]),
];

const whiteflyStages: readonly (readonly [stage: string, ceilingPerDay: number])[] = [
  ['egg', 94],
  ['N1', 73.6],
  ['N2', 56.5],
  ['N3', 24.4],
  ['N4/pupa', 11.8],
];
const onEachWhitefly = (['trialeurodes-vaporariorum', 'bemisia-tabaci'] as const).flatMap((prey) =>
  whiteflyStages.map(
    ([stage, ceilingPerDay]): Attack => ({
      prey,
      stages: [stage],
      kind: 'predation',
      ceilingPerDay,
      source:
        stage === 'N1'
          ? 'Enkegaard et al. 2001: most eaten at 22 °C, no plateau was reached'
          : 'Lykouressis et al. 2009, fifth-instar nymphs on greenhouse whitefly at 25 °C',
    }),
  ),
);

export const macrolophusPygmaeus: SpeciesRecord = {
  id: 'macrolophus-pygmaeus',
  name: 'Macrolophus pygmaeus (Rambur), sold also as M. caliginosus',
  commonName: 'whitefly predatory bug',
  shortName: 'Macrolophus',
  development: {
    lowerC: 8.79,
    plateauC: 30,
    zeroC: 34,
    // Survival 0.5 in all (life table at 20 and 25 degC); its split is a judgement.
    stages: [
      { name: 'egg', degreeDays: 160.8, cv: 0.12, survival: 0.8 },
      { name: 'nymph', degreeDays: 270.2, cv: 0.12, survival: 0.625 },
    ],
    source:
      'Perdikis & Lykouressis 2002 on greenhouse whitefly and tomato (8.79 °C, 431 degree-days). Split: their lines of egg and nymph at 20 °C. Survival: their life table. Start of the plateau: nymphs do best at 30 °C (Perdikis & Lykouressis 2000). Upper limit: judgement.',
  },
  traits: {
    kind: 'enemy',
    adult: {
      // 98 above 6.96 degC are 7.5 days at 20 degC.
      preovipositionDegreeDays: 84.2,
      lifeDaysAt20C: 75,
      femaleShare: 0.5,
      eggsPerDay: 5.43,
      fecundityByTemperature: [
        [8.79, 0],
        [15, 0.31],
        [20, 0.93],
        [25, 0.94],
        [27.5, 1],
        [30, 0.68],
        [34, 0],
      ],
      source:
        'Perdikis & Lykouressis 2002, life tables on greenhouse whitefly and peach-potato aphid, our derivation. Sex ratio: judgement.',
    },
    attacks: [
      ...onEachWhitefly,
      {
        prey: 'myzus-persicae',
        stages: ['N1', 'N2', 'N3', 'N4'],
        kind: 'predation',
        ceilingPerDay: 24,
        source: 'Maselou et al. 2015: 22 to 27 second instars eaten; the fitted ceilings are 52 to 124',
      },
      {
        prey: 'frankliniella-occidentalis',
        stages: ['L1', 'L2'],
        kind: 'predation',
        ceilingPerDay: 36.8,
        source: 'Montserrat et al. 2000: most eaten at 25 °C',
      },
      {
        prey: 'tetranychus-urticae',
        stages: ['egg'],
        kind: 'predation',
        ceilingPerDay: 6.6,
        source: '382 to 548 eggs in a life (authors not seen), our derivation',
      },
      {
        prey: 'encarsia-formosa',
        stages: ['hidden'],
        kind: 'predation',
        ceilingPerDay: 11.8,
        source:
          'from memory: it eats young parasitised scales; number of fourth instars (Lykouressis et al. 2009)',
      },
      {
        prey: 'aphidoletes-aphidimyza',
        stages: ['egg'],
        kind: 'predation',
        ceilingPerDay: 15.4,
        source: 'from memory: it eats eggs of the midge; number of moth eggs (Sharifan et al. 2016)',
      },
    ],
    activityByTemperature: [
      [8.79, 0],
      [12, 0.3],
      [20, 1],
      [30, 1],
      [34, 0],
    ],
    livesAboveC: 8.79,
    huntsAboveC: 12,
    searchM2PerDay: 0.05,
    huntingStages: ['nymph', 'adult'],
    livesOnPollen: 0.1,
    release: {
      form: 'adults and nymphs',
      verb: 'put out',
      piece: ['bottle of Macrolophus', 'bottles of Macrolophus'],
      perPiece: 250,
      perM2: 2,
      where: 'in groups on the plants with most whitefly',
      establishes: 0.7,
      lookAfterDays: 28,
      lookFor: 'green nymphs in the plant tops',
      source:
        'common practice, no source: 1 to 2 a m2, twice, two weeks apart; eight to ten weeks to build up',
    },
  },
  rows,
  openQuestions: [
    'Trade press gives 45 days at 20 °C and 30 at 25 °C, slower than all lines read.',
    'It lives on the plant alone when prey is short and may prick flowers and young fruit.',
    'The ceilings on whitefly are of old nymphs; first instars had no ceiling (Enkegaard et al. 2001), so the most eaten stands in.',
    'Its published growth rates seem to count sons as mothers.',
    'How much it lays on the plant alone is from memory.',
    'How the published survival of the young parts into egg and nymph is a judgement.',
  ],
};
