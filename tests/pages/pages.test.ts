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
const looks: Record<string, Look> = {
  '360': { width: 360, height: 800 },
  '1280': { width: 1280, height: 900 },
};
const paths = ['/', '/round', '/ahead', '/releases', '/sensors', '/settings', '/book'];
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

describe.each(Object.keys(looks))('at %s px', (width) => {
  it.each(paths)('%s reads well', async (path) => {
    const { page, errors, close } = await open(looks[width]!, path);
    await shoot(page, `${nameOf(path)}-${width}`);
    expect(await page.locator('h1').count()).toBe(1);
    expect(await page.locator('h1').textContent()).toMatch(/\w{4}/);
    expect(await violations(page)).toEqual([]);
    expect(await sideways(page)).toBeLessThanOrEqual(0);
    expect(await smallTargets(page)).toEqual([]);
    expect(errors).toEqual([]);
    await close();
  });
});

describe('first load', () => {
  // The limit is the project's own (design, limits to hold): script of the first load, compressed.
  it('needs at most 200 kB of script, and no chart before a figure is drawn', async () => {
    const { page, close } = await open({ width: 360, height: 800 }, '/book');
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

describe('reflow, dark, 200 % text', () => {
  it.each(paths)('%s at 320 px does not scroll sideways', async (path) => {
    const { page, close } = await open({ width: 320, height: 640 }, path);
    await shoot(page, `${nameOf(path)}-320`);
    expect(await sideways(page)).toBeLessThanOrEqual(0);
    await close();
  });

  it.each(paths)('%s in the dark keeps its contrast', async (path) => {
    const { page, close } = await open({ width: 360, height: 800, dark: true }, path);
    await shoot(page, `${nameOf(path)}-dark`);
    expect(await violations(page)).toEqual([]);
    await close();
  });

  it.each(paths)('%s with letters twice as large does not scroll sideways', async (path) => {
    const { page, close } = await open({ width: 360, height: 800 }, path);
    await page.evaluate(() => {
      document.documentElement.style.fontSize = '200%';
    });
    await shoot(page, `${nameOf(path)}-200`);
    expect(await sideways(page)).toBeLessThanOrEqual(0);
    await close();
  });
});
