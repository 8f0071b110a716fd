/** Every page in every state it can be in, on a phone: named, readable, within its width, large enough to press. */
import type { Browser, BrowserContext, Page, Route } from 'playwright-core';
import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import { contextOf, sideways, smallTargets, violations } from './browser.ts';
import { buildDashboard } from './build.ts';
import { launchChromium } from './chromium.ts';
import { type FixtureServer, startFixtureServer } from './fixtureServer.ts';

const paths = [
  '/',
  '/round',
  '/ahead',
  '/releases',
  '/season',
  '/shopping',
  '/sensors',
  '/who-is-it',
  '/who-is-it/pictures',
  '/phone',
  '/settings',
  '/people',
  '/well',
  '/telling',
  '/book',
  '/new-place',
  '/none-such',
];

let dist: string;
let browser: Browser;
let server: FixtureServer;
let context: BrowserContext;
let page: Page;
beforeAll(async () => {
  dist = buildDashboard('states');
  browser = await launchChromium();
  server = await startFixtureServer(dist);
});
afterAll(async () => {
  await browser?.close();
  await server?.close();
});
beforeEach(async () => {
  context = await contextOf(browser, { width: 360, height: 740 });
  page = await context.newPage();
});
afterEach(() => context.close());

/** What is wrong with the page that is shown, in words. */
async function faults(): Promise<string[]> {
  await page.evaluate(() => document.fonts.ready.then(() => undefined));
  const wide = await sideways(page);
  const moving = await page.evaluate(() => document.getAnimations().length);
  const cut = await page.evaluate(() =>
    [...document.querySelectorAll('.table-frame')]
      .filter((frame) => frame.scrollWidth > frame.clientWidth)
      .map((frame) => `cut: ${frame.getAttribute('aria-label')}`),
  );
  return [
    ...(await violations(page)),
    ...(await smallTargets(page)).map((target) => `small: ${target}`),
    ...(wide > 0 ? [`${wide} px too wide`] : []),
    ...(moving > 0 ? [`${moving} things move although nothing should`] : []),
    ...cut,
  ];
}

/** Opens every page from the server and gathers what is wrong, by page. */
async function everywhere(url = server.url): Promise<Record<string, string[]>> {
  const found: Record<string, string[]> = {};
  for (const path of paths) {
    await page.goto(url + path);
    await page.waitForSelector('h1');
    const wrong = await faults();
    if (wrong.length > 0) found[path] = wrong;
  }
  return found;
}
const ofPlaces = '**/api/places/lean-to/**';
const answerWith = (how: (route: Route) => unknown) => page.route(ofPlaces, how);

describe('every page', () => {
  it('while it waits for its first answer', async () => {
    await answerWith(() => {});
    expect(await everywhere()).toEqual({});
  });

  it('before anything was entered', async () => {
    const place = '/api/places/lean-to';
    const nouns = ['plantings', 'sensors', 'traps', 'trap-counts', 'leaf-checks', 'sightings'];
    const empty = await startFixtureServer(dist, {
      [`${place}/held`]: { seasonEnd: '2026-10-15', rounds: [] },
      [`${place}/temperature`]: { points: [], doubted: [] },
      [`${place}/arrivals`]: { arrivals: [] },
      [`${place}/warnings`]: { warnings: [] },
      '/api/quarantine': { messages: [] },
      ...Object.fromEntries(
        [...nouns, 'releases', 'orders', 'treatments', 'daily-extremes'].map((noun) => [
          `${place}/${noun}`,
          { records: [] },
        ]),
      ),
    });
    await page.route('**/outcome', (route) => route.fulfill({ json: null }));
    await page.route('**/readings?*', (route) => route.fulfill({ json: { readings: [], hours: [] } }));
    const found = await everywhere(empty.url);
    await empty.close();
    expect(found).toEqual({});
  });

  it('when the house refuses', async () => {
    const refusal = { code: 'fault', reason: 'The disk is full.', whatToDo: 'Make room.', issues: [] };
    await answerWith((route) => route.fulfill({ status: 500, json: refusal }));
    expect(await everywhere()).toEqual({});
  });

  it('when the house does not answer at all', async () => {
    await page.goto(server.url);
    await page.evaluate(() => navigator.serviceWorker.ready.then(() => undefined));
    await page.route('**/api/**', (route) => route.abort());
    expect(await everywhere()).toEqual({});
  });

  it('with old answers, a fault told on top', async () => {
    const health = { status: 'unwell', reasons: ['The broker is away.'], demo: true, version: '0.1.0' };
    const now = '2026-05-15T09:00:00Z';
    await page.route('**/api/health', (route) => route.fulfill({ json: { ...health, now } }));
    expect(await everywhere()).toEqual({});
  });

  it('with every fold open', async () => {
    const found: Record<string, string[]> = {};
    for (const path of paths) {
      await page.goto(server.url + path);
      await page.waitForSelector('h1');
      await page.evaluate(() => {
        for (const fold of document.querySelectorAll('details')) fold.open = true;
      });
      const wrong = await faults();
      if (wrong.length > 0) found[path] = wrong;
    }
    expect(found).toEqual({});
  });
});

it('an entry taken back is told with its way back', async () => {
  await page.goto(`${server.url}/releases`);
  await page
    .getByRole('button', { name: /^undo / })
    .first()
    .click();
  await page.getByRole('status').getByText('Undone:').waitFor();
  expect(await faults()).toEqual([]);
});

it('a desk at 200 % zoom has every page without scrolling sideways', async () => {
  await context.close();
  context = await browser.newContext({
    viewport: { width: 640, height: 450 },
    deviceScaleFactor: 2,
    reducedMotion: 'reduce',
    locale: 'en-GB',
    timezoneId: 'Europe/London',
  });
  page = await context.newPage();
  expect(await everywhere()).toEqual({});
});
