/**
 * What comes out of the model, as plain data with its schema: the forecast and the advice. The API
 * publishes these schemas, the dashboard draws them, the command prints them.
 */
import { z } from 'zod';
import { followUpSchema } from './followUps.ts';
import { day, enemyId, instant, leafKind, pestId, trapKind } from './season.ts';

/** Ranges by their bounds: 19 of 20 (q025..q975), 8 of 10 (q10..q90), half (q25..q75), middle (q50). */
const range = <T extends z.ZodType>(value: T) =>
  z.object({ q025: value, q10: value, q25: value, q50: value, q75: value, q90: value, q975: value });
export const quantiles = range(z.number());
export const dateRange = range(instant);
export type Quantiles = z.infer<typeof quantiles>;
export type DateRange = z.infer<typeof dateRange>;

/** A thing the tool does not know, in one sentence, with a code for tests and translations. */
export const doubt = z.object({ code: z.string(), text: z.string() });
export type Doubt = z.infer<typeof doubt>;

export const ledgerStage = z.object({
  stage: z.string(),
  neededDegreeDays: z.number(),
  /** Counted from the start of this stage, never above `neededDegreeDays`. */
  soFarDegreeDays: z.number(),
  state: z.enum(['done', 'running', 'ahead']),
  /** When the stage ends: measured when done, otherwise expected, 8 of 10 between q10 and q90. */
  ends: dateRange.optional(),
});
export const ledgerEntry = z.object({
  id: z.string(),
  species: z.union([pestId, enemyId]),
  /** 1 = the generation begun by the start event. */
  generation: z.int(),
  startedAt: instant,
  startedBy: z.enum(['first-catch', 'release', 'previous-generation']),
  lowerThresholdC: z.number(),
  upperThresholdC: z.number().optional(),
  neededDegreeDays: z.number(),
  soFarDegreeDays: z.number(),
  filledHours: z.number(),
  stages: z.array(ledgerStage),
  source: z.string(),
});
export type LedgerEntry = z.infer<typeof ledgerEntry>;

export const forecastWeek = z.object({
  /** End of the seven days of exposure. */
  end: instant,
  /** Predictive, in the unit of the pest (`counted`): comparable with the next count made at this time. */
  count: quantiles,
  adultsPerM2: quantiles,
  youngPerM2: quantiles,
  probabilityOverLimit: z.number(),
});
/**
 * What is counted of a pest, with the person's limit in the same unit. `trap-week`: insects on one whole new trap
 * hung for seven days. `ten-leaves`: leaves with any, of ten looked under, for a pest that never comes to traps.
 */
export const countedAs = z.discriminatedUnion('unit', [
  z.object({ unit: z.literal('trap-week'), kind: trapKind, limit: z.number() }),
  z.object({ unit: z.literal('ten-leaves'), kind: leafKind, limit: z.number() }),
]);
export type CountedAs = z.infer<typeof countedAs>;

export const pestForecast = z.object({
  pest: pestId,
  counted: countedAs,
  /** Weeks already past, as the model sees them, newest last: drawn behind the counts. */
  past: z.array(forecastWeek),
  weeks: z.array(forecastWeek),
  /** The expected count passes the limit at some time between now and `by`. */
  passesLimit: z.object({ probability: z.number(), by: instant, when: dateRange.optional() }),
  /** Chance that the pest is in the house at all. */
  probabilityPresent: z.number(),
  /** When the young of today become adults: next waves of emergence. */
  waves: z.array(z.object({ generation: z.int(), adults: dateRange })),
  enemies: z.array(
    z.object({
      enemy: enemyId,
      /** Active animals a m2 now and at the end of each week ahead. */
      perM2: z.array(z.object({ end: instant, density: quantiles })),
      parasitisedShare: z.array(z.object({ end: instant, share: quantiles })).optional(),
    }),
  ),
  effectiveSampleSize: z.number(),
  /** Share of predictive mass at least as extreme as the last count; small = surprised. Absent before any count. */
  lastCountSurprise: z.number().optional(),
});
export type PestForecast = z.infer<typeof pestForecast>;

export const temperatureDay = z.object({
  day,
  minC: z.number(),
  meanC: z.number(),
  maxC: z.number(),
  filledHours: z.number(),
});
export const outlookDay = z.object({ day, minC: quantiles, meanC: quantiles, maxC: quantiles });

export const forecastSchema = z.object({
  placeId: z.string(),
  asOf: instant,
  seed: z.int(),
  members: z.int(),
  temperature: z.object({ days: z.array(temperatureDay), outlook: z.array(outlookDay) }),
  ledger: z.array(ledgerEntry),
  pests: z.array(pestForecast),
  doubts: z.array(doubt),
});
export type Forecast = z.infer<typeof forecastSchema>;

/** One condition of a release. `cannot-say` is an honest verdict, not a missing one. */
export const condition = z.object({
  rule: z.string(),
  verdict: z.enum(['holds', 'fails', 'cannot-say']),
  text: z.string(),
  source: z.string(),
});
export type Condition = z.infer<typeof condition>;

export const releasePlan = z.object({
  enemy: enemyId,
  form: z.string(),
  number: z.int(),
  perM2: z.number(),
  orderBy: day.optional(),
  arrivesOn: day.optional(),
  windowFrom: day,
  windowTo: day,
  lookOn: day,
  price: z.number().optional(),
  currency: z.string().optional(),
});
export type ReleasePlan = z.infer<typeof releasePlan>;

export const candidate = z.object({
  id: z.string(),
  label: z.string(),
  passesLimit: z.number(),
  weeks: z.array(forecastWeek),
  price: z.number().optional(),
  plan: releasePlan.optional(),
  /** The plants are washed before the parcel of the plan comes. */
  washFirst: z.boolean().optional(),
});
export type Candidate = z.infer<typeof candidate>;

/** Leave it; wash; a parcel now, one later, one now after a wash. */
export const wayKind = z.enum(['leave', 'wash', 'now', 'later', 'wash-then']);
export type WayKind = z.infer<typeof wayKind>;

/** A way that was weighed: money and expected harm on possible seasons, in the currency of the place. */
export const way = z.object({
  id: z.string(),
  /** Absent in advice issued before it was kept. */
  kind: wayKind.optional(),
  label: z.string(),
  /** Money and harm together. */
  expectedLoss: z.number(),
  money: z.number(),
  harm: z.number(),
  /** Weeks over the limit until the end of the season, or of the 30 ahead. */
  weeksOver: z.number(),
  plan: releasePlan.optional(),
});
export type Way = z.infer<typeof way>;

export const decision = z.enum(['leave', 'wait', 'order', 'release', 'top-up', 'wash']);
export const adviceSchema = z.object({
  placeId: z.string(),
  asOf: instant,
  decision,
  /** At most 30 words (look.md, voice). `verb` is its first word or words, drawn on yellow. */
  sentence: z.string(),
  verb: z.string(),
  pest: pestId.optional(),
  /** Chance that the pest passes the limit if left, for the roof of ten panes. */
  chanceIfLeft: z.number().optional(),
  chanceWithPlan: z.number().optional(),
  passesLimitBy: day.optional(),
  plan: releasePlan.optional(),
  /** The plants are to be washed before the parcel of the plan comes. */
  washFirst: z.boolean().optional(),
  /** Every parcel wanted now, also for pests the sentence does not name; absent in advice issued before it was kept. */
  toOrder: z.array(releasePlan.extend({ pest: pestId, washFirst: z.boolean().optional() })).optional(),
  conditions: z.array(condition),
  /** Three reasons in the order a doubter would ask. */
  reasons: z.array(z.string()),
  wouldChange: z.array(z.string()),
  candidates: z.array(candidate),
  /** Every way weighed, the least expected loss first; absent when nothing had to be weighed. */
  ways: z.array(way).optional(),
  /** Id of the way advised; to wait is to leave it until a parcel that comes later. Absent with the ways, and in older advice. */
  wayAdvised: z.string().optional(),
  daysToKeep: z.array(z.object({ day, verb: z.string(), text: z.string(), isNext: z.boolean() })),
  nextCountOn: day,
  doubts: z.array(doubt),
  cautions: z.array(z.string()),
  /** What became of the releases of this season; absent without one, and in advice issued before it was kept. */
  followUp: followUpSchema.optional(),
});
export type Advice = z.infer<typeof adviceSchema>;
