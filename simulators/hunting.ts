/**
 * Enemies meet their prey plant by plant: every hunter finds some, up to what it can handle, and the
 * victims are drawn from those present. Search and handling are judgement: dish values do not scale
 * to plants, and for A. swirskii on whitefly eggs no measured intake was found.
 */
import { factorAt } from './biology.ts';
import { type Colony, countByPlant, type Insect, isAdult, newInsect } from './insects.ts';
import { chance, type Random, roundAtRandom } from './random.ts';

export interface Hunt {
  /** Plant area searched a day by one hunter, m2. */
  searchM2PerDay: number;
  /** Most prey one hunter takes a day. */
  mostPerDay: number;
  onlyByDay: boolean;
  hunts: (hunter: Insect) => boolean;
  isPrey: (prey: Insect) => boolean;
}

/** Mites eat eggs and first instars; at most 15 a day, the ceiling on spider-mite eggs. */
export const mitesOnWhitefly = (mites: Colony): Hunt => ({
  searchM2PerDay: 0.02,
  mostPerDay: 15,
  onlyByDay: false,
  hunts: (hunter) => isAdult(mites, hunter),
  isPrey: (prey) => prey.stage <= 1,
});

/** Wasps use third and fourth instars; 5 a day at 20 degC to 10 at 25. */
export const waspsOnWhitefly = (wasps: Colony): Hunt => ({
  searchM2PerDay: 0.3,
  mostPerDay: 8,
  onlyByDay: true,
  hunts: (hunter) => isAdult(wasps, hunter),
  isPrey: (prey) => prey.stage === 3 || prey.stage === 4,
});

/**
 * Takes one hour's victims out of `prey` and returns them. Holling's disc: found a day =
 * search D / (1 + search D / most), D prey per m2 of the hunter's plant (Holling 1959).
 */
export function hunt(
  rule: Hunt,
  hunters: Colony,
  prey: Colony,
  garden: { plants: number; leafAreaM2PerPlant: number; temperatureC: number; daylight: boolean },
  random: Random,
): Insect[] {
  if (rule.onlyByDay && !garden.daylight) return [];
  const activity = factorAt(hunters.biology.activity, garden.temperatureC);
  const hunting = countByPlant(hunters, garden.plants, rule.hunts);
  const present = countByPlant(prey, garden.plants, rule.isPrey);
  const wanted = hunting.map((animals, plant) => {
    const found = (rule.searchM2PerDay * present[plant]! * prey.weight) / garden.leafAreaM2PerPlant;
    const perHour = (activity * found) / (1 + found / rule.mostPerDay) / 24;
    const taken = roundAtRandom(random, (animals * hunters.weight * perHour) / prey.weight);
    return Math.min(taken, present[plant]!);
  });
  const victims: Insect[] = [];
  prey.insects = prey.insects.filter((insect) => {
    const left = wanted[insect.plant]!;
    if (left === 0 || !rule.isPrey(insect)) return true;
    const taken = chance(random, left / present[insect.plant]!);
    present[insect.plant]! -= 1;
    if (taken) {
      wanted[insect.plant]! -= 1;
      victims.push(insect);
    }
    return !taken;
  });
  return victims;
}

/** Of the scales a wasp finds she feeds on 0.28; the others carry her young from now on. */
export function parasitise(victims: readonly Insect[], prey: Colony, wasps: Colony, random: Random) {
  for (const victim of victims) {
    if (chance(random, 0.28)) prey.flows.eaten += 1;
    else {
      prey.flows.parasitised += 1;
      for (let n = roundAtRandom(random, prey.weight / wasps.weight); n > 0; n -= 1) {
        wasps.flows.born += 1;
        wasps.insects.push(newInsect(wasps, { stage: 0, plant: victim.plant }, random));
      }
    }
  }
}
