/** What natural enemies cost: prices as they were, and the season's sum against the year before. */
import { addDays, localDay } from '../climate/calendar.ts';
import type { EnemyId, Order, Place, Release } from '../season.ts';
import { endOfSeason } from './growingSeason.ts';

export interface PriceSeen {
  enemy: EnemyId;
  day: string;
  /** Of one animal; of an order it holds a share of the fee. */
  perAnimal: number;
  from: 'order' | 'supplier';
}

/** An order pays for the releases of the same enemy in the weeks after it. Judgement, as the orders' own room. */
const paidForDays = 28;

/** Prices of orders, and of the supplier's list each time it was another, oldest first. */
export function priceHistory(
  place: Place,
  orders: readonly Order[],
  lists: readonly { day: string; prices: Partial<Record<EnemyId, number>> }[],
): PriceSeen[] {
  const paid = orders.flatMap(({ enemy, number, price, orderedAt }): PriceSeen[] =>
    price === undefined
      ? []
      : [{ enemy, day: dayOf(place, orderedAt), perAnimal: price / number, from: 'order' }],
  );
  const last = new Map<string, number>();
  const listed = lists.flatMap(({ day, prices }) =>
    Object.entries(prices).flatMap(([enemy, perAnimal]): PriceSeen[] => {
      if (perAnimal === undefined || last.get(enemy) === perAnimal) return [];
      last.set(enemy, perAnimal);
      return [{ enemy: enemy as EnemyId, day, perAnimal, from: 'supplier' }];
    }),
  );
  return [...paid, ...listed].sort((a, b) => a.day.localeCompare(b.day));
}

export interface Spending {
  /** Last day of the season. */
  seasonEnd: string;
  total: number;
  /** Up to the same day of that season as today is of this one. */
  totalToDate: number;
  /** Orders and releases without a price: the sums are too small by them. */
  unpriced: number;
}

/** Sums of this season and the one before; a release that an order paid for is not paid twice. */
export function spending(
  place: Place,
  { orders, releases }: { orders: readonly Order[]; releases: readonly Release[] },
  nowMs: number,
): { thisSeason: Spending; lastSeason: Spending } {
  const today = localDay(nowMs, place.timeZone);
  const yearBefore = (day: string) => `${Number(day.slice(0, 4)) - 1}${day.slice(4)}`;
  const bought = [
    ...orders.map(({ orderedAt, price }) => ({ day: dayOf(place, orderedAt), price })),
    ...releases
      .filter((release) => !isPaid(place, release, orders))
      .map(({ time, price }) => ({ day: dayOf(place, time), price })),
  ];
  const season = (seasonEnd: string, toDay: string): Spending => {
    const own = bought.filter(({ day }) => endOfSeason(place, day) === seasonEnd);
    const sum = (list: typeof own) =>
      Math.round(list.reduce((total, { price = 0 }) => total + price, 0) * 100) / 100;
    return {
      seasonEnd,
      total: sum(own),
      totalToDate: sum(own.filter(({ day }) => day <= toDay)),
      unpriced: own.filter(({ price }) => price === undefined).length,
    };
  };
  const end = endOfSeason(place, today);
  return { thisSeason: season(end, today), lastSeason: season(yearBefore(end), yearBefore(today)) };
}

const dayOf = (place: Place, instant: string): string => localDay(Date.parse(instant), place.timeZone);

const isPaid = (place: Place, release: Release, orders: readonly Order[]): boolean =>
  orderThatPaid(place, release, orders) !== undefined;

/** The newest order of the same enemy in the weeks before the release. */
function orderThatPaid(place: Place, { enemy, time }: Release, orders: readonly Order[]): Order | undefined {
  const day = dayOf(place, time);
  return orders
    .filter((order) => {
      const ordered = dayOf(place, order.orderedAt);
      return order.enemy === enemy && ordered <= day && day < addDays(ordered, paidForDays);
    })
    .sort((a, b) => Date.parse(a.orderedAt) - Date.parse(b.orderedAt))
    .at(-1);
}

/** What each release cost: its share, by number, of the order that paid for it, else its own price. */
export function costOfReleases(
  place: Place,
  { orders, releases }: { orders: readonly Order[]; releases: readonly Release[] },
): Map<string, number> {
  const paidBy = releases.map((release) => ({ release, order: orderThatPaid(place, release, orders) }));
  const costs = paidBy.flatMap(({ release, order }): [string, number][] => {
    const price = order ? order.price : release.price;
    if (price === undefined) return [];
    const together = order ? paidBy.filter((other) => other.order === order) : [{ release }];
    const animals = together.reduce((sum, each) => sum + each.release.number, 0);
    return [[release.id, Math.round((100 * price * release.number) / animals) / 100]];
  });
  return new Map(costs);
}
