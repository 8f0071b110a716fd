/**
 * Enemies meet their prey plant by plant. A hunter's bag rises with prey and levels off, most (1 - exp(-search D /
 * most)) a day (Ivlev 1961), is shared over what stands there by preference, and every single prey runs the hazard
 * that follows: so prey are never taken twice and the last ones are hard to find.
 */
import type { Diet, PestKind } from './biology.ts';
import { type Colony, isAdult } from './colony.ts';
import { dayFor, type Hour } from './day.ts';

export interface Scene {
  plants: number;
  leafAreaM2PerPlant: number;
  hours: readonly Hour[];
}

/** Hazards that one enemy lays upon its prey today, by prey: [plant * (stages + 1) + stage]. */
export type Hazards = Partial<Record<PestKind, Float64Array>>;

export function hazardsOf(
  hunters: Colony,
  preyOf: (kind: PestKind) => Colony,
  scene: Scene,
): Hazards | undefined {
  const diet = hunters.biology.diet;
  if (!diet || hunters.insects.length === 0) return undefined;
  const day = dayFor(hunters.biology, scene.hours);
  const activity = diet.onlyByDay ? day.byDay : day.activity;
  if (activity === 0) return undefined;
  const appetite = appetiteByPlant(hunters, diet, scene.plants);
  const prey = Object.entries(diet.prey).map(([kind, preference]) => {
    const colony = preyOf(kind as PestKind);
    return { kind: kind as PestKind, preference, number: numbers(colony, scene.plants, preference.length) };
  });
  const hazards = prey.map(({ number }) => new Float64Array(number.length));
  for (let plant = 0; plant < scene.plants; plant += 1) {
    if (appetite[plant] === 0) continue;
    const liked = prey.reduce((sum, { preference, number }) => {
      const at = plant * preference.length;
      return preference.reduce((before, p, stage) => before + p * number[at + stage]!, sum);
    }, 0);
    if (liked === 0) continue;
    const search = (diet.searchM2PerDay * liked) / scene.leafAreaM2PerPlant;
    const bag = activity * diet.mostPerDay * (1 - Math.exp(-search / diet.mostPerDay));
    const perPrey = (appetite[plant]! * bag) / liked;
    prey.forEach(({ preference }, which) => {
      preference.forEach((p, stage) => {
        hazards[which]![plant * preference.length + stage] = p * perPrey;
      });
    });
  }
  return Object.fromEntries(prey.map(({ kind }, which) => [kind, hazards[which]!]));
}

/** Hunters on each plant, in adults' appetites; of wasps the females. */
function appetiteByPlant(hunters: Colony, diet: Diet, plants: number): Float64Array {
  const appetite = new Float64Array(plants);
  for (const insect of hunters.insects) {
    if (diet.how === 'lays-into' && !(insect.female && isAdult(hunters, insect))) continue;
    appetite[insect.plant]! += (diet.appetite[insect.stage] ?? 0) * hunters.weight;
  }
  return appetite;
}

function numbers(colony: Colony, plants: number, width: number): Float64Array {
  const found = new Float64Array(plants * width);
  for (const insect of colony.insects) found[insect.plant * width + insect.stage]! += colony.weight;
  return found;
}
