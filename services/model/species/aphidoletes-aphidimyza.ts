import type { PublishedRow, SpeciesRecord } from './record.ts';
import { bandsFrom, collectedLines, rowsFrom, thermalLine } from './rows.ts';
import { commonPractice, fromMemory, inNietschke, judgement } from './sources.ts';

const havelka1980 =
  'Havelka J 1980. Effect of temperature on the developmental rate of preimaginal stages of Aphidoletes aphidimyza. Entomologia Experimentalis et Applicata 27:83-90 (volume and pages from memory)';
const havelka1988 = 'Havelka J, Zemek R 1988. Journal of Applied Entomology 105:280-288';
const onCowpeaAphid =
  'Madahi K, Sahragard A, Hosseini R 2013. Prey density dependent life table of Aphidoletes aphidimyza feeding on Aphis craccivora. Journal of Plant Protection Research 53:253-262';
const onMelonAphid =
  'Madahi K, Sahragard A, Hosseini R 2013. Influence of Aphis gossypii density on life table parameters of Aphidoletes aphidimyza. Journal of Crop Protection 2:355-368';
const yamane2012 =
  'Yamane M et al. 2012. Effect of photoperiod and temperature on the induction of diapause in a Japanese strain of Aphidoletes aphidimyza. Applied Entomology and Zoology 47:17-26';
const iriis = 'IRIIS phytoprotection, Quebec, Aphidoletes aphidimyza';
const umass = 'University of Massachusetts Extension, aphid midge';

const rows: readonly PublishedRow[] = [
  ...thermalLine(havelka1980, 'SEEN', ['egg to adult', 6.2, 280.2, 'Leningrad strain', 'in use']),
  ...thermalLine(havelka1980, 'SEEN', ['egg', 10.1, 25, 'Leningrad strain', 'in use for the split']),
  ...thermalLine(havelka1980, 'SEEN', ['larva', 4.3, 110.9, 'Leningrad strain', 'in use for the split']),
  ...thermalLine(havelka1980, 'SEEN', ['pupa', 5.7, 154.1, 'Leningrad strain', 'in use for the split']),
  ...rowsFrom(havelka1980, 'SEEN', [
    ['larva feeds for', 0.2, 'share', 'of the time from egg to adult', 'contradicts its larval line'],
  ]),
  ...collectedLines(inNietschke, 'egg to adult', 'aphids', [
    [havelka1988, 6, 285.3, 'Leningrad'],
    [havelka1988, 10.2, 240.5, 'Ceske Budejovice'],
    [havelka1988, 10.9, 193.8, 'Prague'],
    [havelka1988, 11.2, 218, 'Chelcice'],
    [havelka1988, 12, 196.4, 'Moldova'],
  ]),
  ...rowsFrom('2.5, 7.1 and 10.8 days at 20 °C by the stage lines of Havelka 1980', 'DER', [
    ['share of development as an egg', 0.124, 'share', '20 °C', 'in use'],
    ['share of development as a larva', 0.347, 'share', '20 °C', 'in use'],
  ]),
  ...rowsFrom('Effects of short-term heat stress on Aphidoletes aphidimyza (authors not seen)', 'SEEN', [
    ['eggs, young larvae and pupae die at', 35, '°C', '3, 6 or 12 hours', 'more the longer; in use as zero'],
  ]),
  ...rowsFrom(judgement, 'MEM', [
    ['start of the plateau', 30, '°C', 'all stages', 'in use'],
    ['survival, egg to adult', 0.7, 'share', 'enough aphids, moist ground', 'in use'],
    [
      'warmest at which it rests in short days',
      26,
      '°C',
      'between 22 °C, where all rest, and 30 °C, where none do',
      'in use',
    ],
  ]),
  ...bandsFrom(umass, 'SEEN', [['adult life', 7, 14, 'd', 'temperature not given', '10 at 20 °C in use']]),
  ...rowsFrom(umass, 'SEEN', [['eggs in a life', 70, 'eggs', 'temperature not given']]),
  ...bandsFrom(onCowpeaAphid, 'SEEN', [
    ['eggs in a life', 52.5, 121.4, 'eggs', '25 °C, larvae fed 5 to 80 cowpea aphids a day'],
    ['growth rate r', 0.122, 0.193, 'per day', '25 °C, 5 to 80 cowpea aphids a day'],
    [
      'prey in a whole life',
      20.75,
      190.8,
      'aphids',
      '23 °C, 5 to 80 cowpea aphids a day',
      'takes more than it eats',
    ],
  ]),
  ...bandsFrom(onMelonAphid, 'SEEN', [
    ['eggs in a life', 49.7, 104.3, 'eggs', '25 °C, larvae fed 5 to 80 melon aphids a day'],
    ['growth rate r', 0.11, 0.166, 'per day', '25 °C, 5 to 80 melon aphids a day'],
    ['generation time', 22.42, 24.47, 'd', '25 °C, 5 to 80 melon aphids a day'],
  ]),
  ...rowsFrom(
    '10 days at 20 °C less 1.5 before the first egg; 104.3 eggs on melon aphid (Madahi et al. 2013) / (0.583 x 6.24 days at 25 °C)',
    'DER',
    [
      ['adult life from the first egg', 8.5, 'd', '20 °C', 'in use'],
      ['eggs a day, first days', 28.7, 'eggs', '25 °C, plenty of aphids', 'in use'],
    ],
  ),
  ...rowsFrom('190.8 cowpea aphids in the 5.9 days of the larva at 23 °C (Madahi; Havelka 1980)', 'DER', [
    ['most prey a day', 32, 'aphids', '23 °C, larva', 'in use'],
  ]),
  ...bandsFrom(fromMemory, 'MEM', [
    ['prey in a larval life', 10, 100, 'aphids', 'few or many aphids', 'at least 7 to 10 small ones'],
  ]),
  ...rowsFrom(fromMemory, 'MEM', [
    ['adults fly at dusk and night from', 16, '°C', 'night', 'rough; in use as "hunts above"'],
    ['pupae need a humidity above', 50, '%', 'ground or growing medium'],
    ['rests in days shorter than', 15.5, 'h', 'northern Europe', 'in use; between the next two'],
  ]),
  ...rowsFrom(yamane2012, 'SEEN', [
    [
      'rests in days shorter than',
      12.7,
      'h',
      '20/16 and 25/16 °C, Japan',
      'all of them; none at 30 °C, even at 11 h',
    ],
  ]),
  ...rowsFrom(iriis, 'SEEN', [['rests in days shorter than', 16, 'h', 'Quebec']]),
  ...bandsFrom('greenhouse floriculture plant-protection textbook (title not seen)', 'SEEN', [
    ['release on aphids', 2, 10, 'per m2', 'glasshouse', '3 in use'],
  ]),
  ...bandsFrom(commonPractice, 'MEM', [
    ['release on a light attack', 2, 3, 'per m2', 'weekly, 3 weeks', '3 in use'],
  ]),
  ...rowsFrom(judgement, 'MEM', [['days before the first egg', 1.5, 'd', '20 °C', 'in use']]),
];

const aphids = [
  'myzus-persicae',
  'aphis-gossypii',
  'macrosiphum-euphorbiae',
  'aulacorthum-solani',
  'macrosiphum-rosae',
] as const;

export const aphidoletesAphidimyza: SpeciesRecord = {
  id: 'aphidoletes-aphidimyza',
  name: 'Aphidoletes aphidimyza (Rondani)',
  commonName: 'aphid midge',
  shortName: 'aphid midges',
  development: {
    lowerC: 6.2,
    plateauC: 30,
    zeroC: 35,
    stages: [
      { name: 'egg', degreeDays: 34.8, cv: 0.12, survival: 0.89 },
      { name: 'larva', degreeDays: 97.1, cv: 0.15, survival: 0.89 },
      { name: 'pupa', degreeDays: 148.3, cv: 0.12, survival: 0.89 },
    ],
    source:
      'Havelka 1980 (6.2 °C, 280.2 degree-days). Shares: his lines of the stages at 20 °C (egg 10.1 °C and 25, larva 4.3 and 110.9, pupa 5.7 and 154.1). Young stages die at 35 °C: heat-stress study. Start of the plateau and survival: judgement.',
  },
  traits: {
    kind: 'enemy',
    adult: {
      // A day and a half at 20 degC, judgement.
      preovipositionDegreeDays: 20.7,
      lifeDaysAt20C: 8.5,
      femaleShare: 0.5,
      eggsPerDay: 28.7,
      fecundityByTemperature: [
        [10, 0],
        [16, 0.4],
        [20, 0.8],
        [25, 1],
        [30, 1],
        [35, 0],
      ],
      source:
        'Eggs: 104.3 on plenty of melon aphids (Madahi et al. 2013), falling in a line over its life. Life: 7 to 14 days (University of Massachusetts). Course with temperature, sex ratio and time before the first egg: judgement.',
    },
    attacks: aphids.map((prey) => ({
      prey,
      stages: ['N1', 'N2', 'N3', 'N4', 'adult'],
      kind: 'predation' as const,
      ceilingPerDay: 32,
      source: 'the larva: 190.8 cowpea aphids in a life (Madahi et al. 2013), our derivation',
    })),
    activityByTemperature: [
      [10, 0],
      [16, 0.5],
      [20, 1],
      [30, 1],
      [35, 0],
    ],
    livesAboveC: 6.2,
    huntsAboveC: 16,
    rests: { belowDayLengthH: 15.5, belowC: 26 },
    searchM2PerDay: 0.05,
    huntingStages: ['larva'],
    release: {
      form: 'pupae in moist peat',
      verb: 'stand out',
      piece: ['tub of midge pupae', 'tubs of midge pupae'],
      perPiece: 250,
      perM2: 3,
      where: 'open and moist in the shade beside the aphids, not sprinkled on leaves',
      establishes: 0.7,
      lookAfterDays: 14,
      lookFor: 'orange larvae among the aphids',
      outdoors: 'native in Europe, from memory',
      source: 'greenhouse textbook: 2 to 10 a m2; 2 to 3 a week on a light attack, common practice',
    },
  },
  rows,
  openQuestions: [
    'Strains differ: 6.2 °C in the north to 12 °C in the south; alike at 20 °C, twofold apart at 13 °C.',
    'The day length below which it rests is 12.7 hours in Japan and 16 in Quebec; 15.5 is from memory. Warmth of 30 °C prevents rest in the Japanese strain; where that begins was not read.',
    'Havelka 1980 lets the larva feed a fifth of the time from egg to adult, and its own line gives it a third.',
    'Only the larva eats; the ceiling counts aphids it strikes and leaves.',
    'Swirskii mites, Orius and Macrolophus eat its eggs; how many was not read, so numbers of other eggs stand in.',
  ],
};
