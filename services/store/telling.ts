import type { Database } from 'better-sqlite3';
import { openOutbox } from './outbox.ts';
import type { Calendar, CalendarEntry, Jobs, Phone, Phones, Telling, TellingSettings } from './store.ts';

export function openTelling(db: Database): Telling {
  const settings = db.prepare<[string], { settings: string }>(
    'select settings from tellingSettings where place = ?',
  );
  const keepSettings = db.prepare('insert or replace into tellingSettings values (?, ?)');
  const secret = db.prepare<[string], { value: string }>('select value from secret where name = ?');
  const keepSecret = db.prepare('insert or replace into secret values (?, ?)');

  return {
    settings(placeId) {
      const row = settings.get(placeId);
      return row && (JSON.parse(row.settings) as TellingSettings);
    },
    keepSettings: (placeId, value) => void keepSettings.run(placeId, JSON.stringify(value)),
    outbox: openOutbox(db),
    phones: openPhones(db),
    calendar: openCalendar(db),
    jobs: openJobs(db),
    secret(name, make) {
      const known = secret.get(name)?.value;
      if (known !== undefined) return known;
      const made = make();
      keepSecret.run(name, made);
      return made;
    },
    replaceSecret: (name, value) => void keepSecret.run(name, value),
  };
}

function openPhones(db: Database): Phones {
  const save = db.prepare(`
    insert into phone values (@placeId, @id, @endpoint, @p256dh, @auth, @name, @addedMs)
    on conflict (place, endpoint) do update set p256dh = excluded.p256dh, auth = excluded.auth, name = excluded.name`);
  const list = db.prepare<[string], Phone>(
    'select place as placeId, id, endpoint, p256dh, auth, name, addedMs from phone where place = ? order by addedMs, id',
  );
  const remove = db.prepare('delete from phone where place = ? and id = ?');
  return {
    save: (phone) => void save.run(phone),
    list: (placeId) => list.all(placeId),
    remove: (placeId, id) => void remove.run(placeId, id),
  };
}

function openCalendar(db: Database): Calendar {
  type Row = Omit<CalendarEntry, 'cancelled'> & { cancelled: number };
  const save = db.prepare(
    'insert or replace into calendarEntry values (@placeId, @uid, @sequence, @changedMs, @cancelled, @content)',
  );
  const list = db.prepare<[string], Row>(
    'select place as placeId, uid, sequence, changedMs, cancelled, content from calendarEntry where place = ? order by uid',
  );
  const remove = db.prepare('delete from calendarEntry where place = ? and uid = ?');
  return {
    save: (entry) => void save.run({ ...entry, cancelled: entry.cancelled ? 1 : 0 }),
    list: (placeId) => list.all(placeId).map((row) => ({ ...row, cancelled: row.cancelled === 1 })),
    remove: (placeId, uid) => void remove.run(placeId, uid),
  };
}

function openJobs(db: Database): Jobs {
  const last = db.prepare<[string, string], { dueMs: number }>(
    'select dueMs from job where place = ? and job = ?',
  );
  const done = db.prepare('insert or replace into job values (?, ?, ?)');
  return {
    lastDueMs: (placeId, job) => last.get(placeId, job)?.dueMs,
    done: (placeId, job, dueMs) => void done.run(placeId, job, dueMs),
  };
}
