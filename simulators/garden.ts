/**
 * The virtual garden: weather outdoors and the house a quarter of an hour at a time, its insects a day at a time
 * with every hour of that day.
 */
import type { Treatment } from '../services/model/index.ts';
import { drawBiology, type EnemyKind, enemyKinds, type Kind, kinds, type PestKind } from './biology.ts';
import { type Cards, hangCards, showToCards } from './cards.ts';
import { type Colony, entriesFor, type Insect, newColony, newInsect } from './colony.ts';
import type { Hour } from './day.ts';
import { type HouseState, relativeHumidityPct, saturationHPa, stepHouse } from './glasshouse.ts';
import { type Hazards, hazardsOf, type Scene } from './hunting.ts';
import { liveOneDay, type Setting } from './insects.ts';
import { chance, factorAroundOne, normal, type Random, stream } from './random.ts';
import type { Scenario } from './scenario.ts';
import { forEachKind, species } from './species.ts';
import { newTruth, type Truth, writeDay } from './truth.ts';
import { arrive, drawVisitors, letVisitorsIn } from './visitors.ts';
import { wash } from './washing.ts';
import { type WeatherHour, weather } from './weather.ts';

export const quarterMs = 900_000;
const hourMs = 3_600_000;
const dayMs = 24 * hourMs;
const daylightWm2 = 20;
export const leavesPerPlant = 40;
const leafAreaM2PerPlant = 2;

export interface Garden {
  scenario: Scenario;
  seed: number;
  startMs: number;
  timeMs: number;
  weather: WeatherHour[];
  house: HouseState;
  /** Leaves are this much warmer than the air the sensors hang in. */
  canopyC: number;
  plants: number;
  /** How well the crop feeds its pests this week: wanders around 1. */
  condition: number;
  visitors: Scenario['visitors'];
  colonies: Record<Kind, Colony>;
  cards: Cards;
  /** By plant, prey an adult enemy had a day, averaged over the last days. */
  meals: Record<EnemyKind, number[]>;
  residues: { perDay: number; untilMs: number }[];
  /** What the hours of the day so far were like on the leaves. */
  hours: Hour[];
  truth: Truth;
}

export function newGarden(scenario: Scenario, seed: number): Garden {
  const startMs = Date.parse(scenario.startsAt);
  const hours = (Date.parse(scenario.endsAt) - startMs) / hourMs;
  const { plants } = scenario.planting;
  const random = stream(seed, 'garden');
  const meals = forEachKind(() => new Array<number>(plants).fill(0));
  const canopyC = normal(random, 0, 0.5);
  const cards = hangCards(scenario, stream(seed, 'traps'));
  const { k: cardK, wrongPerWeek } = cards;
  return {
    scenario,
    seed,
    startMs,
    timeMs: startMs,
    weather: weather(scenario.climate, startMs, hours + 1, stream(seed, 'weather')),
    house: { airC: scenario.house.heatToC, groundC: scenario.house.heatToC, vapourGm3: 8 },
    canopyC,
    plants,
    condition: 1,
    visitors: drawVisitors(scenario, seed),
    colonies: forEachKind((kind, biology) => newColony(kind, drawBiology(biology, stream(seed, kind)))),
    cards,
    meals,
    residues: [],
    hours: [],
    truth: newTruth({ startMs, areaM2: scenario.place.areaM2, plants, cardK, wrongPerWeek }),
  };
}

export const outdoorsNow = (garden: Garden): WeatherHour => {
  const hour = Math.floor((garden.timeMs - garden.startMs) / hourMs);
  return garden.weather[Math.min(hour, garden.weather.length - 1)]!;
};

/** What a perfect thermometer in the house would read. */
export const truthNow = (garden: Garden) => ({
  airC: garden.house.airC,
  humidityPct: relativeHumidityPct(garden.house),
  globalWm2: outdoorsNow(garden).globalWm2,
});

/** Days of the season that have passed. */
export const daysPassed = (garden: Garden) => Math.floor((garden.timeMs - garden.startMs) / dayMs);

/** Moves the garden on by a quarter of an hour; the insects live by whole days. */
export function stepGarden(garden: Garden) {
  const { state } = stepHouse(garden.scenario.house, garden.house, outdoorsNow(garden), quarterMs / 1000);
  garden.house = state;
  garden.timeMs += quarterMs;
  if ((garden.timeMs - garden.startMs) % hourMs !== 0) return;
  garden.hours.push(hourNow(garden));
  if (garden.hours.length < 24) return;
  liveOneDayTogether(garden);
  garden.hours = [];
}

function hourNow(garden: Garden): Hour {
  const temperatureC = garden.house.airC + garden.canopyC;
  return {
    temperatureC,
    daylight: outdoorsNow(garden).globalWm2 > daylightWm2,
    deficitHPa: saturationHPa(garden.house.airC) * (1 - relativeHumidityPct(garden.house) / 100),
  };
}

/** A stream for each kind and day: what happens to one changes nothing that is drawn for another. */
const todays = (garden: Garden, what: string): Random => stream(garden.seed, `${what} ${daysPassed(garden)}`);

function liveOneDayTogether(garden: Garden) {
  const { colonies, hours, plants } = garden;
  const day = daysPassed(garden) - 1;
  letVisitorsIn(
    garden.visitors,
    garden,
    { day, outdoorC: outdoorsNow(garden).outdoorC },
    todays(garden, 'visitors'),
  );
  const change = factorAroundOne(todays(garden, 'condition'), 0.06);
  garden.condition = garden.condition ** 0.93 * change;
  garden.residues = garden.residues.filter(({ untilMs }) => untilMs > garden.timeMs);
  const scene: Scene = { plants, leafAreaM2PerPlant, hours };
  const hunts = enemyKinds.flatMap((by) => {
    const hazards = hazardsOf(colonies[by], (kind) => colonies[kind], scene);
    return hazards ? [{ by, hazards }] : [];
  });
  const food = new Map(enemyKinds.map((kind) => [kind, new Array<number>(plants).fill(0)]));
  for (const kind of kinds) {
    const colony = colonies[kind];
    const fedBefore = { hunts, onTaken: takenBy(garden, colony, food) };
    liveOneDay(colony, settingOf(garden, kind, fedBefore), todays(garden, kind));
  }
  for (const kind of enemyKinds) digest(garden, kind, food.get(kind)!);
  showToCards(garden.cards, colonies, hours);
  writeDay(garden.truth, colonies);
}

interface Hunts {
  hunts: readonly { by: EnemyKind; hazards: Hazards }[];
  onTaken: Setting['taken'];
}

function settingOf(garden: Garden, kind: Kind, { hunts, onTaken }: Hunts): Setting {
  const { plants, hours, scenario } = garden;
  const threats = hunts.flatMap(({ by, hazards }) => {
    const hazard = hazards[kind as PestKind];
    return hazard ? [{ by, hazard }] : [];
  });
  const poison = garden.residues.reduce((sum, { perDay }) => Math.max(sum, perDay), 0);
  const { diet, onCards } = garden.colonies[kind].biology;
  const common = { hours, plants, threats, taken: onTaken, poison };
  const cards = onCards > 0 ? { cards: garden.cards.hazardByPlant.map((hazard) => hazard * onCards) } : {};
  if (!diet) {
    const factor = scenario.hostFactor * garden.condition;
    return { ...common, ...cards, offspringFactor: () => factor };
  }
  const meals = garden.meals[kind as EnemyKind];
  const fed = (plant: number) =>
    diet.needPerDay === 0
      ? 1
      : Math.min(1, diet.pollenCovers * scenario.pollen + meals[plant]! / diet.needPerDay);
  return {
    ...common,
    ...cards,
    offspringFactor: fed,
    starving: (plant) => diet.starvesPerDay * (1 - fed(plant)),
    leaving: (plant) => diet.leavesPerDay * (1 - fed(plant)) + (diet.wandersOffPerDay ?? 0),
  };
}

/** A wasp's victims carry her young from now on, but for the 0.28 of scales that Encarsia feeds on; others are food. */
function takenBy(garden: Garden, prey: Colony, food: Map<Kind, number[]>): Setting['taken'] {
  const random = todays(garden, `taken ${prey.kind}`);
  return (by, victim: Insect) => {
    const hunters = garden.colonies[by];
    if (hunters.biology.diet?.how === 'eats') {
      food.get(by)![victim.plant]! += prey.weight;
      return;
    }
    if (by === 'encarsia' && chance(random, 0.28)) return;
    for (let n = entriesFor(hunters, prey.weight, random); n > 0; n -= 1) {
      hunters.flows.born += 1;
      hunters.insects.push(newInsect(hunters, { stage: 0, plant: victim.plant }, random));
    }
  };
}

/** Running mean of prey eaten per appetite and day, by plant; half of it is today's. */
function digest(garden: Garden, kind: EnemyKind, food: readonly number[]) {
  const colony = garden.colonies[kind];
  if (colony.insects.length === 0) return;
  const { appetite } = colony.biology.diet!;
  const mouths = new Array<number>(garden.plants).fill(0);
  for (const { plant, stage } of colony.insects) mouths[plant]! += (appetite[stage] ?? 0) * colony.weight;
  garden.meals[kind] = garden.meals[kind].map(
    (before, plant) => 0.5 * before + (0.5 * food[plant]!) / Math.max(1, mouths[plant]!),
  );
}

/** Lets natural enemies go, evenly over the plants, in the stage in which they are sold. */
export function releaseEnemies(garden: Garden, kind: EnemyKind, number: number, aliveShare: number) {
  const random = todays(garden, `release ${kind}`);
  const colony = garden.colonies[kind];
  const entries = entriesFor(colony, number * aliveShare, random);
  const { stage } = species[kind].enemy!;
  for (let n = 0; n < entries; n += 1) arrive(colony, { stage, plant: n % garden.plants }, random);
  // Those out of a parcel have eaten.
  const { needPerDay } = colony.biology.diet!;
  garden.meals[kind] = garden.meals[kind].map((meals) => Math.max(meals, 0.5 * needPerDay));
}

/** Washes or sprays the house. */
export function washGarden(garden: Garden, spray: Pick<Treatment, 'kind' | 'coveredShare'>) {
  const { perDay, days } = wash(garden.colonies, spray, todays(garden, 'wash'));
  if (days > 0) garden.residues.push({ perDay, untilMs: garden.timeMs + days * dayMs });
}
