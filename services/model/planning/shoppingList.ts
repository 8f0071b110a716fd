/** What to order, as parcels: one that serves two needs pays one fee. */
import { addDays, daysBetween } from '../climate/calendar.ts';
import type { ReleasePlan } from '../outcome.ts';
import type { EnemyId, PestId, Place } from '../season.ts';
import { orderSum, parcelWords } from './parcel.ts';

export type WantedParcel = ReleasePlan & { pest: PestId };

export interface ShoppingItem {
  enemy: EnemyId;
  number: number;
  /** `2 cards of Encarsia`. */
  words: string;
  /** Where the number is that for the whole house: area times rate, before whole packs. */
  sum?: { areaM2: number; perM2: number };
  pests: PestId[];
  /** Days it waits for the others of its parcel. */
  waitsDays: number;
  /** Of the animals alone; absent when no price is entered. */
  price?: number;
}

export interface Parcel {
  orderBy: string;
  arrivesOn: string;
  items: ShoppingItem[];
  /** With its fee; absent when an item has no price. */
  price?: number;
  fee?: number;
  /** Fees spared by sending things together. */
  spared?: number;
  currency?: string;
}

/** A need may wait this long for another to share its parcel. Judgement: a pest doubles in a week or so. */
const mayWaitDays = 3;

/**
 * Parcels for all that is wanted, in the order of their last day to order. The same natural enemy for two
 * pests is bought once: what is set out in a house hunts both. Needs of different days share a parcel when
 * the earlier can wait a few days and that spares a fee; none comes before its own day.
 */
export function shoppingList(place: Place, wanted: readonly WantedParcel[]): Parcel[] {
  const needs = [...eachEnemyOnce(wanted)].sort((a, b) => arrival(a).localeCompare(arrival(b)));
  const groups: Need[][] = [];
  for (const need of needs) {
    const open = groups.at(-1);
    const first = open?.[0];
    const waits = first && daysBetween(arrival(first), arrival(need));
    const shares = waits !== undefined && waits <= (place.supplier?.parcelFee ? mayWaitDays : 0);
    if (open && shares) open.push(need);
    else groups.push([need]);
  }
  return groups.map((group) => parcelOf(place, group)).sort((a, b) => a.orderBy.localeCompare(b.orderBy));
}

interface Need {
  plan: ReleasePlan;
  pests: PestId[];
}

const arrival = ({ plan }: Need): string => plan.arrivesOn ?? plan.windowFrom;

function eachEnemyOnce(wanted: readonly WantedParcel[]): Iterable<Need> {
  const needs = new Map<EnemyId, Need>();
  for (const { pest, ...plan } of wanted) {
    const known = needs.get(plan.enemy);
    if (!known) needs.set(plan.enemy, { plan, pests: [pest] });
    else {
      known.pests.push(pest);
      const larger = plan.number > known.plan.number ? plan : known.plan;
      known.plan = { ...larger, ...latest(known.plan, plan) };
    }
  }
  return needs.values();
}

/** Days of whichever comes later. */
function latest(a: ReleasePlan, b: ReleasePlan): Partial<ReleasePlan> {
  const { orderBy, arrivesOn, windowFrom, windowTo, lookOn } = a.windowFrom >= b.windowFrom ? a : b;
  return {
    ...(orderBy !== undefined && { orderBy }),
    ...(arrivesOn !== undefined && { arrivesOn }),
    windowFrom,
    windowTo,
    lookOn,
  };
}

function parcelOf(place: Place, group: readonly Need[]): Parcel {
  const { supplier } = place;
  const last = group[group.length - 1] ?? group[0];
  if (last === undefined) throw new RangeError('a parcel needs something in it');
  const arrivesOn = arrival(last);
  const items = group.map((need) => itemOf(place, need, arrivesOn));
  const known = items.flatMap(({ price }) => (price === undefined ? [] : [price]));
  const animals = known.reduce((sum, price) => sum + price, 0);
  const spared = (group.length - 1) * (supplier?.parcelFee ?? 0);
  return {
    orderBy: last.plan.orderBy ?? addDays(arrivesOn, -(supplier?.leadDays ?? 0)),
    arrivesOn,
    items,
    ...(supplier && { fee: supplier.parcelFee, currency: supplier.currency }),
    ...(supplier && known.length === items.length && { price: cents(animals + supplier.parcelFee) }),
    ...(spared > 0 && { spared: cents(spared) }),
  };
}

function itemOf(place: Place, { plan, pests }: Need, arrivesOn: string): ShoppingItem {
  const each = place.supplier?.pricePerAnimal[plan.enemy];
  const { areaM2, perM2, number } = orderSum(place, plan.enemy);
  return {
    enemy: plan.enemy,
    number: plan.number,
    words: parcelWords(plan),
    ...(number === plan.number && { sum: { areaM2, perM2 } }),
    pests,
    waitsDays: daysBetween(plan.arrivesOn ?? plan.windowFrom, arrivesOn),
    ...(each !== undefined && { price: cents(each * plan.number) }),
  };
}

const cents = (amount: number): number => Math.round(amount * 100) / 100;
