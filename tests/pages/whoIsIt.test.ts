/**
 * Who is it? in real Chromium, phone and desktop: an animal is found by its answers, the way back and `not sure` stand
 * at every question, what is kept is the word of the vocabulary; drawn bodies have published lengths.
 */
import { mkdirSync } from 'node:fs';
import type { Browser, Page } from 'playwright-core';
import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import { keyKinds } from '../../services/model/index.ts';
import { contextOf, errorsOf, type Look, sideways, smallTargets, unroll, violations } from './browser.ts';
import { buildDashboard } from './build.ts';
import { launchChromium } from './chromium.ts';
import { type FixtureServer, startFixtureServer } from './fixtureServer.ts';

const root = new URL('../../', import.meta.url).pathname;
const shots = `${root}tmp/pages`;
const looks: Record<string, Look> = {
  '360': { width: 360, height: 740 },
  '1280': { width: 1280, height: 900 },
};

let browser: Browser;
let server: FixtureServer;
let page: Page;
let errors: string[];

beforeAll(async () => {
  mkdirSync(shots, { recursive: true });
  server = await startFixtureServer(buildDashboard('who'));
  browser = await launchChromium();
});
afterAll(async () => {
  await browser?.close();
  await server?.close();
});
beforeEach(() => {
  server.writes.length = 0;
});
afterEach(async () => {
  await page.context().close();
});

async function open(look: Look, path = '/who-is-it'): Promise<void> {
  page = await (await contextOf(browser, look)).newPage();
  errors = errorsOf(page);
  await page.goto(server.url + path);
  await page.waitForSelector('h1');
}
const tap = (name: string | RegExp) => page.getByRole('button', { name }).first().click();
const heading = (name: string | RegExp) => page.getByRole('heading', { level: 1, name }).waitFor();

/** A picture, and the rules that hold on every screen. */
async function look(name: string): Promise<void> {
  await page.evaluate(() => document.fonts.ready.then(() => undefined));
  const seen = page.viewportSize();
  await unroll(page);
  await page.screenshot({ path: `${shots}/${name}.png` });
  if (seen) await page.setViewportSize(seen);
  expect(await violations(page)).toEqual([]);
  expect(await page.locator('h1').count()).toBe(1);
  expect(await sideways(page)).toBeLessThanOrEqual(0);
  expect(await smallTargets(page)).toEqual([]);
  expect(errors).toEqual([]);
}

describe.each(Object.keys(looks))('at %s px', (width) => {
  const named = (name: string) => `who-${name}-${width}`;

  it('a black scale is found, its meaning read, and its sighting kept', async () => {
    await open(looks[width]!);
    await heading('Where is it?');
    await look(named('1-where'));
    await tap('On a leaf, bud or flower');
    await heading(/How does it move/);
    await look(named('2-moves'));
    await tap('Not at all');
    await heading(/most like/);
    await look(named('3-form'));
    await tap('A flat oval disc');
    await heading('Is there a hole in it?');
    await look(named('4-opening'));
    await tap('None');
    await heading('One of these three. Which test fits?');
    await look(named('5-plates'));
    await tap('It is this one: Scale with Encarsia');
    await heading('Scale with Encarsia: a friend.');
    await page.getByText(/Spraying would harm it/).waitFor();
    await look(named('6-meaning'));
    await page.getByLabel(/^Where, how many/).fill('tomato 3, low leaf');
    await tap('Keep the sighting');
    await page.getByRole('status').getByText('Kept:').waitFor();
    expect(server.writes).toHaveLength(1);
    expect(server.writes[0]).toMatchObject({
      method: 'POST',
      path: '/api/places/lean-to/sightings',
      key: expect.stringMatching(/^[0-9a-f]{32}$/),
      body: { what: 'black scales', note: 'tomato 3, low leaf', time: expect.stringMatching(/^2026-05-13T/) },
    });
    await look(named('7-kept'));
    await tap('Look at another');
    await heading('Where is it?');
  });

  it('two that stay are shown together with what to look for', async () => {
    await open(looks[width]!);
    await tap('Among aphids');
    await tap('Walks or runs briskly');
    await tap('Long and tapering, six legs in front');
    await heading('One of these two. Which test fits?');
    await page.getByText(/^Look for:/).waitFor();
    expect(await page.getByRole('img').count()).toBe(2);
    await look(named('8-two'));
    await tap('None of these, or not sure');
    await heading(/^Not known yet/);
    await look(named('9-unknown'));
    await tap('Keep the sighting');
    await expect
      .poll(() => server.writes[0]?.body)
      .toMatchObject({ what: 'not known', note: 'Perhaps: Ladybird larva, or Lacewing larva' });
  });

  it('all pictures are there, and each opens its meaning', async () => {
    await open(looks[width]!, '/who-is-it/pictures');
    expect(await page.getByRole('img').count()).toBe(keyKinds.length);
    await look(named('pictures'));
    await tap(/Lacewing egg$/);
    await heading('Lacewing egg: a friend.');
  });
});

describe('on a phone', () => {
  it('not sure and back stand at every question; an answer can be changed', async () => {
    await open(looks['360']!);
    await tap('Not sure');
    await heading(/How does it move/);
    await tap('Leaps');
    await heading('One of these two. Which test fits?');
    await tap('Back');
    await heading(/How does it move/);
    await tap('Back');
    await heading('Where is it?');
    expect(await page.getByRole('button', { name: 'Back' }).count()).toBe(0);
    await tap('On the yellow trap');
    await tap('A narrow waist, long or elbowed antennae');
    await heading('One of these two. Which test fits?');
    await tap('change Where');
    await heading('Where is it?');
    await tap('In white wool, in the leaf joints');
    await heading('One of these four. Which test fits?');
    await look('who-four-360');
  });

  it('the phone’s own back goes one step back, and a reload stays where it was', async () => {
    await open(looks['360']!, '/book');
    await page
      .getByRole('navigation')
      .getByRole('link', { name: 'Who is it?' })
      .filter({ visible: true })
      .click();
    await tap('Among aphids');
    await tap('Not at all');
    await tap('A swollen, papery aphid glued down');
    await tap('It is this one: Tan mummy');
    await heading('Tan mummy: a friend.');
    await page.reload();
    await heading('Tan mummy: a friend.');
    await page.goBack();
    await heading('One of these four. Which test fits?');
    await page.goBack();
    await heading(/most like/);
    await tap('Back');
    await heading(/How does it move/);
    await page.goBack();
    await heading('Where is it?');
    await page.goBack();
    await heading('House book');
    await page.goForward();
    await heading('Where is it?');
  });

  it('nothing sure still leads to the pictures', async () => {
    await open(looks['360']!);
    for (const question of ['Where is it?', /How does it move/, /most like/, 'How long is it?']) {
      await heading(question);
      await tap('Not sure');
    }
    await heading(new RegExp(`^${keyKinds.length} are left`));
    await look('who-all-left-360');
  });

  it('the keyboard alone answers, and each new question has the focus', async () => {
    await open(looks['360']!);
    await page.getByRole('button', { name: 'On compost, pots or algae' }).focus();
    await page.keyboard.press('Enter');
    await heading(/How does it move/);
    expect(await page.evaluate(() => document.activeElement?.tagName)).toBe('H1');
    await page.keyboard.press('Tab');
    await page.keyboard.press('Enter');
    await heading(/^One of these|^Probably/);
  });

  it.each(['/who-is-it', '/who-is-it/pictures', '/phone'])(
    '%s in the dark, at 320 px and in twice as large letters',
    async (path) => {
      await open({ width: 320, height: 640, dark: true }, path);
      expect(await violations(page)).toEqual([]);
      await page.evaluate(() => {
        document.documentElement.style.fontSize = '200%';
      });
      expect(await sideways(page)).toBeLessThanOrEqual(0);
    },
  );
});

describe('the pictures', () => {
  it('are drawn to their size bar: the body has a published length', async () => {
    await open(looks['1280']!, '/who-is-it/pictures');
    const drawn = await page.evaluate(() =>
      [...document.querySelectorAll('.gallery-plate')].map((plate) => {
        const bar = plate.querySelector('[data-bar]') as SVGGraphicsElement;
        const body = plate.querySelector('[data-measured]') as SVGGraphicsElement | null;
        const box = body?.getBBox();
        const unitsPerMm = bar.getBBox().width / Number(bar.getAttribute('data-bar'));
        return {
          name: plate.querySelector('span')?.textContent,
          lengthMm: box && Math.max(box.width, box.height) / unitsPerMm,
          barWords: plate.querySelector('figcaption')?.textContent,
          bar: bar.getAttribute('data-bar'),
        };
      }),
    );
    expect(drawn.map(({ name }) => name).sort()).toEqual(keyKinds.map(({ name }) => name).sort());
    for (const { name, lengthMm, barWords, bar } of drawn) {
      const [from, to] = keyKinds.find((kind) => kind.name === name)!.sizeMm;
      // A line's own thickness, and lengths that sources round to tenths.
      expect(lengthMm, `${name} drawn ${lengthMm?.toFixed(2)} mm`).toBeGreaterThanOrEqual(from * 0.93);
      expect(lengthMm, `${name} drawn ${lengthMm?.toFixed(2)} mm`).toBeLessThanOrEqual(to * 1.07);
      expect(barWords).toBe(`${bar} mm`);
    }
  });
});
