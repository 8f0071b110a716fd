import type { Database } from 'better-sqlite3';
import type { GroupCommit } from './groupCommit.ts';
import type { Notes } from './noting.ts';
import type { Arrival, Arrivals } from './store.ts';

/** What arrived lately. Written together with the readings, so that noting costs no wait of its own. */
export function openArrivals(db: Database, group: GroupCommit, notes: Notes): Arrivals {
  const list = db.prepare<[string], Arrival>(`
    select place as placeId, topic, arrivedMs, payloadStart, readAs
    from arrival where place = ? order by number desc`);

  return {
    note(arrival) {
      // A full disk is told by the reading of the same group; this list is only for looking.
      group.write(() => notes.arrival(arrival)).catch(() => undefined);
    },
    list(placeId) {
      group.flush();
      return list.all(placeId);
    },
  };
}
