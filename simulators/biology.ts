/**
 * What the virtual garden knows of a species, and how one garden and year differ from print. The numbers stand in
 * pests.ts and enemies.ts, typed a second time on purpose: the garden shares no file with the forecast, so a slip
 * in one shows against the other.
 */
import type { PestId, Release } from '../services/model/index.ts';
import { factorAroundOne, normal, type Random } from './random.ts';

/** Factor by temperature, linear between the points and constant outside. */
export type Curve = readonly (readonly [temperatureC: number, factor: number])[];

export const pestKinds = ['whitefly', 'aphid', 'peachAphid', 'thrips', 'spiderMite'] as const;
export const enemyKinds = [
  'encarsia',
  'swirskii',
  'cucumeris',
  'orius',
  'aphidius',
  'ladybird',
  'persimilis',
  'californicus',
] as const;
export type PestKind = (typeof pestKinds)[number];
export type EnemyKind = (typeof enemyKinds)[number];
export type Kind = PestKind | EnemyKind;
/** Prey and hosts are eaten before the eaters live their own day. */
export const kinds: readonly Kind[] = [...pestKinds, ...enemyKinds];

export interface Biology {
  /** Stages before the adult; degree-days above lowerC, cv and share surviving of each. */
  stages: readonly { name: string; degreeDays: number; cv: number; survival: number }[];
  lowerC: number;
  optimumC: number;
  zeroC: number;
  preovipositionDegreeDays: number;
  adultLifeDegreeDays: number;
  adultLifeCv: number;
  femaleShare: number;
  /** Mean over the adult life, at the best temperature. */
  offspringPerDay: number;
  /** How much of it is lost from the first to the last day, in a straight line; 0 when even. */
  layingFades: number;
  fecundity: Curve;
  /** Flying (pests) or searching (enemies) by temperature. */
  activity: Curve;
  /** Hazard of heat per hour: 0 to heatFromC, rising with the square to this at 39 degC. */
  heatFromC: number;
  heatHazardAt39C: number;
  /** Chance a day of moving to another plant in full activity. */
  movesPerDay: number;
  /** On yellow cards, against a whitefly; 0 for those that do not fly. */
  onCards: number;
  /** Females that mature in shorter days rest and lay nothing. */
  restsBelowDayLengthH?: number;
  /** Vapour pressure deficit at which half the eggs fail. */
  eggsFailAtHPa?: number;
  /** Pests: insects a plant carries before they are crowded (aphids of all ages, else adults). */
  crowdedAtPerPlant?: number;
  /** Degree-days of adult life after which a winged one flies no more. */
  flightEndsAfterDegreeDays?: number;
  diet?: Diet;
}

/** How an enemy meets its prey. */
export interface Diet {
  how: 'eats' | 'lays-into';
  /** Preference by stage of the prey, the adult last. */
  prey: Partial<Record<PestKind, readonly number[]>>;
  /** Leaf area searched a day by one adult, and the most prey it takes: judgement unless said. */
  searchM2PerDay: number;
  mostPerDay: number;
  onlyByDay: boolean;
  /** Appetite of each own stage against the adult's; the adult last. */
  appetite: readonly number[];
  /** Meals a day that keep an adult laying to the full; a wasp needs none. */
  needPerDay: number;
  /** Share of that need that a crop full of pollen covers. */
  pollenCovers: number;
  /** Without any food: hazard of dying a day, and of flying or walking off. */
  starvesPerDay: number;
  leavesPerDay: number;
  /** Adults that fly off whatever they find. */
  wandersOffPerDay?: number;
}

export interface Species {
  biology: Biology;
  pest?: PestId;
  enemy?: {
    id: Release['enemy'];
    /** As sold, in the words of the season file, and the stage that comes out of the parcel. */
    form: string;
    stage: number;
  };
}

/**
 * The same species as it happens to live in this garden and year: development within about 8 %, eggs
 * within a factor of 1.5, deaths within a third of what was published, search within a factor of 1.6.
 */
export function drawBiology(species: Biology, random: Random): Biology {
  const pace = factorAroundOne(random, 0.08);
  const deaths = factorAroundOne(random, 0.3);
  const drawn = {
    ...species,
    stages: species.stages.map((stage) => ({
      ...stage,
      degreeDays: stage.degreeDays * pace,
      survival: stage.survival ** deaths,
    })),
    lowerC: species.lowerC + normal(random, 0, 0.4),
    adultLifeDegreeDays: species.adultLifeDegreeDays * factorAroundOne(random, 0.25),
    offspringPerDay: species.offspringPerDay * factorAroundOne(random, 0.35),
    heatHazardAt39C: species.heatHazardAt39C * factorAroundOne(random, 0.6),
  };
  if (species.crowdedAtPerPlant)
    drawn.crowdedAtPerPlant = species.crowdedAtPerPlant * factorAroundOne(random, 0.5);
  if (species.diet)
    drawn.diet = {
      ...species.diet,
      searchM2PerDay: species.diet.searchM2PerDay * factorAroundOne(random, 0.5),
      mostPerDay: species.diet.mostPerDay * factorAroundOne(random, 0.25),
    };
  return drawn;
}

/** Degree-days gained a day: the published line to the optimum, then falling with the square to nothing. */
export function degreeDaysPerDay(species: Biology, temperatureC: number): number {
  const line = Math.max(0, Math.min(temperatureC, species.optimumC) - species.lowerC);
  const over = Math.max(0, temperatureC - species.optimumC) / (species.zeroC - species.optimumC);
  return line * Math.max(0, 1 - over ** 2);
}

/** Hazard of heat per hour. */
export function heatHazard(species: Biology, temperatureC: number): number {
  const over = Math.max(0, temperatureC - species.heatFromC) / (39 - species.heatFromC);
  return species.heatHazardAt39C * over ** 2;
}

export function factorAt(curve: Curve, temperatureC: number): number {
  const above = curve.findIndex(([pointC]) => pointC >= temperatureC);
  if (above === 0) return curve[0]![1];
  if (above === -1) return curve.at(-1)![1];
  const [lowC, low] = curve[above - 1]!;
  const [highC, high] = curve[above]!;
  return low + ((high - low) * (temperatureC - lowC)) / (highC - lowC);
}
