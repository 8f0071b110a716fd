/** Who comes in from outside: on bought plants, or a few a day through the vents. */
import { factorAt, type Kind } from './biology.ts';
import { type Colony, newInsect } from './colony.ts';
import {
  factorAroundOne,
  normal,
  poisson,
  type Random,
  roundAtRandom,
  stream,
  wholeNumber,
} from './random.ts';
import type { Scenario, Visitors } from './scenario.ts';

/** The visitors of this seed: so much earlier or later, more or fewer, as the scenario allows. */
export function drawVisitors(scenario: Scenario, seed: number): Scenario['visitors'] {
  return scenario.visitors.map((visitors, index): Visitors => {
    const random = stream(seed, `visitors ${index}`);
    const { spreadDays = 0, spreadLog = 0 } = visitors;
    const afterDays = Math.max(0, Math.round(visitors.afterDays + normal(random, 0, spreadDays)));
    const factor = factorAroundOne(random, spreadLog);
    if (visitors.how === 'trickle') return { ...visitors, afterDays, perDay: visitors.perDay * factor };
    const adults = Math.max(1, roundAtRandom(random, visitors.adults * factor));
    return { ...visitors, afterDays, adults, young: roundAtRandom(random, visitors.young * factor) };
  });
}

/** Lets in those who come on a day, counted from 0, with that temperature at the vents. */
export function letVisitorsIn(
  all: Scenario['visitors'],
  house: { colonies: Record<Kind, Colony>; plants: number },
  { day, outdoorC }: { day: number; outdoorC: number },
  random: Random,
) {
  for (const visitors of all) {
    const colony = house.colonies[visitors.kind];
    const adult = colony.biology.stages.length;
    if (visitors.how === 'on-plants') {
      if (day !== visitors.afterDays) continue;
      const { plant } = visitors;
      for (let n = 0; n < visitors.adults; n += 1) arrive(colony, { stage: adult, plant }, random);
      for (let n = 0; n < visitors.young; n += 1)
        arrive(colony, { stage: wholeNumber(random, adult), plant }, random);
      continue;
    }
    const { afterDays, forDays = Number.POSITIVE_INFINITY, perDay } = visitors;
    if (day < afterDays || day >= afterDays + forDays) continue;
    for (let n = poisson(random, perDay * factorAt(colony.biology.activity, outdoorC)); n > 0; n -= 1)
      arrive(colony, { stage: adult, plant: wholeNumber(random, house.plants) }, random);
  }
}

/** One entry, somewhere in the course of its stage. */
export function arrive(colony: Colony, at: { stage: number; plant: number }, random: Random) {
  const winged = at.stage === colony.biology.stages.length;
  colony.insects.push(newInsect(colony, { ...at, lived: random(), winged }, random));
  colony.flows.arrived += 1;
}
