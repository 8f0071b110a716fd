import type { PublishedRow, SpeciesRecord } from './record.ts';
import { byTemperature, collectedLines, rowsFrom, thermalLine } from './rows.ts';
import { barlow1962, deConti2010, fromMemory, inJarosik, judgement } from './sources.ts';

const rows: readonly PublishedRow[] = [
  ...thermalLine('middle of the lines of Nakata 1996 and Sun et al. 2006', 'DER', [
    'birth to adult',
    4,
    146,
    'host not stated',
    'in use; days within 10 % of either line from 15 to 22 °C',
  ]),
  ...collectedLines(inJarosik, 'birth to adult', 'host not stated', [
    ['Nakata T 1996', 4.67, 149.1],
    ['Sun H, Li X, Zhang G 2006', 3.27, 142.7],
  ]),
  ...thermalLine(fromMemory, 'MEM', ['birth to adult', 4.5, 125, 'potato', 'low trust; not in use']),
  ...byTemperature(
    barlow1962,
    'SEEN',
    ['days, birth to adult', 'd', 'potato', 'from 15 °C up too fast for both lines and its own growth rate'],
    { 5: 31.5, 10: 16.8, 15: 6.3, 20: 4.9, 25: 4.2 },
  ),
  ...rowsFrom(deConti2010, 'SEEN', [
    ['best temperature of 16 to 28 °C', 22, '°C', 'lettuce', 'by growth; start of the plateau in use'],
  ]),
  ...rowsFrom(barlow1962, 'SEEN', [['upper limit, no young', 30, '°C', 'potato', 'end in use']]),
  ...byTemperature(
    deConti2010,
    'SEEN',
    ['survival, birth to adult', 'share', 'lettuce', '22 °C in use; the fall at 25 °C sets the heat damage'],
    { 16: 0.8, 19: 0.83, 22: 0.83, 25: 0.73 },
  ),
  ...byTemperature(barlow1962, 'SEEN', ['survival, birth to adult', 'share', 'potato'], {
    5: 0.86,
    10: 0.92,
    15: 0.98,
    20: 1,
    25: 0.76,
  }),
  ...byTemperature(
    deConti2010,
    'SEEN',
    ['young in a life', 'young', 'lettuce', 'over the life below: level and shape in use'],
    { 16: 81.25, 19: 60.31, 22: 58.75, 25: 21.88, 28: 14.37 },
  ),
  ...byTemperature(deConti2010, 'SEEN', ['adult life', 'd', 'lettuce'], {
    16: 21.08,
    19: 16.11,
    22: 12.32,
    25: 13.13,
    28: 8.61,
  }),
  ...rowsFrom('between 19 and 22 °C of De Conti et al. 2010', 'DER', [
    ['adult life', 14.8, 'd', '20 °C, lettuce', 'in use; 31.5 on potato'],
  ]),
  ...rowsFrom('58.75 young of De Conti et al. 2010 over a life of 12.32 days, falling in a line', 'DER', [
    ['young a day', 8.2, 'young', '22 °C, lettuce, first days', 'in use'],
  ]),
  ...byTemperature(
    barlow1962,
    'SEEN',
    ['young in a life', 'young', 'potato', '5 and 10 against 20 °C: cold end of the shape in use'],
    { 5: 34.7, 10: 42.8, 15: 32.6, 20: 23.7, 25: 6.8 },
  ),
  ...byTemperature(barlow1962, 'SEEN', ['adult life', 'd', 'potato', 'read from figures'], {
    5: 98,
    10: 66.5,
    15: 49,
    20: 31.5,
    25: 14,
  }),
  ...rowsFrom(judgement, 'MEM', [
    ['days before the first birth', 1, 'd', '20 °C', 'in use'],
    ['adults a m2 of ground that halve laying', 300, 'per m2', 'as whitefly', 'in use'],
  ]),
  ...rowsFrom(fromMemory, 'MEM', [
    ['young in a life', 70, 'young', 'general', 'up to about 70'],
    ['flight starts', 13, '°C', 'daylight', '13 to 16 °C'],
    ['colonies that ants attend', 0, 'share', 'all plants', 'they let it be; in use'],
  ]),
  ...byTemperature(deConti2010, 'SEEN', ['growth rate r', 'per day', 'lettuce'], {
    16: 0.189,
    19: 0.213,
    22: 0.282,
    25: 0.186,
  }),
  ...byTemperature(barlow1962, 'SEEN', ['growth rate r', 'per day', 'potato'], {
    5: 0.053,
    10: 0.109,
    15: 0.174,
    20: 0.219,
    25: 0.161,
  }),
];

export const macrosiphumEuphorbiae: SpeciesRecord = {
  id: 'macrosiphum-euphorbiae',
  name: 'Macrosiphum euphorbiae (Thomas)',
  commonName: 'potato aphid',
  shortName: 'potato aphids',
  development: {
    lowerC: 4,
    plateauC: 22,
    zeroC: 30,
    // Survival: 0.83 from birth to adult (De Conti et al. 2010, 22 °C), the same for each instar.
    stages: [
      { name: 'N1', degreeDays: 36.5, cv: 0.12, survival: 0.954 },
      { name: 'N2', degreeDays: 36.5, cv: 0.12, survival: 0.954 },
      { name: 'N3', degreeDays: 36.5, cv: 0.12, survival: 0.954 },
      { name: 'N4', degreeDays: 36.5, cv: 0.12, survival: 0.954 },
    ],
    source:
      'Threshold and total: 4.0 °C and 146 degree-days, derived as the middle of the two whole lines that were found (Nakata 1996, Sun et al. 2006). Equal instars and their spread: judgement. Survival and best temperature: De Conti et al. 2010. End: no young at 30 °C (Barlow 1962).',
  },
  traits: {
    kind: 'pest',
    adult: {
      // One day at 20 degC.
      preovipositionDegreeDays: 16,
      lifeDaysAt20C: 14.8,
      femaleShare: 1,
      eggsPerDay: 8.2,
      fecundityByTemperature: [
        [4, 0],
        [5, 0.4],
        [10, 0.7],
        [16, 0.8],
        [19, 0.8],
        [22, 1],
        [25, 0.35],
        [28, 0.35],
        [30, 0],
      ],
      source:
        'Births, life and shape from 16 to 28 °C: De Conti et al. 2010 on lettuce, young divided by life. Cold end and none at 30 °C: Barlow 1962 on potato. Before the first birth: judgement.',
    },
    // Chosen so that 0.83 of the nymphs becomes 0.73 at 25 degC (De Conti et al. 2010).
    heatFromC: 22,
    heatHazardAt39C: 0.02,
    flightByTemperature: [
      [13, 0],
      [16, 0.5],
      [20, 1],
      [27, 1],
      [32, 0],
    ],
    hostFactor: { potato: 1, lettuce: 1, tomato: 1 },
    crowdingPerM2: 300,
    winged: { always: 0.03, crowded: 0.33 },
    seen: { trap: 'aphid', leaves: ['aphid'], parasitised: { host: 'aphid', sign: 'mummy' } },
  },
  rows,
  openQuestions: [
    'Only two lines were found and no table of instars; the line in use is their middle, our derivation, and not the line of one study.',
    'The nymphal days of Barlow 1962 are about half of both lines from 15 °C up, and a fifth of the line in use at 5 °C: nobody can say which aphid that was.',
    'At 5 °C it grows slowly (0.053 a day, Barlow 1962); a threshold of 4 °C leaves almost no development there.',
    'Adults on potato lived twice as long as on lettuce and bore a third of the young.',
    'The generation of 19.94 days is printed twice in De Conti et al. 2010, at 19 and 25 °C; the second does not fit its own growth rate.',
    'The 22 °C from which development is taken as constant is the best temperature for growth, not measured on development.',
  ],
};
