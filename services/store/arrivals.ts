import type { Database } from 'better-sqlite3';
import type { GroupCommit } from './groupCommit.ts';
import type { Arrival, Arrivals } from './store.ts';

const keptArrivals = 200;

/** What arrived lately. Written together with the readings, so that noting costs no wait of its own. */
export function openArrivals(db: Database, group: GroupCommit): Arrivals {
  const lastNumber = db.prepare<[string], number>('select max(number) from arrival where place = ?').pluck();
  const insert = db.prepare(
    'insert into arrival values (@placeId, @number, @topic, @arrivedMs, @payloadStart, @readAs)',
  );
  const dropOld = db.prepare('delete from arrival where place = ? and number <= ?');
  const list = db.prepare<[string], Arrival>(`
    select place as placeId, topic, arrivedMs, payloadStart, readAs
    from arrival where place = ? order by number desc`);

  function note(arrival: Arrival): void {
    const number = (lastNumber.get(arrival.placeId) ?? 0) + 1;
    insert.run({ ...arrival, number });
    dropOld.run(arrival.placeId, number - keptArrivals);
  }

  return {
    note(arrival) {
      // A full disk is told by the reading of the same group; this list is only for looking.
      group.write(() => note(arrival)).catch(() => undefined);
    },
    list(placeId) {
      group.flush();
      return list.all(placeId);
    },
  };
}
