/** Days of development at constant temperature: greenhouse whitefly, peach-potato and melon aphid. */
import { daysRows } from './builders.ts';
import { degreeDaysToFirstEgg } from './measures.ts';
import type { Row } from './row.ts';
import * as from from './sources.ts';

const whitefly = { species: 'trialeurodes-vaporariorum', id: 'C10', mark: 'SEEN', share: 0.15 } as const;
const peachAphid = { species: 'myzus-persicae', id: 'D', mark: 'SEEN', share: 0.2 } as const;
const melonAphid = { species: 'aphis-gossypii', id: 'D', mark: 'SEEN', share: 0.2 } as const;
const onCucumber = 'the line in use is that of cucumber, a tenth to a quarter faster than those of cotton';
const line30 = 'the line of Osborne 1982 runs ahead of the page there; no table by temperature was found';
const parajulee = {
  ...melonAphid,
  id: 'C6',
  source: from.parajulee2007,
  until: 'first egg',
  note: 'abstract',
} as const;
const population = { law: 'population' } as const;
const kim = { ...peachAphid, source: from.kim2012, mark: 'SEEN' } as const;

export const pestDays: readonly Row[] = [
  ...daysRows({ ...whitefly, source: from.alford, until: 'egg hatch' }, [[21, 9]]),
  ...daysRows({ ...whitefly, source: from.alford, note: 'egg 9, then 18' }, [[21, 27]]),
  ...daysRows(
    {
      ...whitefly,
      source: from.fitosofia,
      conditions: 'tomato',
      note: 'printed 103 to 123',
      tolerance: { from: 103 * 0.85, to: 123 * 1.15 },
    },
    [[12, 113]],
  ),
  ...daysRows({ ...whitefly, source: from.fitosofia, conditions: 'tomato', note: 'printed at 22 to 25 °C' }, [
    [23.5, 28],
  ]),
  ...daysRows(
    { ...whitefly, source: from.inrae, note: 'printed fewer than 20', tolerance: { from: 0, to: 20 * 1.15 } },
    [[27, 20]],
  ),
  ...daysRows(
    {
      ...whitefly,
      id: 'D',
      source: from.inrae,
      note: 'printed more than 40; consistent, yet far off',
      tolerance: { from: 40, to: Number.POSITIVE_INFINITY },
    },
    [[14, 40]],
  ),
  ...daysRows(
    {
      ...whitefly,
      id: 'D',
      source: from.fitosofia,
      mark: 'same',
      note: 'printed 18 to 21',
      tolerance: { from: 18, to: 21 },
    },
    [[30, 19.5, line30]],
  ),
  ...daysRows(
    {
      ...whitefly,
      ...population,
      id: 'D',
      source: from.fitosofia,
      mark: 'same',
      note: 'printed 18 to 21',
      tolerance: { from: 18, to: 21 },
    },
    [[30, 19.5, line30]],
  ),
  {
    ...peachAphid,
    kind: 'number',
    id: 'C4',
    what: 'degree-days from birth to first young, above 4 °C',
    published: 135.7,
    unit: 'degree-days',
    source: from.whalon1979,
    mark: 'same',
    tolerance: { share: 0.02 },
    ours: () => degreeDaysToFirstEgg('myzus-persicae'),
  },
  ...daysRows({ ...peachAphid, source: from.deLoach1974, until: 'first egg' }, [
    [10, 26.2],
    [15, 13.9],
    [20, 8.8],
    [25, 7.7],
    [30, 9.2, 'the ledger stays flat above 26 °C and knows no harm by heat'],
  ]),
  ...daysRows({ ...peachAphid, ...population, source: from.deLoach1974, mark: 'same', until: 'first egg' }, [
    [10, 26.2],
    [20, 8.8],
    [30, 9.2],
  ]),
  ...daysRows({ ...peachAphid, source: from.barlow1962, conditions: 'potato' }, [
    [15, 14, 'longer than each of the fourteen published lines'],
    [20, 9.1, 'as at 15 °C'],
    [25, 7.7, 'as at 15 °C'],
  ]),
  ...daysRows({ ...kim, conditions: 'line 111.1 above 3.0 °C', mark: 'DER', share: 0.15 }, [
    [15, 111.1 / 12],
    [20, 111.1 / 17],
    [25, 111.1 / 22],
  ]),
  ...daysRows({ ...kim, conditions: 'plastic house' }, [
    [14.6, 14.4, 'laboratory lines run ahead of houses: 9.6 days by the line of the same paper'],
    [26.7, 6],
  ]),
  ...daysRows({ ...melonAphid, source: from.kersting1999, conditions: 'cotton', share: 0.05 }, [
    [15, 12, onCucumber],
    [30, 4.5, onCucumber],
  ]),
  ...daysRows({ ...parajulee, tolerance: { within: 1.5 } }, [
    [15, 15, onCucumber],
    [20, 8],
    [25, 5],
    [30, 5],
  ]),
  ...daysRows({ ...melonAphid, source: from.soglia2002 }, [
    [15, 13.5],
    [30, 5],
  ]),
  ...daysRows({ ...melonAphid, source: from.zamani2006, mark: 'same', conditions: 'cucumber' }, [
    [15, 11.09],
    [20, 7.44],
    [25, 5.6],
    [30, 3.81],
  ]),
  ...daysRows({ ...melonAphid, source: from.xia1999, conditions: 'cotton' }, [
    [15, 15.1, onCucumber],
    [20, 9.7, onCucumber],
    [25, 5.6],
    [30, 4.9],
    [35, 7.2, 'the ledger stays flat above 30 °C; at 35 °C other papers have no survivors'],
  ]),
  ...daysRows({ ...melonAphid, ...population, source: from.xia1999, conditions: 'cotton' }, [
    [35, 7.2, 'lethal in Kersting 1999 and Zamani 2006: the fall to zero at 35 °C follows them'],
  ]),
];
