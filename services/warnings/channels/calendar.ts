/** The calendar channel: days to keep as an iCalendar feed (RFC 5545). A day keeps its UID while it moves. */
import { randomUUID } from 'node:crypto';
import ical, {
  ICalAlarmType,
  ICalCalendarMethod,
  ICalEventStatus,
  ICalEventTransparency,
} from 'ical-generator';
import { addDays, localDay, type Place } from '../../model/index.ts';
import type { CalendarEntry, Store } from '../../store/store.ts';
import type { Matter } from '../rules/rule.ts';

/** Days gone by stay as long as people look back, cancelled ones until every calendar has heard of it. Judgement. */
const keptDays = 60;
const remindAtHour = 9;

interface Content {
  from: string;
  to: string;
  title: string;
  text: string;
}

/**
 * Brings the kept entries in step with the matters: a new day is added, a moved one gets the next
 * SEQUENCE, one that is no longer wanted is cancelled; what the person closed is no longer wanted.
 */
export function updateCalendar(
  store: Store,
  placeId: string,
  matters: readonly Matter[],
  nowMs: number,
): void {
  const place = store.records.get('place', placeId, placeId)?.data;
  if (place === undefined) return;
  const today = localDay(nowMs, place.timeZone);
  const known = new Map(store.telling.calendar.list(placeId).map((entry) => [entry.uid, entry]));
  const house = store.telling.secret('installation', randomUUID);
  const wanted = new Set<string>();
  for (const { id, days, text } of matters) {
    if (days === undefined || store.warnings.get(placeId, id)?.state === 'closed') continue;
    const uid = `${days.uid}@${placeId}.${house}`;
    wanted.add(uid);
    const { from, to, title } = days;
    keep(
      store,
      { placeId, uid, cancelled: false, nowMs, content: { from, to, title, text } },
      known.get(uid),
    );
  }
  for (const entry of known.values()) {
    if (wanted.has(entry.uid)) continue;
    const content = contentOf(entry);
    if (addDays(content.to, keptDays) < today) store.telling.calendar.remove(placeId, entry.uid);
    else if (content.to >= today) keep(store, { ...entry, cancelled: true, nowMs, content }, entry);
  }
}

function keep(
  store: Store,
  next: { placeId: string; uid: string; cancelled: boolean; nowMs: number; content: Content },
  known: CalendarEntry | undefined,
): void {
  const { placeId, uid, cancelled, nowMs } = next;
  const content = JSON.stringify(next.content);
  if (known?.cancelled === cancelled && known.content === content) return;
  const sequence = known === undefined ? 0 : known.sequence + (isSignificant(known, next) ? 1 : 0);
  store.telling.calendar.save({ placeId, uid, sequence, changedMs: nowMs, cancelled, content });
}

/** Other words alone are no new revision (RFC 5545, 3.8.7.4); another day, title or state is. */
function isSignificant(known: CalendarEntry, next: { cancelled: boolean; content: Content }): boolean {
  const before = contentOf(known);
  const { from, to, title } = next.content;
  return (
    known.cancelled !== next.cancelled || before.from !== from || before.to !== to || before.title !== title
  );
}

const contentOf = (entry: CalendarEntry): Content => JSON.parse(entry.content) as Content;

/** The feed of a place as text/calendar; `address` is where its page is, when that is known. */
export function calendarFeed(place: Place, entries: readonly CalendarEntry[], address?: string): string {
  const calendar = ical({
    name: `glasstide: ${place.name}`,
    prodId: { company: 'glasstide', product: 'days to keep', language: 'EN' },
    method: ICalCalendarMethod.PUBLISH,
    ttl: 3600,
  });
  for (const entry of entries) {
    const { from, to, title, text } = contentOf(entry);
    const event = calendar.createEvent({
      id: entry.uid,
      start: from,
      end: addDays(to, 1),
      allDay: true,
      summary: title,
      description: text,
      sequence: entry.sequence,
      stamp: new Date(entry.changedMs),
      lastModified: new Date(entry.changedMs),
      status: entry.cancelled ? ICalEventStatus.CANCELLED : ICalEventStatus.CONFIRMED,
      transparency: ICalEventTransparency.TRANSPARENT,
      ...(address !== undefined && { url: address }),
    });
    if (!entry.cancelled) {
      event.createAlarm({
        type: ICalAlarmType.display,
        triggerAfter: remindAtHour * 3600,
        description: title,
      });
    }
  }
  return calendar.toString();
}
