import type { PublishedRow, SpeciesRecord } from './record.ts';
import { bandsFrom, byTemperature, rowsFrom, thermalLine } from './rows.ts';
import { fromMemory, judgement } from './sources.ts';

const kok2024 =
  'Kok S, Kasap I 2024. Seasonal population fluctuation and life history in different temperatures of Myzus cerasi on cherry trees: a field and laboratory study. Journal of Economic Entomology 117:865-875';
const oregon1960 =
  'Biology of the black cherry aphid in the Willamette Valley, Oregon. Journal of Economic Entomology 53(4), 1960 (authors not seen)';

const rows: readonly PublishedRow[] = [
  ...thermalLine(
    'line through 1 / generation at 20 and 30 °C (Kok & Kasap 2024); half a generation until adult, 11.5 days at 20 °C',
    'DER',
    [
      'birth to adult',
      7,
      150,
      'cherry, 20 to 30 °C',
      'at 10 °C 54 days to the first birth, more than outdoors: not in use',
    ],
  ),
  ...thermalLine('1.6 times the peach-potato aphid of Whalon & Smilowitz 1979', 'DER', [
    'birth to adult',
    4,
    184,
    'cherry, 20 °C',
    'in use; scaled to the generation of 22.59 days at 20 °C of Kok & Kasap 2024, not measured',
  ]),
  ...bandsFrom(oregon1960, 'SEEN', [
    ['days, birth to first birth', 11.3, 35.9, 'd', 'cherry, outdoors, generations 9 and 12 of a season'],
    ['generations a season', 12, 13, 'generations', 'cherry, outdoors'],
    ['mean young a day', 1.1, 1.9, 'young', 'cherry, outdoors'],
  ]),
  ...byTemperature(kok2024, 'SEEN', ['young in a life', 'young', 'cherry'], {
    20: 10.14,
    25: 9.36,
    30: 7.27,
  }),
  ...byTemperature(kok2024, 'SEEN', ['adult life', 'd', 'cherry', '20 °C in use'], {
    20: 19,
    25: 18.72,
    30: 12.59,
  }),
  ...byTemperature(
    'young in a life of Kok & Kasap 2024 / (0.583 x 19 days x 16 / (T - 4)): births fall in a line',
    'DER',
    ['young a day, first days', 'young', 'cherry', 'in use, 25 °C as the best'],
    { 20: 0.92, 25: 1.11, 30: 1.07 },
  ),
  ...byTemperature(kok2024, 'SEEN', ['young a newborn leaves, R0', 'young', 'cherry'], { 20: 7.1, 25: 7.8 }),
  ...rowsFrom('R0 divided by the young in a life, Kok & Kasap 2024', 'DER', [
    ['survival, birth to adult', 0.7, 'share', '20 °C, cherry', 'middle of the three, 0.82, in use'],
    ['survival, birth to adult', 0.83, 'share', '25 °C, cherry'],
    ['survival, birth to adult', 0.94, 'share', '30 °C, cherry', 'R0 from growth and generation'],
  ]),
  ...byTemperature(kok2024, 'SEEN', ['days, generation', 'd', 'cherry'], { 20: 22.59, 30: 12.78 }),
  ...rowsFrom('natural logarithm of R0 divided by the generation, Kok & Kasap 2024', 'DER', [
    ['growth rate r', 0.087, 'per day', '20 °C, cherry'],
  ]),
  ...rowsFrom(kok2024, 'SEEN', [['growth rate r', 0.15, 'per day', '30 °C, cherry']]),
  ...rowsFrom(judgement, 'MEM', [
    ['start of the plateau', 30, '°C', 'all stages', 'in use: warmest tried, growth still rises'],
    ['adults a m2 of ground that halve laying', 300, 'per m2', 'as whitefly', 'in use'],
    ['end of development', 34, '°C', 'constant'],
    ['start of heat damage', 30, '°C', 'all stages'],
    ['days before the first birth', 1, 'd', '20 °C'],
  ]),
  ...rowsFrom(fromMemory, 'MEM', [['flight starts', 13, '°C', 'daylight', '13 to 16 °C']]),
];

export const myzusCerasi: SpeciesRecord = {
  id: 'myzus-cerasi',
  name: 'Myzus cerasi (F.)',
  commonName: 'black cherry aphid',
  shortName: 'cherry aphids',
  development: {
    lowerC: 4,
    plateauC: 30,
    zeroC: 34,
    // Survival: 0.82 from birth to adult (R0 over the young in a life, 20 to 30 °C), the same for each instar.
    stages: [
      { name: 'N1', degreeDays: 46, cv: 0.2, survival: 0.952 },
      { name: 'N2', degreeDays: 46, cv: 0.2, survival: 0.952 },
      { name: 'N3', degreeDays: 46, cv: 0.2, survival: 0.952 },
      { name: 'N4', degreeDays: 46, cv: 0.2, survival: 0.952 },
    ],
    source:
      'No line was published: the instars of the peach-potato aphid (Whalon & Smilowitz 1979) made 1.6 times slower to meet one generation at 20 °C (Kok & Kasap 2024), our derivation. Upper end and spread: judgement.',
  },
  traits: {
    kind: 'pest',
    adult: {
      // One day at 20 degC.
      preovipositionDegreeDays: 16,
      lifeDaysAt20C: 19,
      femaleShare: 1,
      eggsPerDay: 1.11,
      fecundityByTemperature: [
        [4, 0],
        [20, 0.83],
        [25, 1],
        [30, 0.96],
        [34, 0],
      ],
      source:
        'Life and young from 20 to 30 °C: Kok & Kasap 2024, our derivation. Both ends of the shape and the time before the first birth: judgement.',
    },
    heatFromC: 30,
    heatHazardAt39C: 0.05,
    flightByTemperature: [
      [13, 0],
      [16, 0.5],
      [20, 1],
      [30, 1],
      [34, 0],
    ],
    hostFactor: { cherry: 1 },
    crowdingPerM2: 300,
    winged: { always: 0.03, crowded: 0.33 },
    antsAttend: true,
    seen: { trap: 'aphid', leaves: ['aphid'], parasitised: { host: 'aphid', sign: 'mummy' } },
  },
  rows,
  notAdvised:
    'no days of development at a known temperature were found: its line is another aphid made slower to meet one printed generation.',
  openQuestions: [
    'Threshold and constant are borrowed and scaled. The generations at 20 and 30 °C ask for a threshold of 7 °C, which outdoors in spring would be too slow.',
    'Young a female were 10 in a life in the laboratory, but 1.1 to 1.9 a day outdoors.',
    'It winters as eggs on cherry bark that hatch at bud opening, leaves in early July and returns in September: neither hatching nor leaving is in the record.',
  ],
};
