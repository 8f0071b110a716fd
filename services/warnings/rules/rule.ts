/** A warning rule: facts in, warnings with a deadline out. One rule a file. */
import { addDays, type Place, startOfLocalDay } from '../../model/index.ts';
import type { IssuedForecast, StoredReading } from '../../store/store.ts';

export interface WarningFacts {
  place: Place;
  issued: IssuedForecast;
  sensors: { id: string; name: string }[];
  /** Newest reading of each sensor that ever spoke. */
  latest: StoredReading[];
  nowMs: number;
}

/** `id` stays the same while the reason lasts, so that a warning is raised once. */
export interface RaisedWarning {
  id: string;
  deadlineMs: number;
  text: string;
}

export interface WarningRule {
  id: string;
  raise(facts: WarningFacts): RaisedWarning[];
}

/** Last millisecond of a local day. */
export const endOfDay = (day: string, timeZone: string): number =>
  startOfLocalDay(addDays(day, 1), timeZone) - 1;
