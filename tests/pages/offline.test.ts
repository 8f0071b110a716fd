/**
 * Without signal, in real Chromium against the real API and store: what is entered is kept through closed pages, lost
 * answers and two open pages, and is found once in the store afterwards.
 */
import { cpSync, mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import type { AddressInfo } from 'node:net';
import type { Browser, BrowserContext, Page } from 'playwright-core';
import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import { aPlace, openHouse } from '../api/house.ts';
import { contextOf, settled, violations } from './browser.ts';
import { buildDashboard } from './build.ts';
import { launchChromium } from './chromium.ts';

const root = new URL('../../', import.meta.url).pathname;
const shots = `${root}tmp/pages`;
const trap = { id: 'door', name: 'Trap 1, by the door', hungAt: '2026-05-06T09:00:00Z' };

let dist: string;
let browser: Browser;
let house: Awaited<ReturnType<typeof openHouse>>;
let url: string;
let context: BrowserContext;

beforeAll(async () => {
  mkdirSync(shots, { recursive: true });
  dist = buildDashboard('offline');
  browser = await launchChromium();
});
afterAll(() => browser?.close());
beforeEach(async () => {
  house = await openHouse({ dashboardDir: dist });
  await house.app.listen({ port: 0, host: '127.0.0.1' });
  url = `http://127.0.0.1:${(house.app.server.address() as AddressInfo).port}`;
  await house.send('POST', '/api/places', aPlace);
  await house.send('POST', '/api/places/lean-to/traps', trap);
  context = await contextOf(browser, { width: 360, height: 740 });
});
afterEach(async () => {
  await context.close();
  await house.close();
});

const kept = (kind: 'trapCount' | 'leafCheck' | 'sighting') => house.store.records.list(kind, 'lean-to');

/** A page that has seen what a round needs, and whose files lie on the phone. */
async function openWithSignal(): Promise<Page> {
  const page = await context.newPage();
  await page.goto(`${url}/round`);
  await page.getByRole('button', { name: /Trap 1/ }).waitFor();
  await page.evaluate(() => navigator.serviceWorker.ready.then(() => undefined));
  return page;
}
/** Until the page itself has seen it: a browser cuts what is just being opened a moment late. */
async function loseSignal(page: Page): Promise<void> {
  await context.setOffline(true);
  await page.goto(`${url}/round`);
  await page.getByText(/The house has not answered since|^No answer/).waitFor();
}
const tap = (page: Page, name: string | RegExp) => page.getByRole('button', { name }).first().click();

async function countTrap(page: Page): Promise<void> {
  await page.goto(`${url}/round`);
  await tap(page, /^Trap 1/);
  await tap(page, /^Count it for the first time/);
  await tap(page, '1–5');
  await tap(page, 'All else: 0');
  await tap(page, 'Keep this trap');
  await page.getByRole('heading', { name: 'What next?' }).waitFor();
}
async function sightLacewingEgg(page: Page): Promise<void> {
  await page.goto(`${url}/who-is-it/pictures`);
  await tap(page, /Lacewing egg$/);
  await tap(page, 'Keep the sighting');
  await page.getByRole('button', { name: 'Look at another' }).waitFor();
}
async function checkLeaves(page: Page): Promise<void> {
  await tap(page, /^Look under leaves/);
  await tap(page, 'Black scales: none');
  await tap(page, 'Keep 10 leaves');
  await tap(page, /^Keep|^Next|^Done|^Finish/);
}

describe('without signal', () => {
  it.each([360, 1280])(
    'count, leaf check and sighting survive the closed page and are found once afterwards, at %i px',
    async (width) => {
      await context.close();
      context = await contextOf(browser, { width, height: 900 });
      const page = await openWithSignal();
      await loseSignal(page);
      await countTrap(page);
      await checkLeaves(page);
      await page.getByText('on this phone').first().waitFor();
      await sightLacewingEgg(page);
      await page.getByRole('status').getByText('Kept on this phone:').waitFor();
      expect([kept('trapCount'), kept('leafCheck'), kept('sighting')].map(({ length }) => length)).toEqual([
        0, 0, 0,
      ]);
      await page.close();

      const again = await context.newPage();
      await again.goto(`${url}/phone`);
      await again.getByRole('heading', { level: 1, name: '3 entries are kept on this phone.' }).waitFor();
      await again.getByText(/^No signal/).waitFor();
      await settled(again);
      await again.screenshot({ path: `${shots}/phone-offline-${width}.png` });
      expect(await violations(again)).toEqual([]);
      await again.close();

      await context.setOffline(false);
      const later = await context.newPage();
      await later.goto(`${url}/phone`);
      await later.getByRole('heading', { level: 1, name: /^Nothing waits/ }).waitFor();
      const all = [...kept('trapCount'), ...kept('leafCheck'), ...kept('sighting')];
      expect(all.map(({ kind, version }) => [kind, version])).toEqual([
        ['trapCount', 1],
        ['leafCheck', 1],
        ['sighting', 1],
      ]);
      expect(kept('sighting')[0]?.data).toMatchObject({
        what: 'lacewing eggs',
        time: expect.stringMatching(/^2026-05-13/),
      });
      await later.screenshot({ path: `${shots}/phone-sent-${width}.png` });
      expect(await violations(later)).toEqual([]);
    },
  );

  it('an entry whose answer was lost on the way is sent again and stays one', async () => {
    const page = await openWithSignal();
    await page.route('**/sightings', async (route) => {
      await route.fetch();
      await route.abort();
    });
    await sightLacewingEgg(page);
    await page.getByRole('status').getByText('Kept on this phone:').waitFor();
    expect(kept('sighting')).toHaveLength(1);
    await page.unroute('**/sightings');
    await page.goto(`${url}/phone`);
    await page.getByRole('heading', { level: 1, name: /^Nothing waits/ }).waitFor();
    expect(kept('sighting').map(({ version }) => version)).toEqual([1]);
  });

  it('two open pages that get signal together send each entry once', async () => {
    const page = await openWithSignal();
    const other = await openWithSignal();
    await loseSignal(page);
    await sightLacewingEgg(page);
    await other.goto(`${url}/phone`);
    await other.getByRole('heading', { level: 1, name: '1 entry is kept on this phone.' }).waitFor();
    await context.setOffline(false);
    await Promise.all([page.goto(`${url}/phone`), other.goto(`${url}/phone`)]);
    for (const each of [page, other])
      await each.getByRole('heading', { level: 1, name: /^Nothing waits/ }).waitFor();
    expect(kept('sighting').map(({ version }) => version)).toEqual([1]);
  });

  it('can be undone while it only lies on the phone', async () => {
    const page = await openWithSignal();
    await loseSignal(page);
    await sightLacewingEgg(page);
    await tap(page, /Kept on this phone:.*undo$/);
    await page.getByText('Undone:').waitFor();
    await context.setOffline(false);
    await page.goto(`${url}/phone`);
    await page.getByRole('heading', { level: 1, name: /^Nothing waits/ }).waitFor();
    await page.evaluate(() => fetch('/api/health').then((answer) => answer.json()));
    expect(kept('sighting')).toEqual([]);
  });

  it('what the house will not take stays on the phone with the reason, and can be sent again', async () => {
    const page = await openWithSignal();
    await loseSignal(page);
    await countTrap(page);
    await house.send('DELETE', '/api/places/lean-to/traps/door');
    await context.setOffline(false);
    await page.goto(`${url}/phone`);
    await page.getByRole('button', { name: /^send again/ }).waitFor();
    await page.getByRole('alert').waitFor();
    await page.screenshot({ path: `${shots}/phone-refused-360.png` });
    expect(await violations(page)).toEqual([]);
    expect(kept('trapCount')).toEqual([]);
    await house.send('POST', '/api/places/lean-to/traps/door/undo');
    await tap(page, /^send again/);
    await page.getByRole('heading', { level: 1, name: /^Nothing waits/ }).waitFor();
    expect(kept('trapCount').map(({ version }) => version)).toEqual([1]);
  });
});

describe('installed on the phone', () => {
  it('Chromium finds nothing that keeps it from being installed', async () => {
    const page = await openWithSignal();
    const devtools = await context.newCDPSession(page);
    const { installabilityErrors } = await devtools.send('Page.getInstallabilityErrors');
    // Test contexts are private windows; a phone is not.
    const others = installabilityErrors.filter(({ errorId }) => errorId !== 'in-incognito');
    expect(others).toEqual([]);
    const { errors, url: manifest } = await devtools.send('Page.getAppManifest');
    expect(errors).toEqual([]);
    expect(manifest).toBe(`${url}/manifest.webmanifest`);
  });

  it('a new build is fetched in the background and opens at the next start', async () => {
    const folder = `${root}tmp/dashboard-offline-next`;
    cpSync(dist, folder, { recursive: true });
    const next = await openHouse({ dashboardDir: folder });
    await next.app.listen({ port: 0, host: '127.0.0.1' });
    const there = `http://127.0.0.1:${(next.app.server.address() as AddressInfo).port}`;
    await next.send('POST', '/api/places', aPlace);
    const page = await context.newPage();
    await page.goto(there);
    await page.evaluate(() => navigator.serviceWorker.ready.then(() => undefined));
    const edit = (file: string, change: (text: string) => string) =>
      writeFileSync(`${folder}/${file}`, change(readFileSync(`${folder}/${file}`, 'utf8')));
    edit('worker.js', (text) => text.replace(/"revision":"\w+"/, '"revision":"next"'));
    edit('index.html', (text) => text.replace('<body>', '<body data-build="next">'));
    edit('early.js', (text) => `${text}document.documentElement.dataset.early = 'next';\n`);
    await page.goto(`${there}/book`);
    const workers = () =>
      page.evaluate(async () => {
        const keptNames = await caches.keys();
        const found = await navigator.serviceWorker.getRegistration();
        return { keptNames, busy: Boolean(found?.installing ?? found?.waiting), state: found?.active?.state };
      });
    await expect
      .poll(workers, { timeout: 20_000 })
      .toEqual({ keptNames: [expect.any(String), 'glasstide-next'], busy: false, state: 'activated' });
    await page.goto(`${there}/book`);
    expect(await page.locator('body').getAttribute('data-build')).toBe('next');
    await page.locator('html[data-early=next]').waitFor({ state: 'attached' });
    await context.setOffline(true);
    await page.goto(`${there}/who-is-it`);
    await page.getByRole('heading', { level: 1, name: 'Where is it?' }).waitFor();
    await page.close();
    await next.close();
  });

  it('icons have the pixels the manifest names', () => {
    const manifest: { icons: { src: string; sizes: string }[] } = JSON.parse(
      readFileSync(`${dist}/manifest.webmanifest`, 'utf8'),
    );
    const pictures = manifest.icons.filter(({ src }) => src.endsWith('.png'));
    expect(pictures.length).toBe(3);
    for (const { src, sizes } of pictures) {
      // PNG (ISO/IEC 15948): width and height are the first two numbers of the header chunk.
      const header = readFileSync(`${dist}${src}`);
      expect(`${header.readUInt32BE(16)}x${header.readUInt32BE(20)}`).toBe(sizes);
    }
  });

  it('every page opens without signal', async () => {
    const page = await openWithSignal();
    await loseSignal(page);
    const titles = {
      '/': 'This week',
      '/round': 'The round',
      '/ahead': 'What is coming',
      '/who-is-it': 'Who is it?',
      '/book': 'House book',
    };
    for (const [path, title] of Object.entries(titles)) {
      await page.goto(url + path);
      await expect.poll(() => page.title()).toBe(`${title} - glasstide`);
      await page.getByText(/The house has not answered since|^No answer/).waitFor();
    }
  });
});
