/** Rates of increase of whiteflies, spider mite and thrips at constant temperature, against life tables. */
import { generationRows, growthRows, offspringRows } from './builders.ts';
import type { Row } from './row.ts';
import * as from from './sources.ts';

const spiderMite = { species: 'tetranychus-urticae', mark: 'SEEN' } as const;
const herbert = { ...spiderMite, id: 'C2', source: from.herbert1981, mark: 'same' } as const;
const tobaccoWhitefly = { species: 'bemisia-tabaci', mark: 'SEEN', share: 0.2 } as const;

export const otherGrowth: readonly Row[] = [
  ...growthRows({ ...spiderMite, id: 'C1', source: from.bounfour2001, share: 0.2 }, [
    [15, 0.08],
    [30, 0.321],
  ]),
  ...growthRows({ ...herbert, share: 0.25 }, [
    [15, 0.069],
    [18, 0.156],
  ]),
  ...generationRows({ ...herbert, share: 0.15 }, [
    [15, 44],
    [18, 23.4, 'eggs and life in use are those on cucumber and bean: twice his R0, laid over a longer life'],
  ]),
  ...offspringRows({ ...herbert, note: 'no tolerance asked' }, [[15, 20.8]]),
  ...growthRows({ ...spiderMite, id: 'C20', source: from.gotoh2015, share: 0.2 }, [
    [15, 0.073],
    [20, 0.2],
    [25, 0.294],
    [30, 0.344],
    [
      35,
      0.288,
      'no harm by heat was read at 35 °C, days and eggs are those of two other papers; this strain slows there',
    ],
  ]),
  ...growthRows(
    {
      id: 'C8',
      species: 'frankliniella-occidentalis',
      source: from.katayama1997,
      mark: 'same',
      crop: 'chrysanthemum',
      share: 0.2,
    },
    [[30, 0.198]],
  ),
  ...growthRows({ ...tobaccoWhitefly, id: 'C11', source: from.tsaiWang1996, crop: 'bean' }, [[25, 0.12]]),
  ...growthRows(
    { ...tobaccoWhitefly, id: 'C19', source: from.wangTsai1996, crop: 'aubergine', mark: 'same' },
    [
      [20, 0.107],
      [25, 0.192],
      [30, 0.169],
      [
        35,
        0.073,
        'days are those of this paper; survival in the heat is that on tomato (0.59 at 32 °C), which bears less',
      ],
    ],
  ),
  ...growthRows(
    {
      id: 'C22',
      species: 'trialeurodes-vaporariorum',
      source: from.deVis2002,
      mark: 'SEEN',
      crop: 'tomato',
      note: 'probably regression values',
      share: 0.3,
    },
    [
      [15, 0.06],
      [20, 0.091],
      [25, 0.123],
    ],
  ),
];
