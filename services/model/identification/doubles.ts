/** Where the key ends with two, what to look for; some pairs cannot be told apart, and that is said. */
import type { Kind } from './kind.ts';

interface Double {
  pair: readonly [one: string, other: string];
  lookFor: string;
}
export const doubles: readonly Double[] = [
  {
    pair: ['glasshouse-whitefly', 'tobacco-whitefly'],
    lookFor:
      'On a leaf: a gap between steep wings speaks for tobacco whitefly, flat wings without a gap for glasshouse whitefly. In glue the two cannot be told apart: count whitefly.',
  },
  {
    pair: ['ladybird', 'mealybug-ladybird'],
    lookFor: 'Orange at both ends of a plain dark beetle, or spots?',
  },
  { pair: ['aphid', 'winged-aphid'], lookFor: 'Wings longer than the body, or none?' },
  {
    pair: ['ladybird-larva', 'lacewing-larva'],
    lookFor: 'Two sickle jaws in front: lacewing. None to be seen: ladybird. Both are friends.',
  },
  {
    pair: ['hoverfly-larva', 'midge-larva'],
    lookFor:
      'Orange and under 3.5 mm beside shrunken black aphids: midge. Longer, with a pointed head end: hoverfly. Both are friends.',
  },
  {
    pair: ['spider-mite', 'winter-mite'],
    lookFor: 'Two dark patches, or red without any? Either way it is the pest, unless it runs.',
  },
  {
    pair: ['mealybug', 'mealybug-ladybird-larva'],
    lookFor: 'A short, even fringe: mealybug. Shaggy, uneven curls, and it walks when touched: the friend.',
  },
  {
    pair: ['ladybird-pupa', 'hoverfly-pupa'],
    lookFor:
      'An old skin hangs at the base: ladybird. A smooth drop without one: hoverfly. Both are friends.',
  },
  {
    pair: ['red-runner', 'pale-runner'],
    lookFor: 'Orange-red in the web of spider mites, or pale in vein corners and flowers? Both are friends.',
  },
  { pair: ['thrips', 'thrips-larva'], lookFor: 'Fringed wings along the back, or none?' },
  {
    pair: ['whitefly-wasp', 'aphid-wasp'],
    lookFor:
      'No longer than a comma, black in front and yellow behind: of the whitefly. 2 to 3 mm with long antennae: of the aphids. Both are friends.',
  },
  {
    pair: ['fungus-gnat', 'aphid-midge'],
    lookFor: 'A vein like a Y in the wing: fungus gnat. Beaded antennae and no Y: aphid midge, a friend.',
  },
  { pair: ['shore-fly', 'leaf-miner'], lookFor: 'Pale spots on the wings, or a yellow patch on the back?' },
  {
    pair: ['orius-adult', 'flower-bug'],
    lookFor:
      'Under 3 mm with a white diamond: Orius. 3 to 5 mm and glossy all over: Anthocoris. Both are friends.',
  },
  {
    pair: ['winged-aphid', 'orius-adult'],
    lookFor: 'Wings longer than the body and two tubes, or flat with a beak and a white diamond?',
  },
  {
    pair: ['ant', 'aphid-wasp'],
    lookFor: 'Four clear wings: wasp, a friend. No wings and elbowed antennae: ant.',
  },
  { pair: ['orius-adult', 'orius-nymph'], lookFor: 'Wings, or none? Both are friends.' },
  { pair: ['fungus-gnat', 'shore-fly'], lookFor: 'Long legs and a Y in the wing, or stout with pale spots?' },
  { pair: ['gnat-larva', 'shore-fly-larva'], lookFor: 'A glossy black head, or no head at all?' },
  { pair: ['thrips', 'springtail'], lookFor: 'Fringed wings, or a fork below the tail and no wings?' },
];

/** The one thing to look for when two kinds are left. */
export function lookFor(left: readonly Kind[]): string | undefined {
  if (left.length !== 2) return undefined;
  const ids = left.map(({ id }) => id);
  return doubles.find(({ pair }) => pair.every((id) => ids.includes(id)))?.lookFor;
}
