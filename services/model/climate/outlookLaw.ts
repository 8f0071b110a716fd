import type { Place } from '../season.ts';

/** The constants of the outlook, chosen on one half of real logs and measured on the other: docs/outlook.md. */
export interface OutlookLaw {
  /** The habit of the house is the mean of this many days. */
  habitDays: number;
  /**
   * What of the last day's departure is left a day later, and how long that lasts, without and with outdoor values.
   * Learning the share from each house gained nothing.
   */
  weather: Spell;
  house: Spell;
  /** How much of the latitude's course of the year a house follows when nothing is known outdoors. */
  seasonSlope: number;
  /** Learning forgets by 1/e in this time. */
  memoryDays: number;
  /** Slopes expected of a house nobody has measured, on outdoor mean, range, warmth over the vents, and sun. */
  priorSlopes: Record<'meanC' | 'hotC' | 'coldC', readonly number[]>;
  /** How far a house may be from them, one sd each. */
  slopeSd: readonly number[];
  /** Above this outdoor afternoon vents open and a house gains less. */
  ventsAboveC: number;
  /** Forecasts are used this far ahead. */
  forecastDays: number;
  /** Spread of daily means by lead without outdoor values: sd times min(1, first + slope x lead). */
  spread: Spread;
  /** Its sd in the open air, which no glass evens out. */
  openAirSdC: number;
  /** The same of the house's response where the air outdoors is given, and of the outdoor forecast itself. */
  responseSpread: Spread;
  forecastErrorC: { first: number; slope: number };
  /** Past errors of the house count as against this many of the law's own. */
  spreadPriorDays: number;
  dailyCorrelation: number;
}

interface Spell {
  share: number;
  lastsDays: number;
}

interface Spread {
  sdC: number;
  first: number;
  slope: number;
}

/** The law for a kind of place. */
export function lawFor(law: OutlookLaw, kind: Place['kind']): OutlookLaw {
  return kind === 'outdoors' ? { ...law, spread: { ...law.spread, sdC: law.openAirSdC } } : law;
}

export const outlookLaw: OutlookLaw = {
  habitDays: 21,
  weather: { share: 0.65, lastsDays: 5 },
  seasonSlope: 0.8,
  house: { share: 0.4, lastsDays: 5 },
  memoryDays: 60,
  priorSlopes: { meanC: [0.5, 0.2, 0, 0], hotC: [0.5, 0.6, 0, 0], coldC: [0.5, -0.2, 0, 0] },
  slopeSd: [0.2, 0.2, 0.2, 1.6],
  ventsAboveC: 18,
  forecastDays: 10,
  spread: { sdC: 2.6, first: 0.6, slope: 0.055 },
  openAirSdC: 3.9,
  responseSpread: { sdC: 1.5, first: 0.65, slope: 0.05 },
  forecastErrorC: { first: 0.8, slope: 0.25 },
  spreadPriorDays: 20,
  dailyCorrelation: 0.8,
};
