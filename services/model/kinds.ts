/**
 * The names of the season: which pests and natural enemies there are, and what a person can tell apart on a trap and
 * under a leaf. Plain names: the pages use them without the parser.
 */
export const pestIds = [
  'trialeurodes-vaporariorum',
  'bemisia-tabaci',
  'myzus-persicae',
  'aphis-gossypii',
  'macrosiphum-euphorbiae',
  'aulacorthum-solani',
  'macrosiphum-rosae',
  'myzus-cerasi',
  'frankliniella-occidentalis',
  'tetranychus-urticae',
  'planococcus-citri',
] as const;
/** Natural enemies that are sold and released. */
export const enemyIds = [
  'amblyseius-swirskii',
  'phytoseiulus-persimilis',
  'neoseiulus-cucumeris',
  'neoseiulus-californicus',
  'amblyseius-andersoni',
  'encarsia-formosa',
  'eretmocerus-eremicus',
  'aphidius-colemani',
  'aphidius-ervi',
  'aphelinus-abdominalis',
  'adalia-bipunctata',
  'chrysoperla-carnea',
  'aphidoletes-aphidimyza',
  'macrolophus-pygmaeus',
  'orius-laevigatus',
  'delphastus-catalinae',
  'cryptolaemus-montrouzieri',
] as const;
/** Natural enemies that come by themselves. */
export const visitorIds = [
  'coccinella-septempunctata',
  'episyrphus-balteatus',
  'anthocoris-nemoralis',
] as const;
export type PestId = (typeof pestIds)[number];
export type EnemyId = (typeof enemyIds)[number];
export type VisitorId = (typeof visitorIds)[number];
export type SpeciesId = PestId | EnemyId | VisitorId;

/** What a person can tell apart on a yellow trap. Aphids on a trap are winged ones. */
export const trapKinds = ['whitefly', 'aphid', 'thrips', 'small-wasp', 'unknown'] as const;
export type TrapKind = (typeof trapKinds)[number];

/** What a person can tell apart under a leaf, pests and signs of natural enemies. */
export const leafKinds = [
  'whitefly-adult',
  'whitefly-scale',
  'black-scale',
  'aphid',
  'mummy',
  'spider-mite',
  'thrips',
  'mealybug',
  'predatory-mite',
  'ladybird-larva',
  'lacewing-larva',
] as const;
export type LeafKind = (typeof leafKinds)[number];

/**
 * Pests that the eye cannot tell apart on a trap or under a leaf (`seen` of their records): a place follows one of
 * each group.
 */
export const lookAlikes: readonly { pests: readonly PestId[]; why: string }[] = [
  {
    pests: ['trialeurodes-vaporariorum', 'bemisia-tabaci'],
    why: 'choose one whitefly: the two cannot be told apart on a trap by eye',
  },
  {
    pests: [
      'myzus-persicae',
      'aphis-gossypii',
      'macrosiphum-euphorbiae',
      'aulacorthum-solani',
      'macrosiphum-rosae',
      'myzus-cerasi',
    ],
    why: 'choose one aphid species: winged aphids on a trap cannot be told apart by eye',
  },
];

/** Pests that never come to a trap. */
export const neverOnTraps: readonly PestId[] = ['tetranychus-urticae', 'planococcus-citri'];

/**
 * Whether a pest is counted in leaves of ten: those never on traps, and outdoors all of them, since a sticky trap in
 * the open catches birds and bats.
 */
export const isCountedOnLeaves = ({ kind }: { kind: string }, pest: PestId): boolean =>
  kind === 'outdoors' || neverOnTraps.includes(pest);

/** Whether leaf checks alone tell of the pests that are followed. */
export const isLeavesOnly = (place: { kind: string; pests: readonly PestId[] }): boolean =>
  place.pests.length > 0 && place.pests.every((pest) => isCountedOnLeaves(place, pest));

/** What is still fine where the person set no limit, a trap and week and of ten leaves: judgement. */
export const usualLimits = { 'trap-week': 10, 'ten-leaves': 3 } as const;
