/**
 * Pests and natural enemies as individuals, hour by hour: each has its own pace, its own appointed
 * end and a plant it sits on. No cohorts, no averages: not the forecast's own way of counting.
 */
import { type Biology, degreeDaysPerDay, factorAt, heatHazard, type Kind } from './biology.ts';
import { chance, gammaAround, type Random, roundAtRandom, wholeNumber } from './random.ts';

export interface Insect {
  /** Index into the stages; equal to their number when adult. */
  stage: number;
  plant: number;
  /** Own speed of development around 1. */
  pace: number;
  /** Reading of the colony's clock at the next moult, or at the end of life. */
  readyAt: number;
  /** Dies at `readyAt` instead of moulting. */
  endsThere: boolean;
  /** Sum of heat hazards it bears. */
  bears: number;
  /** Lays eggs from this reading of the clock; never for males. */
  laysFrom: number;
  winged: boolean;
}

export interface Colony {
  kind: Kind;
  biology: Biology;
  insects: Insect[];
  /** Degree-days and heat hazard lived through so far. */
  clock: number;
  heat: number;
  /** How many real insects each entry stands for; doubles when there are too many to follow. */
  weight: number;
  /** Entries ever, by way in or out; what is present is what came in less what went out. */
  flows: Record<
    'arrived' | 'born' | 'died' | 'left' | 'trapped' | 'eaten' | 'parasitised' | 'merged',
    number
  >;
}

/** What the garden is like for the insects in this hour. */
export interface Setting {
  temperatureC: number;
  daylight: boolean;
  plants: number;
  /** Insects a plant carries before they are crowded, by kind. */
  crowdedAt: number;
  /** Hazard of being caught by each trap, per adult and hour in full flight, by plant. */
  trapHazard: readonly (readonly number[])[];
  /** Factor on offspring: host plant for a pest, food of the last day for an enemy. */
  offspringFactor: (plant: number) => number;
  /** Hazard per hour of dying for want of food, by plant. */
  hungerHazard: (plant: number) => number;
}

const mostEntries = 30_000;

export function newColony(kind: Kind, biology: Biology): Colony {
  const flows = { arrived: 0, born: 0, died: 0, left: 0, trapped: 0, eaten: 0, parasitised: 0, merged: 0 };
  return { kind, biology, insects: [], clock: 0, heat: 0, weight: 1, flows };
}

/** A newcomer that has just entered `stage`, or is `lived` (0 to 1) through it. */
export function newInsect(
  colony: Colony,
  at: { stage: number; plant: number; lived?: number; winged?: boolean },
  random: Random,
): Insect {
  const insect: Insect = {
    stage: at.stage,
    plant: at.plant,
    pace: gammaAround(random, 1, 0.06),
    readyAt: colony.clock,
    endsThere: false,
    bears: colony.heat - Math.log(1 - random()),
    laysFrom: Number.POSITIVE_INFINITY,
    winged: at.winged ?? false,
  };
  enterStage(colony, insect, random);
  insect.readyAt -= (at.lived ?? 0) * (insect.readyAt - colony.clock);
  return insect;
}

/** Appoints the end of the stage just begun, which for some is the end of life. */
function enterStage(colony: Colony, insect: Insect, random: Random) {
  const { stages, preovipositionDegreeDays, femaleShare, adultLifeDegreeDays, adultLifeCv } = colony.biology;
  const stage = stages[insect.stage];
  const begunAt = insect.readyAt;
  if (stage) {
    insect.endsThere = !chance(random, stage.survival);
    const needed = gammaAround(random, stage.degreeDays * insect.pace, stage.cv);
    insect.readyAt = begunAt + (insect.endsThere ? random() : 1) * needed;
  } else {
    insect.endsThere = true;
    insect.readyAt = begunAt + gammaAround(random, adultLifeDegreeDays, adultLifeCv);
    if (chance(random, femaleShare)) insect.laysFrom = begunAt + preovipositionDegreeDays * insect.pace;
  }
}

export const isAdult = (colony: Colony, insect: Insect) => insect.stage === colony.biology.stages.length;

/** Entries on each plant that satisfy `which`. */
export function countByPlant(colony: Colony, plants: number, which: (insect: Insect) => boolean): number[] {
  const counts = new Array<number>(plants).fill(0);
  for (const insect of colony.insects) if (which(insect)) counts[insect.plant]! += 1;
  return counts;
}

/** One hour of one colony; returns how many each trap caught. */
export function liveOneHour(colony: Colony, setting: Setting, random: Random): number[] {
  const { biology, flows } = colony;
  colony.clock += degreeDaysPerDay(biology, setting.temperatureC) / 24;
  colony.heat += heatHazard(biology, setting.temperatureC);
  const activity = setting.daylight ? factorAt(biology.activity, setting.temperatureC) : 0;
  const offspringPerHour = (biology.offspringPerDay / 24) * factorAt(biology.fecundity, setting.temperatureC);
  const crowding = countByPlant(colony, setting.plants, (insect) =>
    colony.kind === 'aphid' ? true : isAdult(colony, insect),
  ).map((entries) => (entries * colony.weight) / setting.crowdedAt);
  const caught = setting.trapHazard.map(() => 0);
  const born: Insect[] = [];

  const stays = (insect: Insect): boolean => {
    if (!grows(colony, insect, random) || chance(random, setting.hungerHazard(insect.plant))) {
      flows.died += 1;
      return false;
    }
    if (!isAdult(colony, insect)) return true;
    const x = crowding[insect.plant]!;
    if (colony.clock >= insect.laysFrom) {
      const offspring = (offspringPerHour * setting.offspringFactor(insect.plant)) / (1 + x);
      for (let n = roundAtRandom(random, offspring); n > 0; n -= 1) {
        const winged = colony.kind === 'aphid' && chance(random, (0.5 * x) / (1 + x));
        born.push(newInsect(colony, { stage: 0, plant: insect.plant, winged }, random));
      }
    }
    if (activity === 0 || (colony.kind === 'aphid' && !insect.winged)) return true;
    const trap = setting.trapHazard.findIndex((hazard) => chance(random, activity * hazard[insect.plant]!));
    if (trap !== -1) {
      caught[trap]! += colony.weight;
      flows.trapped += 1;
      return false;
    }
    if (chance(random, (activity * 0.012 * x) / (1 + x))) {
      flows.left += 1;
      return false;
    }
    wander(colony, insect, activity, setting.plants, random);
    return true;
  };
  colony.insects = colony.insects.filter(stays);
  flows.born += born.length;
  for (const insect of born) colony.insects.push(insect);
  mergeWhenTooMany(colony, random);
  return caught;
}

/** Moults what is due; false at the end of life. */
function grows(colony: Colony, insect: Insect, random: Random): boolean {
  if (colony.heat >= insect.bears) return false;
  while (colony.clock >= insect.readyAt) {
    if (insect.endsThere) return false;
    insect.stage += 1;
    enterStage(colony, insect, random);
  }
  return true;
}

/** Mostly to a neighbour, now and then across the house. Wasps and winged aphids move more than mites. */
function wander(colony: Colony, insect: Insect, activity: number, plants: number, random: Random) {
  const perHour = { whitefly: 0.015, aphid: 0.05, swirskii: 0.01, encarsia: 0.06 }[colony.kind];
  if (!chance(random, activity * perHour)) return;
  const step = chance(random, 0.2) ? wholeNumber(random, plants) : chance(random, 0.5) ? 1 : plants - 1;
  insect.plant = (insect.plant + step) % plants;
}

function mergeWhenTooMany(colony: Colony, random: Random) {
  if (colony.insects.length <= mostEntries) return;
  const before = colony.insects.length;
  colony.insects = colony.insects.filter(() => chance(random, 0.5));
  colony.weight *= 2;
  colony.flows.merged += before - colony.insects.length;
}
