/**
 * The plain rule that decides first whether a parcel is worth thinking about. Measured in closed loop
 * on simulated seasons of an independent insect model; see docs/decisions/0003-first-trigger.md.
 */
import type { Release } from '../season.ts';
import { dayMs } from '../units.ts';
import type { Evidence } from './evidence.ts';

/** Thresholds of the rule; chosen in that closed loop, no published source. */
export const rule = {
  catchPerTrapWeek: 1,
  /** Scales or aphids on leaves count as evidence too, for a pest that traps hardly show. */
  onLeaves: 5,
  /** Of a pest counted on leaves: leaves with any, pooled. One is enough, since the loss decides and mites are fast. Judgement. */
  infestedLeaves: 1,
  daysSeen: 2,
  /** What sits on a leaf is looked at closely, and is no visitor. */
  daysSeenOnLeaves: 1,
  daysLeft: 60,
  daysSinceParcel: 28,
  waspsPerPest: 0.3,
};

export type SilentBecause =
  | 'season-over'
  | 'no-recent-count'
  | 'not-seen'
  | 'parcel-at-work'
  | 'too-few'
  | 'seen-once'
  | 'late-in-season'
  | 'wasps-at-work';
export type Trigger = { fires: true } | { fires: false; because: SilentBecause };

/** Whether the rule fires; when not, the first reason a grower would be told. */
export function trigger(facts: { evidence: Evidence; daysLeft: number; daysSinceParcel?: number }): Trigger {
  const { evidence } = facts;
  const enough =
    (evidence.catchPerTrapWeek ?? 0) >= rule.catchPerTrapWeek ||
    evidence.onLeaves >= (evidence.lastInfested ? rule.infestedLeaves : rule.onLeaves);
  if (facts.daysLeft < 0) return { fires: false, because: 'season-over' };
  if (!evidence.countedLately) return { fires: false, because: 'no-recent-count' };
  if (!evidence.everSeen) return { fires: false, because: 'not-seen' };
  if (facts.daysSinceParcel !== undefined && facts.daysSinceParcel < rule.daysSinceParcel) {
    return { fires: false, because: 'parcel-at-work' };
  }
  if (!enough) return { fires: false, because: 'too-few' };
  const confirmed = evidence.lastInfested ? rule.daysSeenOnLeaves : rule.daysSeen;
  if (evidence.daysSeen < confirmed) return { fires: false, because: 'seen-once' };
  if (facts.daysLeft < rule.daysLeft) return { fires: false, because: 'late-in-season' };
  if (evidence.waspsPerPest >= rule.waspsPerPest) return { fires: false, because: 'wasps-at-work' };
  return { fires: true };
}

export const daysSince = (release: Release, asOfMs: number): number =>
  (asOfMs - Date.parse(release.time)) / dayMs;
