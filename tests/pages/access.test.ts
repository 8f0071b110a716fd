/** Locking the house, coming in, inviting, and passwords for boards: the pages over the real API. */
import { mkdirSync } from 'node:fs';
import type { AddressInfo } from 'node:net';
import type { Browser, BrowserContext, Page } from 'playwright-core';
import { afterAll, afterEach, beforeAll, describe, expect, it } from 'vitest';
import { aPlace, openHouse } from '../api/house.ts';
import { contextOf, errorsOf, settled, sideways, smallTargets, unroll, violations } from './browser.ts';
import { buildDashboard } from './build.ts';
import { launchChromium } from './chromium.ts';

const root = new URL('../../', import.meta.url).pathname;
const shots = `${root}tmp/pages`;
const passphrase = 'copper kettle under snow';
type House = Awaited<ReturnType<typeof openHouse>>;

let browser: Browser;
let dashboardDir: string;
let house: House;
let url: string;
const contexts: BrowserContext[] = [];

beforeAll(async () => {
  mkdirSync(shots, { recursive: true });
  dashboardDir = buildDashboard('access');
  browser = await launchChromium();
});
afterAll(() => browser?.close());
afterEach(async () => {
  for (const context of contexts.splice(0)) await context.close();
  await house.close();
});

async function openRealHouse(): Promise<void> {
  house = await openHouse({ dashboardDir });
  await house.send('POST', '/api/places', aPlace);
  await house.send('POST', '/api/places/lean-to/sensors', { id: 'bench', name: 'On the bench' });
  await house.app.listen({ port: 0, host: '127.0.0.1' });
  url = `http://127.0.0.1:${(house.app.server.address() as AddressInfo).port}`;
}

async function visit(path: string, width = 360, dark = false): Promise<{ page: Page; errors: string[] }> {
  const context = await contextOf(browser, { width, height: 800, ...(dark && { dark }) });
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

async function lock(page: Page): Promise<void> {
  await page.getByLabel('New passphrase').fill(passphrase);
  await page.getByLabel('Once more').fill(passphrase);
  await page.getByRole('button', { name: 'Lock the house with it' }).click();
  await page.getByRole('heading', { level: 1, name: 'The house is locked, and you have the key.' }).waitFor();
}

describe.each([360, 1280])('at %i px', (width) => {
  it('an open house says so and is locked', async () => {
    await openRealHouse();
    const { page, errors } = await visit('/people', width);
    await page.getByRole('heading', { level: 1, name: /no lock yet/ }).waitFor();
    await looksRight(page, `people-open-${width}`);
    await lock(page);
    await page.getByRole('heading', { level: 2, name: 'Boards' }).waitFor();
    expect(house.access.isOpen()).toBe(false);
    await looksRight(page, `people-locked-${width}`);
    expect(errors).toEqual([]);
  });

  it('a locked house asks for its passphrase, and opens with it at the page that was asked for', async () => {
    await openRealHouse();
    await house.access.choosePassphrase({ passphrase, name: 'elsewhere' });
    const { page, errors } = await visit('/sensors', width);
    await page.getByRole('heading', { level: 1, name: 'This house is locked.' }).waitFor();
    await looksRight(page, `locked-${width}`);
    expect(errors).toEqual([]);
    await page.getByLabel('Passphrase').fill('a wrong one altogether');
    await page.getByRole('button', { name: 'Come in' }).click();
    await page.getByText('That is not the passphrase of this house.').waitFor();
    await looksRight(page, `locked-wrong-${width}`);
    await page.getByLabel('Passphrase').fill(passphrase);
    await page.getByRole('button', { name: 'Come in' }).click();
    await page.getByText('On the bench').first().waitFor();
    expect(new URL(page.url()).pathname).toBe('/sensors');
  });

  it('invitations, boards and keys are made, shown once and taken away', async () => {
    await openRealHouse();
    const { page, errors } = await visit('/people', width);
    await lock(page);
    await page.getByText('Invite somebody to count').click();
    await page.getByLabel('Who').fill('Ada');
    await page.getByRole('button', { name: 'Make an invitation' }).click();
    await page.getByText('Send this to').waitFor();
    await looksRight(page, `people-invitation-${width}`);
    await page.getByText('A password for a board').click();
    await page.getByLabel('Speaks for').selectOption('bench');
    await page.getByRole('button', { name: 'Make a password' }).click();
    await page.getByText('Set these in').waitFor();
    const secret = (await page.locator('.secret').textContent()) ?? '';
    expect(house.access.deviceOf('lean-to/bench', secret)).toMatchObject({ sensorId: 'bench' });
    await looksRight(page, `people-board-${width}`);
    await page.getByRole('button', { name: 'take away: On the bench' }).click();
    await page.getByRole('status').getByText('On the bench may not come in any more.').waitFor();
    expect(house.access.deviceOf('lean-to/bench', secret)).toBeUndefined();
    expect(await page.locator('.secret').count()).toBe(0);
    expect(errors).toEqual([]);
  });
});

it.each([360, 1280])('at %i px the page that says whether all is well names each point', async (width) => {
  await openRealHouse();
  await house.store.readings.add('lean-to', [
    { sensorId: 'bench', timeMs: house.clock.ms - 40 * 3_600_000, temperatureC: 19 },
  ]);
  const { page, errors } = await visit('/well', width);
  await page.getByRole('heading', { level: 1, name: 'One thing is not well.' }).waitFor();
  await page.getByText('Silent: last read 40 hours ago. Look at its battery.').waitFor();
  await looksRight(page, `well-${width}`);
  expect(errors).toEqual([]);
});

it('an invitation opens the house to a second person, who counts and sees no owner’s page', async () => {
  await openRealHouse();
  await house.access.choosePassphrase({ passphrase, name: 'elsewhere' });
  const { secret } = house.access.invite('Ada');
  const { page, errors } = await visit(`/#invitation=${secret}`);
  await page.getByRole('heading', { level: 1, name: 'You are invited to count here.' }).waitFor();
  await looksRight(page, 'invitation-360');
  await page.getByRole('button', { name: 'Come in' }).click();
  await page.getByText('Lean-to').first().waitFor();
  expect(new URL(page.url()).hash).toBe('');
  await page.goto(`${url}/people`);
  await page.getByRole('heading', { level: 1, name: 'You may look and count here.' }).waitFor();
  expect(await page.getByRole('heading', { level: 2 }).allTextContents()).toEqual(['This browser']);
  await looksRight(page, 'people-helper-360');
  expect(errors).toEqual([]);
});

it.each([360, 1280])(
  'at %i px a second person is offered to undo what that person entered, and no more',
  async (width) => {
    await openRealHouse();
    const place = '/api/places/lean-to';
    const washed = (id: string) => ({ id, kind: 'soap', time: '2026-05-12T18:00:00Z', coveredShare: 0.9 });
    await house.send('POST', `${place}/treatments`, washed('by-the-owner'));
    await house.send('POST', `${place}/treatments`, washed('taken-back'));
    await house.send('DELETE', `${place}/treatments/taken-back`);
    await house.access.choosePassphrase({ passphrase, name: 'elsewhere' });
    const { page, errors } = await visit(`/#invitation=${house.access.invite('Ada').secret}`, width);
    await page.getByRole('button', { name: 'Come in' }).click();
    await page.getByText('Lean-to').first().waitFor();
    const own = { what: 'small wasp', time: '2026-05-12T18:00:00Z' };
    const headers = { 'idempotency-key': 'own' };
    const entered = await page.request.post(`${url}${place}/sightings`, { data: own, headers });
    expect(entered.status()).toBe(201);
    await page.goto(`${url}/releases`);
    await page.getByText('What was taken back can be put back').click();
    await page.getByRole('button', { name: /^undo / }).waitFor();
    await expect.poll(() => page.getByText('Soap', { exact: false }).count()).toBeGreaterThan(1);
    await page.getByText('for the owner to put back').waitFor();
    expect(await page.getByRole('button', { name: /^put back / }).count()).toBe(0);
    expect(await page.getByRole('button', { name: /^undo / }).allTextContents()).toEqual(['undo']);
    await looksRight(page, `releases-helper-${width}`);
    await page.getByRole('button', { name: /^undo Small wasp/ }).click();
    await page.getByRole('button', { name: /^put back Small wasp/ }).waitFor();
    expect(errors).toEqual([]);
  },
);

it('a second person is told what the owner does, and finds no form that would be refused', async () => {
  await openRealHouse();
  const awayDays = [{ from: '2026-06-01', to: '2026-06-05' }];
  await house.send('PUT', '/api/places/lean-to', { ...aPlace, awayDays });
  await house.access.choosePassphrase({ passphrase, name: 'elsewhere' });
  const { page, errors } = await visit(`/#invitation=${house.access.invite('Ada').secret}`);
  await page.getByRole('button', { name: 'Come in' }).click();
  await page.getByText('Lean-to').first().waitFor();
  await page.goto(`${url}/releases`);
  await page.getByText('The owner of the house enters orders and releases.').waitFor();
  const openings = () => page.locator('details.opening > summary').allTextContents();
  expect(await openings()).toEqual(['Enter a wash or spray']);
  await page.goto(`${url}/sensors`);
  await page.getByText('The owner of the house adds, corrects and mends sensors.').waitFor();
  expect(await openings()).toEqual(['No sensor? Type in lowest and highest']);
  await page.goto(`${url}/settings`);
  await page.getByText('The owner of the house keeps places, plants, traps, limits').waitFor();
  expect(await openings()).toEqual([]);
  expect(await page.getByRole('button', { name: /^not away/ }).count()).toBe(0);
  expect(errors).toEqual([]);
});

it.each(['/people', '/well'])('%s reflows at 320 px and with letters twice as large', async (path) => {
  await openRealHouse();
  const { page } = await visit(path, 320);
  expect(await sideways(page)).toBeLessThanOrEqual(0);
  await page.setViewportSize({ width: 360, height: 800 });
  await page.evaluate(() => {
    document.documentElement.style.fontSize = '200%';
  });
  expect(await sideways(page)).toBeLessThanOrEqual(0);
});

it('whoever leaves has to come in again', async () => {
  await openRealHouse();
  const { page } = await visit('/people');
  await lock(page);
  await page.getByRole('button', { name: 'Leave on this browser' }).click();
  await page.getByRole('heading', { level: 1, name: 'This house is locked.' }).waitFor();
});

it('a session that was taken away locks the open page, and the dark page keeps its contrast', async () => {
  await openRealHouse();
  const { page } = await visit('/people', 360, true);
  await lock(page);
  await looksRight(page, 'people-dark');
  for (const { id } of house.access.list()) house.access.revoke(id);
  await page.getByRole('link', { name: 'This week' }).first().click();
  await page.getByRole('heading', { level: 1, name: 'This house is locked.' }).waitFor();
  await looksRight(page, 'locked-dark');
});
