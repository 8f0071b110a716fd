/** Kinds of friends whose work in this house is less sure than the possible seasons believe. */
import { huntersOf } from '../population/world.ts';
import type { EnemyId, PestId, Season } from '../season.ts';
import { enemyTraits } from '../species/catalogue.ts';
import { seasonEndMs } from './seasonPath.ts';

/**
 * Share of the possible seasons in which the kinds set out this season do nothing from now on, more of them neither:
 * the weight that "as last time" has in the counts ahead where friends were set out. Judgement (docs/advice.md).
 */
export const friendsFail = 0.3;

/** Kinds set out against a pest in the season that runs; not the one that comes by itself too, since that goes on. */
export function friendsInDoubt({ place, releases }: Season, pest: PestId, asOfMs: number): EnemyId[] {
  const hunters = huntersOf(pest);
  const wild = hunters.find((record) => enemyTraits(record).alsoWild);
  const ends = seasonEndMs(place, asOfMs);
  const isOfThisSeason = (time: string) => seasonEndMs(place, Date.parse(time)) === ends;
  return hunters
    .filter((record) => record !== wild)
    .map(({ id }) => id as EnemyId)
    .filter((enemy) => releases.some((one) => one.enemy === enemy && isOfThisSeason(one.time)));
}
