/** When a message may leave: quiet hours, one a day, and what is urgent. Hours are of the place. */
import { TZDate } from '@date-fns/tz';
import { addDays, atLocalHour, isoWeekday, localDay } from '../model/index.ts';
import type { TellingSettings, Warning } from '../store/store.ts';

export const defaultSettings: TellingSettings = {
  mailTo: [],
  quietFromHour: 21,
  quietToHour: 7,
  letter: { weekday: 7, hour: 18 },
};

/** End of the quiet hours that run now; undefined when none do. */
export function quietUntil(settings: TellingSettings, timeZone: string, nowMs: number): number | undefined {
  const { quietFromHour: from, quietToHour: to } = settings;
  const hour = new TZDate(nowMs, timeZone).getHours();
  const quiet = from <= to ? hour >= from && hour < to : hour >= from || hour < to;
  if (!quiet) return undefined;
  const today = localDay(nowMs, timeZone);
  return atLocalHour(hour < to ? today : addDays(today, 1), to, timeZone);
}

export interface Moment {
  settings: TellingSettings;
  timeZone: string;
  nowMs: number;
  /** When this target was last told something. */
  lastSentMs: number | undefined;
  /** Whether a letter comes to this target. */
  getsLetter: boolean;
}

/**
 * Whether a message with these warnings may leave now. The day's one message waits for the end of the quiet
 * hours, and on the day of the letter for the letter. Something urgent waits for quiet hours only, and not
 * even for these when its deadline would pass in them.
 */
export function mayLeave(warnings: readonly Warning[], moment: Moment): boolean {
  const { settings, timeZone, nowMs, lastSentMs } = moment;
  const urgent = warnings.filter(({ urgentFromMs }) => urgentFromMs !== undefined && urgentFromMs <= nowMs);
  const quietEnd = quietUntil(settings, timeZone, nowMs);
  if (quietEnd !== undefined) {
    return urgent.some(({ deadlineMs }) => deadlineMs > nowMs && deadlineMs <= quietEnd);
  }
  if (urgent.length > 0) return true;
  const today = localDay(nowMs, timeZone);
  if (lastSentMs !== undefined && localDay(lastSentMs, timeZone) === today) return false;
  return !(moment.getsLetter && letterStillComes(settings, timeZone, nowMs));
}

function letterStillComes({ letter }: TellingSettings, timeZone: string, nowMs: number): boolean {
  if (letter === undefined) return false;
  const today = localDay(nowMs, timeZone);
  return isoWeekday(today) === letter.weekday && nowMs < atLocalHour(today, letter.hour, timeZone);
}

/** Wait after the n-th try in vain: 5 minutes, doubling up to 6 hours. */
export const backOffMs = (attempts: number): number => Math.min(5 * 60_000 * 2 ** attempts, 6 * 3_600_000);
