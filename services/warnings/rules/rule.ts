/** A warning rule: facts in, matters with a deadline out. One rule a file. */
import { addDays, type Season, startOfLocalDay } from '../../model/index.ts';
import type { IssuedForecast, StoredReading, Warning } from '../../store/store.ts';

export interface WarningFacts {
  /** What was entered; readings are left out. */
  season: Season;
  issued: IssuedForecast;
  /** Newest reading of each sensor that ever spoke. */
  latest: StoredReading[];
  /** Everything the sensors said in the last day. */
  lastDay: StoredReading[];
  /** Highest of the air outdoors on a local day, as measured and forecast; undefined where nobody tells. */
  outdoorHighC(day: string): number | undefined;
  /** Whether this matter was raised before and still lasts: who flips with every small change is not heard. */
  lasts(id: string): boolean;
  nowMs: number;
}

/** Something with a deadline. From `opensMs` on it is a warning; before, it only stands in the calendar. */
export interface Matter {
  /** Stays the same while the reason lasts, so that a warning is raised once. */
  id: string;
  opensMs: number;
  deadlineMs: number;
  /** From here on it does not wait for the day's one message; absent: it always waits. */
  urgentFromMs?: number;
  text: string;
  /** Why it is said, in a sentence. */
  reason: string;
  /** What ends it: `Ends when the count is entered.` */
  ends: string;
  /** Its days in the calendar; `uid` stays when they move. */
  days?: { uid: string; from: string; to: string; title: string };
}

/** Why a warning is no longer true: what it asked for was done or is past, or its reason has gone. */
export interface Ending {
  state: 'done' | 'withdrawn';
  text: string;
}

export interface WarningRule {
  id: string;
  matters(facts: WarningFacts): Matter[];
  /** Asked when a warning that was raised is no longer among the matters. */
  ending(warning: Warning, facts: WarningFacts): Ending;
}

export const hourMs = 3_600_000;
export const dayMs = 24 * hourMs;

/** Last millisecond of a local day. */
export const endOfDay = (day: string, timeZone: string): number =>
  startOfLocalDay(addDays(day, 1), timeZone) - 1;

export const done = (text: string): Ending => ({ state: 'done', text });
export const withdrawn = (text: string): Ending => ({ state: 'withdrawn', text });
