/** Pests as growers say them, with where they are seen. The species records hold the rest. */
import { type CountedAs, isCountedOnLeaves, type PestId, type Place } from '../../services/model/index.ts';

interface PestWords {
  name: string;
  /** What it is called on a trap or, never coming to traps, under leaves; of one group a place follows one. */
  group: PestGroup;
  /** It lives in the open only. */
  outdoors?: true;
}
export type PestGroup = 'whitefly' | 'aphid' | 'thrips' | 'leaves';

export const pestWords: Record<PestId, PestWords> = {
  'trialeurodes-vaporariorum': { name: 'whitefly', group: 'whitefly' },
  'bemisia-tabaci': { name: 'tobacco whitefly', group: 'whitefly' },
  'myzus-persicae': { name: 'peach aphids', group: 'aphid' },
  'aphis-gossypii': { name: 'melon aphids', group: 'aphid' },
  'macrosiphum-euphorbiae': { name: 'potato aphids', group: 'aphid' },
  'aulacorthum-solani': { name: 'foxglove aphids', group: 'aphid' },
  'macrosiphum-rosae': { name: 'rose aphids', group: 'aphid', outdoors: true },
  'myzus-cerasi': { name: 'cherry aphids', group: 'aphid', outdoors: true },
  'frankliniella-occidentalis': { name: 'thrips', group: 'thrips' },
  'tetranychus-urticae': { name: 'spider mites', group: 'leaves' },
  'planococcus-citri': { name: 'mealybugs', group: 'leaves' },
};

interface Group {
  group: PestGroup;
  /** Under glass with where it is seen; outdoors no trap hangs. */
  title: string;
  outdoors: string;
  /** A place follows one kind of it. */
  one: boolean;
}
export const pestGroups: readonly Group[] = [
  {
    group: 'whitefly',
    title: 'Whitefly, on yellow traps and under leaves: one kind',
    outdoors: 'Whitefly: one kind',
    one: true,
  },
  {
    group: 'aphid',
    title: 'Aphids, winged on yellow traps and under leaves: one kind',
    outdoors: 'Aphids: one kind',
    one: true,
  },
  { group: 'thrips', title: 'On yellow traps and under leaves', outdoors: 'Thrips', one: false },
  { group: 'leaves', title: 'Under leaves only', outdoors: 'Mites and mealybugs', one: false },
];

const pestIds = Object.keys(pestWords) as PestId[];

/** Pests of a group to choose from; those of the open are offered outdoors, or where they are chosen already. */
export const offeredPests = (group: PestGroup, outdoors: boolean, chosen: readonly PestId[]): PestId[] =>
  pestIds.filter((pest) => {
    const words = pestWords[pest];
    return words.group === group && (outdoors || !words.outdoors || chosen.includes(pest));
  });

/** Chooses a pest or lets go of it; of those that cannot be told apart the last chosen stays. */
export function togglePest(pests: readonly PestId[], pest: PestId): PestId[] {
  if (pests.includes(pest)) return pests.filter((each) => each !== pest);
  const { group } = pestWords[pest];
  const alone = pestGroups.some((each) => each.group === group && each.one);
  return [...pests.filter((each) => !alone || pestWords[each].group !== group), pest];
}

type Unit = CountedAs['unit'];

/** The unit in which a pest is counted. */
export const unitOf = (kind: Place['kind'], pest: PestId): Unit =>
  isCountedOnLeaves({ kind }, pest) ? 'ten-leaves' : 'trap-week';

/** `14 a trap`, `3 of ten leaves`. */
export const perUnit: Record<Unit, string> = { 'trap-week': 'a trap', 'ten-leaves': 'of ten leaves' };

/** `Whitefly on a trap in a week`, `Spider mites: leaves with any, of ten`. */
export const figureTitle = (pest: PestId, unit: Unit): string => {
  const { name } = pestWords[pest];
  const start = name.charAt(0).toUpperCase() + name.slice(1);
  return unit === 'trap-week' ? `${start} on a trap in a week` : `${start}: leaves with any, of ten`;
};
