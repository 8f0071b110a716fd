/** The person's own degrees, days and weeks, by the browser's language or by choice. */
import { mkdirSync } from 'node:fs';
import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { errorsOf, settled, sideways, smallTargets, unroll, violations } from './browser.ts';
import { buildDashboard } from './build.ts';
import { launchChromium } from './chromium.ts';
import { type FixtureServer, startFixtureServer } from './fixtureServer.ts';

const shots = `${new URL('../../', import.meta.url).pathname}tmp/pages`;
let browser: Browser;
let server: FixtureServer;
beforeAll(async () => {
  mkdirSync(shots, { recursive: true });
  server = await startFixtureServer(buildDashboard('habits'));
  browser = await launchChromium();
});
afterAll(async () => {
  await browser?.close();
  await server?.close();
});

async function open(locale: string, path: string) {
  const context = await browser.newContext({
    viewport: { width: 360, height: 800 },
    locale,
    timezoneId: 'America/New_York',
    reducedMotion: 'reduce',
  });
  const page = await context.newPage();
  const errors = errorsOf(page);
  await page.goto(server.url + path);
  await settled(page);
  return { page, errors, close: () => context.close() };
}

it('an American browser shows Fahrenheit, months first, weeks from Sunday; the clock stays the place’s own', async () => {
  const { page, errors, close } = await open('en-US', '/');
  await unroll(page);
  await page.screenshot({ path: `${shots}/week-american.png` });
  const text = ((await page.locator('main').textContent()) ?? '').replaceAll('\u00a0', ' ');
  expect(text).toContain('Order 2 cards of Encarsia by Mon May 18 and hang them Thu May 21');
  expect(text).toContain('64.0 °F');
  expect(text).toContain('Hunts above 64 °F');
  expect(text).not.toMatch(/°C|\d (May|June)\b/);
  expect(await page.locator('.head-place').textContent()).toContain('129.2 ft²');
  expect(await page.locator('.head-date .narrow').textContent()).toBe('Wed May 13');
  expect(errors).toEqual([]);
  await close();
});

it('what is typed in °F is kept in °C', async () => {
  const { page, close } = await open('en-US', '/sensors');
  await page.getByText('Type in lowest and highest').click();
  await page.getByLabel('Lowest, °F').fill('50');
  await page.getByLabel('Highest, °F').fill('77');
  await page.getByRole('button', { name: 'Keep the day' }).click();
  await page.getByRole('status').getByText('50 to 77 °F').waitFor();
  expect(server.writes.at(-1)?.body).toMatchObject({ minC: 10, maxC: 25 });
  await close();
});

it('a choice in the settings holds on every page and after coming back', async () => {
  const { page, close } = await open('en-GB', '/settings');
  await page.getByRole('button', { name: '°F', exact: true }).first().click();
  await page.getByRole('button', { name: 'Sunday', exact: true }).click();
  const weekdays = page.locator('fieldset', { hasText: 'Delivers on' }).locator('button');
  expect((await weekdays.allTextContents())[0]).toBe('Sun');
  expect(await violations(page)).toEqual([]);
  expect(await sideways(page)).toBeLessThanOrEqual(0);
  expect(await smallTargets(page)).toEqual([]);
  await page.goto(`${server.url}/ahead`);
  await settled(page);
  expect(
    await page
      .getByText(/°F since/)
      .first()
      .textContent(),
  ).toMatch(/^5\d to 7\d °F since Wed/);
  await close();
});
