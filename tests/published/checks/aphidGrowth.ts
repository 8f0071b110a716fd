/** Rates of increase of aphids at constant temperature, against life tables. */
import { generationRows, growthRows, offspringRows } from './builders.ts';
import { dwindles, fromLifeTable, whether } from './measures.ts';
import type { Row } from './row.ts';
import * as from from './sources.ts';

const peachAphid = { species: 'myzus-persicae', mark: 'SEEN' } as const;
const onCabbage = { ...peachAphid, id: 'C3', source: from.onCabbage, crop: 'cabbage' };
const deLoach = {
  ...peachAphid,
  id: 'C15',
  source: from.deLoach1974,
  conditions: 'cabbage or turnip',
  mark: 'same',
} as const;
const melonAphid = { species: 'aphis-gossypii', mark: 'SEEN' } as const;
const kersting = {
  ...melonAphid,
  id: 'C5',
  source: from.kersting1999,
  crop: 'cotton',
} as const;
const foxgloveAphid = { species: 'aulacorthum-solani', mark: 'SEEN' } as const;
const seo = { ...foxgloveAphid, id: 'C12', source: from.seo2020, mark: 'same' } as const;
const cherryAphid = {
  species: 'myzus-cerasi',
  id: 'C14',
  source: from.kok2024,
  mark: 'same',
  share: 0.3,
} as const;
const onLettuce = { source: from.deConti2010, crop: 'lettuce', mark: 'same', share: 0.2 } as const;

const heatParts =
  'harm by heat rests on a survival of 0.27 at 29.4 °C (Whalon & Smilowitz 1979); the papers contradict each other';
const fewerAt20 = 'survival in use is the middle of 20 to 30 °C; at 20 °C fewer live';
const laidSooner = 'life and births in use are those on cucumber, where they come sooner';
const lateHeat = 'survival in use is 0.94 up to 25 °C (pansy); on lettuce 0.55 lived at 25 °C';

export const aphidGrowth: readonly Row[] = [
  ...growthRows({ ...onCabbage, share: 0.2 }, [[17, 0.2157]]),
  ...growthRows({ ...onCabbage, share: 0.3 }, [[29, 0.321, heatParts]]),
  ...generationRows({ ...onCabbage, share: 0.2 }, [[17, 18]]),
  ...generationRows({ ...onCabbage, share: 0.3 }, [[29, 10.2]]),
  ...growthRows({ ...kersting, share: 0.2 }, [
    [15, 0.177, 'line and births in use are those on cucumber, where a cool day brings fewer young'],
    [
      30,
      0.413,
      'survival and births at 30 °C are those on cucumber (0.56 alive); on cotton one paper has nearly all alive',
    ],
  ]),
  ...generationRows({ ...kersting, share: 0.2 }, [
    [15, 24.5, laidSooner],
    [30, 10.4, laidSooner],
  ]),
  ...offspringRows({ ...seo, note: 'near 18 °C; no tolerance asked' }, [[18, 77]]),
  {
    ...seo,
    kind: 'outcome',
    what: 'no population at 30 °C',
    published: 'dwindles',
    ours: () => dwindles(seo.species, 30),
  },
  ...growthRows(
    { id: 'C13', species: 'macrosiphum-rosae', source: from.mehrparvar2007, mark: 'same', share: 0.2 },
    [
      [15, 0.113],
      [22, 0.311],
    ],
  ),
  ...growthRows({ ...cherryAphid, note: 'ln R0 / T' }, [[20, 0.087, fewerAt20]]),
  ...growthRows(cherryAphid, [[30, 0.15]]),
  ...generationRows(cherryAphid, [[30, 12.8]]),
  ...growthRows({ ...deLoach, crop: 'cabbage', share: 0.2 }, [
    [10, 0.074],
    [15, 0.167],
    [20, 0.27],
    [25, 0.277],
  ]),
  {
    ...deLoach,
    kind: 'outcome',
    what: 'r below 0 at 30 °C',
    published: 'dwindles',
    ours: () => dwindles(peachAphid.species, 30),
  },
  ...growthRows({ ...onLettuce, id: 'C16', species: 'macrosiphum-euphorbiae' }, [
    [16, 0.189],
    [19, 0.213, 'the days of the paper were not read: the line in use is the middle of two others'],
    [22, 0.282],
    [25, 0.186],
  ]),
  ...growthRows({ ...onLettuce, id: 'C17', species: 'aulacorthum-solani' }, [
    [16, 0.179],
    [19, 0.232],
    [22, 0.27],
    [25, 0.185, lateHeat],
  ]),
  ...growthRows({ ...foxgloveAphid, id: 'C18', source: from.lee2008, share: 0.2 }, [
    [
      12.5,
      0.129,
      'of this paper only r was read; births in the cold and survival in use are from other plants',
    ],
    [15, 0.228],
    [20, 0.275],
    [25, 0.179, lateHeat],
  ]),
  ...growthRows({ ...melonAphid, id: 'C21', source: from.satar2005, crop: 'cucumber', share: 0.25 }, [
    [15, 0.208],
    [20, 0.358],
    [25, 0.526],
    [30, 0.431, 'survival in use at 30 °C is that of Zamani et al. 2006 (0.56); this population bears more'],
    [
      32.5,
      0.132,
      'heat harms as in Zamani et al. 2006, where none lived at 35 °C; this population bears more',
    ],
  ]),
  {
    ...melonAphid,
    kind: 'outcome',
    id: 'G',
    what: 'grows faster than the peach-potato aphid at 25 °C, slower at 15 °C, pepper',
    published: 'faster above 17.5 to 20 °C',
    source: from.satar2008,
    ours: () => {
      const r = (species: 'aphis-gossypii' | 'myzus-persicae', t: number) =>
        fromLifeTable(species, 'growthPerDay', t, 'pepper');
      const both = [15, 25].flatMap((t) => [r('aphis-gossypii', t), r('myzus-persicae', t)]);
      return whether(
        both,
        ([melon15, peach15, melon25, peach25]) => melon15! < peach15! && melon25! > peach25!,
      );
    },
  },
];
