/**
 * The insects' own numbers, typed here a second time on purpose: the virtual garden shares no file
 * with the forecast, so a slip in one shows against the other. Marks: MEM from memory, DER derived.
 */
import { factorAroundOne, normal, type Random } from './random.ts';

/** Factor by temperature, linear between the points and constant outside. */
export type Curve = readonly (readonly [temperatureC: number, factor: number])[];

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
  offspringPerDay: number;
  fecundity: Curve;
  /** Flying (pests) or searching (enemies) by temperature. */
  activity: Curve;
  /** Hazard of heat per hour: 0 to heatFromC, rising with the square to this at 39 degC. */
  heatFromC: number;
  heatHazardAt39C: number;
}

export type Kind = 'whitefly' | 'aphid' | 'swirskii' | 'encarsia';

export const published: Record<Kind, Biology> = {
  /**
   * Trialeurodes vaporariorum. Base 8.3, 381 degree-days: Osborne 1982, Environ Entomol 11:483; shares of
   * the stages DER from a 21 degC row (8.4, 3.7, 4.7, 4.7, 8.4 d). Survival 0.81 in all, 5 eggs a day and
   * 32 d of life at 20 degC: MEM, tomato, right to a factor of two. Fewer eggs above 24: Xie 2011. No
   * flight at 12.3 degC, less above 25-30: Bonsignore 2015. Damage from an hour at 39: Cui 2008.
   */
  whitefly: {
    stages: [
      { name: 'egg', degreeDays: 107, cv: 0.1, survival: 0.95 },
      { name: 'first', degreeDays: 47, cv: 0.15, survival: 0.92 },
      { name: 'second', degreeDays: 60, cv: 0.15, survival: 0.96 },
      { name: 'third', degreeDays: 60, cv: 0.15, survival: 0.97 },
      { name: 'fourth', degreeDays: 107, cv: 0.1, survival: 0.97 },
    ],
    lowerC: 8.3,
    optimumC: 28,
    zeroC: 35,
    preovipositionDegreeDays: 19,
    adultLifeDegreeDays: 374,
    adultLifeCv: 0.45,
    femaleShare: 0.5,
    offspringPerDay: 5,
    fecundity: [
      [10, 0],
      [20, 1],
      [25, 1],
      [31, 0.1],
      [35, 0],
    ],
    activity: [
      [12.3, 0],
      [20, 1],
      [26, 1],
      [35, 0.3],
    ],
    heatFromC: 33,
    heatHazardAt39C: 0.05,
  },
  /**
   * Aphis gossypii. Base 6.2, 108.9 degree-days birth to adult: Kersting 1999, J Appl Entomol 123:23; four
   * equal instars. Survival 0.81 at 25 degC: Xia 1999. Young in a life 9.8, 58.9, 17.3 at 10, 30, 35 degC
   * (Parajulee 2007) and 59 at 25 on cucumber, spread evenly over 208 degree-days (DER). Adult life: MEM.
   */
  aphid: {
    stages: ['first', 'second', 'third', 'fourth'].map((name) => ({
      name,
      degreeDays: 27.2,
      cv: 0.15,
      survival: 0.95,
    })),
    lowerC: 6.2,
    optimumC: 30,
    zeroC: 36,
    preovipositionDegreeDays: 12,
    adultLifeDegreeDays: 220,
    adultLifeCv: 0.35,
    femaleShare: 1,
    offspringPerDay: 5.3,
    fecundity: [
      [6.2, 0],
      [10, 0.03],
      [15, 0.47],
      [25, 1],
      [30, 1.27],
      [35, 0.3],
      [36, 0],
    ],
    activity: [
      [13, 0],
      [17, 1],
      [30, 1],
      [35, 0],
    ],
    heatFromC: 32,
    heatHazardAt39C: 0.08,
  },
  /**
   * Amblyseius swirskii. Base 11.3, 130 degree-days: Lee & Gillespie 2011, Exp Appl Acarol 53:17 (no
   * growth below 15.5 degC). Half as many eggs on pollen alone. Eggs a day, life: MEM.
   */
  swirskii: {
    stages: [
      { name: 'egg', degreeDays: 33, cv: 0.1, survival: 0.95 },
      { name: 'young', degreeDays: 97, cv: 0.12, survival: 0.85 },
    ],
    lowerC: 11.3,
    optimumC: 31,
    zeroC: 37.4,
    preovipositionDegreeDays: 25,
    adultLifeDegreeDays: 300,
    adultLifeCv: 0.4,
    femaleShare: 0.67,
    offspringPerDay: 1.8,
    fecundity: [
      [13, 0],
      [16, 0.3],
      [22, 1],
      [30, 1],
      [36, 0],
    ],
    activity: [
      [12, 0],
      [16, 0.3],
      [22, 1],
      [32, 1],
      [37, 0],
    ],
    heatFromC: 34,
    heatHazardAt39C: 0.03,
  },
  /**
   * Encarsia formosa in the scale: base 12.8, 189 degree-days, black from 0.55 of it. No search at 15
   * and little at 18 degC: van Roermund & van Lenteren 1995. Life 20 d at 20 degC: MEM, wide.
   */
  encarsia: {
    stages: [
      { name: 'white', degreeDays: 104, cv: 0.08, survival: 0.85 },
      { name: 'black', degreeDays: 85, cv: 0.08, survival: 0.88 },
    ],
    lowerC: 12.8,
    optimumC: 30,
    zeroC: 36,
    preovipositionDegreeDays: 0,
    adultLifeDegreeDays: 144,
    adultLifeCv: 0.4,
    femaleShare: 1,
    offspringPerDay: 0,
    fecundity: [[20, 0]],
    activity: [
      [15, 0],
      [18, 0.15],
      [21, 1],
      [30, 1],
      [36, 0],
    ],
    heatFromC: 35,
    heatHazardAt39C: 0.05,
  },
};

/**
 * The same species as it happens to live in this garden and year: development within about 8 %, eggs
 * within a factor of 1.5, deaths within a third of what was published.
 */
export function drawBiology(species: Biology, random: Random): Biology {
  const pace = factorAroundOne(random, 0.08);
  const deaths = factorAroundOne(random, 0.3);
  return {
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
