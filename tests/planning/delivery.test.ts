import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { addDays, isoWeekday, localDay } from '../../services/model/index.ts';
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

  it('never names a past or closed day, whatever the supplier', () => {
    const weekdays = fc.uniqueArray(fc.integer({ min: 1, max: 7 }), { minLength: 1 });
    const supplier = fc.record({
      leadDays: fc.integer({ min: 0, max: 20 }),
      cutoffHour: fc.integer({ min: 0, max: 24 }),
      orderWeekdays: weekdays,
      deliveryWeekdays: weekdays,
    });
    const instant = fc.integer({ min: Date.parse('2026-01-01'), max: Date.parse('2026-12-31') });
    fc.assert(
      fc.property(supplier, instant, (days, nowMs) => {
        const own = { ...place, supplier: { ...place.supplier!, ...days } };
        const { orderBy, arrivesOn } = nextDelivery(own, nowMs);
        expect(orderBy >= localDay(nowMs, place.timeZone)).toBe(true);
        expect(addDays(orderBy, days.leadDays) <= arrivesOn).toBe(true);
        expect(days.orderWeekdays).toContain(isoWeekday(orderBy));
        expect(days.deliveryWeekdays).toContain(isoWeekday(arrivesOn));
      }),
      { seed: 11 },
    );
  });
});
