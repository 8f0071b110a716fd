/**
 * Numbers of the population part that no species record holds: judgements or common practice, none with a source; what
 * is learned from counts gets its spread in inference/prior.ts.
 */

/** Adults leaving a day when fully crowded: judgement, no source (0.3 did as well in trials). */
export const leavingPerDay = 0.15;

/** Escape from parasitoids (k of the negative binomial), chosen on simulated seasons, no source. */
export const escapeK = 1.5;
/** Own clock from which a parasitised host is seen to be one (black scale, mummy): judgement. */
export const visibleFrom = 0.55;
/** Share of its fill of prey at which a predator lays half, where its record knows none: judgement. */
export const halfFedAt = 1 / 8;
/** Share of a day's pollen that a glasshouse offers against the dishes it was measured in: few flowers, judgement. */
export const pollenOffered = 0.2;
/** Hunters a m2 that this pollen keeps; more share it. Judgement, no source. */
export const pollenKeepsPerM2 = 50;
/** Days without food after which a hunter has starved or left on average, where its record knows none: judgement, no source. */
export const starvesInDays = 20;
/** Days over which a breeding sachet empties: common practice, no source. */
export const sachetDays = 21;
/** How steeply eggs fail with dry air: logistic, from 9 in 10 to 1 in 10 over this deficit in kPa. Judgement. */
export const eggFailureWidthKPa = 0.6;
