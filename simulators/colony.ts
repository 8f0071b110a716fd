/**
 * A colony of one species in the garden, insect by insect. Where there are thousands, one entry stands for several.
 */
import type { Biology, Kind } from './biology.ts';
import { chance, logNormalAround, type Random, roundAtRandom } from './random.ts';

export interface Insect {
  /** Index into the stages; equal to their number when adult. */
  stage: number;
  plant: number;
  /** Own speed of development around 1. */
  pace: number;
  /** Readings of the colony's clock at which it was born, and at the next moult or the end of life. */
  bornOnDay: number;
  readyAt: number;
  /** Dies at `readyAt` instead of moulting. */
  endsThere: boolean;
  /** Sum of heat hazards it bears. */
  bears: number;
  /** Clock at its last moult to the adult. */
  adultFrom: number;
  /** Lays eggs from this reading of the clock; never for males and those at rest. */
  laysFrom: number;
  female: boolean;
  winged: boolean;
}

export interface Colony {
  kind: Kind;
  biology: Biology;
  insects: Insect[];
  /** Days, degree-days and heat hazard lived through so far. */
  day: number;
  clock: number;
  heat: number;
  /** How many real insects each entry stands for; doubles when there are too many to follow, halves when few. */
  weight: number;
  /** Entries ever, by way in or out; what is present is what came in less what went out. */
  flows: Record<
    'arrived' | 'born' | 'split' | 'died' | 'left' | 'trapped' | 'taken' | 'washed' | 'merged',
    number
  >;
  /** Real insects that became adult, by day and day of birth. */
  emerged: Map<number, Map<number, number>>;
}

const mostEntries = 5_000;
const fewestEntries = 1_000;

export function newColony(kind: Kind, biology: Biology): Colony {
  const flows = {
    arrived: 0,
    born: 0,
    split: 0,
    died: 0,
    left: 0,
    trapped: 0,
    taken: 0,
    washed: 0,
    merged: 0,
  };
  return { kind, biology, insects: [], day: 0, clock: 0, heat: 0, weight: 1, flows, emerged: new Map() };
}

/** A newcomer that enters `stage` at a reading of the clock (now), or is `lived` (0 to 1) through it. */
export function newInsect(
  colony: Colony,
  at: { stage: number; plant: number; lived?: number; winged?: boolean; clock?: number; rests?: boolean },
  random: Random,
): Insect {
  const insect: Insect = {
    stage: at.stage,
    plant: at.plant,
    pace: logNormalAround(random, 1, 0.06),
    bornOnDay: colony.day,
    readyAt: at.clock ?? colony.clock,
    endsThere: false,
    bears: colony.heat - Math.log(1 - random()),
    adultFrom: Number.POSITIVE_INFINITY,
    laysFrom: Number.POSITIVE_INFINITY,
    female: chance(random, colony.biology.femaleShare),
    winged: at.winged ?? false,
  };
  const enteredAt = insect.readyAt;
  enterStage(colony.biology, insect, random);
  insect.readyAt -= (at.lived ?? 0) * (insect.readyAt - enteredAt);
  return insect;
}

/** Appoints the end of the stage just begun, which for some is the end of life. */
export function enterStage(biology: Biology, insect: Insect, random: Random) {
  const stage = biology.stages[insect.stage];
  const begunAt = insect.readyAt;
  if (stage) {
    insect.endsThere = !chance(random, stage.survival);
    const needed = logNormalAround(random, stage.degreeDays * insect.pace, stage.cv);
    insect.readyAt = begunAt + (insect.endsThere ? random() : 1) * needed;
  } else {
    insect.endsThere = true;
    insect.adultFrom = begunAt;
    insect.readyAt = begunAt + logNormalAround(random, biology.adultLifeDegreeDays, biology.adultLifeCv);
    if (insect.female) insect.laysFrom = begunAt + biology.preovipositionDegreeDays * insect.pace;
  }
}

export const isAdult = (colony: Colony, insect: Insect) => insect.stage === colony.biology.stages.length;

/** Adults that can come to a card: all of those that fly, but of aphids the winged in their first days. */
export function flies(colony: Colony, insect: Insect): boolean {
  const { onCards, flightEndsAfterDegreeDays: ends } = colony.biology;
  if (onCards === 0 || !isAdult(colony, insect)) return false;
  return ends === undefined || (insect.winged && colony.clock < insect.adultFrom + ends);
}

/** Entries on each plant that satisfy `which`. */
export function countByPlant(colony: Colony, plants: number, which: (insect: Insect) => boolean): number[] {
  const counts = new Array<number>(plants).fill(0);
  for (const insect of colony.insects) if (which(insect)) counts[insect.plant]! += 1;
  return counts;
}

/** Halves the entries at random when there are too many; doubles them again when few are left. */
export function keepToSize(colony: Colony, random: Random) {
  const before = colony.insects.length;
  if (before > mostEntries) {
    colony.insects = colony.insects.filter(() => chance(random, 0.5));
    colony.weight *= 2;
    colony.flows.merged += before - colony.insects.length;
  } else if (before < fewestEntries && colony.weight > 1) {
    for (const insect of colony.insects.slice())
      colony.insects.push({ ...insect, bears: colony.heat - Math.log(1 - random()) });
    colony.weight /= 2;
    colony.flows.split += before;
  }
}

/** Real insects as whole entries of a colony, rounded at random. */
export const entriesFor = (colony: Colony, number: number, random: Random) =>
  roundAtRandom(random, number / colony.weight);
