import type { Database } from 'better-sqlite3';
import type { GroupCommit } from './groupCommit.ts';

export const hourMs = 3_600_000;

/** Remembers hours whose readings changed and rolls each up again once, just before COMMIT. */
export interface Rollups {
  touch(place: number, sensor: number, timeMs: number): void;
}

/**
 * An hour is worked out afresh from its readings, never added to: a running sum would depend on
 * the order of arrival in its last digits. Hours are UTC hours, so a clock change moves nothing.
 */
export function openRollups(db: Database, group: GroupCommit): Rollups {
  const touched = new Map<string, [place: number, sensor: number, hour: number]>();
  const drop = db.prepare('delete from hour where place = ? and sensor = ? and hour = ?');
  const rollUp = db.prepare(`
    insert into hour
    select place, sensor, ?,
      count(*) filter (where doubt is null),
      avg(temperatureC) filter (where doubt is null),
      min(temperatureC) filter (where doubt is null),
      max(temperatureC) filter (where doubt is null),
      count(*) filter (where doubt is not null)
    from reading where place = ? and sensor = ? and time >= ? and time < ?
    group by place, sensor
    having count(*) filter (where doubt is null) > 0`);

  group.beforeCommit(() => {
    for (const [place, sensor, hour] of touched.values()) {
      drop.run(place, sensor, hour);
      rollUp.run(hour, place, sensor, hour, hour + hourMs);
    }
    touched.clear();
  });

  return {
    touch(place, sensor, timeMs) {
      const hour = Math.floor(timeMs / hourMs) * hourMs;
      touched.set(`${place} ${sensor} ${hour}`, [place, sensor, hour]);
    },
  };
}
