/** Every page in every state it can be in, on a phone: named, readable, within its width, large enough to press. */
import type { Browser, BrowserContext, Page, Request, Route } from 'playwright-core';
import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import { contextOf, drawnAgain, settled, sideways, smallTargets, violations } from './browser.ts';
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

/** Answers that were asked for and are not here yet; the stream of changes never ends. */
function awaited(): Set<Request> {
  const open = new Set<Request>();
  page.on('request', (request) => {
    if (request.resourceType() === 'fetch') open.add(request);
  });
  for (const end of ['requestfinished', 'requestfailed'] as const)
    page.on(end as 'requestfinished', (request) => open.delete(request));
  return open;
}

/** Goes on to a page within the dashboard, which is far quicker than loading it; its title is set once it stands. */
async function goTo(path: string): Promise<void> {
  await page.evaluate((next) => {
    document.title = '';
    history.pushState(null, '', next);
    dispatchEvent(new PopStateEvent('popstate'));
  }, path);
  await page.waitForFunction(() => document.title !== '');
}

interface Tour {
  url?: string;
  /** Judge a page when its answers are here; otherwise while it waits. */
  answered?: boolean;
  before?: () => Promise<void>;
}

/** Loads the first page, goes on to every other and gathers what is wrong, by page. */
async function everywhere({ url = server.url, answered = true, before }: Tour = {}) {
  const found: Record<string, string[]> = {};
  const titles = new Set<string>();
  const open = awaited();
  for (const path of paths) {
    if (path === '/') await page.goto(url);
    else await goTo(path);
    await page.waitForSelector('h1');
    if (answered) {
      await expect.poll(() => open.size, { timeout: 60_000 }).toBe(0);
      await settled(page);
    }
    await drawnAgain(page);
    await before?.();
    const wrong = await faults();
    if (wrong.length > 0) found[path] = wrong;
    titles.add(await page.title());
  }
  expect(titles.size).toBe(paths.length);
  return found;
}
const ofPlaces = '**/api/places/lean-to/**';
const answerWith = (how: (route: Route) => unknown) => page.route(ofPlaces, how);

describe('every page', () => {
  it('while it waits for its first answer', async () => {
    await answerWith(() => {});
    expect(await everywhere({ answered: false })).toEqual({});
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
    const found = await everywhere({ url: empty.url });
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
    const unfold = () =>
      page.evaluate(() => {
        for (const fold of document.querySelectorAll('details')) fold.open = true;
      });
    expect(await everywhere({ before: unfold })).toEqual({});
  });
});

it('a page whose file does not come says so; the next one opened asks again', async () => {
  await page.route('**/assets/all-*.js', (route) => route.abort());
  await page.goto(server.url);
  const contents = page.getByRole('navigation', { name: 'Pages' });
  await contents.getByText('Ahead').click();
  await page.getByText('This page did not come').waitFor();
  expect(await faults()).toEqual([]);
  await page.unroute('**/assets/all-*.js');
  await contents.getByText('Count').click();
  await expect.poll(() => page.title()).toBe('The round - glasstide');
  await expect.poll(() => page.evaluate(() => document.activeElement?.tagName)).toBe('MAIN');
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
