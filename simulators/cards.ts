/** Sticky cards: whom they draw from which plants, and what is expected on them. */
import { type Kind, kinds } from './biology.ts';
import { type Colony, flies } from './colony.ts';
import { dayFor, type Hour } from './day.ts';
import { factorAroundOne, type Random } from './random.ts';
import type { Scenario } from './scenario.ts';
import { forEachKind } from './species.ts';

export interface Cards {
  /** By trap and plant: hazard of one whitefly of being caught in twelve hours of full flight. */
  hazard: readonly (readonly number[])[];
  /** All cards together. */
  hazardByPlant: readonly number[];
  /** By trap: catch expected since the card was new, and in the week that is running. */
  expected: Record<Kind, number>[];
  thisWeek: Record<Kind, number>[];
  /** Clumping of the catch, and wrong insects per kind, card and week. */
  k: number;
  wrongPerWeek: number;
}

/**
 * About 0.12 a day for one adult per m2 of ground (judgement, no source: between what trials and growers imply), more
 * or less by house and by card, and mostly from the plants beside it.
 */
export function hangCards(scenario: Scenario, random: Random): Cards {
  const { plants } = scenario.planting;
  const house = (0.12 * factorAroundOne(random, 0.5)) / scenario.place.areaM2;
  const hazard = scenario.traps.map((trap) => {
    const nearness = Array.from({ length: plants }, (_, plant) =>
      Math.exp((-2 * Math.abs(plant - trap.plant)) / plants),
    );
    const mean = nearness.reduce((sum, near) => sum + near, 0) / plants;
    const card = house * factorAroundOne(random, 0.3);
    return nearness.map((near) => (card * near) / mean);
  });
  return {
    hazard,
    hazardByPlant: Array.from({ length: plants }, (_, plant) =>
      hazard.reduce((sum, card) => sum + card[plant]!, 0),
    ),
    expected: scenario.traps.map(emptyCard),
    thisWeek: scenario.traps.map(emptyCard),
    k: 2 * factorAroundOne(random, 0.4),
    wrongPerWeek: scenario.grower.wrongInsects * factorAroundOne(random, 0.5),
  };
}

export const emptyCard = (): Record<Kind, number> => forEachKind(() => 0);

/** A card that is black with insects catches no more: about this many sit on it (judgement). */
const cardFull = 1500;
export const onCardFor = (expected: number) => cardFull * (1 - Math.exp(-expected / cardFull));

/** Adds to what is expected on each card for the day just lived. */
export function showToCards(cards: Cards, colonies: Record<Kind, Colony>, hours: readonly Hour[]) {
  for (const kind of kinds) {
    const colony = colonies[kind];
    if (colony.biology.onCards === 0 || colony.insects.length === 0) continue;
    const flight = dayFor(colony.biology, hours).byDay * colony.biology.onCards * colony.weight;
    if (flight === 0) continue;
    for (const insect of colony.insects) {
      if (!flies(colony, insect)) continue;
      cards.hazard.forEach((card, trap) => {
        const expected = flight * card[insect.plant]!;
        cards.expected[trap]![kind] += expected;
        cards.thisWeek[trap]![kind] += expected;
      });
    }
  }
}
