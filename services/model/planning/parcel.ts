/** One parcel of a natural enemy: the one to order, or the one that was ordered. */
import { addDays, localDay } from '../climate/calendar.ts';
import type { ReleasePlan } from '../outcome.ts';
import type { EnemyId, Order, Place, Season } from '../season.ts';
import { enemyTraits, speciesById } from '../species/catalogue.ts';
import type { EnemyTraits } from '../species/record.ts';
import { residueOver } from './conditions/residue.ts';
import { currencyOf, nextDelivery } from './delivery.ts';

/** A parcel is best set out on the day it comes; two days later it has lost much (common practice, no source). */
const keepsDays = 2;
/** A parcel not set out a week after it came is spoilt, one four weeks late does not come. Judgement. */
const openDays = { arrived: 7, due: 28 };

/** How an enemy is sold; throws for one that only comes by itself. */
export function soldAs(enemy: EnemyId): NonNullable<EnemyTraits['release']> {
  const { release } = enemyTraits(speciesById(enemy));
  if (!release) throw new Error(`${enemy} is not sold: its record holds no release`);
  return release;
}

/** `2 cards of Encarsia`; some pieces carry the name themselves. */
export function parcelWords({ enemy, number }: { enemy: EnemyId; number: number }): string {
  const { perPiece, piece } = soldAs(enemy);
  const count = Math.max(1, Math.round(number / perPiece));
  const pieces = `${count} ${piece[count === 1 ? 0 : 1]}`;
  return pieces.includes(' of ') ? pieces : `${pieces} of ${speciesById(enemy).shortName}`;
}

type Parcel = Pick<ReleasePlan, 'enemy' | 'number'>;
export const isSameParcel = (one: Parcel, other: Parcel): boolean =>
  one.enemy === other.enemy && one.number === other.number;

/** What the number to order comes from: the area times the rate, in whole pieces. */
export function orderSum({ areaM2 }: Pick<Place, 'areaM2'>, enemy: EnemyId) {
  const { perM2, perPiece } = soldAs(enemy);
  return { areaM2, perM2, number: Math.ceil((areaM2 * perM2) / perPiece) * perPiece };
}

/** Whole pieces for the house, at the first delivery after every waiting time. */
export function parcelToOrder(season: Season, enemy: EnemyId, asOfMs: number): ReleasePlan {
  const { place } = season;
  const { number } = orderSum(place, enemy);
  const delivery = nextDelivery(place, asOfMs, residueOver(season, enemy, asOfMs)?.day);
  return { ...parcelOf(place, { enemy, number }, delivery.arrivesOn), ...delivery };
}

/** A parcel set out on a day, with its price by the supplier's list, the fee included. */
export function parcelOf(place: Place, parcel: { enemy: EnemyId; number: number }, day: string): ReleasePlan {
  const plan = setOutOn(place, parcel, day);
  const { supplier } = place;
  const each = supplier?.pricePerAnimal[parcel.enemy];
  if (!supplier || each === undefined) return plan;
  const price = Math.round((supplier.parcelFee + each * parcel.number) * 100) / 100;
  return { ...plan, price, currency: supplier.currency };
}

/** The parcel of an order, set out today if it has come, otherwise when it is due. */
export function parcelOrdered({ place }: Season, order: Order, asOfMs: number): ReleasePlan {
  const today = localDay(asOfMs, place.timeZone);
  const due = dueDay(place, order);
  const on = order.arrivedAt !== undefined || due < today ? today : due;
  return {
    ...setOutOn(place, order, on),
    ...(order.arrivedAt === undefined ? { arrivesOn: on } : {}),
    ...(order.price !== undefined ? { price: order.price, currency: currencyOf(place) } : {}),
  };
}

/** The order of one of these enemies still to come or to be set out; one that has come before one that has not. */
export function openOrder(season: Season, enemies: readonly EnemyId[], asOfMs: number): Order | undefined {
  return openOrders(season, asOfMs).find((order) => enemies.includes(order.enemy));
}

/** Orders still to come or to be set out: those that have come first, then by the day they are due. */
export function openOrders(
  { place, orders, releases }: Pick<Season, 'place' | 'orders' | 'releases'>,
  asOfMs: number,
): Order[] {
  const today = localDay(asOfMs, place.timeZone);
  const isSetOut = (order: Order) =>
    releases.some((r) => r.enemy === order.enemy && Date.parse(r.time) >= Date.parse(order.orderedAt));
  const lastDay = (order: Order) =>
    order.arrivedAt === undefined
      ? addDays(dueDay(place, order), openDays.due)
      : addDays(localDay(Date.parse(order.arrivedAt), place.timeZone), openDays.arrived);
  return orders
    .filter((order) => !isSetOut(order) && today <= lastDay(order))
    .sort(
      (a, b) =>
        Number(b.arrivedAt !== undefined) - Number(a.arrivedAt !== undefined) ||
        dueDay(place, a).localeCompare(dueDay(place, b)),
    );
}

/** As the supplier said, otherwise by its usual days: it does not know who is away. */
export const dueDay = (place: Place, order: Order): string =>
  order.expectedOn ?? nextDelivery({ ...place, awayDays: [] }, Date.parse(order.orderedAt)).arrivesOn;

function setOutOn(
  place: Place,
  { enemy, number }: { enemy: EnemyId; number: number },
  day: string,
): ReleasePlan {
  const release = soldAs(enemy);
  return {
    enemy,
    form: release.form,
    number,
    perM2: number / place.areaM2,
    windowFrom: day,
    windowTo: addDays(day, keepsDays),
    lookOn: addDays(day, release.lookAfterDays),
  };
}
