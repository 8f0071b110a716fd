/** Days of development of natural enemies by further papers and lines. */
import { daysRows, lineRows } from './builders.ts';
import { fromLifeTable, ofRecord, populationDays } from './measures.ts';
import type { Row } from './row.ts';
import * as from from './sources.ts';

const line = { id: 'D', mark: 'DER', share: 0.15 } as const;
const californicus = { ...line, species: 'neoseiulus-californicus' } as const;
const eretmocerus = { ...line, species: 'eretmocerus-eremicus' } as const;
const ervi = { ...line, species: 'aphidius-ervi' } as const;
const midge = { ...line, species: 'aphidoletes-aphidimyza', source: from.havelka1988, share: 0.2 } as const;
const mirid = { ...line, species: 'macrolophus-pygmaeus' } as const;
const orius = { species: 'orius-laevigatus', id: 'D', mark: 'same', source: from.sanchez2002 } as const;
const delphastus = { species: 'delphastus-catalinae', id: 'D' } as const;
const sevenSpot = { ...line, species: 'coccinella-septempunctata' } as const;
const hoverfly = { ...line, species: 'episyrphus-balteatus' } as const;
const flowerBug = { species: 'anthocoris-nemoralis', id: 'D', share: 0.15 } as const;

const generation =
  'a line "per generation", which is longer than to the first egg, with a threshold 1.7 °C lower';
const strains =
  'strains of Bohemia and Moldova begin at 10 to 12 °C; that of Leningrad is in use and begins at 6.2 °C';
const norwegian = 'two thirds more degree-days above a lower threshold; two other lines agree with ours';
const twoTimes =
  'the line was set between two papers whose days contradict each other, nearer to the other one';

export const otherEnemyDays: readonly Row[] = [
  ...lineRows(
    { ...californicus, source: from.gotoh2004, mark: 'same', until: 'first egg', share: 0.01 },
    [10.3, 86.2],
    [15, 20, 25, 30],
  ),
  ...lineRows({ ...californicus, source: from.aydin }, [7.8, 83.3], [20, 25, 30]),
  ...daysRows({ ...californicus, source: from.egyptianSoybean, mark: 'SEEN', conditions: 'soybean' }, [
    [20, 7.35],
    [30, 4.22],
  ]),
  ...lineRows(
    { ...californicus, source: from.hartMite2002, until: 'first egg' },
    [8.6, 142.9],
    [
      [20, generation],
      [25, generation],
      [30, generation],
    ],
  ),

  ...lineRows({ ...eretmocerus, source: from.tullett2004 }, [6.1, 366.8], [20, 25, 30]),
  ...daysRows({ ...eretmocerus, source: from.qiu2004, mark: 'SEEN', conditions: 'on Bemisia' }, [
    [15, 79.3, 'lines of three papers have 41 to 50 days there; none is to be trusted below 18 °C'],
    [32, 14],
  ]),

  ...lineRows({ ...ervi, source: from.campbell1974, share: 0.1 }, [4.2, 230], [15, 20, 25]),
  ...lineRows({ ...ervi, source: from.malina2010, conditions: 'poor host' }, [5.98, 229.73], [15, 20, 25]),
  ...lineRows(
    { ...ervi, source: from.hofsvang1975 },
    [3.2, 333.7],
    [
      [20, norwegian],
      [25, norwegian],
    ],
  ),

  ...(
    [
      [10.2, 240.5],
      [10.9, 193.8],
      [11.2, 218],
      [12, 196.4],
    ] as const
  ).flatMap((strain) => lineRows(midge, strain, [[15, strains], 20, 25])),

  ...lineRows({ ...mirid, source: from.hartMirid2002, share: 0.1 }, [8.4, 472], [15, 20, 25, 30]),
  ...lineRows(
    { ...mirid, source: from.perdikisLine2002, mark: 'same', until: 'first egg', share: 0.05 },
    [8.51, 533],
    [15, 20, 25],
  ),
  ...daysRows({ ...orius, share: 0.03 }, [
    [20, 34.6],
    [35, 12.3],
  ]),

  ...daysRows({ ...delphastus, source: from.legaspi2008, mark: 'same', share: 0.05 }, [
    [22, 24],
    [30, 15],
  ]),
  {
    ...delphastus,
    kind: 'outcome',
    what: 'no larva becomes a pupa at 15 °C (population)',
    published: 'none',
    source: from.simmons2007,
    mark: 'SEEN',
    ours: () => populationDays(delphastus.species, 15, 'adult') === 'never',
    reason: 'a straight line runs on below 18 °C; the forecast lets it neither hunt nor lay there',
  },
  {
    ...delphastus,
    kind: 'outcome',
    what: 'leaves no offspring at 15 °C',
    published: 'none',
    source: from.simmons2007,
    mark: 'SEEN',
    ours: () => fromLifeTable(delphastus.species, 'perGeneration', 15) === 0,
  },

  ...lineRows({ ...sevenSpot, source: from.hodek1958 }, [12.4, 199.7], [20, 25, 30]),
  ...lineRows({ ...sevenSpot, source: from.xiaLadybird1999, note: 'abstract' }, [12.6, 209.3], [20, 25, 30]),
  ...lineRows(
    { ...sevenSpot, source: from.butler1982 },
    [13.7, 191],
    [[20, 'its threshold lies 1.6 °C above ours; two other lines agree with ours at 20 °C'], 25, 30],
  ),

  ...lineRows(
    { ...hoverfly, source: from.ankersmit1986 },
    [4.9, 334.2],
    [15, 20, 25, [30, 'the line in use (Hart et al. 1997) has fewer degree-days above a higher threshold']],
  ),

  ...daysRows({ ...flowerBug, source: from.bufour, mark: 'same', conditions: 'females on pear psyllid' }, [
    [24, 22],
    [28, 15],
  ]),
  ...daysRows(
    { ...flowerBug, source: from.yanik2011, mark: 'same', until: ['nymph'], conditions: 'moth eggs' },
    [
      [20, 16.47, twoTimes],
      [25, 13, twoTimes],
    ],
  ),

  {
    species: midge.species,
    id: 'E18',
    kind: 'number',
    what: 'day length below which it rests in the cool',
    published: 14.35,
    printed: '12.7 h (Japan) to 16 h (Quebec)',
    unit: 'h',
    source: `${from.yamane2012}; IRIIS phytoprotection, Quebec`,
    mark: 'SEEN',
    tolerance: { from: 12.7, to: 16 },
    ours: () =>
      ofRecord(midge.species, ({ traits }) =>
        traits.kind === 'enemy' && traits.rests ? traits.rests.belowDayLengthH : 'never rests',
      ),
  },
];
