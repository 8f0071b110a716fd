import { afterEach, beforeEach, expect, test } from 'vitest';
import { aPlace, openHouse } from './house.ts';

let house: Awaited<ReturnType<typeof openHouse>>;
const path = '/api/places/lean-to';
beforeEach(async () => {
  house = await openHouse();
  await house.send('POST', '/api/places', aPlace);
});
afterEach(() => house.close());

const put = (awayDays: unknown) => house.send('PUT', path, { ...aPlace, awayDays });

test('days away are kept with the place', async () => {
  const awayDays = [{ from: '2026-05-30', to: '2026-06-08' }];
  expect((await put(awayDays)).statusCode).toBe(200);
  expect((await house.app.inject(path)).json().data.awayDays).toEqual(awayDays);
});

test.each([
  ['the last before the first', { from: '2026-06-08', to: '2026-06-07' }, 'not before the first'],
  ['more than a year', { from: '2026-06-08', to: '2027-06-10' }, 'a year at most'],
  ['no day of the calendar', { from: '2026-06-08', to: '2026-06-31' }, 'YYYY-MM-DD'],
])('days away are refused: %s', async (_, span, expected) => {
  const answer = await put([span]);
  expect(answer.statusCode).toBe(400);
  expect(answer.json().issues).toMatchObject([
    { path: 'awayDays[0].to', expected: expect.stringContaining(expected) },
  ]);
  expect((await house.app.inject(path)).json().data).not.toHaveProperty('awayDays');
});
