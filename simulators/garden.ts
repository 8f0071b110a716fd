/** The virtual garden: weather outdoors, the house, its insects and the cards, a quarter hour at a time. */
import { drawBiology, factorAt, type Kind, published } from './biology.ts';
import { type HouseState, relativeHumidityPct, stepHouse } from './glasshouse.ts';
import { hunt, mitesOnWhitefly, parasitise, waspsOnWhitefly } from './hunting.ts';
import {
  type Colony,
  countByPlant,
  isAdult,
  liveOneHour,
  newColony,
  newInsect,
  type Setting,
} from './insects.ts';
import { chance, factorAroundOne, normal, poisson, type Random, stream, wholeNumber } from './random.ts';
import type { Scenario } from './scenario.ts';
import { type WeatherHour, weather } from './weather.ts';

export const quarterMs = 900_000;
const hourMs = 3_600_000;
const daylightWm2 = 20;
export const leavesPerPlant = 40;
const leafAreaM2PerPlant = 2;

export interface Garden {
  scenario: Scenario;
  timeMs: number;
  weather: WeatherHour[];
  house: HouseState;
  /** Leaves are this much warmer than the air the sensors hang in. */
  canopyC: number;
  plants: number;
  colonies: Record<Kind, Colony>;
  /** By trap, what sticks on the card since it was new. */
  cards: Record<Kind, number>[];
  trapHazard: Record<Kind, number[][]>;
  /** By plant, prey a mite has eaten a day, averaged over the last day. */
  mitesFed: number[];
  random: Random;
}

export function newGarden(scenario: Scenario, seed: number): Garden {
  const startMs = Date.parse(scenario.startsAt);
  const hours = (Date.parse(scenario.endsAt) - startMs) / hourMs;
  const random = stream(seed, 'insects');
  const colony = (kind: Kind) => newColony(kind, drawBiology(published[kind], stream(seed, kind)));
  return {
    scenario,
    timeMs: startMs,
    weather: weather(scenario.climate, startMs, hours + 1, stream(seed, 'weather')),
    house: { airC: scenario.house.heatToC, groundC: scenario.house.heatToC, vapourGm3: 8 },
    canopyC: normal(random, 0, 0.5),
    plants: scenario.planting.plants,
    colonies: {
      whitefly: colony('whitefly'),
      aphid: colony('aphid'),
      swirskii: colony('swirskii'),
      encarsia: colony('encarsia'),
    },
    cards: scenario.traps.map(emptyCard),
    trapHazard: trapHazards(scenario, stream(seed, 'traps')),
    mitesFed: new Array<number>(scenario.planting.plants).fill(0),
    random,
  };
}

export const emptyCard = (): Record<Kind, number> => ({ whitefly: 0, aphid: 0, swirskii: 0, encarsia: 0 });

/**
 * Hazard of being caught per flying adult and hour: about 0.02 a day for one adult per m2 (judgement, no
 * source), a little different for each card, and mostly from the plants beside it. Mites do not fly.
 */
function trapHazards(scenario: Scenario, random: Random): Record<Kind, number[][]> {
  const { plants } = scenario.planting;
  const perHour = (0.02 * factorAroundOne(random, 0.4)) / scenario.place.areaM2 / 12;
  const whitefly = scenario.traps.map((trap) => {
    const nearness = Array.from({ length: plants }, (_, plant) =>
      Math.exp((-4 * Math.abs(plant - trap.plant)) / plants),
    );
    const mean = nearness.reduce((sum, near) => sum + near, 0) / plants;
    const card = perHour * factorAroundOne(random, 0.3);
    return nearness.map((near) => (card * near) / mean);
  });
  const times = (factor: number) => whitefly.map((card) => card.map((hazard) => hazard * factor));
  return { whitefly, aphid: times(8), swirskii: times(0), encarsia: times(2) };
}

export const outdoorsNow = (garden: Garden): WeatherHour => {
  const hour = Math.floor((garden.timeMs - Date.parse(garden.scenario.startsAt)) / hourMs);
  return garden.weather[Math.min(hour, garden.weather.length - 1)]!;
};

/** What a perfect thermometer in the house would read. */
export const truthNow = (garden: Garden) => ({
  airC: garden.house.airC,
  humidityPct: relativeHumidityPct(garden.house),
  globalWm2: outdoorsNow(garden).globalWm2,
});

/** Moves the garden on by a quarter of an hour; the insects live by whole hours. */
export function stepGarden(garden: Garden) {
  const { state } = stepHouse(garden.scenario.house, garden.house, outdoorsNow(garden), quarterMs / 1000);
  garden.house = state;
  garden.timeMs += quarterMs;
  if (garden.timeMs % hourMs === 0) liveOneHourTogether(garden);
}

function liveOneHourTogether(garden: Garden) {
  const { colonies, random } = garden;
  const temperatureC = garden.house.airC + garden.canopyC;
  const daylight = outdoorsNow(garden).globalWm2 > daylightWm2;
  letVisitorsIn(garden);
  const scene = { plants: garden.plants, leafAreaM2PerPlant, temperatureC, daylight };
  const eaten = hunt(mitesOnWhitefly(colonies.swirskii), colonies.swirskii, colonies.whitefly, scene, random);
  colonies.whitefly.flows.eaten += eaten.length;
  feedMites(garden, eaten);
  const found = hunt(waspsOnWhitefly(colonies.encarsia), colonies.encarsia, colonies.whitefly, scene, random);
  parasitise(found, colonies.whitefly, colonies.encarsia, random);
  for (const kind of ['whitefly', 'aphid', 'swirskii', 'encarsia'] as const) {
    if (colonies[kind].insects.length === 0) continue;
    const caught = liveOneHour(colonies[kind], setting(garden, kind, temperatureC, daylight), random);
    caught.forEach((number, trap) => {
      garden.cards[trap]![kind] += number;
    });
  }
}

function setting(garden: Garden, kind: Kind, temperatureC: number, daylight: boolean): Setting {
  const { plants, scenario } = garden;
  const common = { temperatureC, daylight, plants, trapHazard: garden.trapHazard[kind] };
  const adultsPerM2WhenCrowded = 300;
  const crowdedAt = kind === 'aphid' ? 400 : (adultsPerM2WhenCrowded * scenario.place.areaM2) / plants;
  if (kind !== 'swirskii') {
    return { ...common, crowdedAt, offspringFactor: () => scenario.hostFactor, hungerHazard: () => 0 };
  }
  const fed = (plant: number, need: number) => Math.min(1, scenario.pollen + garden.mitesFed[plant]! / need);
  return {
    ...common,
    crowdedAt,
    offspringFactor: (plant) => 0.5 * scenario.pollen + (1 - 0.5 * scenario.pollen) * fed(plant, 7),
    hungerHazard: (plant) => 0.008 * (1 - fed(plant, 2)),
  };
}

/** Running mean over a day of prey eaten per mite and day, by plant. */
function feedMites(garden: Garden, eaten: readonly { plant: number }[]) {
  const mites = garden.colonies.swirskii;
  if (mites.insects.length === 0) return;
  const adults = countByPlant(mites, garden.plants, (mite) => isAdult(mites, mite));
  const meals = new Array<number>(garden.plants).fill(0);
  for (const { plant } of eaten) meals[plant]! += garden.colonies.whitefly.weight;
  garden.mitesFed = garden.mitesFed.map((before, plant) => {
    const each = (24 * meals[plant]!) / Math.max(1, adults[plant]! * mites.weight);
    return before + (each - before) / 24;
  });
}

function letVisitorsIn(garden: Garden) {
  const { random, scenario, colonies } = garden;
  const hoursIn = (garden.timeMs - Date.parse(scenario.startsAt)) / hourMs;
  for (const visitors of scenario.visitors) {
    const colony = colonies[visitors.kind];
    const adult = colony.biology.stages.length;
    if (visitors.how === 'on-plants') {
      if (hoursIn !== visitors.afterDays * 24) continue;
      for (let n = 0; n < visitors.adults; n += 1) arrive(garden, visitors.kind, adult, visitors.plant);
      for (let n = 0; n < visitors.young; n += 1)
        arrive(garden, visitors.kind, wholeNumber(random, adult), visitors.plant);
    } else if (hoursIn >= visitors.afterDays * 24) {
      const flight = factorAt(colony.biology.activity, outdoorsNow(garden).outdoorC);
      for (let n = poisson(random, (visitors.perDay * flight) / 24); n > 0; n -= 1)
        arrive(garden, visitors.kind, adult, wholeNumber(random, garden.plants));
    }
  }
}

function arrive(garden: Garden, kind: Kind, stage: number, plant: number) {
  const colony = garden.colonies[kind];
  const winged = kind === 'aphid' && stage === colony.biology.stages.length;
  const at = { stage, plant, lived: garden.random(), winged };
  colony.insects.push(newInsect(colony, at, garden.random));
  colony.flows.arrived += 1;
}

/** Lets natural enemies go, evenly over the plants: mites as adults, wasps as black scales on cards. */
export function releaseEnemies(
  garden: Garden,
  kind: 'swirskii' | 'encarsia',
  number: number,
  aliveShare: number,
) {
  const stage = kind === 'swirskii' ? garden.colonies.swirskii.biology.stages.length : 1;
  for (let n = 0; n < number; n += 1) {
    if (chance(garden.random, aliveShare)) arrive(garden, kind, stage, n % garden.plants);
  }
}
