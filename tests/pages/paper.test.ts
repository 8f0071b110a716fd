/** What a figure gives beside its drawing: a file for a spreadsheet, and the week on one sheet of paper. */
import { mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { contextOf, settled } from './browser.ts';
import { buildDashboard } from './build.ts';
import { launchChromium } from './chromium.ts';
import { type FixtureServer, startFixtureServer } from './fixtureServer.ts';

const shots = `${new URL('../../', import.meta.url).pathname}tmp/pages`;
let browser: Browser;
let server: FixtureServer;
beforeAll(async () => {
  mkdirSync(shots, { recursive: true });
  server = await startFixtureServer(buildDashboard('paper'));
  browser = await launchChromium();
});
afterAll(async () => {
  await browser?.close();
  await server?.close();
});

async function open(path: string, dark = false): Promise<Page> {
  const page = await (await contextOf(browser, { width: 1280, height: 900, dark })).newPage();
  await page.goto(server.url + path);
  await settled(page);
  return page;
}

it('every figure saves the numbers of its table as CSV', async () => {
  const page = await open('/season');
  await page.getByText('Read it as a table').click();
  const cells = await page.locator('figure tbody tr').last().locator('th, td').allTextContents();
  const [download] = await Promise.all([
    page.waitForEvent('download'),
    page.getByRole('button', { name: /^Save as CSV: Whitefly/ }).click(),
  ]);
  expect(download.suggestedFilename()).toBe('whitefly-on-a-trap-in-a-week.csv');
  const lines = readFileSync(await download.path(), 'utf8')
    .trimEnd()
    .split('\r\n');
  expect(lines[0]).toMatch(/^\ufeffCounted on,Counted,/);
  expect(lines.at(-1)).toBe(cells.map((cell) => (cell.includes(',') ? `"${cell}"` : cell)).join(','));
  await page.context().close();
});

it('the week with its tally sheet fills one page of A4, black on white also from the dark', async () => {
  const page = await open('/', true);
  await page.emulateMedia({ media: 'print', colorScheme: 'dark' });
  expect(await page.getByRole('heading', { name: 'Tally sheet' }).isVisible()).toBe(true);
  expect(await page.getByRole('button').count()).toBe(0);
  const ground = await page.evaluate(() => getComputedStyle(document.body).backgroundColor);
  expect(ground).toBe('rgb(255, 255, 255)');
  await page.setViewportSize({ width: 688, height: 1000 });
  await page.screenshot({ path: `${shots}/week-paper.png`, fullPage: true });
  const pdf = await page.pdf({ preferCSSPageSize: true, printBackground: true });
  writeFileSync(`${shots}/week.pdf`, pdf);
  expect(pdf.toString('latin1').match(/\/Type \/Page\b/g)).toHaveLength(1);
  await page.context().close();
});

it('on paper the same numbers follow a figure', async () => {
  const page = await open('/season');
  const table = page.locator('figure table');
  expect(await table.isVisible()).toBe(false);
  await page.emulateMedia({ media: 'print' });
  expect((await table.boundingBox())?.height).toBeGreaterThan(100);
  await page.context().close();
});
