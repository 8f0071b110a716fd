/** What became of releases, as plain data with its schema; part of the advice (docs/advice.md). */
import { z } from 'zod';
import { day, enemyId, pestId } from './season.ts';

/** 8 of 10 possible seasons lie between `q10` and `q90`. */
const span = z.object({ q10: z.number(), q50: z.number(), q90: z.number() });
export type Span = z.infer<typeof span>;

/** When and what to look for. Too early to tell before `from`; from `surelyBy` on, finding none tells as well. */
export const look = z.object({
  lookFor: z.string(),
  from: day,
  surelyBy: day,
  /** After it they can no longer be found, whether they have settled or not. */
  until: day.optional(),
  /** By their development in the warmth of this house, or by the usual number of days where that is not known. */
  by: z.enum(['development', 'usual-days']),
});
export type Look = z.infer<typeof look>;

export const settlement = z.enum(['too-early', 'settled', 'not-settled', 'cannot-say']);
export type Settlement = z.infer<typeof settlement>;

/** One pest with and without a release, in the same possible seasons. */
export const effect = z.object({
  pest: pestId,
  verdict: z.enum(['helped', 'hardly', 'cannot-say', 'too-early']),
  /** Chance that at least a third fewer were there since it than would have been, the forecast's own doubt included. */
  chanceClearlyFewer: z.number(),
  /** Expected count of this week, in the unit of the pest. */
  countNow: z.object({ with: span, without: span }),
  /** Weeks over the limit that it spared until now, and may spare in the weeks ahead. */
  weeksSpared: z.object({ soFar: span, ahead: span }),
  text: z.string(),
});
export type Effect = z.infer<typeof effect>;

export const releaseFollowUp = z.object({
  releaseId: z.string(),
  enemy: enemyId,
  number: z.int(),
  on: day,
  /** Pests of the place that it hunts. */
  against: z.array(pestId),
  look,
  settlement,
  /** Why, in sentences: leaf checks, sightings, traps, what the forecast makes of all counts. */
  evidence: z.array(z.string()),
  next: z.object({ what: z.enum(['look', 'wait', 'top-up', 'stop']), on: day.optional(), text: z.string() }),
  effects: z.array(effect),
  /** Its own price, or its share of the order that paid for it. */
  money: z.number().optional(),
});
export type ReleaseFollowUp = z.infer<typeof releaseFollowUp>;

/** What was spent against a pest this season, and what it held. */
export const pestHeld = z.object({
  pest: pestId,
  releases: z.int(),
  /** A release against several pests of the place is shared evenly among them. */
  money: z.number(),
  unpriced: z.int(),
  weeks: z.int(),
  /** Weeks within the limit, as it was and had nothing been released. */
  weeksHeld: z.object({ with: span, without: span }),
  /** Money for a week more within the limit; absent where hardly a week was won. */
  moneyPerWeekWon: z.number().optional(),
  text: z.string(),
});
export type PestHeld = z.infer<typeof pestHeld>;

export const suggestion = z.object({ code: z.string(), text: z.string(), evidence: z.string() });
export type Suggestion = z.infer<typeof suggestion>;

export const followUpSchema = z.object({
  /** Of this season, the newest first. */
  releases: z.array(releaseFollowUp),
  pests: z.array(pestHeld),
  /** For next year: empty where the season tells too little. */
  nextYear: z.array(suggestion),
  currency: z.string().optional(),
});
export type FollowUp = z.infer<typeof followUpSchema>;
