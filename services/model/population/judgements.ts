/**
 * Numbers of the population part that no species record holds, each a judgement or common practice; what is
 * learned from counts gets its spread in inference/prior.ts.
 */
import type { EnemyId, PestId } from '../season.ts';

/** Adults per m2 of ground at which laying halves. Whitefly: judgement, no source. Aphids: judgement, higher since they sit closer. */
export const crowdingPerM2: Record<PestId, number> = {
  'trialeurodes-vaporariorum': 300,
  'myzus-persicae': 1500,
  'aphis-gossypii': 1500,
};

/** Adults leaving a day when fully crowded: judgement, no source (0.3 did as well in trials). */
export const leavingPerDay = 0.15;

/**
 * Winged share of adult aphids: a few always, more when crowded (Braendle et al. 2006, Heredity 97:192, from
 * memory, for the direction; the numbers are a judgement). Whitefly all have wings.
 */
export function wingedShare(pest: PestId, crowding: number): number {
  return pest === 'trialeurodes-vaporariorum' ? 1 : 0.03 + (0.3 * crowding) / (1 + crowding);
}

/** Ground one hunter searches in a day: no published source; spread in the prior. */
export const searchM2PerDay: Record<EnemyId, number> = {
  'encarsia-formosa': 0.3,
  'aphidius-colemani': 0.3,
  'amblyseius-swirskii': 0.005,
  'phytoseiulus-persimilis': 0.005,
  'neoseiulus-cucumeris': 0.005,
  'adalia-bipunctata': 0.1,
  'chrysoperla-carnea': 0.05,
};

/** Escape from parasitoids (k of the negative binomial), chosen on simulated seasons, no source. */
export const escapeK = 1.5;
/** Share of attacks by a wasp that also feeds on hosts that end in feeding, from memory for Encarsia. */
export const fedOnShare = 0.28;
/** Own clock from which a parasitised host is seen to be one (black scale, mummy): judgement. */
export const visibleFrom = 0.55;
/** Laying of a predator that lives on pollen alone, against prey in plenty: about half is published for swirskii, fewer flowers here. */
export const pollenFood = 0.1;
/** Hunters a m2 that this pollen keeps; more share it. Judgement, no source. */
export const pollenKeepsPerM2 = 50;
/** Hunting adults without food that leave or starve in a day: judgement, no source. */
export const hungryLeavingPerDay = 0.05;
/** Days over which a breeding sachet empties: common practice, no source. */
export const sachetDays = 21;
