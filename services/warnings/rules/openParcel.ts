/** What the warnings about a parcel that is not set out yet share. */
import { dueDay, localDay, type Order, openOrders } from '../../model/index.ts';
import { done, type Ending, type WarningFacts, withdrawn } from './rule.ts';

export interface OpenParcel {
  order: Order;
  due: string;
  /** The day it can be set out: today once it has come or is overdue, else the day it is due. */
  on: string;
  hasCome: boolean;
}

/** Parcels still to come or to be set out. */
export const openParcels = ({ season, nowMs }: WarningFacts): OpenParcel[] =>
  openOrders(season, nowMs).map((order) => {
    const today = localDay(nowMs, season.place.timeZone);
    const due = dueDay(season.place, order);
    const hasCome = order.arrivedAt !== undefined;
    return { order, due, on: hasCome || due < today ? today : due, hasCome };
  });

/** How a warning about the days of a parcel has ended: with the parcel, with the days, or because they changed. */
export function parcelEnding(
  warning: { id: string; deadlineMs: number },
  facts: WarningFacts,
  { idOf, changed }: { idOf: (order: Order) => string; changed: string },
): Ending {
  if (!facts.season.orders.some((order) => idOf(order) === warning.id))
    return withdrawn('The order was taken back.');
  if (!openParcels(facts).some(({ order }) => idOf(order) === warning.id))
    return done('The parcel is set out, or no longer waited for.');
  return warning.deadlineMs < facts.nowMs ? done('The day has come.') : withdrawn(changed);
}
