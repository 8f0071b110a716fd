import { expect, test } from 'vitest';
import { aPlace, openHouse } from './house.ts';

const supplier = {
  leadDays: 2,
  cutoffHour: 12,
  orderWeekdays: [1, 2, 3, 4],
  deliveryWeekdays: [2, 3, 4, 5],
  currency: 'EUR',
  parcelFee: 6,
  pricePerAnimal: { 'encarsia-formosa': 0.15 },
};

test('the shopping list names what is on the way, prices as they were, and the sums', async () => {
  const house = await openHouse();
  await house.send('POST', '/api/places', { ...aPlace, supplier });
  await house.send('PUT', '/api/places/lean-to', {
    ...aPlace,
    supplier: { ...supplier, pricePerAnimal: { 'encarsia-formosa': 0.2 } },
  });
  await house.send('POST', '/api/places/lean-to/orders', {
    enemy: 'encarsia-formosa',
    number: 100,
    orderedAt: '2026-05-12T09:00:00Z',
    price: 26,
  });
  const answer = await house.app.inject('/api/places/lean-to/shopping');
  expect(answer.statusCode).toBe(200);
  expect(answer.json()).toMatchObject({
    parcels: [],
    onTheWay: [{ enemy: 'encarsia-formosa', words: expect.stringContaining('of Encarsia') }],
    prices: [
      { day: '2026-05-12', perAnimal: 0.26, from: 'order' },
      { day: '2026-05-13', perAnimal: 0.15, from: 'supplier' },
      { day: '2026-05-13', perAnimal: 0.2, from: 'supplier' },
    ],
    thisSeason: { seasonEnd: '2026-10-15', total: 26, totalToDate: 26, unpriced: 0 },
    lastSeason: { seasonEnd: '2025-10-15', total: 0 },
    currency: 'EUR',
  });
  await house.close();
});
