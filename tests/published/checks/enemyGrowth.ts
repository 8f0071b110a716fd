/** Rates of increase of natural enemies with prey in plenty, against life tables. */
import { growthRows } from './builders.ts';
import { fromLifeTable, whether } from './measures.ts';
import type { Answer, AnySpeciesId, NumberRow, Row } from './row.ts';
import * as from from './sources.ts';

const delphastus = {
  species: 'delphastus-catalinae',
  id: 'E11',
  mark: 'SEEN',
  source: from.legaspi2008,
} as const;
const macrolophus = { species: 'macrolophus-pygmaeus', mark: 'same', source: from.perdikis2002 } as const;
const encarsia = { species: 'encarsia-formosa', id: 'E27', mark: 'SEEN', source: from.deVis2002 } as const;

const r = (species: AnySpeciesId, temperatureC: number) =>
  fromLifeTable(species, 'growthPerDay', temperatureC);

/** Growth of the wasp less that of its host on tomato. */
function ahead(temperatureC: number): Answer {
  const [wasp, host] = [r('encarsia-formosa', temperatureC), r('trialeurodes-vaporariorum', temperatureC)];
  return typeof wasp === 'number' && typeof host === 'number' ? wasp - host : wasp;
}

const aheadRows = ([temperatureC, published, reason]: readonly [number, number, string?]): NumberRow => ({
  ...encarsia,
  kind: 'number',
  what: `r less that of greenhouse whitefly at ${temperatureC} °C`,
  published,
  unit: 'a day',
  tolerance: { share: 0.4 },
  ours: () => ahead(temperatureC),
  ...(reason && { reason }),
});

const unread =
  'eggs in a life, their course and the share of females are from memory or judged; the printed table was not read';
const stillAt15 =
  'Encarsia does not search at 15 °C in the forecast (van Roermund & van Lenteren 1995), so none are born';

export const enemyGrowth: readonly Row[] = [
  ...growthRows(
    {
      species: 'neoseiulus-californicus',
      id: 'E10',
      mark: 'same',
      source: from.gotoh2004,
      tolerance: { within: 0.04 },
    },
    [
      [20, 0.173],
      [25, 0.274],
      [30, 0.34],
    ],
  ),
  ...growthRows({ ...delphastus, tolerance: { within: 0.02 } }, [
    [22, 0.048, unread],
    [26, 0.082, unread],
  ]),
  {
    ...delphastus,
    kind: 'outcome',
    what: 'grows faster at 26 °C than at 30 °C',
    published: 'worse at 30 °C',
    ours: () =>
      whether([r(delphastus.species, 26), r(delphastus.species, 30)], ([warm, hot]) => warm! > hot!),
  },
  ...growthRows({ ...macrolophus, id: 'E25', conditions: 'on aphids', share: 0.25 }, [
    [15, 0.038],
    [20, 0.07],
    [25, 0.098],
    [30, 0.075],
  ]),
  {
    ...macrolophus,
    kind: 'outcome',
    id: 'E26',
    what: 'grows fastest at 25 to 27.5 °C, slower at 30 °C',
    published: 'best at 25 to 27.5 °C',
    ours: () =>
      whether(
        [20, 25, 27.5, 30].map((t) => r(macrolophus.species, t)),
        ([cool, best, best2, hot]) => Math.max(best!, best2!) > cool! && Math.max(best!, best2!) > hot!,
      ),
  },
  ...(
    [
      [15, 0.025, stillAt15],
      [20, 0.058],
      [25, 0.09],
    ] as const
  ).map(aheadRows),
  {
    ...encarsia,
    kind: 'outcome',
    what: 'the wasp grows faster than the whitefly at 15, 20 and 25 °C, the more the warmer',
    published: 'ahead, rising with temperature',
    ours: () =>
      whether([15, 20, 25].map(ahead), ([cold, mild, warm]) => cold! > 0 && mild! > cold! && warm! > mild!),
    reason: stillAt15,
  },
];
