/** The feed read by a library that did not write it (ical.js), and by the letter of RFC 5545. */
import ICAL from 'ical.js';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { calendarFeed } from '../../services/warnings/channels/calendar.ts';
import { dayMs, openHouse, place, placeId, planFor, wednesdayMs } from '../warnings/house.ts';

let house: ReturnType<typeof openHouse>;
beforeEach(() => {
  house = openHouse();
  house.count('2026-05-13');
});
afterEach(() => house.store.close());

const feed = () => calendarFeed(place, house.store.telling.calendar.list(placeId));

interface Entry {
  uid: string;
  start: string;
  end: string;
  title: string;
  status: unknown;
  sequence: number;
  stamp: string;
  alarms: number;
}
function entries(text = feed()): Entry[] {
  const component = new ICAL.Component(ICAL.parse(text));
  return component.getAllSubcomponents('vevent').map((vevent) => {
    const event = new ICAL.Event(vevent);
    expect(event.startDate.isDate, 'a day has no hour').toBe(true);
    return {
      uid: event.uid,
      start: event.startDate.toString(),
      end: event.endDate.toString(),
      title: event.summary,
      status: vevent.getFirstPropertyValue('status'),
      sequence: event.sequence,
      stamp: String(vevent.getFirstPropertyValue('dtstamp')),
      alarms: vevent.getAllSubcomponents('valarm').length,
    };
  });
}
const titled = (start: string) => entries().find(({ title }) => title.startsWith(start));

describe('the calendar feed', () => {
  it('holds the last day to order, the days to release, the count, the end of a wait and the look', async () => {
    house.toOrder(wednesdayMs);
    house.order({ id: 'o1', enemy: 'amblyseius-swirskii', expectedOn: '2026-05-20' });
    house.put('treatment', { id: 't1', kind: 'neem', time: '2026-05-11T18:00:00Z', coveredShare: 0.8 }, 't1');
    house.put(
      'release',
      {
        id: 'r1',
        enemy: 'encarsia-formosa',
        form: 'pupae on cards',
        number: 100,
        time: '2026-05-06T18:00:00Z',
        aliveShare: 1,
      },
      'r1',
    );
    await house.open(wednesdayMs);
    const seen = entries().map(({ title, start, end }) => [title, start, end]);
    // DTEND is the first day that no longer belongs (RFC 5545, 3.6.1).
    expect(seen).toContainEqual(['Count the traps, look under ten leaves', '2026-05-20', '2026-05-21']);
    expect(titled('Last day to order')).toMatchObject({ start: '2026-05-18', end: '2026-05-19' });
    expect(titled('Hang the swirskii')).toMatchObject({ start: '2026-05-20', end: '2026-05-23' });
    expect(titled('Wait after the neem is over')).toMatchObject({ start: '2026-05-25' });
    expect(titled('Look for black scales')?.status).toBe('CONFIRMED');
    expect(new Set(entries().map(({ uid }) => uid)).size).toBe(entries().length);
    expect(entries().every(({ alarms }) => alarms === 1)).toBe(true);
  });

  it('keeps the UID of a day that moves, and raises SEQUENCE', async () => {
    house.toOrder(wednesdayMs);
    await house.open(wednesdayMs);
    const before = titled('Last day to order');
    house.toOrder(wednesdayMs + dayMs, { orderBy: '2026-05-25' });
    await house.open(wednesdayMs + dayMs);
    const after = titled('Last day to order');
    expect(before).toMatchObject({ start: '2026-05-18', sequence: 0, stamp: '2026-05-13T09:00:00Z' });
    expect(after).toMatchObject({ start: '2026-05-25', sequence: 1, stamp: '2026-05-14T09:00:00Z' });
    expect(after?.uid).toBe(before?.uid);
    expect(entries().filter(({ title }) => title.startsWith('Last day'))).toHaveLength(1);
  });

  it('other words alone are no new revision, and nothing new changes nothing', async () => {
    house.toOrder(wednesdayMs);
    await house.open(wednesdayMs);
    const before = feed();
    await house.open(wednesdayMs + dayMs / 2);
    expect(feed()).toBe(before);
    house.issue(wednesdayMs + dayMs, {
      advice: {
        decision: 'order',
        sentence: 'Order 2 cards of Encarsia by Mon 18 May: now 9 of 10.',
        plan: planFor('encarsia-formosa'),
      },
    });
    await house.open(wednesdayMs + dayMs);
    expect(titled('Last day to order')).toMatchObject({ sequence: 0, stamp: '2026-05-14T09:00:00Z' });
  });

  it('cancels under the same UID what is no longer wanted, and takes a cancellation back', async () => {
    house.toOrder(wednesdayMs);
    await house.open(wednesdayMs);
    const wanted = titled('Last day to order');
    house.issue(wednesdayMs + dayMs);
    await house.open(wednesdayMs + dayMs);
    expect(titled('Last day to order')).toMatchObject({
      uid: wanted?.uid,
      status: 'CANCELLED',
      sequence: 1,
      alarms: 0,
    });
    house.toOrder(wednesdayMs + 2 * dayMs);
    await house.open(wednesdayMs + 2 * dayMs);
    expect(titled('Last day to order')).toMatchObject({
      uid: wanted?.uid,
      status: 'CONFIRMED',
      sequence: 2,
    });
  });

  it('cancels what the person closed', async () => {
    house.toOrder(wednesdayMs);
    await house.open(wednesdayMs);
    const raised = house.one('order-by');
    if (!raised) throw new Error('nothing was raised');
    house.store.warnings.save({ ...raised, state: 'closed' });
    await house.open(wednesdayMs + dayMs);
    expect(titled('Last day to order')?.status).toBe('CANCELLED');
  });

  it('leaves a day that has passed as it was, and lets it go after two months', async () => {
    house.toOrder(wednesdayMs);
    await house.open(wednesdayMs);
    house.issue(wednesdayMs + 10 * dayMs);
    await house.open(wednesdayMs + 10 * dayMs);
    expect(titled('Last day to order')).toMatchObject({ status: 'CONFIRMED', sequence: 0 });
    await house.open(wednesdayMs + 70 * dayMs);
    expect(titled('Last day to order')).toBeUndefined();
  });

  it('is written as RFC 5545 wants: CRLF, lines of at most 75 octets, what must be there', async () => {
    house.store.records.put({
      kind: 'place',
      placeId,
      id: placeId,
      atMs: wednesdayMs,
      data: { ...place, name: 'Ölhaus; Süd, 2' },
    });
    house.toOrder(wednesdayMs);
    await house.open(wednesdayMs);
    const text = calendarFeed(
      { ...place, name: 'Ölhaus; Süd, 2' },
      house.store.telling.calendar.list(placeId),
    );
    const lines = text.split('\r\n');
    expect(text.replaceAll('\r\n', '')).not.toContain('\n');
    // RFC 5545, 3.1.
    expect(Math.max(...lines.map((line) => new TextEncoder().encode(line).length))).toBeLessThanOrEqual(75);
    // RFC 5545, 3.6: VERSION and PRODID; 3.6.1: UID and DTSTAMP of every event.
    const calendar = new ICAL.Component(ICAL.parse(text));
    expect(calendar.getFirstPropertyValue('version')).toBe('2.0');
    expect(calendar.getFirstPropertyValue('prodid')).toContain('glasstide');
    expect(calendar.getFirstPropertyValue('method')).toBe('PUBLISH');
    expect(calendar.getFirstPropertyValue('x-wr-calname')).toBe('glasstide: Ölhaus; Süd, 2');
    for (const event of calendar.getAllSubcomponents('vevent')) {
      expect(event.getFirstPropertyValue('uid')).toBeTruthy();
      expect(event.getFirstPropertyValue('dtstamp')).toBeTruthy();
    }
  });
});
