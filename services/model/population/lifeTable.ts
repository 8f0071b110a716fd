/**
 * What a species record promises at constant temperature: one cohort of newborn is followed by the same daily
 * steps as in the forecast, uncrowded; growth then solves the equation of Euler and Lotka (Birch 1948, J Anim
 * Ecol 17:15, from memory).
 */
import type { EnemyTraits, PestTraits, SpeciesRecord } from '../species/record.ts';
import { adultsIn, ageAdults, boxCount, layingAdults, thinAdults } from './adults.ts';
import { adultLife, clockRate } from './clock.ts';
import { addBirths, maturing, noCohorts } from './cohorts.ts';
import { factorAt, heatHazardPerHour } from './dayTables.ts';
import { fedShare } from './enemy.ts';
import { fedOnShare, hungryLeavingPerDay } from './judgements.ts';
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

function birthsByAge(record: LifeTableCase['record'], temperatureC: number): number[] {
  const { development, traits } = record;
  const step = clockRate(development)(temperatureC);
  if (step === 0) return [];
  // The forecast gives natural enemies no time between moult and first egg.
  const wait = traits.kind === 'pest' ? traits.adult.preovipositionDegreeDays : 0;
  const stages = stagesOf(development, wait);
  const cohorts = noCohorts(tabulateStages(stages, wholeCv(development)), standingShares(stages, 1), 1);
  addBirths(cohorts, step / 2, 1);
  const life = adultLife(development, traits.adult.lifeDaysAt20C);
  const recruitShare = traits.kind === 'pest' ? 1 : traits.adult.femaleShare;
  const survival = survivalOf(traits, temperatureC);
  const boxes = new Float64Array(boxCount);
  const births = [0];
  for (let day = 1; day < longestDays; day++) {
    const recruits = maturing(cohorts, day * step, (day + 1) * step) * recruitShare;
    // As in the forecast: pests that mature in a day lay from its middle on, enemies from the next day on.
    const early = traits.kind === 'pest' ? recruits / 2 : 0;
    boxes[0] = boxes[0]! + early;
    births.push(birthsOf(boxes, traits, temperatureC));
    ageAdults(boxes, step, life);
    if (traits.kind === 'enemy') thinAdults(boxes, survival.adults);
    boxes[0] = boxes[0]! + recruits - early;
    if (traits.kind === 'pest') thinAdults(boxes, survival.adults);
    cohorts.number[0] = cohorts.number[0]! * survival.young;
    if (cohorts.first === cohorts.end && adultsIn(boxes) < negligible) break;
  }
  return births;
}

/** Shares that live through a day besides age and the deaths of the stages: heat; predators not wholly fed leave. */
function survivalOf(traits: PestTraits | EnemyTraits, temperatureC: number) {
  if (traits.kind === 'pest') {
    const heat = 24 * heatHazardPerHour(temperatureC, traits.heatFromC, traits.heatHazardAt39C);
    return { adults: Math.exp(-heat), young: Math.exp(-heat) };
  }
  const hungry = isParasitoid(traits) ? 0 : 1 - fed(traits, temperatureC);
  return { adults: Math.exp(-hungryLeavingPerDay * hungry), young: 1 };
}

const isParasitoid = (traits: EnemyTraits) => traits.attacks.some((attack) => attack.kind === 'parasitism');

/** How well fed a predator is that eats as much as it can at this temperature. */
const fed = (traits: EnemyTraits, temperatureC: number) =>
  fedShare(factorAt(traits.activityByTemperature, temperatureC), 1);

/** Births on a day. Predators eat their fill; wasps find as many hosts as they can attack. */
function birthsOf(boxes: Float64Array, traits: PestTraits | EnemyTraits, temperatureC: number): number {
  const { eggsPerDay, fecundityByTemperature, femaleShare } = traits.adult;
  const eggs = layingAdults(boxes) * eggsPerDay * factorAt(fecundityByTemperature, temperatureC);
  if (traits.kind === 'pest') return eggs * femaleShare;
  const main = traits.attacks.find((attack) => attack.kind === 'parasitism');
  if (!main) return eggs * fed(traits, temperatureC);
  const activity = factorAt(traits.activityByTemperature, temperatureC);
  const onHost = traits.attacks.filter((attack) => attack.prey === main.prey);
  const attacks = onHost.reduce((sum, attack) => sum + attack.ceilingPerDay, 0) * activity;
  const feeds = onHost.some((attack) => attack.kind === 'host-feeding');
  return adultsIn(boxes) * attacks * (feeds ? 1 - fedOnShare : 1);
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
