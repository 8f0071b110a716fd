/**
 * A place that follows spider mites, seen only under leaves, and thrips: every page in Chromium, with a forecast
 * worked out from invented counts. Screenshots go to tmp/pages/ to be looked at.
 */
import { mkdirSync } from 'node:fs';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { forecastAndAdvise, seasonSchema } from '../../services/model/index.ts';
import { contextOf, errorsOf, settled, sideways, smallTargets, unroll, violations } from './browser.ts';
import { buildDashboard } from './build.ts';
import { launchChromium } from './chromium.ts';
import { ago, nowIso, place } from './fixtureSeason.ts';
import { type FixtureServer, startFixtureServer } from './fixtureServer.ts';

const shots = `${new URL('../../', import.meta.url).pathname}tmp/pages`;
const widths = [360, 1280];

/** Four weeks of both; the day before yesterday has no look under leaves. */
const season = seasonSchema.parse({
  format: 'glasstide-season',
  version: 1,
  place: {
    ...place,
    pests: ['tetranychus-urticae', 'frankliniella-occidentalis'],
    limits: {},
    supplier: {
      ...place.supplier,
      pricePerAnimal: {
        'phytoseiulus-persimilis': 0.06,
        'neoseiulus-cucumeris': 0.004,
        'orius-laevigatus': 0.2,
      },
    },
  },
  plantings: [{ id: 'cucumbers', crop: 'cucumber', plants: 8 }],
  traps: [{ id: 'door', name: 'Trap 1, by the door', hungAt: ago(35) }],
  dailyExtremes: Array.from({ length: 40 }, (_, i) => ({
    day: ago(40 - i).slice(0, 10),
    minC: 14,
    maxC: 25,
  })),
  trapCounts: [0, 2, 5, 6].map((thrips, i) => ({
    id: `count-${i}`,
    trapId: 'door',
    time: ago(7 * (3 - i) + 0.1),
    exposureDays: 7,
    counts: { thrips },
  })),
  leafChecks: [0, 1, 2, 4].map((infestedLeaves, i) => ({
    id: `look-${i}`,
    time: ago(7 * (3 - i) + 0.1),
    leaves: 10,
    seen: [{ kind: 'spider-mite', infestedLeaves }],
  })),
});
const recorded = (records: readonly { id: string }[]) => ({
  records: records.map((data) => ({ id: data.id, version: 1, changedAt: ago(1), deleted: false, data })),
});

let browser: Browser;
let server: FixtureServer;

beforeAll(async () => {
  mkdirSync(shots, { recursive: true });
  const outcome = { issuedAt: nowIso, ...forecastAndAdvise(season, nowIso, { members: 100 }) };
  const at = `/api/places/${place.id}`;
  server = await startFixtureServer(buildDashboard('leaves'), {
    '/api/places': { places: [season.place] },
    [`${at}/outcome`]: outcome,
    [`${at}/trap-counts`]: recorded(season.trapCounts),
    [`${at}/leaf-checks`]: recorded(season.leafChecks),
    [`${at}/releases`]: recorded([]),
    [`${at}/orders`]: recorded([]),
  });
  browser = await launchChromium();
});
afterAll(async () => {
  await browser?.close();
  await server?.close();
});

async function open(
  width: number,
  path: string,
): Promise<{ page: Page; errors: string[]; close(): Promise<void> }> {
  const context = await contextOf(browser, { width, height: 800 });
  const page = await context.newPage();
  const errors = errorsOf(page);
  await page.goto(server.url + path);
  await settled(page);
  return { page, errors, close: () => context.close() };
}

describe.each(widths)('at %d px', (width) => {
  it.each(['/', '/ahead', '/settings', '/new-place'])('%s reads well', async (path) => {
    const { page, errors, close } = await open(width, path);
    if (path === '/settings') await page.getByText(/^Change The lean-to/).click();
    await unroll(page);
    await page.screenshot({ path: `${shots}/leaves-${path.slice(1) || 'week'}-${width}.png` });
    expect(await violations(page)).toEqual([]);
    expect(await sideways(page)).toBeLessThanOrEqual(0);
    expect(await smallTargets(page)).toEqual([]);
    expect(errors).toEqual([]);
    await close();
  });
});

describe('in words', () => {
  it('the week speaks of leaves where leaves are counted', async () => {
    const { page, close } = await open(360, '/');
    await expect(page.locator('main').textContent()).resolves.toMatch(/of ten leaves/);
    await close();
  });

  it('what is coming has both pests, each in its unit', async () => {
    const { page, close } = await open(360, '/ahead');
    expect(await page.getByRole('heading', { name: 'Spider mites: leaves with any, of ten' }).count()).toBe(
      1,
    );
    expect(await page.getByRole('heading', { name: 'Thrips on a trap in a week' }).count()).toBe(1);
    await close();
  });

  it('ten leaves of the round are held against the forecast once they are kept', async () => {
    const { page, close } = await open(360, '/round');
    await page.getByRole('button', { name: /Look under leaves/ }).click();
    await page.getByRole('button', { name: 'Spider mites: seen' }).click();
    await page.screenshot({ path: `${shots}/leaves-round-360.png`, fullPage: true });
    await page.getByRole('button', { name: 'Keep 10 leaves' }).click();
    await page.getByRole('button', { name: 'Keep', exact: true }).click();
    await page.getByText(/Spider mites on 1 of ten leaves; /).waitFor();
    await close();
  });

  it('a place outdoors is offered the pests of the open, and no trap', async () => {
    const { page, close } = await open(360, '/new-place');
    const tap = (name: string | RegExp) => page.getByRole('button', { name }).click();
    await page.getByLabel('Name').fill('The rose bed');
    await page.getByLabel(/^Size/).fill('9');
    await tap('outdoors');
    await tap('Next: what grows');
    await tap('Next: pests');
    await tap('Rose aphids');
    await page.screenshot({ path: `${shots}/leaves-outdoors-360.png`, fullPage: true });
    await tap('Next: where it stands');
    expect(await page.getByLabel(/yellow trap/).count()).toBe(0);
    await page.getByLabel(/^Latitude/).fill('52');
    await page.getByLabel(/^Longitude/).fill('0');
    const before = server.writes.length;
    await tap('Keep, and count');
    await expect.poll(() => server.writes.length).toBeGreaterThan(before);
    await page.getByRole('button', { name: /Look under leaves/ }).waitFor();
    const written = server.writes.slice(before).map(({ path }) => path);
    expect(written.some((path) => path.endsWith('/traps'))).toBe(false);
    expect(server.writes[before]?.body).toMatchObject({ kind: 'outdoors', pests: ['macrosiphum-rosae'] });
    await close();
  });

  it('a limit is asked for in leaves of ten', async () => {
    const { page, close } = await open(360, '/settings');
    await page.getByRole('button', { name: 'Spider mites: hardly any, 1' }).waitFor();
    await close();
  });
});
