/**
 * Work at hours of the place's own clock. A job is due at one instant of each local day it runs on, so that a
 * clock change neither drops nor doubles it; what was missed while the power was away is caught up once.
 */
import { addDays, atLocalHour, isoWeekday, localDay } from '../model/index.ts';
import type { Jobs } from '../store/store.ts';

export interface Job {
  name: string;
  /** Local hour. One that a clock change skips is the one after it; one that comes twice counts once. */
  hour: number;
  /** ISO weekday; absent: every day. */
  weekday?: number;
}

/** The newest instant, not after `nowMs`, at which the job was due. */
export function lastDueMs({ hour, weekday }: Job, timeZone: string, nowMs: number): number {
  let day = localDay(nowMs, timeZone);
  for (let looked = 0; looked <= 7; looked++) {
    if (weekday === undefined || isoWeekday(day) === weekday) {
      const dueMs = atLocalHour(day, hour, timeZone);
      if (dueMs <= nowMs) return dueMs;
    }
    day = addDays(day, -1);
  }
  throw new RangeError('a job was due in none of eight days');
}

/**
 * The instant for which the job is to run now, if it is. Seen for the first time a job only learns its time:
 * a new house is not told about a week in which it did not exist. `done` is called after the work, so that
 * work that a fault cut short is done again.
 */
export function isDue(
  jobs: Jobs,
  placeId: string,
  job: Job,
  timeZone: string,
  nowMs: number,
): { dueMs: number; done(): void } | undefined {
  const dueMs = lastDueMs(job, timeZone, nowMs);
  const last = jobs.lastDueMs(placeId, job.name);
  const done = () => jobs.done(placeId, job.name, dueMs);
  if (last === undefined) done();
  return last === undefined || last >= dueMs ? undefined : { dueMs, done };
}
