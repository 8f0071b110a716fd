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
  daysSeen: 2,
  daysLeft: 60,
  daysSinceParcel: 28,
  waspsPerPest: 0.3,
};

/**
 * Of a pest counted on leaves one leaf with any will do: it is no visitor, mites are fast, and the loss decides. Judgement,
 * on gardens 101 to 104 (docs/advice.md).
 */
const onLeavesAlone = { onLeaves: 1, daysSeen: 1 };

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
  const { onLeaves, daysSeen } = evidence.lastInfested ? onLeavesAlone : rule;
  const enough = (evidence.catchPerTrapWeek ?? 0) >= rule.catchPerTrapWeek || evidence.onLeaves >= onLeaves;
  if (facts.daysLeft < 0) return { fires: false, because: 'season-over' };
  if (!evidence.countedLately) return { fires: false, because: 'no-recent-count' };
  if (!evidence.everSeen) return { fires: false, because: 'not-seen' };
  if (facts.daysSinceParcel !== undefined && facts.daysSinceParcel < rule.daysSinceParcel) {
    return { fires: false, because: 'parcel-at-work' };
  }
  if (!enough) return { fires: false, because: 'too-few' };
  if (evidence.daysSeen < daysSeen) return { fires: false, because: 'seen-once' };
  if (facts.daysLeft < rule.daysLeft) return { fires: false, because: 'late-in-season' };
  if (evidence.waspsPerPest >= rule.waspsPerPest) return { fires: false, because: 'wasps-at-work' };
  return { fires: true };
}

export const daysSince = (release: Release, asOfMs: number): number =>
  (asOfMs - Date.parse(release.time)) / dayMs;
