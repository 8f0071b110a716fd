/** What the suggestions for the next season are taken from. */
import type { PestHeld, ReleaseFollowUp } from '../../followUps.ts';
import type { PestForecast } from '../../outcome.ts';
import type { EnemyId, PestId, Season } from '../../season.ts';
import { speciesById } from '../../species/catalogue.ts';

export interface Told {
  season: Season;
  /** First and last day of this season that are known. */
  from: string;
  today: string;
  pests: readonly TellingPest[];
  releases: readonly ReleaseFollowUp[];
  /** Local days of this season on which anything was counted, in time. */
  countDays: readonly string[];
}

export interface TellingPest {
  ahead: PestForecast;
  /** Local days of this season on which it was seen, in time. */
  seenOn: readonly string[];
  held?: PestHeld;
}

export const nameOf = (id: PestId | EnemyId): string => speciesById(id).shortName;

export const oldestFirst = (releases: readonly ReleaseFollowUp[]): ReleaseFollowUp[] =>
  [...releases].sort((a, b) => a.on.localeCompare(b.on));
