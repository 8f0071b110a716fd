/** "What if" in Chromium: the page's own thread says of a plan, number by number, what the house says of it. */
import { readFileSync } from 'node:fs';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { fit as fitSeason, forecastAndAdvise, seasonSchema, tryRelease } from '../../services/model/index.ts';
import { contextOf, errorsOf, settled, sideways, smallTargets, unroll, violations } from './browser.ts';
import { buildDashboard } from './build.ts';
import { launchChromium } from './chromium.ts';
import { type FixtureServer, startFixtureServer } from './fixtureServer.ts';

const root = new URL('../../', import.meta.url).pathname;
const season = seasonSchema.parse(
  JSON.parse(readFileSync(`${root}tests/fixtures/small-season.json`, 'utf8')),
);
const asOf = '2026-05-24T09:00:00.000Z';
const outcome = forecastAndAdvise(season, asOf, { seed: 1 });
const path = `/api/places/${season.place.id}`;
const stored = (data: { id: string }) => ({ id: data.id, version: 1, changedAt: asOf, deleted: false, data });

let browser: Browser;
let server: FixtureServer;
const answers: Record<string, unknown> = {
  '/api/health': { status: 'well', reasons: [], now: asOf, demo: false, version: '0.1.0' },
  '/api/places': { places: [season.place] },
  [`${path}/outcome`]: { issuedAt: asOf, ...outcome },
  [`${path}/season`]: season,
  [`${path}/temperature`]: { points: [], doubted: [] },
  [`${path}/trap-counts`]: { records: season.trapCounts.map(stored) },
  [`${path}/leaf-checks`]: { records: season.leafChecks.map(stored) },
};
beforeAll(async () => {
  server = await startFixtureServer(buildDashboard('whatIf'), answers);
  browser = await launchChromium();
});
afterAll(async () => {
  await browser?.close();
  await server?.close();
});

interface Heard {
  kind: string;
  tried?: unknown;
  starts?: unknown;
}
declare const told: Heard[];

/** The page with everything its computing thread says kept in `told`. */
async function tryOut(width: number) {
  const context = await contextOf(browser, { width, height: 900 });
  const page = await context.newPage();
  await page.addInitScript(() => {
    const heard: Heard[] = [];
    const Plain = Worker;
    Object.assign(globalThis, {
      told: heard,
      Worker: class extends Plain {
        constructor(url: string | URL, options?: WorkerOptions) {
          super(url, options);
          this.addEventListener('message', ({ data }) => heard.push(data as Heard));
        }
      },
    });
  });
  const errors = errorsOf(page);
  await page.goto(`${server.url}/ahead`);
  await page.getByRole('button', { name: 'Try a release' }).click();
  await page.getByText(/^Left, whitefly over your limit/).waitFor();
  await settled(page);
  return { page, errors, close: () => context.close() };
}

const lastTried = (page: Page) =>
  page.evaluate(() => JSON.stringify(told.findLast(({ kind }) => kind === 'tried')?.tried));

/** Every leaf with its path. */
function leaves(value: unknown, at = ''): [string, unknown][] {
  if (typeof value !== 'object' || value === null) return [[at, value]];
  return Object.entries(value).flatMap(([key, each]) => leaves(each, `${at}.${key}`));
}
/** Chromium and Node round the last bits of powers and logarithms differently. */
function differing(one: unknown, other: unknown): string[] {
  const [found, expected] = [leaves(one), leaves(other)];
  expect(found.map(([key]) => key)).toEqual(expected.map(([key]) => key));
  return found
    .filter(([, leaf], i) => {
      const right = expected[i]?.[1];
      if (typeof leaf !== 'number' || typeof right !== 'number') return leaf !== right;
      return Math.abs(leaf - right) > 1e-9 * Math.max(Math.abs(leaf), Math.abs(right));
    })
    .map(([key]) => key);
}

it('says of the advised parcel, and of another number and day, what the house says', async () => {
  const { page, errors, close } = await tryOut(360);
  const plan = outcome.advice.plan!;
  const fit = fitSeason(season, asOf, { seed: 1 });
  const inHouse = (number: number, day: string) =>
    JSON.parse(
      JSON.stringify(
        tryRelease(
          season,
          fit,
          { pest: 'trialeurodes-vaporariorum', enemy: plan.enemy, number, day },
          Date.parse(asOf),
        ),
      ),
    );
  // Tries are of parcels alone; the advice may want a wash before.
  const first = JSON.parse(await lastTried(page)) as { candidate: { plan: typeof plan } };
  expect(first.candidate.plan).toEqual(plan);
  expect(differing(first, inHouse(plan.number, plan.windowFrom))).toEqual([]);
  expect(leaves(first.candidate).filter(([, leaf]) => typeof leaf === 'number').length).toBeGreaterThan(100);

  await page.getByRole('button', { name: 'a week later' }).click();
  await page.getByLabel('How many').fill('360');
  await page.getByText(/^Left, .* With 360 .* on /).waitFor();
  expect(await page.getByText(/^Tried: /).textContent()).toMatch(/, 360$/);
  await page.waitForFunction(() => JSON.stringify(told.at(-1)?.tried).includes('"number":360'));
  const second = JSON.parse(await lastTried(page)) as { candidate: { plan: { windowFrom: string } } };
  expect(differing(second, inHouse(360, second.candidate.plan.windowFrom))).toEqual([]);
  expect(errors).toEqual([]);
  await close();
});

it.each([360, 1280])('reads well at %s px and notes the order', async (width) => {
  const { page, errors, close } = await tryOut(width);
  await unroll(page);
  await page.screenshot({ path: `${root}tmp/pages/what-if-${width}.png` });
  expect(await violations(page)).toEqual([]);
  expect(await sideways(page)).toBeLessThanOrEqual(0);
  expect(await smallTargets(page)).toEqual([]);
  await page.getByRole('button', { name: 'I have ordered these' }).click();
  await page.getByRole('status').getByText('ordered').first().waitFor();
  const write = server.writes.at(-1);
  expect(write?.path).toBe(`${path}/orders`);
  expect(write?.body).toMatchObject({
    enemy: outcome.advice.plan?.enemy,
    number: outcome.advice.plan?.number,
    expectedOn: outcome.advice.plan?.arrivesOn,
    price: outcome.advice.plan?.price,
  });
  expect(errors).toEqual([]);
  await close();
});

it('a number that is none is told beside its field, and the last try stays', async () => {
  const { page, close } = await tryOut(360);
  const before = await lastTried(page);
  await page.getByLabel('How many').fill('some');
  await page.getByText('A whole number above 0; this was some.').waitFor();
  expect(await lastTried(page)).toBe(before);
  await close();
});

it('keeps the try when a newer forecast comes, and begins from that one when asked', async () => {
  const { page, errors, close } = await tryOut(360);
  await page.getByLabel('How many').fill('360');
  await page.getByText(/^Tried: .*, 360$/).waitFor();
  const newer = '2026-05-24T10:00:00.000Z';
  const before = answers[`${path}/outcome`];
  answers[`${path}/outcome`] = {
    ...outcome,
    issuedAt: newer,
    forecast: { ...outcome.forecast, asOf: newer },
  };
  server.issue('A newer one.');
  await page.getByText('A newer forecast is there.').waitFor();
  expect(await page.getByLabel('How many').inputValue()).toBe('360');
  expect(await page.getByText(/^Tried: /).textContent()).toMatch(/, 360$/);
  await page.screenshot({ path: `${root}tmp/pages/what-if-newer.png`, fullPage: true });
  expect(await violations(page)).toEqual([]);
  await page.getByRole('button', { name: 'Try it from the newer forecast' }).click();
  await page.getByText(/^Tried: .*, 360$/).waitFor();
  expect(await page.getByLabel('How many').inputValue()).toBe('360');
  expect(await page.getByText('A newer forecast is there.').count()).toBe(0);
  answers[`${path}/outcome`] = before;
  expect(errors).toEqual([]);
  await close();
});
