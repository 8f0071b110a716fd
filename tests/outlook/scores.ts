/** Errors and coverage of hindcasts, by lead. */
import { coverage, randomisedPlace } from '../../services/model/index.ts';
import { seeded } from '../../services/model/numerics/random.ts';
import type { Said } from './hindcast.ts';

export interface LeadScore {
  leadDays: number;
  days: number;
  rmseC: number;
  yesterdayC: number;
  lastWeekC: number;
}

const rms = (errors: readonly number[]) =>
  Math.sqrt(errors.reduce((sum, error) => sum + error ** 2, 0) / errors.length);

export function byLead(said: readonly Said[], leads: readonly number[]): LeadScore[] {
  return leads.map((leadDays) => {
    const those = said.filter((one) => one.leadDays === leadDays);
    return {
      leadDays,
      days: those.length,
      rmseC: rms(those.map((one) => one.saidC - one.cameC)),
      yesterdayC: rms(those.map((one) => one.yesterdayC - one.cameC)),
      lastWeekC: rms(those.map((one) => one.lastWeekC - one.cameC)),
    };
  });
}

/** Share of days that came within the central range promising `share`, by lead. */
export function covered(said: readonly Said[], share: number): number {
  const random = seeded(1);
  return coverage(
    said.map(({ members, cameC }) => randomisedPlace(members, cameC, random)),
    share,
  );
}
