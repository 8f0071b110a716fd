/** Releases followed up, on the page of releases and the season's page. */
import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { FollowUp, ReleaseFollowUp } from '../../services/model/index.ts';
import { contextOf, errorsOf, settled, sideways, violations } from './browser.ts';
import { buildDashboard } from './build.ts';
import { launchChromium } from './chromium.ts';
import { advice, forecast, nowIso } from './fixtureSeason.ts';
import { startFixtureServer } from './fixtureServer.ts';

const whitefly = 'trialeurodes-vaporariorum' as const;
const span = (q50: number) => ({ q10: q50, q50, q90: q50 });
const released = (on: string, changes: Partial<ReleaseFollowUp>): ReleaseFollowUp => ({
  releaseId: `release-${on}`,
  enemy: 'encarsia-formosa',
  number: 120,
  on,
  against: [whitefly],
  look: { lookFor: 'black scales', from: '2026-05-18', surelyBy: '2026-05-25', by: 'development' },
  settlement: 'too-early',
  evidence: ['Black scales are expected from Mon 18 May on.'],
  next: { what: 'look', on: '2026-05-18', text: 'Look under ten leaves for black scales on Mon 18 May.' },
  effects: [],
  money: 14.9,
  ...changes,
});
const followUp: FollowUp = {
  releases: [
    released('2026-05-01', {}),
    released('2026-04-10', {
      settlement: 'not-settled',
      evidence: ['No black scales on 10 leaves since Tue 5 May.'],
      next: { what: 'top-up', text: 'Top up, as advised.' },
      effects: [
        {
          pest: whitefly,
          verdict: 'hardly',
          chanceClearlyFewer: 0.04,
          countNow: { with: span(14), without: span(15) },
          weeksSpared: { soFar: span(0), ahead: span(0) },
          text: 'It has hardly made a difference: at least a third fewer whitefly since then in fewer than 1 of 10 possible seasons. Now 9 to 22 a trap and week; without it 10 to 24.',
        },
      ],
    }),
    released('2026-03-20', { settlement: 'cannot-say', evidence: ['Nobody has looked.'] }),
  ],
  pests: [
    {
      pest: whitefly,
      releases: 3,
      money: 44.7,
      unpriced: 0,
      weeks: 14,
      weeksHeld: { with: { q10: 7, q50: 9, q90: 11 }, without: { q10: 5, q50: 5, q90: 6 } },
      moneyPerWeekWon: 11.18,
      text: 'Whitefly was within your limit in 7 to 11 of 14 weeks, without friends in 5 to 6. Spent: 44.70 EUR, about 11.18 EUR for each week won.',
    },
  ],
  nextYear: [
    {
      code: 'order-earlier',
      text: 'Order against whitefly 2 weeks earlier, once they are seen on two days.',
      evidence:
        'Whitefly passed your limit in the week to Mon 4 May; the Encarsia of Fri 10 Apr could show from Mon 18 May on. Seen on two days by Sun 29 Mar.',
    },
  ],
  currency: 'EUR',
};

let browser: Browser;
let dist: string;
beforeAll(async () => {
  dist = buildDashboard('follow-up');
  browser = await launchChromium();
});
afterAll(() => browser?.close());

async function open(width: number, path: string) {
  const server = await startFixtureServer(dist, {
    '/api/places/lean-to/outcome': { issuedAt: nowIso, forecast, advice: { ...advice, followUp } },
  });
  const context = await contextOf(browser, { width, height: 800 });
  const page = await context.newPage();
  const errors = errorsOf(page);
  await page.goto(server.url + path);
  await settled(page);
  return {
    page,
    errors,
    close: async () => {
      await context.close();
      await server.close();
    },
  };
}

describe.each([360, 1280])('at %s px', (width) => {
  it('each release tells when to look, whether it settled, what follows and whether it helped', async () => {
    const { page, errors, close } = await open(width, '/releases');
    const newest = page.getByRole('article', { name: '120 Encarsia, Fri 1 May' });
    expect(await newest.textContent()).toContain('Look under ten leaves for black scales on');
    expect(await newest.textContent()).toContain('too early to tell');
    expect(await newest.textContent()).toContain('by their development in the warmth here');
    const before = page.getByRole('article', { name: '120 Encarsia, Fri 10 April' });
    expect(await before.textContent()).toContain('Top up, as advised.');
    expect(await before.textContent()).toContain('hardly');
    expect(await before.textContent()).toContain('€14.90');
    // The oldest is folded away.
    const oldest = page.getByRole('article', { name: '120 Encarsia, Fri 20 March' });
    expect(await oldest.isVisible()).toBe(false);
    await page.locator('section[aria-label="What became of each release"] summary').click();
    expect(await oldest.isVisible()).toBe(true);
    expect(await violations(page)).toEqual([]);
    expect(await sideways(page)).toBeLessThanOrEqual(0);
    expect(errors).toEqual([]);
    await close();
  });

  it('the season tells what was held for the money, and what it suggests for the next', async () => {
    const { page, errors, close } = await open(width, '/season');
    const part = (name: string) => page.getByRole('region', { name });
    expect(await part('What friends held').textContent()).toContain('9\u00a0of\u00a014');
    expect(await part('What friends held').textContent()).toContain('€44.70');
    expect(await part('For next year').textContent()).toContain('2 weeks earlier');
    expect(await violations(page)).toEqual([]);
    expect(await sideways(page)).toBeLessThanOrEqual(0);
    expect(errors).toEqual([]);
    await close();
  });
});

it('without a release neither page speaks of them', async () => {
  const server = await startFixtureServer(dist);
  const context = await contextOf(browser, { width: 360, height: 800 });
  const page = await context.newPage();
  for (const path of ['/releases', '/season']) {
    await page.goto(server.url + path);
    await settled(page);
    expect(await page.getByRole('heading', { name: 'What became of each release' }).count()).toBe(0);
    expect(await page.getByRole('heading', { name: 'What friends held' }).count()).toBe(0);
    expect(await page.getByRole('heading', { name: 'For next year' }).count()).toBe(0);
  }
  await context.close();
  await server.close();
});
