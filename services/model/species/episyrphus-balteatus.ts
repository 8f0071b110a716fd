import type { PublishedRow, SpeciesRecord } from './record.ts';
import { bandsFrom, collectedLines, rowsFrom } from './rows.ts';
import { fromMemory, inForage, inNietschke, judgement } from './sources.ts';

const hart1997 =
  'Hart AJ, Bale JS, Fenlon JS 1997. Developmental threshold, day-degree requirements and voltinism of the aphid predator Episyrphus balteatus. Annals of Applied Biology 130:427-437 (co-authors from memory)';
const ankersmit1986 =
  'Ankersmit GW, Dijkman H, Keuning NJ, Sins A, Tacoma HM 1986. Entomologia Experimentalis et Applicata 42:271-277';
const inrae = 'INRAE e-phytia, Episyrphus balteatus';

const rows: readonly PublishedRow[] = [
  ...collectedLines(inNietschke, 'egg to adult', 'aphids', [
    [hart1997, 6.8, 261, 'in use; weighted, 6.0 to 7.1 and 256 to 280 by other methods'],
    [ankersmit1986, 4.9, 334.2],
  ]),
  ...collectedLines(inNietschke, 'egg', 'aphids', [
    [hart1997, 5.4, 44.4, 'in use for the split'],
    [ankersmit1986, 6.7, 30.5],
  ]),
  ...collectedLines(inNietschke, 'larva', 'aphids', [
    [hart1997, 5.8, 127.9, 'in use for the split'],
    [ankersmit1986, 2.4, 186],
  ]),
  ...collectedLines(inNietschke, 'pupa', 'aphids', [
    [hart1997, 8.1, 96.5, 'in use for the split'],
    [ankersmit1986, 6.1, 123.9],
  ]),
  ...collectedLines(inNietschke, 'egg to first egg', 'aphids', [[hart1997, 6.8, 374, 'in use']]),
  ...rowsFrom('374 less 261 above the same threshold (Hart et al. 1997)', 'DER', [
    ['degree-days, adult to first egg', 113, 'degree-days', 'above 6.8 °C', 'in use'],
  ]),
  ...rowsFrom('3.0, 9.0 and 8.1 days at 20 °C by the stage lines of Hart et al. 1997', 'DER', [
    ['share of development as an egg', 0.151, 'share', '20 °C', 'in use'],
    ['share of development as a larva', 0.447, 'share', '20 °C', 'in use'],
  ]),
  ...rowsFrom(inrae, 'SEEN', [
    ['develops from', 10, '°C', 'all stages', 'in use as "lives above"'],
    ['no development at', 7.5, '°C', 'all stages'],
    ['lays no eggs below', 15, '°C', 'by day', 'in use as "hunts above"'],
    ['eggs in a life', 500, 'eggs', '20 °C', 'up to 1000 with many aphids'],
  ]),
  ...rowsFrom('Pestinfo-Wiki, Episyrphus balteatus', 'SEEN', [
    ['prey a day', 50, 'aphids', 'larva', 'more than; in use as the mean of the larva'],
  ]),
  ...rowsFrom(`Tenhumberg B 1995, Environmental Entomology${inForage}`, 'SEEN', [
    ['most prey a day', 82, 'cereal aphids', 'larva 4 days old, temperature not given'],
  ]),
  ...bandsFrom(fromMemory, 'MEM', [['prey in a larval life', 200, 600, 'aphids', 'larva']]),
  ...rowsFrom(fromMemory, 'MEM', [['adult life', 25, 'd', '20 °C']]),
  ...rowsFrom('500 eggs (INRAE) / (0.583 x 16.4 days): laying falls in a line', 'DER', [
    ['adult life from the first egg', 16.4, 'd', '20 °C', 'in use: 25 less 8.6'],
    ['eggs a day, first days', 52, 'eggs', '20 °C', 'in use'],
  ]),
  ...rowsFrom(judgement, 'MEM', [
    ['start of the plateau', 30, '°C', 'all stages', 'in use'],
    ['upper limit of development', 34, '°C', 'all stages', 'in use'],
    ['survival, egg to adult', 0.6, 'share', 'enough aphids', 'in use'],
  ]),
];

const aphids = [
  'myzus-persicae',
  'aphis-gossypii',
  'macrosiphum-euphorbiae',
  'aulacorthum-solani',
  'macrosiphum-rosae',
] as const;

export const episyrphusBalteatus: SpeciesRecord = {
  id: 'episyrphus-balteatus',
  name: 'Episyrphus balteatus (De Geer)',
  commonName: 'marmalade hoverfly',
  shortName: 'hoverflies',
  development: {
    lowerC: 6.8,
    plateauC: 30,
    zeroC: 34,
    stages: [
      { name: 'egg', degreeDays: 39.4, cv: 0.12, survival: 0.85 },
      { name: 'larva', degreeDays: 116.7, cv: 0.12, survival: 0.8 },
      { name: 'pupa', degreeDays: 104.9, cv: 0.12, survival: 0.882 },
    ],
    source:
      'Hart et al. 1997 (6.8 °C, 261 degree-days). Shares: their lines of the stages at 20 °C. Upper end and survival: judgement.',
  },
  traits: {
    kind: 'enemy',
    adult: {
      preovipositionDegreeDays: 113,
      lifeDaysAt20C: 16.4,
      femaleShare: 0.5,
      eggsPerDay: 52,
      fecundityByTemperature: [
        [15, 0],
        [20, 1],
        [28, 1],
        [34, 0],
      ],
      source:
        'Eggs: 500 in a life at 20 °C, none on days below 15 °C (INRAE). Before the first egg: Hart et al. 1997. Life: from memory. Warm end and sex ratio: judgement.',
    },
    attacks: aphids.map((prey) => ({
      prey,
      stages: ['N1', 'N2', 'N3', 'N4', 'adult'],
      kind: 'predation' as const,
      ceilingPerDay: 50,
      source:
        'Pestinfo-Wiki: more than 50 a day, larvae of all ages; 82 for larvae 4 days old (Tenhumberg 1995)',
    })),
    activityByTemperature: [
      [7.5, 0],
      [15, 0.6],
      [20, 1],
      [30, 1],
      [34, 0],
    ],
    livesAboveC: 10,
    huntsAboveC: 15,
    searchM2PerDay: 0.1,
    huntingStages: ['larva'],
  },
  rows,
  notAdvised: 'it comes by itself; it is not sold for release here.',
  openQuestions: [
    'A Dutch study has a lower threshold and more degree-days (4.9 °C, 334): 2 days longer at 20 °C.',
    'The line begins at 6.8 °C, yet nothing develops at 7.5 °C.',
    'Only the larva eats; adults live on flowers. Adult life is from memory.',
    'How many come in through the vents is not known.',
  ],
};
