/** When a parcel can come, from the supplier's lead days, cut-off hour and weekdays, and the days away from home. */
import { TZDate } from '@date-fns/tz';
import { addDays, isoWeekday, localDay } from '../climate/calendar.ts';
import type { Place, Supplier } from '../season.ts';
import { firstDayHome } from './awayDays.ts';

export interface Delivery {
  /** Last day on which an order still brings the parcel on `arrivesOn`. */
  orderBy: string;
  arrivesOn: string;
}

/** Common practice, no source: order one to two weeks ahead, parcels come from Tuesday to Friday. */
export const assumedSupplier: Supplier = {
  leadDays: 5,
  cutoffHour: 12,
  orderWeekdays: [1, 2, 3, 4, 5],
  deliveryWeekdays: [2, 3, 4, 5],
  currency: 'EUR',
  parcelFee: 0,
  pricePerAnimal: {},
};

/** ISO 4217: of every sum told of the place. */
export const currencyOf = ({ supplier = assumedSupplier }: Pick<Place, 'supplier'>): string =>
  supplier.currency;

/**
 * The first delivery that can still be ordered at `nowMs` and arrives on `notBefore` (a local day) or
 * later, with the last day to order it; never on a day away, when nobody would set it out.
 */
export function nextDelivery(place: Place, nowMs: number, notBefore?: string): Delivery {
  const supplier = place.supplier ?? assumedSupplier;
  const today = localDay(nowMs, place.timeZone);
  const canStillOrderToday = new TZDate(nowMs, place.timeZone).getHours() < supplier.cutoffHour;
  const firstOrder = firstOn(canStillOrderToday ? today : addDays(today, 1), supplier.orderWeekdays);
  const earliest = addDays(firstOrder, supplier.leadDays);
  const from = notBefore !== undefined && notBefore > earliest ? notBefore : earliest;
  const arrivesOn = firstAtHome(place, from, supplier.deliveryWeekdays);
  return { orderBy: lastOn(addDays(arrivesOn, -supplier.leadDays), supplier.orderWeekdays), arrivesOn };
}

function firstAtHome(place: Place, day: string, weekdays: readonly number[]): string {
  const comes = firstOn(day, weekdays);
  const home = firstDayHome(place, comes);
  return home === comes ? comes : firstAtHome(place, home, weekdays);
}

function firstOn(day: string, weekdays: readonly number[]): string {
  return weekdays.includes(isoWeekday(day)) ? day : firstOn(addDays(day, 1), weekdays);
}

function lastOn(day: string, weekdays: readonly number[]): string {
  return weekdays.includes(isoWeekday(day)) ? day : lastOn(addDays(day, -1), weekdays);
}
