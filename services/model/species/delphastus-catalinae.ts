import type { PublishedRow, SpeciesRecord } from './record.ts';
import { bandsFrom, byTemperature, rowsFrom, thermalLine } from './rows.ts';
import { commonPractice, fromMemory, judgement } from './sources.ts';

const legaspi2008 =
  'Legaspi JC, Legaspi BC, Simmons AM, Soumare M 2008. Life table analysis for immatures and female adults of the predatory beetle Delphastus catalinae. Journal of Insect Science 8:7';
const simmons2007 =
  'Simmons AM, Legaspi JC 2007. Ability of Delphastus catalinae to survive mild winters. Journal of Entomological Science 42:163-173';
const simmons2004 =
  'Simmons AM, Legaspi JC 2004. Survival and predation of Delphastus catalinae after exposure to a range of constant temperatures. Environmental Entomology 33:839-843';
const simmons2008 =
  'Simmons AM, Legaspi JC, Legaspi BC 2008. Responses of Delphastus catalinae to relative humidity. Annals of the Entomological Society of America 101:378-383';

const rows: readonly PublishedRow[] = [
  ...thermalLine(legaspi2008, 'SEEN', ['egg to adult', 9.9, 300, 'females, tobacco whitefly', 'in use']),
  ...thermalLine(legaspi2008, 'SEEN', ['egg to adult', 9, 300, 'males, tobacco whitefly', 'about']),
  ...byTemperature(legaspi2008, 'SEEN', ['days, egg to adult', 'd', 'tobacco whitefly'], { 22: 24, 30: 15 }),
  ...byTemperature(legaspi2008, 'SEEN', ['growth rate r', 'per day', 'tobacco whitefly', 'poor at 30 °C'], {
    22: 0.048,
    26: 0.082,
  }),
  ...byTemperature(simmons2007, 'SEEN', ['survival, egg', 'share', 'whiteflies', '25 °C in use'], {
    5: 0,
    15: 0.48,
    25: 0.98,
  }),
  ...rowsFrom(simmons2007, 'SEEN', [
    ['survival, larva to adult', 0.86, 'share', '25 °C', 'in use'],
    ['no larva becomes a pupa at', 15, '°C', 'contradicts the lines', 'in use as "lives above"'],
  ]),
  ...rowsFrom(simmons2004, 'SEEN', [
    ['feeds from', 14, '°C', 'adults, more up to 30 °C'],
    ['adult life', 103, 'd', '25 °C, half alive'],
    ['adults live at most 18 days at', 35, '°C', '0.6 months', 'in use as zero'],
  ]),
  ...rowsFrom(
    '103 days at 25 °C (Simmons & Legaspi 2004) less 6.4 before the first egg, moved by the rate',
    'DER',
    [['adult life from the first egg', 144, 'd', '20 °C', 'in use']],
  ),
  ...rowsFrom(simmons2008, 'SEEN', [
    ['survival, egg to adult', 0.9, 'share', '26 °C, 85 % humidity'],
    ['survival, egg to adult', 0.6, 'share', '26 °C, 25 % humidity'],
    ['survival, egg to adult', 0.5, 'share', '26 °C, 10 % humidity'],
  ]),
  ...bandsFrom(fromMemory, 'MEM', [
    ['most prey a day', 100, 150, 'whitefly eggs', 'female', 'needed to lay eggs; 100 in use'],
  ]),
  ...rowsFrom('Hoelmer KA, Osborne LS, Yokomi RK 1993. Environmental Entomology 22:322, from memory', 'MEM', [
    ['most prey a day', 167, 'whitefly eggs', 'adult', 'Bemisia'],
    ['most prey a day', 11.6, 'fourth-instar whitefly', 'adult', 'Bemisia; in use'],
    ['eggs in a life', 183, 'eggs', '28 °C', 'Bemisia'],
  ]),
  ...rowsFrom('183 / (0.583 x 90.5 days at 26 °C): laying falls in a line', 'DER', [
    ['eggs a day, first days', 3.5, 'eggs', '26 °C', 'in use, rests on memory'],
  ]),
  ...rowsFrom(judgement, 'MEM', [
    ['start of the plateau', 30, '°C', 'warmest days that were read', 'in use'],
    ['share of development as an egg', 0.2, 'share', 'as in other ladybirds', 'in use'],
  ]),
  ...rowsFrom(commonPractice, 'MEM', [
    ['release only above', 18, '°C', 'glasshouse', 'in use as "hunts above"'],
  ]),
  ...bandsFrom(commonPractice, 'MEM', [
    ['release on hot spots', 1, 2, 'per m2', 'weekly, 3 weeks, dense whitefly eggs', '2 in use'],
  ]),
  ...rowsFrom(judgement, 'MEM', [['days before the first egg', 6, 'd', '26 °C', 'in use']]),
];

const whiteflies = ['trialeurodes-vaporariorum', 'bemisia-tabaci'] as const;
const onWhitefly = [
  [['egg', 'N1'], 100, 'from memory: 100 to 150 whitefly eggs a day'],
  [['N4/pupa'], 11.6, 'Hoelmer et al. 1993, from memory: fourth instars a day'],
] as const;

export const delphastusCatalinae: SpeciesRecord = {
  id: 'delphastus-catalinae',
  name: 'Delphastus catalinae (Horn)',
  commonName: 'whitefly ladybird',
  shortName: 'Delphastus',
  development: {
    lowerC: 9.9,
    plateauC: 30,
    zeroC: 35,
    // Shares of the stages: judgement.
    stages: [
      { name: 'egg', degreeDays: 60, cv: 0.12, survival: 0.98 },
      { name: 'larva', degreeDays: 150, cv: 0.12, survival: 0.92 },
      { name: 'pupa', degreeDays: 90, cv: 0.12, survival: 0.935 },
    ],
    source:
      'Legaspi et al. 2008, females (9.9 °C, about 300 degree-days). Below 18 °C the line does not hold: at 15 °C no larva became a pupa. Survival: Simmons & Legaspi 2007 at 25 °C. Start of the plateau and shares of the stages: judgement; adults die within 18 days at 35 °C (Simmons & Legaspi 2004).',
  },
  traits: {
    kind: 'enemy',
    adult: {
      // 6 days at 26 degC, judgement.
      preovipositionDegreeDays: 97,
      lifeDaysAt20C: 144,
      femaleShare: 0.5,
      eggsPerDay: 3.5,
      fecundityByTemperature: [
        [15, 0],
        [22, 0.6],
        [26, 1],
        [30, 0.3],
        [35, 0],
      ],
      source:
        'Life: Simmons & Legaspi 2004. Eggs in a life: Hoelmer et al. 1993, from memory. Poor at 30 °C: Legaspi et al. 2008. Their course with temperature, sex ratio and time before the first egg: judgement.',
    },
    attacks: [
      ...whiteflies.flatMap((prey) =>
        onWhitefly.map(([stages, ceilingPerDay, source]) => ({
          prey,
          stages,
          kind: 'predation' as const,
          ceilingPerDay,
          source,
        })),
      ),
      ...(['encarsia-formosa', 'eretmocerus-eremicus'] as const).map((prey) => ({
        prey,
        stages: ['hidden'],
        kind: 'predation' as const,
        ceilingPerDay: 11.6,
        preference: 0.5,
        source:
          'from memory: young parasitised scales are eaten, older ones mostly spared; number of fourth instars',
      })),
    ],
    activityByTemperature: [
      [14, 0],
      [18, 0.4],
      [22, 0.8],
      [26, 1],
      [30, 1],
      [35, 0],
    ],
    livesAboveC: 15,
    huntsAboveC: 18,
    searchM2PerDay: 0.05,
    huntingStages: ['larva', 'adult'],
    release: {
      form: 'adults',
      verb: 'put out',
      piece: ['tube of Delphastus', 'tubes of Delphastus'],
      perPiece: 100,
      perM2: 2,
      where: 'on the plants with most whitefly eggs',
      establishes: 0.7,
      lookAfterDays: 21,
      lookFor: 'small black beetles and pale larvae among the whitefly',
      source: 'common practice, no source: 1 to 2 a m2 a week on hot spots, at 18 °C or more',
    },
  },
  rows,
  notAdvised: 'how much it eats and lays in a day was read nowhere; both are from memory.',
  openQuestions: [
    'The line begins at 9.9 °C, yet at 15 °C no larva became a pupa: do not run it below 18 °C.',
    'How many second and third instars it eats was not found, so none count.',
    'Whitefly eggs a day are from memory; only that it eats more from 14 to 30 °C was read.',
    'Dry air costs young: 90 % live at 85 % humidity, 60 % at 25 %. This is not counted.',
    'It avoids scales with older wasp larvae, from memory.',
  ],
};
