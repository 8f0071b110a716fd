/** How many of those exposed are attacked in a day. Densities per m2 of ground. */

/** One kind of prey of a hunter: the stages of one attack. */
export interface PreyKind {
  /** Ground searched for it by one hunter in a day at its best temperature, preference included. */
  searchM2PerDay: number;
  /** Most attacks of one hunter in a day on it alone: 1 / handling time. */
  ceilingPerDay: number;
  /** Type III: density at which search is half; 0: type II. */
  halfSearchPerM2: number;
}

/** Search at a density: that of type III falls with the prey (Hassell 1978, from memory). */
export function searchAt({ searchM2PerDay, halfSearchPerM2 }: PreyKind, density: number): number {
  return halfSearchPerM2 === 0 ? searchM2PerDay : (searchM2PerDay * density) / (density + halfSearchPerM2);
}

/**
 * Time a hunter spends on one kind of prey for a unit of time searching: the terms of the disc equation for several
 * kinds (Holling 1959, Can Entomol 91:385; Murdoch 1973, J Appl Ecol 10:335, from memory).
 */
export function handlingTime(search: number, density: number, ceilingPerDay: number): number {
  return (search * density) / ceilingPerDay;
}

/**
 * Attacks a day risked by one of those exposed. `effort` is hunters times their activity; `busy` adds up the handling
 * of all kinds and, where hunters disturb each other, hunters against the number that halves the search (Beddington
 * 1975, J Anim Ecol 44:331, from memory).
 */
export function attackHazard(effort: number, search: number, busy: number): number {
  return (effort * search) / (1 + busy);
}

/**
 * The hazard of wasps whose risk is uneven as an even one: survival (1 + hazard / k)^-k, k small = many hosts escape
 * (May 1978, J Anim Ecol 47:833, from memory). Without escape one parcel of wasps would end the pest.
 */
export function evenHazard(hazard: number, k: number): number {
  return k * Math.log1p(hazard / k);
}

/** Share attacked at a hazard when everybody runs the same risk; never more than all. */
export function shareTaken(hazard: number): number {
  return 1 - Math.exp(-hazard);
}

/** Mean over the day of those exposed against its morning, while a hazard takes from them. */
export function meanLeft(hazard: number): number {
  return hazard < 1e-4 ? 1 - hazard / 2 : shareTaken(hazard) / hazard;
}
