/** Checks that nothing in the tool can answer yet, each with what is missing. */
import type { Row } from './row.ts';
import * as from from './sources.ts';

const mitesUnknown = 'How many mites there were at the start, and the warmth, are not printed.';
const thripsNotFollowed = 'No place follows thrips yet, so no release on them can be simulated.';

export const notAnswered: readonly Row[] = (
  [
    [
      'E14',
      'phytoseiulus-persimilis',
      'vine house: prey nearly gone in 5 weeks, predators die out, mites back a month later',
      'in this order',
      mitesUnknown,
      from.vinery1998,
    ],
    [
      'E15',
      'adalia-bipunctata',
      'ants weaken the larvae',
      '30 % more aphids',
      'Ants are a condition of the advice, not a factor of the forecast.',
      from.wyss1999,
    ],
    [
      'E22',
      'amblyseius-swirskii',
      'pepper with swirskii and Orius: thrips under threshold',
      'two seasons of three',
      thripsNotFollowed,
      from.farkas2016,
    ],
    [
      'E24',
      'orius-laevigatus',
      'one bug to 180 thrips in pepper flowers suppresses, one to 40 ends it in days',
      'within a factor of 2',
      thripsNotFollowed,
      from.funderburk2000,
    ],
    [
      'E29',
      'coccinella-septempunctata',
      'three ladybirds on 150 pea aphids: held for about 6 days, then growth',
      'in this order',
      'The pea aphid has no record, and no place can release this ladybird.',
      from.ladybirdCages,
    ],
  ] as const
).map(
  ([id, species, what, published, notAnswered, source]): Row => ({
    kind: 'open',
    id,
    species,
    what,
    published,
    notAnswered,
    source,
    mark: id === 'E24' ? 'MEM' : 'SEEN',
  }),
);
