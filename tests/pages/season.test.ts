/** The season's page before anything is counted, and when the house refuses it. */
import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { contextOf, settled, sideways, violations } from './browser.ts';
import { buildDashboard } from './build.ts';
import { launchChromium } from './chromium.ts';
import { shopping } from './fixtureRecords.ts';
import { startFixtureServer } from './fixtureServer.ts';

let browser: Browser;
let dist: string;
beforeAll(async () => {
  dist = buildDashboard('season');
  browser = await launchChromium();
});
afterAll(() => browser?.close());

async function open(width: number, instead: Record<string, unknown>) {
  const server = await startFixtureServer(dist, instead);
  const context = await contextOf(browser, { width, height: 800 });
  const page = await context.newPage();
  return {
    page,
    show: async (path: string) => {
      await page.goto(server.url + path);
      await settled(page);
    },
    close: async () => {
      await context.close();
      await server.close();
    },
  };
}

describe.each([360, 1280])('at %s px', (width) => {
  it('before the first count the season asks for one, without empty frames', async () => {
    const { page, show, close } = await open(width, {
      '/api/places/lean-to/held': { seasonEnd: '2026-10-15', rounds: [] },
    });
    await show('/season');
    expect(await page.locator('h1').textContent()).toBe('Nothing is counted this season yet.');
    expect(await page.getByRole('link', { name: 'Count now' }).getAttribute('href')).toBe('/round');
    expect(await page.locator('canvas').count()).toBe(0);
    expect(await violations(page)).toEqual([]);
    expect(await sideways(page)).toBeLessThanOrEqual(0);
    await close();
  });

  it('a season before in which nothing was bought is told as none, not as a sum', async () => {
    const { page, show, close } = await open(width, {
      '/api/places/lean-to/shopping': {
        ...shopping,
        lastSeason: { ...shopping.lastSeason, total: 0, totalToDate: 0, unpriced: 0 },
      },
    });
    for (const path of ['/season', '/shopping']) {
      await show(path);
      const line = page.getByText('Last season', { exact: true }).locator('..');
      expect(await line.textContent()).toMatch(/^Last season\s*none$/);
    }
    await close();
  });

  it('stands beside the season before: first sightings, rounds, money, and a file of it', async () => {
    const { page, show, close } = await open(width, {});
    await show('/season');
    const section = page.getByRole('region', { name: 'Beside earlier seasons', exact: true });
    await section.getByText('Whitefly: first seen 8 April, 14 days earlier than in 2025.').waitFor();
    const rows = await section.getByRole('row').allTextContents();
    expect(rows.slice(0, 2)).toEqual(['Season20262025', 'Whitefly, first seen8 April22 April']);
    // Followed, and counted in neither season.
    expect(rows.filter((row) => row.startsWith('Peach aphids'))).toEqual([]);
    const [download] = await Promise.all([
      page.waitForEvent('download'),
      section.getByRole('button', { name: 'Save as CSV: Beside earlier seasons' }).click(),
    ]);
    expect(download.suggestedFilename()).toBe('beside-earlier-seasons.csv');
    expect(await violations(page)).toEqual([]);
    expect(await sideways(page)).toBeLessThanOrEqual(0);
    await close();
  });

  it('what is refused is told with what to do, and the pages around stay', async () => {
    const { page, show, close } = await open(width, {});
    const refusal = { code: 'fault', reason: 'The disk is full.', whatToDo: 'Make room.', issues: [] };
    await page.route('**/api/places/lean-to/held', (route) => route.fulfill({ status: 500, json: refusal }));
    await show('/season');
    await page.getByRole('heading', { name: 'The disk is full.' }).waitFor();
    await page.getByText('Make room.').waitFor();
    expect(await violations(page)).toEqual([]);
    await close();
  });

  it('a what-if without signal says so, and can be tried again', async () => {
    const { page, show, close } = await open(width, {});
    await page.route(/\/api\/places\/lean-to\/season\?/, (route) => route.abort());
    await show('/ahead');
    await page.getByRole('button', { name: 'Try a release' }).click();
    await page.getByRole('status').getByText('The house does not answer.').waitFor();
    expect(await page.getByRole('button', { name: 'Try a release' }).isEnabled()).toBe(true);
    expect(await violations(page)).toEqual([]);
    await close();
  });
});
