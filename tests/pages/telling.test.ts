/** How you are told and the shopping list: the pages over the real API, with the real telling behind it. */
import { mkdirSync } from 'node:fs';
import type { AddressInfo } from 'node:net';
import type { Browser, BrowserContext, Page } from 'playwright-core';
import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import { createTelling } from '../../services/warnings/telling.ts';
import { aPlace, openHouse } from '../api/house.ts';
import { contextOf, errorsOf, settled, sideways, smallTargets, unroll, violations } from './browser.ts';
import { buildDashboard } from './build.ts';
import { launchChromium } from './chromium.ts';

const root = new URL('../../', import.meta.url).pathname;
const shots = `${root}tmp/pages`;
const supplier = {
  leadDays: 2,
  cutoffHour: 12,
  orderWeekdays: [1, 2, 3, 4],
  deliveryWeekdays: [2, 3, 4, 5],
  currency: 'EUR',
  parcelFee: 6,
  pricePerAnimal: { 'encarsia-formosa': 0.15 },
};

let browser: Browser;
let dashboardDir: string;
let house: Awaited<ReturnType<typeof openHouse>>;
let url: string;
const contexts: BrowserContext[] = [];

beforeAll(async () => {
  mkdirSync(shots, { recursive: true });
  dashboardDir = buildDashboard('telling');
  browser = await launchChromium();
});
afterAll(() => browser?.close());
beforeEach(async () => {
  house = await openHouse({ dashboardDir, telling: room() });
  await house.send('POST', '/api/places', { ...aPlace, supplier });
  await house.app.listen({ port: 0, host: '127.0.0.1' });
  url = `http://127.0.0.1:${(house.app.server.address() as AddressInfo).port}`;
});
afterEach(async () => {
  for (const context of contexts.splice(0)) await context.close();
  await house.close();
});

/** The telling of the house that is open now, without a mail server. */
function room() {
  const now = () =>
    createTelling({ store: house.store, clock: house.clock, onMorning: () => {}, onWarnings: () => {} });
  return {
    settings: (placeId: string) => now().settings(placeId),
    canMail: false,
    pushPublicKey: '',
    tryOut: (placeId: string, target: { channel: 'mail' | 'push'; to: string }) =>
      now().tryOut(placeId, target),
    tryMqtt: async () => true,
    feed: (placeId: string) => now().feed(placeId),
  };
}

async function visit(path: string, width: number): Promise<{ page: Page; errors: string[] }> {
  const context = await contextOf(browser, { width, height: 800 });
  contexts.push(context);
  const page = await context.newPage();
  const errors = errorsOf(page);
  await page.goto(url + path);
  await settled(page);
  return { page, errors };
}
async function looksRight(page: Page, name: string): Promise<void> {
  expect(await page.locator('h1').count()).toBe(1);
  expect(await violations(page)).toEqual([]);
  expect(await sideways(page)).toBeLessThanOrEqual(0);
  expect(await smallTargets(page)).toEqual([]);
  await unroll(page);
  await page.screenshot({ path: `${shots}/${name}.png` });
}

describe.each([360, 1280])('at %i px', (width) => {
  it('an address is added, tried in vain with the reason, and taken away', async () => {
    const { page, errors } = await visit('/telling', width);
    await page
      .getByRole('heading', { level: 1, name: 'Warnings stand on these pages only, so far.' })
      .waitFor();
    await page.getByText('Tell another address').click();
    await page.getByLabel('Mail address').fill('ada@example.org');
    await page.getByRole('button', { name: 'Tell this address' }).click();
    await page.getByRole('heading', { level: 1, name: 'One mail address is told.' }).waitFor();
    expect(house.store.telling.settings('lean-to')?.mailTo).toEqual(['ada@example.org']);
    await page.getByRole('button', { name: 'try it: ada@example.org' }).click();
    await page.getByText('No mail server is set: whoever runs glasstide names one.').waitFor();
    await looksRight(page, `telling-${width}`);
    await page.getByRole('button', { name: 'take away: ada@example.org' }).click();
    await page.getByText('Nobody is told by mail.').waitFor();
    expect(errors).toEqual([]);
  });

  it('the shopping list says what is on the way and what it costs', async () => {
    await house.send('POST', '/api/places/lean-to/orders', {
      enemy: 'encarsia-formosa',
      number: 100,
      orderedAt: '2026-05-12T09:00:00Z',
      expectedOn: '2026-05-15',
      price: 21,
    });
    const { page, errors } = await visit('/shopping', width);
    await page
      .getByRole('heading', { level: 1, name: 'Nothing to order: what is wanted is on its way.' })
      .waitFor();
    await page.getByText('due Fri 15 May').waitFor();
    await looksRight(page, `shopping-${width}`);
    expect(errors).toEqual([]);
  });
});

it('quiet hours and the letter are kept; the calendar opens by the address that is shown', async () => {
  const { page } = await visit('/telling', 360);
  await page.getByLabel('Quiet from').selectOption('22');
  await page.getByLabel('The weekly letter, by mail').selectOption('0');
  await page.getByRole('button', { name: 'Keep the hours' }).click();
  await page.getByText('quiet from 22:00 to 07:00.').waitFor();
  expect(house.store.telling.settings('lean-to')).toEqual({ mailTo: [], quietFromHour: 22, quietToHour: 7 });
  const address = (await page.locator('code.secret').textContent()) ?? '';
  const feed = await fetch(address);
  expect(feed.headers.get('content-type')).toContain('text/calendar');
  await page.getByRole('button', { name: 'Renew the address' }).click();
  await page.getByText('the earlier address opens nothing any more.').waitFor();
  expect((await fetch(address)).status).toBe(404);
});
