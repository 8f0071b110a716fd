/** How many of those exposed are attacked in a day. Densities per m2 of ground. */

export interface Hunt {
  hunters: number;
  /** Searching and handling by temperature, 0 to 1. */
  activity: number;
  /** Ground searched by one hunter in a day at its best temperature. */
  searchM2PerDay: number;
  /** Most attacks of one hunter in a day at its best temperature: 1 / handling time. */
  ceilingPerDay: number;
  exposed: number;
}

/**
 * Attacks a day risked by one of those exposed: the disc equation a N / (1 + a h N) (Holling 1959, Can Entomol
 * 91:385, from memory) times the hunters, divided by N.
 */
export function attackHazard(hunt: Hunt): number {
  const { hunters, activity, searchM2PerDay, ceilingPerDay, exposed } = hunt;
  return (hunters * activity * searchM2PerDay) / (1 + (searchM2PerDay * exposed) / ceilingPerDay);
}

/** Share eaten when everybody runs the same risk; never more than all. */
export function shareEaten(hazard: number): number {
  return -Math.expm1(-hazard);
}

/**
 * Share attacked when risk is uneven: 1 - (1 + hazard / k)^-k, k small = many hosts escape (May 1978, J Anim
 * Ecol 47:833, from memory). Without escape one parcel of wasps would end the pest.
 */
export function shareParasitised(hazard: number, k: number): number {
  return 1 - (1 + hazard / k) ** -k;
}
