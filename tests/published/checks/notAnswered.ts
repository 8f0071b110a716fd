/** Checks that nothing in the tool can answer yet, each with what is missing. */
import type { Row } from './row.ts';
import * as from from './sources.ts';

const mitesNotFollowed =
  'No place follows spider mites yet, and mites are printed a leaf, predators a m2: leaves a m2 and warmth are not.';
const thripsNotFollowed = 'No place follows thrips yet, so no release on them can be simulated.';

export const notAnswered: readonly Row[] = (
  [
    [
      'E13',
      'phytoseiulus-persimilis',
      'roses, 23.9 mites a leaf, 26 persimilis and 24 californicus a m2',
      'controlled',
      mitesNotFollowed,
      from.blumel2002,
    ],
    [
      'E13',
      'phytoseiulus-persimilis',
      'roses, 0.16 mites a leaf, 32 persimilis a m2 alone',
      'lost',
      mitesNotFollowed,
      from.blumel2002,
    ],
    [
      'E13',
      'neoseiulus-californicus',
      'roses, 10.2 mites a leaf, 51 californicus a m2 alone',
      'lost',
      mitesNotFollowed,
      from.blumel2002,
    ],
    [
      'E14',
      'phytoseiulus-persimilis',
      'vine house: prey nearly gone in 5 weeks, predators die out, mites back a month later',
      'in this order',
      mitesNotFollowed,
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
