import { describe, expect, it } from 'vitest';
import {
  adviseFrom,
  type Order,
  type Place,
  priceHistory,
  type Release,
  shoppingList,
  spending,
} from '../../services/model/index.ts';
import type { WantedParcel } from '../../services/model/planning/shoppingList.ts';
import { asOf, fixedFit, invented } from './season.ts';

const { place } = invented();
const supplier = {
  leadDays: 2,
  cutoffHour: 12,
  orderWeekdays: [1, 2, 3, 4, 5],
  deliveryWeekdays: [2, 3, 4, 5],
  currency: 'EUR',
  parcelFee: 6,
  pricePerAnimal: { 'amblyseius-swirskii': 0.02, 'encarsia-formosa': 0.15 },
};
const shop: Place = { ...place, supplier };

const want = (more: Partial<WantedParcel> & Pick<WantedParcel, 'enemy' | 'pest'>): WantedParcel => ({
  form: 'sachet',
  number: 100,
  perM2: 8,
  orderBy: '2026-05-18',
  arrivesOn: '2026-05-20',
  windowFrom: '2026-05-20',
  windowTo: '2026-05-22',
  lookOn: '2026-06-03',
  ...more,
});
const encarsia = want({ enemy: 'encarsia-formosa', pest: 'trialeurodes-vaporariorum' });
const mites = want({ enemy: 'amblyseius-swirskii', pest: 'frankliniella-occidentalis', number: 500 });
const later = (parcel: WantedParcel, orderBy: string, arrivesOn: string): WantedParcel => ({
  ...parcel,
  orderBy,
  arrivesOn,
  windowFrom: arrivesOn,
});

describe('the shopping list', () => {
  it('is empty when nothing is wanted', () => {
    expect(shoppingList(shop, [])).toEqual([]);
  });

  it('puts two needs of one day into one parcel with one fee', () => {
    const [parcel, ...others] = shoppingList(shop, [encarsia, mites]);
    expect(others).toEqual([]);
    // 100 * 0.15 + 500 * 0.02 + 6.
    expect(parcel).toMatchObject({
      orderBy: '2026-05-18',
      arrivesOn: '2026-05-20',
      fee: 6,
      price: 31,
      spared: 6,
      currency: 'EUR',
    });
    expect(parcel?.items.map(({ enemy, waitsDays, price }) => [enemy, waitsDays, price])).toEqual([
      ['encarsia-formosa', 0, 15],
      ['amblyseius-swirskii', 0, 10],
    ]);
  });

  it('gives area and rate beside the number they make, and none beside another', () => {
    // The record's rate and card: 6 a m2, 60 a card (services/model/species). 11 x 6 = 66 are two cards.
    const house = { ...shop, areaM2: 11 };
    const sums = [120, 60].map((number) => shoppingList(house, [{ ...encarsia, number }])[0]?.items[0]?.sum);
    expect(sums).toEqual([{ areaM2: 11, perM2: 6 }, undefined]);
  });

  it('lets one wait three days for the other, but no longer, and never brings one before its day', () => {
    const [shared] = shoppingList(shop, [later(mites, '2026-05-21', '2026-05-23'), encarsia]);
    expect(shared).toMatchObject({ orderBy: '2026-05-21', arrivesOn: '2026-05-23', spared: 6 });
    expect(shared?.items.map(({ enemy, waitsDays }) => [enemy, waitsDays])).toEqual([
      ['encarsia-formosa', 3],
      ['amblyseius-swirskii', 0],
    ]);
    const apart = shoppingList(shop, [later(mites, '2026-05-22', '2026-05-24'), encarsia]);
    expect(apart.map(({ arrivesOn }) => arrivesOn)).toEqual(['2026-05-20', '2026-05-24']);
    expect(apart.every(({ spared }) => spared === undefined)).toBe(true);
  });

  it('makes nobody wait where no fee is spared', () => {
    const free = { ...shop, supplier: { ...supplier, parcelFee: 0 } };
    expect(shoppingList(free, [later(mites, '2026-05-19', '2026-05-21'), encarsia])).toHaveLength(2);
    const { supplier: _none, ...unknown } = shop;
    expect(shoppingList(unknown, [later(mites, '2026-05-19', '2026-05-21'), encarsia])).toHaveLength(2);
    expect(shoppingList(unknown, [encarsia])[0]).not.toHaveProperty('price');
  });

  it('buys the same natural enemy once for two pests: the larger number, on the later day', () => {
    const forThrips = { ...mites, number: 500 };
    const forWhitefly = later(
      { ...mites, pest: 'trialeurodes-vaporariorum', number: 250 },
      '2026-05-19',
      '2026-05-21',
    );
    const [parcel] = shoppingList(shop, [forThrips, forWhitefly]);
    expect(parcel?.items).toMatchObject([
      { number: 500, pests: ['frankliniella-occidentalis', 'trialeurodes-vaporariorum'], waitsDays: 0 },
    ]);
    expect(parcel).toMatchObject({ arrivesOn: '2026-05-21', price: 16 });
  });

  it('gives no price for a parcel in which one is not known', () => {
    const unpriced = want({ enemy: 'aphidius-colemani', pest: 'myzus-persicae' });
    expect(shoppingList(shop, [encarsia, unpriced])[0]).not.toHaveProperty('price');
  });
});

const order = (orderedAt: string, price?: number, more: Partial<Order> = {}): Order => ({
  id: orderedAt,
  enemy: 'encarsia-formosa',
  number: 100,
  orderedAt,
  ...(price !== undefined && { price }),
  ...more,
});
const release = (time: string, price: number, enemy: Release['enemy'] = 'encarsia-formosa'): Release => ({
  id: time,
  enemy,
  form: 'card',
  number: 100,
  time,
  aliveShare: 1,
  price,
});

it('the advice names every parcel it wants, and none when it wants none', () => {
  const wanting = adviseFrom(invented(), fixedFit({ left: 0.8, released: 0.1 }), asOf);
  expect(wanting.toOrder).toEqual([{ pest: 'trialeurodes-vaporariorum', ...wanting.plan }]);
  expect(adviseFrom(invented(), fixedFit({ left: 0.1 }), asOf).toOrder).toEqual([]);
});

describe('prices', () => {
  it('are those of orders and of the supplier’s list when it changed', () => {
    const lists = [
      { day: '2026-04-01', prices: { 'encarsia-formosa': 0.15 } },
      { day: '2026-04-20', prices: { 'encarsia-formosa': 0.15 } },
      { day: '2026-05-01', prices: { 'encarsia-formosa': 0.17 } },
    ] as const;
    expect(
      priceHistory(shop, [order('2026-04-10T09:00:00Z', 21), order('2026-04-11T09:00:00Z')], lists),
    ).toEqual([
      { enemy: 'encarsia-formosa', day: '2026-04-01', perAnimal: 0.15, from: 'supplier' },
      { enemy: 'encarsia-formosa', day: '2026-04-10', perAnimal: 0.21, from: 'order' },
      { enemy: 'encarsia-formosa', day: '2026-05-01', perAnimal: 0.17, from: 'supplier' },
    ]);
  });
});

describe('what was spent', () => {
  // The season of the invented house ends on 15 October.
  const now = Date.parse('2026-06-01T09:00:00Z');

  it('this season, and in the last one whole and up to the same day', () => {
    const orders = [
      order('2025-05-10T09:00:00Z', 20),
      order('2025-06-01T22:30:00Z', 15),
      order('2025-09-01T09:00:00Z', 30),
      order('2026-05-10T09:00:00Z', 22.5),
      order('2026-05-20T09:00:00Z'),
    ];
    expect(spending(shop, { orders, releases: [] }, now)).toEqual({
      thisSeason: { seasonEnd: '2026-10-15', total: 22.5, totalToDate: 22.5, unpriced: 1 },
      // 1 June 2025, 23:30 in London, is still that day.
      lastSeason: { seasonEnd: '2025-10-15', total: 65, totalToDate: 35, unpriced: 0 },
    });
  });

  it('counts a release that an order paid for once, and one without an order', () => {
    const orders = [order('2026-05-01T09:00:00Z', 20)];
    const releases = [
      release('2026-05-08T09:00:00Z', 20),
      release('2026-05-08T10:00:00Z', 8, 'amblyseius-swirskii'),
      release('2026-05-29T09:00:00Z', 12),
    ];
    expect(spending(shop, { orders, releases }, now).thisSeason.total).toBe(40);
  });
});
