/**
 * What a species record promises at constant temperature: one cohort of newborn is followed by the same daily
 * steps as in the forecast, uncrowded; growth then solves the equation of Euler and Lotka (Birch 1948, J Anim
 * Ecol 17:15, from memory).
 */
import type { EnemyTraits, PestTraits, SpeciesRecord } from '../species/record.ts';
import { adultsIn, ageAdults, boxCount, layingAdults, thinAdults } from './adults.ts';
import { isParasitoid, mostPerDay } from './attacks.ts';
import { adultLife, clockRate } from './clock.ts';
import { addBirths, growTo, noCohorts, thinYoung } from './cohorts.ts';
import { factorAt, heatHazardPerHour } from './dayTables.ts';
import { stagesOf, standingShares, tabulateStages, wholeCv } from './stages.ts';

export interface LifeTable {
  /** Births of either sex by day of age, for one newborn of either sex. */
  births: readonly number[];
  /** R0: births in a life for one newborn. */
  perGeneration: number;
  /** r a day, and the generation ln R0 / r; absent when nobody gives birth. */
  growthPerDay?: number;
  generationDays?: number;
}

export interface LifeTableCase {
  record: SpeciesRecord;
  temperatureC: number;
  /** On eggs or young, as the forecast takes it from the crop; 1 where nothing is known. */
  hostFactor?: number;
}

const longestDays = 3000;
const negligible = 1e-9;

/** Births, R0, r and generation time at a constant temperature, prey or plants in plenty, nobody crowded. */
export function lifeTable({ record, temperatureC, hostFactor = 1 }: LifeTableCase): LifeTable {
  const births = birthsByAge(record, temperatureC).map((number) => number * hostFactor);
  const perGeneration = births.reduce((sum, number) => sum + number, 0);
  if (!(perGeneration > 0)) return { births, perGeneration: 0 };
  const growthPerDay = eulerLotka(births);
  return { births, perGeneration, growthPerDay, generationDays: Math.log(perGeneration) / growthPerDay };
}

function birthsByAge(record: SpeciesRecord, temperatureC: number): number[] {
  const { development, traits } = record;
  const step = clockRate(development)(temperatureC);
  if (step === 0) return [];
  const stages = stagesOf(development, traits.adult.preovipositionDegreeDays);
  const cohorts = noCohorts(tabulateStages(stages, wholeCv(development)), standingShares(stages, 1), 1);
  // As in the forecast: eggs are laid about the middle of a day, hosts laid into between two days.
  const born = traits.kind === 'enemy' && isParasitoid(traits) ? 0 : 0.5;
  growTo(cohorts, born * step);
  addBirths(cohorts, 0, 1);
  const life = adultLife(development, traits.adult.lifeDaysAt20C);
  const recruitShare = traits.kind === 'pest' ? 1 : traits.adult.femaleShare;
  const kept = traits.kind === 'pest' ? keptInHeat(traits, temperatureC) : 1;
  const boxes = new Float64Array(boxCount);
  const births = [0];
  for (let day = 1; day < longestDays; day++) {
    const recruits = growTo(cohorts, (day + born) * step) * recruitShare;
    boxes[0] = boxes[0]! + recruits / 2;
    ageAdults(boxes, step / 2, life);
    if (born > 0) births.push(birthsOf(boxes, traits, temperatureC));
    ageAdults(boxes, step / 2, life);
    boxes[0] = boxes[0]! + recruits / 2;
    if (born === 0) births.push(birthsOf(boxes, traits, temperatureC));
    thinAdults(boxes, kept);
    thinYoung(cohorts, kept);
    if (cohorts.first === cohorts.end && adultsIn(boxes) < negligible) break;
  }
  return births;
}

/** Share that lives through the heat of a day. */
function keptInHeat({ heatFromC, heatHazardAt39C }: PestTraits, temperatureC: number): number {
  return Math.exp(-24 * heatHazardPerHour(temperatureC, heatFromC, heatHazardAt39C));
}

/** Births on a day. Predators eat their fill; wasps find as many hosts as they can attack. */
function birthsOf(boxes: Float64Array, traits: PestTraits | EnemyTraits, temperatureC: number): number {
  const { eggsPerDay, fecundityByTemperature, femaleShare } = traits.adult;
  const eggs = layingAdults(boxes) * eggsPerDay * factorAt(fecundityByTemperature, temperatureC);
  if (traits.kind === 'pest') return eggs * femaleShare;
  const activity = factorAt(traits.activityByTemperature, temperatureC);
  if (!isParasitoid(traits)) return activity > 0 ? eggs : 0;
  const host = traits.attacks.find((attack) => attack.kind === 'parasitism')!.prey;
  return adultsIn(boxes) * mostPerDay(traits, 'parasitism', host) * activity;
}

/** The r at which births discounted by exp(-r age) add up to 1, by halving; the sum falls with r. */
function eulerLotka(births: readonly number[]): number {
  const sum = (r: number) =>
    births.reduce((total, n, day) => (n > 0 ? total + n * Math.exp(-r * day) : total), 0);
  let [low, high] = [-1, 3];
  for (let i = 0; i < 60; i++) {
    const middle = (low + high) / 2;
    if (sum(middle) > 1) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}
