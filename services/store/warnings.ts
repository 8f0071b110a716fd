import type { Database } from 'better-sqlite3';
import type { Warning, Warnings } from './store.ts';

interface Row extends Omit<Warning, 'putOffUntilMs'> {
  putOffUntilMs: number | null;
}

const columns = 'place as placeId, id, rule, raisedAtMs, deadlineMs, text, state, putOffUntilMs';

export function openWarnings(db: Database): Warnings {
  const save = db.prepare(`
    insert or replace into warning
    values (@placeId, @id, @rule, @raisedAtMs, @deadlineMs, @text, @state, @putOffUntilMs)`);
  const get = db.prepare<[string, string], Row>(`select ${columns} from warning where place = ? and id = ?`);
  const list = db.prepare<[string], Row>(
    `select ${columns} from warning where place = ? order by deadlineMs, id`,
  );

  return {
    save: (warning) => void save.run({ putOffUntilMs: null, ...warning }),
    get(placeId, id) {
      const row = get.get(placeId, id);
      return row && warningOf(row);
    },
    list: (placeId) => list.all(placeId).map(warningOf),
  };
}

function warningOf({ putOffUntilMs, ...rest }: Row): Warning {
  return { ...rest, ...(putOffUntilMs !== null && { putOffUntilMs }) };
}
