/** Days of development at constant temperature: the other aphids, whitefly, mite, thrips and mealybug. */
import { daysRows, lineRows } from './builders.ts';
import type { Row } from './row.ts';
import * as from from './sources.ts';

const population = { law: 'population' } as const;
const whitefly = { species: 'bemisia-tabaci', id: 'D', mark: 'SEEN', share: 0.25 } as const;
const onAubergine = { ...whitefly, source: from.wangTsai1996, conditions: 'aubergine' } as const;
const onTomato = { ...whitefly, source: from.takalloozadeh, share: 0.15 } as const;
const potatoAphid = { species: 'macrosiphum-euphorbiae', id: 'D', mark: 'SEEN', share: 0.2 } as const;
/** The line in use is the middle of these two: a derivation kept, not a prediction. */
const itsLines = { ...potatoAphid, mark: 'same', share: 0.1 } as const;
const foxgloveAphid = { species: 'aulacorthum-solani', id: 'D', mark: 'SEEN', share: 0.2 } as const;
const onPansy = { ...foxgloveAphid, source: from.jandricic2010, conditions: 'pansy' } as const;
const roseAphid = { species: 'macrosiphum-rosae', id: 'D' } as const;
const cherryAphid = {
  species: 'myzus-cerasi',
  id: 'D',
  mark: 'SEEN',
  source: from.oregon1960,
  until: 'first egg',
  conditions: 'outdoors',
  note: 'printed 11.3 to 35.9, summer and autumn; taken as 10 to 20 °C, common practice, no source',
  tolerance: { from: 11.3, to: 35.9 },
} as const;
const mite = { species: 'tetranychus-urticae', id: 'D', mark: 'SEEN', share: 0.15 } as const;
const thrips = { species: 'frankliniella-occidentalis', mark: 'SEEN' } as const;
const onLeaves = { ...thrips, id: 'D', source: from.papadaki, share: 0.2 } as const;
const mealybug = { species: 'planococcus-citri', id: 'D' } as const;
const itsStages = { ...mealybug, source: from.karacaoglu2017, mark: 'same', share: 0.03 } as const;
const arai = { ...mealybug, source: from.arai1996, mark: 'DER', share: 0.15 } as const;
const instars = ['N1', 'N2', 'N3'] as const;

const straightInCold = 'a straight line; the table bends in the cold, and the population follows it';
const farFromLines =
  'both whole lines found take far longer (12 to 14 days at 15 °C), and ours is their middle';

export const otherPestDays: readonly Row[] = [
  ...daysRows({ ...whitefly, id: 'C11', source: from.tsaiWang1996, conditions: 'aubergine' }, [[25, 17.3]]),
  ...daysRows({ ...whitefly, id: 'C11', source: from.tsaiWang1996, conditions: 'bean' }, [[25, 20.9]]),
  ...daysRows(
    {
      ...whitefly,
      id: 'C11',
      source: from.whiteflyLines,
      mark: 'DER',
      conditions: 'the fastest and the slowest but one of the lines',
      note: '231.1 above 11.9 °C and 327 above 14 °C',
      tolerance: { from: 231.1 / 13.1, to: 327 / 11 },
    },
    [[25, (231.1 / 13.1 + 327 / 11) / 2]],
  ),
  ...daysRows(onAubergine, [
    [15, 104.9, straightInCold],
    [20, 29.8],
    [25, 17.6],
    [27, 16],
    [30, 13.6],
    [35, 18.8],
  ]),
  ...daysRows({ ...onAubergine, ...population, mark: 'same' }, [
    [15, 104.9],
    [20, 29.8],
    [25, 17.6],
    [27, 16],
    [30, 13.6],
    [35, 18.8],
  ]),
  ...daysRows({ ...onTomato, conditions: 'tomato' }, [
    [20, 29.14],
    [32, 13.84],
  ]),
  ...daysRows({ ...onTomato, until: instars, conditions: 'tomato', share: 0.25 }, [[32, 6.74]]),
  ...daysRows({ ...onTomato, until: ['N4/pupa'], conditions: 'tomato', share: 0.25 }, [[32, 2.34]]),

  ...lineRows({ ...itsLines, source: from.nakata1996 }, [4.67, 149.1], [15, 18, 22]),
  ...lineRows({ ...itsLines, source: from.sun2006 }, [3.27, 142.7], [15, 18, 22]),
  ...daysRows({ ...potatoAphid, source: from.barlowCanada, conditions: 'potato' }, [
    [5, 31.5, farFromLines],
    [10, 16.8, farFromLines],
    [15, 6.3, farFromLines],
    [20, 4.9, farFromLines],
    [25, 4.2, farFromLines],
  ]),

  ...daysRows(onPansy, [
    [10, 21.81, 'the line in use (Seo et al. 2020) begins at 5.0 °C; two others begin at 2.7 and 4.2 °C'],
    [15, 11.37],
    [20, 8.37],
    [25, 6.88],
    [30, 9.48, 'the ledger stays flat above 25 °C and knows no harm by heat'],
  ]),
  ...daysRows({ ...onPansy, ...population }, [
    [30, 9.48, 'none lived above 27.5 °C in Seo et al. 2020: the fall to zero at 29 °C follows them'],
  ]),
  ...lineRows({ ...foxgloveAphid, source: from.nakata1996, share: 0.15 }, [4.18, 145.8], [15, 20, 25]),
  ...lineRows({ ...foxgloveAphid, source: from.kim1991, share: 0.15 }, [2.69, 149.7], [15, 20, 25]),

  ...daysRows({ ...roseAphid, source: from.mehrparvar2007, mark: 'same', share: 0.1 }, [
    [15, 12.33],
    [22, 5.88],
  ]),
  ...daysRows(
    {
      ...roseAphid,
      source: from.hebrew,
      mark: 'SEEN',
      until: 'first egg',
      note: 'printed about a week, 20 to 25 °C',
      tolerance: { within: 1.5 },
    },
    [[22.5, 7]],
  ),
  ...daysRows(cherryAphid, [
    [10, 23.6],
    [20, 23.6],
  ]),

  ...lineRows({ ...mite, source: from.herbert1981, mark: 'same', share: 0.1 }, [10, 141.3], [15]),
  ...lineRows({ ...mite, source: from.herbert1981, mark: 'same', share: 0.1 }, [10, 152.3], [18]),
  ...lineRows({ ...mite, source: from.herbert1981, mark: 'same', share: 0.1 }, [10, 139.8], [21]),
  ...daysRows({ ...mite, source: from.ameen, conditions: 'cucumber' }, [
    [25, 9],
    [35, 6.8, 'three papers have mites fastest at 35 °C, so the line goes on; the next one has 6.5 days'],
  ]),
  ...daysRows({ ...mite, source: from.praslicka2004, conditions: 'bean, cucumber, pepper' }, [
    [15, 16.23, 'no other source has so few days in the cold: 28 to 34 elsewhere'],
    [30, 6.93],
    [35, 6.5],
  ]),
  ...daysRows({ ...mite, source: from.egyptianPear, conditions: 'pear', note: 'printed 30.6 to 34' }, [
    [15, 32.3],
  ]),
  ...lineRows({ ...mite, source: from.bounfourLine, mark: 'DER' }, [10.32, 148.7], [15, 20, 25, 30]),
  ...lineRows({ ...mite, source: from.egyptianStages, mark: 'DER', share: 0.2 }, [12.5, 146.48], [26, 30]),

  ...daysRows({ ...thrips, id: 'C7', source: from.katayama1997, mark: 'same', share: 0.05 }, [
    [15, 34.2],
    [20, 19.2],
    [25, 12.1],
    [30, 9.5],
  ]),
  ...daysRows({ ...thrips, id: 'C9', source: from.mcdonald1998, tolerance: { from: 18, to: 25 } }, [
    [20, 22.1],
  ]),
  ...daysRows({ ...thrips, id: 'C9', source: from.zhang2012, tolerance: { from: 28, to: 38 } }, [[15, 30]]),
  ...daysRows({ ...thrips, id: 'C9', source: from.zhang2012, share: 0.1 }, [[30, 10]]),
  ...daysRows({ ...onLeaves, conditions: 'aubergine' }, [[29, 11]]),
  ...daysRows({ ...onLeaves, conditions: 'cucumber' }, [[29, 11.6]]),
  ...daysRows({ ...onLeaves, conditions: 'tomato, bean, pepper' }, [[29, 12]]),

  ...daysRows({ ...itsStages, until: ['N1'] }, [[25, 7.86]]),
  ...daysRows({ ...itsStages, until: ['N2'] }, [[15, 25.7]]),
  ...daysRows({ ...itsStages, until: ['N3'] }, [[25, 7]]),
  ...lineRows({ ...arai, until: instars }, [7.7, 401], [20, 25]),
  ...lineRows(
    { ...arai, until: ['waiting'] },
    [8, 378],
    [[20, 'ours is what the whole development of another paper leaves after its stages, little over half']],
  ),
];
