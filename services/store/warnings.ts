import type { Database } from 'better-sqlite3';
import type { Warning, Warnings } from './store.ts';

interface Row extends Omit<Warning, 'putOffUntilMs' | 'urgentFromMs' | 'ended'> {
  putOffUntilMs: number | null;
  urgentFromMs: number | null;
  ended: string | null;
}

const columns =
  'place as placeId, id, rule, raisedAtMs, deadlineMs, text, reason, ends, urgentFromMs, state, putOffUntilMs, ended';

export function openWarnings(db: Database): Warnings {
  const save = db.prepare(`
    insert or replace into warning
      (place, id, rule, raisedAtMs, deadlineMs, text, reason, ends, urgentFromMs, state, putOffUntilMs, ended)
    values
      (@placeId, @id, @rule, @raisedAtMs, @deadlineMs, @text, @reason, @ends, @urgentFromMs, @state,
       @putOffUntilMs, @ended)`);
  const get = db.prepare<[string, string], Row>(`select ${columns} from warning where place = ? and id = ?`);
  const list = db.prepare<[string], Row>(
    `select ${columns} from warning where place = ? order by deadlineMs, id`,
  );

  return {
    save: (warning) => void save.run({ putOffUntilMs: null, urgentFromMs: null, ended: null, ...warning }),
    get(placeId, id) {
      const row = get.get(placeId, id);
      return row && warningOf(row);
    },
    list: (placeId) => list.all(placeId).map(warningOf),
  };
}

function warningOf({ putOffUntilMs, urgentFromMs, ended, ...rest }: Row): Warning {
  return {
    ...rest,
    ...(putOffUntilMs !== null && { putOffUntilMs }),
    ...(urgentFromMs !== null && { urgentFromMs }),
    ...(ended !== null && { ended }),
  };
}
