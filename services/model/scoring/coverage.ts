/**
 * How often ranges hold what they promise. For counts the place of an observation in its distribution is drawn
 * between P(X < y) and P(X <= y) (randomised probability integral transform, Czado, Gneiting & Held 2009,
 * Biometrics 65:1254): closed ranges of small counts would flatter.
 */
import type { Random } from '../numerics/random.ts';

/** Place of a count among weighted members, uniform on [0, 1] when the forecast is right. */
export function randomisedPlace(
  members: ArrayLike<number>,
  observed: number,
  random: Random,
  weights?: ArrayLike<number>,
): number {
  let [total, below, equal] = [0, 0, 0];
  for (let i = 0; i < members.length; i++) {
    const weight = weights?.[i] ?? 1;
    total += weight;
    if (members[i]! < observed) below += weight;
    else if (members[i]! === observed) equal += weight;
  }
  if (!(total > 0)) throw new RangeError('a place needs at least one member with weight');
  return (below + random() * equal) / total;
}

/** Share of places inside the central range that promises `share`. */
export function coverage(places: readonly number[], share: number): number {
  if (places.length === 0) throw new RangeError('coverage needs at least one place');
  const outside = (1 - share) / 2;
  return places.filter((place) => place >= outside && place <= 1 - outside).length / places.length;
}
