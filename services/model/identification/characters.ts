/** What the key asks, in its order: place, movement, outline, a mark, size. Colour comes last, on the plates. */

export const placesSeen = ['trap', 'leaf', 'colony', 'wool', 'soil'] as const;
export const movements = ['flies', 'runs', 'slow', 'leaps', 'still', 'stuck'] as const;
export const forms = [
  'white-wings',
  'clear-wings',
  'net-wings',
  'striped',
  'gnat',
  'stout-fly',
  'waist',
  'slender',
  'bug',
  'beetle',
  'tapering',
  'mite',
  'pear',
  'maggot',
  'humped',
  'wax',
  'scale',
  'egg',
  'swollen',
  'pupa',
  'ball',
  'skin',
] as const;
export const openings = ['none', 'round', 'slit'] as const;
export const settings = ['hair', 'upright', 'lying'] as const;
/** Bands of body length; `sizesMm` has their limits. */
export const sizes = ['dot', 'pinhead', 'seed', 'long'] as const;
export const sizesMm: Record<(typeof sizes)[number], readonly [from: number, to: number]> = {
  dot: [0, 0.6],
  pinhead: [0.6, 1.5],
  seed: [1.5, 4],
  long: [4, Number.POSITIVE_INFINITY],
};

/** What may be answered to each question. */
export interface Values {
  where: (typeof placesSeen)[number];
  moves: (typeof movements)[number];
  form: (typeof forms)[number];
  opening: (typeof openings)[number];
  setting: (typeof settings)[number];
  size: (typeof sizes)[number];
}
export type CharacterId = keyof Values;
export type Value = Values[CharacterId];

export interface Character<C extends CharacterId = CharacterId> {
  id: C;
  question: string;
  /** How to look, in one line. */
  how: string;
  /** The answer as an almanac line has it: `Where .... under a leaf`. */
  name: string;
  values: Record<Values[C], string>;
}

export const characters: { [C in CharacterId]: Character<C> } = {
  where: {
    id: 'where',
    question: 'Where is it?',
    how: 'The place leaves the fewest to choose from.',
    name: 'Where',
    values: {
      trap: 'on the yellow trap',
      leaf: 'on a leaf, bud or flower',
      colony: 'among aphids',
      wool: 'in white wool, in the leaf joints',
      soil: 'on compost, pots or algae',
    },
  },
  moves: {
    id: 'moves',
    question: 'Watch it for a minute. How does it move?',
    how: 'Tap the plant first, then hold the lens still.',
    name: 'Moves',
    values: {
      flies: 'flies up when the plant is tapped',
      runs: 'walks or runs briskly',
      slow: 'creeps or gropes slowly',
      leaps: 'leaps',
      still: 'not at all',
      stuck: 'stuck in the glue',
    },
  },
  form: {
    id: 'form',
    question: 'Look through the lens. What is it most like?',
    how: 'Outline, legs and wings count; colour misleads most.',
    name: 'Looks',
    values: {
      'white-wings': 'white, floury wings over the body',
      'clear-wings': 'clear wings longer than the body, a dark spot on their front edge',
      'net-wings': 'large wings veined like a net',
      striped: 'striped like a wasp, one pair of wings',
      gnat: 'frail, with long legs, like a mosquito',
      'stout-fly': 'a stout little fly with short antennae',
      waist: 'a narrow waist, long or elbowed antennae',
      slender: 'a splinter, pointed at both ends',
      bug: 'flat, with a pointed head and a beak below it',
      beetle: 'hard, round wing cases',
      tapering: 'long and tapering, six legs in front',
      mite: 'eight legs, hardly more than a dot',
      pear: 'a pear with two tubes at the rear',
      maggot: 'no legs at all',
      humped: 'humped, a fork under its tail',
      wax: 'covered in white wax',
      scale: 'a flat oval disc',
      egg: 'an egg',
      swollen: 'a swollen, papery aphid glued down',
      pupa: 'a dome or drop stuck by its end',
      ball: 'a ball of white silk',
      skin: 'a white, empty skin',
    },
  },
  opening: {
    id: 'opening',
    question: 'Is there a hole in it?',
    how: 'Let the light fall through the leaf from behind.',
    name: 'Hole',
    values: { none: 'none', round: 'a round one', slit: 'a slit like a T, or torn' },
  },
  setting: {
    id: 'setting',
    question: 'How is the egg set?',
    how: 'Look at it from the side.',
    name: 'Set',
    values: {
      hair: 'on the end of a hair',
      upright: 'upright, many together',
      lying: 'small, on the leaf or in web',
    },
  },
  size: {
    id: 'size',
    question: 'How long is it?',
    how: 'Without antennae and wings. A ruler beside it helps.',
    name: 'Length',
    values: {
      dot: 'a dot, under 0.6 mm',
      pinhead: 'a pinhead, 0.6 to 1.5 mm',
      seed: 'a small seed, 1.5 to 4 mm',
      long: 'longer than 4 mm',
    },
  },
};

/** The order of asking; a question that cannot decide anything is left out. */
export const askingOrder: readonly CharacterId[] = ['where', 'moves', 'form', 'opening', 'setting', 'size'];
