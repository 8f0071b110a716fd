/** The pest through one day: it ages, lays, comes, leaves and suffers from heat. Insects per m2 of ground. */
import { adultsIn, ageAdults, boxCount, layingAdults, thinAdults } from './adults.ts';
import {
  addBirths,
  type Cohorts,
  growTo,
  inStage,
  noCohorts,
  standingNumber,
  takeFromStages,
  thinYoung,
} from './cohorts.ts';
import { dayValue } from './dayTables.ts';
import { leavingPerDay } from './judgements.ts';
import { standingShares } from './stages.ts';
import type { TakenByTreatment } from './treatments.ts';
import type { PestWorld } from './world.ts';

/** Everything that differs between members about one pest. */
export interface PestParameters {
  speed: number;
  eggsPerDay: number;
  /** On the hazards of the young, on adult life, on the hazard of heat. */
  hazardFactor: number;
  lifeFactor: number;
  heatFactor: number;
  crowdingPerM2: number;
  /** The first come on this day, and others from then on; Infinity = never. */
  arrivalDay: number;
  startingPerM2: number;
  /** Insects of all ages that come at once on the first day, on bought plants. */
  arrivingPerM2: number;
  immigrantsPerDay: number;
  /** The last to come by themselves come on this day; Infinity = they never cease. */
  lastArrivalDay: number;
  /** Once fewer than this are left of all ages, they are gone; 0 = fractions of an insect live on. */
  goneBelowPerM2: number;
  /** Ground that one sticky card empties of flying adults a day. */
  qM2PerDay: number;
  /** exp of it multiplies the recruits of that week. */
  weeklyDisturbance: Float64Array;
}

export interface PestState {
  world: PestWorld;
  parameters: PestParameters;
  cohorts: Cohorts;
  /** Laying adults by age. */
  boxes: Float64Array;
  hasArrived: boolean;
  /** Enough were there to be gone one day. */
  isThere: boolean;
}

/** The pest as it is at the start. */
export function startPest(world: PestWorld, parameters: PestParameters, days: number): PestState {
  const standing = standingShares(world.table.stages, parameters.hazardFactor);
  const cohorts = noCohorts(world.table, standing, days + 2 * broughtAges.length);
  const boxes = new Float64Array(boxCount);
  const pest = { world, parameters, cohorts, boxes, hasArrived: false, isThere: false };
  bring(pest, parameters.startingPerM2);
  return pest;
}

const broughtAges = [0.9, 0.7, 0.5, 0.3, 0.1];

/** Insects on a plant that is brought in: 0.3 of them adult, the rest of all ages (judgement). */
function bring({ cohorts, boxes }: PestState, perM2: number): void {
  if (perM2 === 0) return;
  for (const age of broughtAges) {
    addBirths(cohorts, cohorts.clock - age, (0.7 * perM2) / broughtAges.length);
  }
  for (let box = 0; box < boxCount; box++) boxes[box] = boxes[box]! + (0.3 * perM2) / boxCount;
}

/** All adults, those not yet laying included. */
export function adultsOf({ world, cohorts, boxes }: PestState): number {
  return adultsIn(boxes) + inStage(cohorts, world.table.stages.length - 1);
}

/** A day without hunters and sprays, at a position of the temperature grid. */
export function passPestDay(pest: PestState, day: number, position: number): void {
  const { world, parameters: p, cohorts, boxes } = pest;
  const step = dayValue(world.clockPerDay, day, position) * p.speed;
  const week = Math.min(Math.floor(day / 7), p.weeklyDisturbance.length - 1);
  const middle = cohorts.clock + step / 2;
  const matured = growTo(cohorts, cohorts.clock + step) * Math.exp(p.weeklyDisturbance[week]!);
  const recruits = world.resting?.[day] === 1 ? 0 : matured;
  const flight = dayValue(world.flight, day, position);
  const areComing = day >= p.arrivalDay && day <= p.lastArrivalDay;
  const coming = recruits + (areComing ? p.immigrantsPerDay * flight : 0);
  // Those who come in a day come at its middle on average: half before laying and ageing, half after.
  boxes[0] = boxes[0]! + coming / 2;
  const life = world.life * p.lifeFactor;
  ageAdults(boxes, step / 2, life);
  const crowding = adultsIn(boxes) / p.crowdingPerM2;
  const eggsPerDay = p.eggsPerDay * dayValue(world.fecundity, day, position);
  const births = (layingAdults(boxes) * world.traits.adult.femaleShare * eggsPerDay) / (1 + crowding);
  ageAdults(boxes, step / 2, life);
  boxes[0] = boxes[0]! + coming / 2;
  const heat = dayValue(world.heatPerDay, day, position) * p.heatFactor;
  const caught = (world.cardsPerM2?.[day] ?? 0) * p.qM2PerDay * flight * wingedShare(world, crowding);
  thinAdults(boxes, Math.exp(-heat - caught - (leavingPerDay * crowding) / (1 + crowding)));
  if (heat > 0) thinYoung(cohorts, Math.exp(-heat));
  addBirths(cohorts, middle, births);
  if (day >= p.arrivalDay && !pest.hasArrived) {
    pest.hasArrived = true;
    bring(pest, p.arrivingPerM2);
  }
}

/** At the end of a day: whether the last of them is gone. Those that come later start anew. */
export function endIfGone(pest: PestState): void {
  const { parameters, cohorts, boxes } = pest;
  const adults = adultsIn(boxes);
  if (adults >= parameters.goneBelowPerM2 || adults + standingNumber(cohorts) >= parameters.goneBelowPerM2) {
    pest.isThere = true;
  } else if (pest.isThere) {
    pest.isThere = false;
    thinAdults(boxes, 0);
    thinYoung(cohorts, 0);
  }
}

/** Winged share of the adults: a few always, more when crowded (Braendle et al. 2006, Heredity 97:192, from memory, for the direction). */
export function wingedShare({ traits }: PestWorld, crowding: number): number {
  const { winged } = traits;
  return winged === undefined
    ? 1
    : winged.always + ((winged.crowded - winged.always) * crowding) / (1 + crowding);
}

/** Takes what a treatment takes of eggs, young and adults. */
export function treatPest({ world, cohorts, boxes }: PestState, taken: TakenByTreatment): void {
  const shares = Float64Array.from(world.table.stages, ({ name }) =>
    name === 'egg' ? taken.eggs : name === 'waiting' ? taken.adults : taken.young,
  );
  takeFromStages(cohorts, shares);
  thinAdults(boxes, 1 - taken.adults);
}
