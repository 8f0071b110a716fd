/**
 * Pests and natural enemies as individuals, day by day: each has its own pace, its own appointed end and a plant it
 * sits on. Not the forecast's own way of counting. Where there are thousands, one entry stands for several.
 */
import type { Kind } from './biology.ts';
import {
  type Colony,
  countByPlant,
  enterStage,
  flies,
  type Insect,
  isAdult,
  keepToSize,
  newInsect,
} from './colony.ts';
import { dayFor, type Hour, hatchingShare } from './day.ts';
import { chance, poisson, type Random, wholeNumber } from './random.ts';

/** What the garden is like for the insects of one kind on this day. */
export interface Setting {
  hours: readonly Hour[];
  plants: number;
  /** Factor on offspring by plant: host plant for a pest, food for an enemy. */
  offspringFactor: (plant: number) => number;
  /** Hazards of the day by plant: dying for want of food, leaving for it. */
  starving?: (plant: number) => number;
  leaving?: (plant: number) => number;
  /** Hazard of being taken by each enemy: [plant * (stages + 1) + stage]. */
  threats: readonly { by: Kind; hazard: Float64Array }[];
  /** Told of every one taken. */
  taken: (by: Kind, insect: Insect) => void;
  /** Hazard of sticking to a card in a day of full flight, by plant, all cards together. */
  cards?: readonly number[];
  /** Chance that residue on the leaves ends a life today. */
  poison: number;
}

/** One day of one colony, in place. */
export function liveOneDay(colony: Colony, setting: Setting, random: Random) {
  const { biology, flows } = colony;
  const day = dayFor(biology, setting.hours);
  const clockBefore = colony.clock;
  colony.day += 1;
  colony.clock += day.degreeDays;
  colony.heat += day.heat;
  const adult = biology.stages.length;
  const width = adult + 1;
  const rests = day.daylightHours < (biology.restsBelowDayLengthH ?? 0);
  const hatching = hatchingShare(biology, day.deficitHPa);
  const crowding = crowdingByPlant(colony, setting.plants);
  const total = totalHazard(setting, width);
  const offspringPerDay = biology.offspringPerDay * day.laying;
  const isAphid = biology.flightEndsAfterDegreeDays !== undefined;
  const born: Insect[] = [];

  /** How an entry leaves the garden today, or undefined. */
  const fate = (insect: Insect): 'died' | 'left' | 'trapped' | 'taken' | undefined => {
    const { plant } = insect;
    const threat = total?.[plant * width + insect.stage] ?? 0;
    if (threat > 0 && chance(random, 1 - Math.exp(-threat))) {
      setting.taken(takerOf(setting, plant * width + insect.stage, threat, random), insect);
      return 'taken';
    }
    if (setting.poison > 0 && chance(random, setting.poison)) return 'died';
    lay(insect);
    if (!grows(colony, insect, rests, random)) return 'died';
    if (setting.starving && insect.stage > 0 && chance(random, setting.starving(plant))) return 'died';
    if (insect.stage < adult) return undefined;
    if (setting.cards && flies(colony, insect) && chance(random, day.byDay * setting.cards[plant]!))
      return 'trapped';
    const x = crowding[plant]!;
    if (chance(random, (0.15 * day.byDay * x) / (1 + x))) return 'left';
    if (setting.leaving && chance(random, setting.leaving(plant) * day.activity)) return 'left';
    if (chance(random, biology.movesPerDay * day.activity)) wander(insect, setting.plants, random);
    return undefined;
  };

  /** The young of today, spread over the part of the day in which she lays. */
  const lay = (insect: Insect) => {
    if (colony.clock <= insect.laysFrom || offspringPerDay === 0 || day.degreeDays === 0) return;
    const from = Math.max(insect.laysFrom, clockBefore);
    const to = Math.min(insect.endsThere ? insect.readyAt : Number.POSITIVE_INFINITY, colony.clock);
    if (to <= from) return;
    const x = crowding[insect.plant]!;
    const age = (from - insect.adultFrom) / biology.adultLifeDegreeDays;
    const fades = 1 + biology.layingFades * (0.5 - Math.min(1, age));
    const share = (to - from) / day.degreeDays;
    const mean = (offspringPerDay * fades * share * setting.offspringFactor(insect.plant)) / (1 + x);
    for (let n = poisson(random, mean); n > 0; n -= 1) {
      if (hatching < 1 && !chance(random, hatching)) continue;
      const winged = isAphid && chance(random, (0.5 * x) / (1 + x));
      const clock = from + random() * (to - from);
      born.push(newInsect(colony, { stage: 0, plant: insect.plant, winged, clock }, random));
    }
  };

  colony.insects = colony.insects.filter((insect) => {
    const end = fate(insect);
    if (end) flows[end] += 1;
    return end === undefined;
  });
  flows.born += born.length;
  for (const insect of born)
    if (grows(colony, insect, rests, random)) colony.insects.push(insect);
    else flows.died += 1;
  keepToSize(colony, random);
}

function totalHazard(setting: Setting, width: number): Float64Array | undefined {
  if (setting.threats.length === 0) return undefined;
  const total = new Float64Array(setting.plants * width);
  for (const { hazard } of setting.threats) for (let i = 0; i < total.length; i += 1) total[i]! += hazard[i]!;
  return total;
}

function takerOf(setting: Setting, at: number, total: number, random: Random): Kind {
  let left = random() * total;
  for (const { by, hazard } of setting.threats) {
    left -= hazard[at]!;
    if (left <= 0) return by;
  }
  return setting.threats.at(-1)!.by;
}

/** Crowding x of each plant: insects that count over those a plant carries; 0 for enemies. */
function crowdingByPlant(colony: Colony, plants: number): number[] {
  const { crowdedAtPerPlant, flightEndsAfterDegreeDays } = colony.biology;
  if (!crowdedAtPerPlant) return new Array<number>(plants).fill(0);
  const all = flightEndsAfterDegreeDays !== undefined;
  return countByPlant(colony, plants, (insect) => all || isAdult(colony, insect)).map(
    (entries) => (entries * colony.weight) / crowdedAtPerPlant,
  );
}

/** Moults what is due; false at the end of life. */
function grows(colony: Colony, insect: Insect, rests: boolean, random: Random): boolean {
  if (colony.heat >= insect.bears) return false;
  while (colony.clock >= insect.readyAt) {
    if (insect.endsThere) return false;
    insect.stage += 1;
    enterStage(colony.biology, insect, random);
    if (!isAdult(colony, insect)) continue;
    if (rests) insect.laysFrom = Number.POSITIVE_INFINITY;
    const today = colony.emerged.get(colony.day) ?? new Map<number, number>();
    today.set(insect.bornOnDay, (today.get(insect.bornOnDay) ?? 0) + colony.weight);
    colony.emerged.set(colony.day, today);
  }
  return true;
}

/** Mostly to a neighbour, now and then across the house. */
function wander(insect: Insect, plants: number, random: Random) {
  const step = chance(random, 0.2) ? wholeNumber(random, plants) : chance(random, 0.5) ? 1 : plants - 1;
  insect.plant = (insect.plant + step) % plants;
}
