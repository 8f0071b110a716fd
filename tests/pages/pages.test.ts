/**
 * Every page in real Chromium, phone and desktop: no console error, no axe violation, no sideways
 * scrolling, one h1 that says something, targets of 48 px. Screenshots go to tmp/pages/ to be looked at.
 */
import { mkdirSync } from 'node:fs';
import { gzipSync } from 'node:zlib';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import {
  contextOf,
  drawnAgain,
  errorsOf,
  type Look,
  settled,
  sideways,
  smallTargets,
  unroll,
  violations,
} from './browser.ts';
import { buildDashboard } from './build.ts';
import { launchChromium } from './chromium.ts';
import { type FixtureServer, startFixtureServer } from './fixtureServer.ts';

const root = new URL('../../', import.meta.url).pathname;
const shots = `${root}tmp/pages`;
const phone: Look = { width: 360, height: 800 };
const looks: Record<string, Look> = { '360': phone, '1280': { width: 1280, height: 900 } };
const paths = [
  '/',
  '/round',
  '/ahead',
  '/releases',
  '/season',
  '/shopping',
  '/sensors',
  '/settings',
  '/book',
];
const nameOf = (path: string) => (path === '/' ? 'week' : path.slice(1));

let browser: Browser;
let server: FixtureServer;

beforeAll(async () => {
  mkdirSync(shots, { recursive: true });
  server = await startFixtureServer(buildDashboard('pages'));
  browser = await launchChromium();
});
afterAll(async () => {
  await browser?.close();
  await server?.close();
});

/** The whole page, with fixed parts at its end and not in its middle. */
async function shoot(page: Page, name: string): Promise<void> {
  await unroll(page);
  await page.screenshot({ path: `${shots}/${name}.png` });
}

async function open(look: Look, path: string) {
  const context = await contextOf(browser, look);
  const page = await context.newPage();
  const errors = errorsOf(page);
  await page.goto(server.url + path);
  await settled(page);
  return { page, errors, close: () => context.close() };
}

describe.each(paths)('%s', (path) => {
  let page: Page;
  let errors: string[];
  let close: () => Promise<void>;
  // Opened once; the looks follow one another, as when a phone is turned or evening comes.
  beforeAll(async () => {
    ({ page, errors, close } = await open(phone, path));
  });
  afterAll(() => close?.());

  /** The same page in another look, drawn anew. */
  async function turnTo({ width, height, dark = false }: Look, letters = '100%'): Promise<void> {
    await page.emulateMedia({ colorScheme: dark ? 'dark' : 'light' });
    await page.setViewportSize({ width, height });
    await page.evaluate((size) => {
      document.documentElement.style.fontSize = size;
    }, letters);
    await settled(page);
    await drawnAgain(page);
  }

  it.each(Object.keys(looks))('reads well at %s px', async (width) => {
    await turnTo(looks[width]!);
    await shoot(page, `${nameOf(path)}-${width}`);
    expect(await page.locator('h1').count()).toBe(1);
    expect(await page.locator('h1').textContent()).toMatch(/\w{4}/);
    expect(await violations(page)).toEqual([]);
    expect(await sideways(page)).toBeLessThanOrEqual(0);
    expect(await smallTargets(page)).toEqual([]);
    expect(errors).toEqual([]);
  });

  it('does not scroll sideways at 320 px', async () => {
    await turnTo({ width: 320, height: 640 });
    await shoot(page, `${nameOf(path)}-320`);
    expect(await sideways(page)).toBeLessThanOrEqual(0);
  });

  it('keeps its contrast in the dark', async () => {
    await turnTo({ ...phone, dark: true });
    await shoot(page, `${nameOf(path)}-dark`);
    expect(await violations(page)).toEqual([]);
  });

  it('does not scroll sideways with letters twice as large', async () => {
    await turnTo(phone, '200%');
    await shoot(page, `${nameOf(path)}-200`);
    expect(await sideways(page)).toBeLessThanOrEqual(0);
  });
});

describe('first load', () => {
  // The limit is the project's own (design, limits to hold): script of the first load, compressed.
  it('needs at most 200 kB of script, and no chart before a figure is drawn', async () => {
    const { page, close } = await open(phone, '/book');
    const urls = await page.evaluate(() =>
      performance
        .getEntriesByType('resource')
        .map((each) => each.name)
        .filter((name) => name.endsWith('.js')),
    );
    const bodies = await Promise.all(urls.map(async (url) => (await fetch(url)).arrayBuffer()));
    const compressed = bodies.reduce((sum, body) => sum + gzipSync(Buffer.from(body)).length, 0);
    expect(urls.length).toBeGreaterThan(0);
    expect(urls.filter((url) => url.includes('chartKit'))).toEqual([]);
    expect(compressed).toBeLessThanOrEqual(200_000);
    await close();
  });
});

describe('on a long page', () => {
  it('what was kept is told in view with its undo, and nothing with the focus hides behind it', async () => {
    const { page, close } = await open({ width: 360, height: 640 }, '/sensors');
    await page.getByText('Type in lowest and highest').click();
    await page.getByLabel('Lowest').fill('9');
    await page.getByLabel('Highest').fill('21');
    await page.getByRole('button', { name: 'Keep the day' }).click();
    const strip = page.getByRole('status').getByRole('button', { name: /^Kept:.*undo$/ });
    await strip.waitFor();
    const box = await strip.boundingBox();
    expect(await page.evaluate(() => scrollY)).toBeGreaterThan(300);
    expect(box?.y).toBe(0);
    await page.screenshot({ path: `${shots}/sensors-kept.png` });
    const hidden = await page.evaluate(() => {
      const stripEnd = document.querySelector('.strip')?.getBoundingClientRect().bottom ?? 0;
      const all = document.querySelectorAll<HTMLElement>(
        'main button, main input, main select, main summary',
      );
      return [...all].reverse().filter((each) => {
        each.focus();
        return document.activeElement === each && each.getBoundingClientRect().top < stripEnd;
      }).length;
    });
    expect(hidden).toBe(0);
    await close();
  });
});

it('what the page begins to load beside its script is asked for once', async () => {
  const { page, errors, close } = await open(phone, '/book');
  const asked: string[] = [];
  page.on('request', (request) => asked.push(new URL(request.url()).pathname));
  await page.reload();
  await page.locator('h1').waitFor();
  const begun = ['/api/access', '/api/places'];
  expect(asked.filter((path) => begun.includes(path)).sort()).toEqual(begun);
  expect(errors).toEqual([]);
  await close();
});

describe('after an entry', () => {
  it('the sentence is told as out of date, still readable, until a newer one is issued', async () => {
    server.forget();
    const { page, errors, close } = await open(phone, '/sensors');
    await page.getByText('Type in lowest and highest').click();
    await page.getByLabel('Lowest').fill('9');
    await page.getByLabel('Highest').fill('21');
    await page.getByRole('button', { name: 'Keep the day' }).click();
    await page.getByText('Working it out again.').waitFor();
    await page.getByRole('link', { name: 'This week' }).click();
    await page.locator('h1[aria-busy="true"]').waitFor();
    expect(await page.getByRole('status').textContent()).toMatch(/^Working it out again/);
    await shoot(page, 'week-waiting');
    expect(await violations(page)).toEqual([]);
    server.issue('Count again on Wed 20 May.');
    await page.locator('h1[aria-busy="false"]', { hasText: 'Count again' }).waitFor();
    expect(await page.getByRole('status').textContent()).toBe('');
    expect(errors).toEqual([]);
    server.forget();
    await close();
  });
});

describe('sensors', () => {
  it('tell of topics of no place, count them, and offer no reading again where it cannot help', async () => {
    const { page, close } = await open(phone, '/sensors');
    expect(await page.locator('h1').textContent()).toContain('10 messages are refused');
    await page.getByText('A topic nobody knows: glasstide/leanto/readings/bench').waitFor();
    expect(await page.getByText('glasstide/elsewhere').count()).toBe(0);
    const clock = page.getByRole('article', { name: /readings\/door$/ });
    expect(await clock.getByRole('button').allTextContents()).toEqual(['Set aside', 'Show as sent']);
    expect(await clock.getByText('Set the clock of the board').count()).toBe(1);
    await clock.getByText('and 2 more').waitFor();
    await close();
  });
});

describe('this week', () => {
  it('names every pest of the forecast before the button, the others with a way to Ahead', async () => {
    const { page, close } = await open(phone, '/');
    const others = page.locator('.other-pests a');
    expect(await others.allTextContents()).toEqual(['Peach aphids']);
    await others.click();
    await page.getByRole('heading', { level: 1, name: /next adults fly/ }).waitFor();
    await close();
  });
});
