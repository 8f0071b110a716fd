import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { addDays, dueDay, isoWeekday, localDay } from '../../services/model/index.ts';
import { nextDelivery } from '../../services/model/planning/delivery.ts';
import { invented } from './season.ts';

const { place } = invented();

describe('delivery days, worked by hand on a calendar', () => {
  // 13 May 2026 is a Wednesday; lead 2 days, parcels on Wednesdays, orders on workdays until noon.
  it('names the last day that still brings the next parcel', () => {
    expect(nextDelivery(place, Date.parse('2026-05-13T09:00:00Z'))).toEqual({
      orderBy: '2026-05-18',
      arrivesOn: '2026-05-20',
    });
  });

  it('misses the parcel after the cut-off hour of the last day, in local time', () => {
    // Monday 18 May 11:30 UTC is 12:30 in London: too late for Wednesday 20 May.
    expect(nextDelivery(place, Date.parse('2026-05-18T11:30:00Z')).arrivesOn).toBe('2026-05-27');
    expect(nextDelivery(place, Date.parse('2026-05-18T10:30:00Z')).arrivesOn).toBe('2026-05-20');
  });

  it('waits for the end of a waiting time', () => {
    expect(nextDelivery(place, Date.parse('2026-05-13T09:00:00Z'), '2026-05-25')).toEqual({
      orderBy: '2026-05-25',
      arrivesOn: '2026-05-27',
    });
  });

  it('passes over days away from home, both ends included, and spans that touch', () => {
    const away = (...awayDays: { from: string; to: string }[]) =>
      nextDelivery({ ...place, awayDays }, Date.parse('2026-05-13T09:00:00Z'));
    // Parcels come on Wednesdays: 20 and 27 May, 3 June.
    expect(away({ from: '2026-05-18', to: '2026-05-20' })).toEqual({
      orderBy: '2026-05-25',
      arrivesOn: '2026-05-27',
    });
    const touching = [
      { from: '2026-05-21', to: '2026-05-27' },
      { from: '2026-05-20', to: '2026-05-20' },
    ];
    expect(away(...touching).arrivesOn).toBe('2026-06-03');
    expect(away({ from: '2026-05-21', to: '2026-05-26' }).arrivesOn).toBe('2026-05-20');
  });

  it('of a parcel ordered without a day the supplier knows nothing of days away', () => {
    const order = {
      id: 'o1',
      enemy: 'encarsia-formosa' as const,
      number: 100,
      orderedAt: '2026-05-13T09:00:00Z',
    };
    const own = { ...place, awayDays: [{ from: '2026-05-18', to: '2026-05-22' }] };
    expect(dueDay(own, order)).toBe('2026-05-20');
  });

  it('never names a past or closed day, or one away, whatever the supplier', () => {
    const weekdays = fc.uniqueArray(fc.integer({ min: 1, max: 7 }), { minLength: 1 });
    const supplier = fc.record({
      leadDays: fc.integer({ min: 0, max: 20 }),
      cutoffHour: fc.integer({ min: 0, max: 24 }),
      orderWeekdays: weekdays,
      deliveryWeekdays: weekdays,
    });
    const instant = fc.integer({ min: Date.parse('2026-01-01'), max: Date.parse('2026-12-31') });
    const span = fc
      .tuple(fc.integer({ min: 0, max: 365 }), fc.integer({ min: 0, max: 30 }))
      .map(([start, more]) => ({
        from: addDays('2026-01-01', start),
        to: addDays('2026-01-01', start + more),
      }));
    fc.assert(
      fc.property(supplier, fc.array(span, { maxLength: 5 }), instant, (days, awayDays, nowMs) => {
        const own = { ...place, awayDays, supplier: { ...place.supplier!, ...days } };
        const { orderBy, arrivesOn } = nextDelivery(own, nowMs);
        expect(orderBy >= localDay(nowMs, place.timeZone)).toBe(true);
        expect(addDays(orderBy, days.leadDays) <= arrivesOn).toBe(true);
        expect(days.orderWeekdays).toContain(isoWeekday(orderBy));
        expect(days.deliveryWeekdays).toContain(isoWeekday(arrivesOn));
        expect(awayDays.filter(({ from, to }) => from <= arrivesOn && arrivesOn <= to)).toEqual([]);
      }),
      { seed: 11 },
    );
  });
});
