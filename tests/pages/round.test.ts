/**
 * The round and the set-up in real Chromium on a phone: what is tapped is what is sent, each write
 * carries its key, a refusal leaves the form filled and shows the words beside the field.
 */
import { mkdirSync } from 'node:fs';
import type { Browser, Page } from 'playwright-core';
import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import { contextOf, errorsOf, sideways, smallTargets, violations } from './browser.ts';
import { buildDashboard } from './build.ts';
import { launchChromium } from './chromium.ts';
import { type FixtureServer, startFixtureServer } from './fixtureServer.ts';

const root = new URL('../../', import.meta.url).pathname;
const shots = `${root}tmp/pages`;

let browser: Browser;
let server: FixtureServer;
let page: Page;
let errors: string[];

beforeAll(async () => {
  mkdirSync(shots, { recursive: true });
  server = await startFixtureServer(buildDashboard('round'));
  browser = await launchChromium();
});
afterAll(async () => {
  await browser?.close();
  await server?.close();
});
beforeEach(async () => {
  server.writes.length = 0;
  server.empty(false);
  page = await (await contextOf(browser, { width: 360, height: 740 })).newPage();
  errors = errorsOf(page);
});
afterEach(async () => {
  await page.context().close();
});

const tap = (name: string | RegExp) => page.getByRole('button', { name }).first().click();

/** A picture, and the rules that hold on every screen. */
async function look(name: string): Promise<void> {
  await page.evaluate(() => document.fonts.ready.then(() => undefined));
  await page.screenshot({ path: `${shots}/${name}.png` });
  expect(await violations(page)).toEqual([]);
  expect(await sideways(page)).toBeLessThanOrEqual(0);
  expect(await smallTargets(page)).toEqual([]);
}

/** Its only entry is that it was hung on 14 March, 60 days before. */
async function countTheMiddleTrap(): Promise<void> {
  await page.goto(`${server.url}/round`);
  await page.getByLabel('Counted on').waitFor();
  await look('round-0-start');
  await tap(/^Trap 2, mid-crop/);
  await look('round-1-hanging');
  await tap(/^Count it for the first time/);
  await look('round-2-bands');
  await tap('Part of trap');
  await look('round-3-part');
  await tap(/^half/);
  await tap('Exact number');
  await tap('7');
  await look('round-4-exact');
  await tap('Keep 7');
  await tap('1–5');
  await tap('Not counted');
  await tap('All else: 0');
  await look('round-5-trap');
}

describe('counting a trap', () => {
  it('sends what was tapped: a number, a band, a kind left out, the rest zero', async () => {
    await countTheMiddleTrap();
    expect(await page.getByText('7 on half').count()).toBe(1);
    await tap('Keep this trap');
    await page.getByRole('heading', { name: 'What next?' }).waitFor();
    const [write] = server.writes;
    expect(write).toMatchObject({ method: 'POST', path: '/api/places/lean-to/trap-counts' });
    expect(write?.key).toMatch(/^[0-9a-f]{32}$/);
    expect(write?.body).toMatchObject({
      trapId: 'mid',
      time: expect.stringMatching(/^2026-05-13T08:5/),
      exposureDays: 60,
      card: 'new',
      countedFraction: 0.5,
      counts: { whitefly: 7, aphid: { low: 1, high: 5 }, 'small-wasp': 0, unknown: 0 },
    });
    expect(write?.body).not.toHaveProperty('counts.thrips');
    expect(errors).toEqual([]);
  });

  it('keeps the form filled when it is refused, with the words beside the field', async () => {
    await countTheMiddleTrap();
    await page.getByLabel(/^Days it hung/).fill('90');
    server.refuseNext({
      code: 'record-invalid',
      reason: 'One field does not fit.',
      whatToDo: 'Mend the named field and send it again.',
      issues: [{ path: 'exposureDays', expected: 'send at most 60', received: '90' }],
    });
    await tap('Keep this trap');
    await page.getByText('Send at most 60; this was 90.').waitFor();
    expect(await page.getByLabel(/^Days it hung/).inputValue()).toBe('90');
    expect(await page.getByText('Mend the named field').count()).toBe(1);
    await look('round-6-refused');
    await page.getByLabel(/^Days it hung/).fill('7');
    expect(await page.getByText('Send at most 60; this was 90.').count()).toBe(0);
    await tap('Keep this trap');
    await page.getByRole('heading', { name: 'What next?' }).waitFor();
    expect(server.writes.at(-1)?.body).toMatchObject({ exposureDays: 7, counts: { whitefly: 7 } });
  });

  it('keeps what is begun when it is stopped, and goes on with it after a reload', async () => {
    await page.goto(`${server.url}/round`);
    await tap(/^Trap 2, mid-crop/);
    await tap(/^Count it for the first time/);
    await tap('Exact number');
    await tap('7');
    await tap('0');
    await tap('Keep 70');
    await tap('Exact number');
    await tap('3');
    await page.getByText('Keep 3').waitFor();
    await page.getByRole('link', { name: 'Stop, keep what is entered' }).click();
    await page.waitForURL(`${server.url}/`);
    await page.goto(`${server.url}/round`);
    await page.getByText(/begun on Wed\s13\sMay, on this phone only: whitefly\s70, 3\styped/).waitFor();
    await look('round-7-begun');
    await tap('Go on with Trap 2, mid-crop');
    await tap('Keep 3');
    await tap('All else: 0');
    await page.getByRole('link', { name: 'Stop, keep what is entered' }).click();
    await page.goto(`${server.url}/round`);
    await tap('Go on with Trap 2, mid-crop');
    expect(server.writes).toEqual([]);
    await tap('Keep this trap');
    await page.getByRole('heading', { name: 'What next?' }).waitFor();
    expect(server.writes[0]?.body).toMatchObject({
      trapId: 'mid',
      counts: { whitefly: 70, aphid: 3, thrips: 0, 'small-wasp': 0, unknown: 0 },
    });
    expect(await page.getByText('Go on with').count()).toBe(0);
    expect(errors).toEqual([]);
  });

  it('keeps leaves and ticks that are begun, and throws a begun trap away when asked', async () => {
    await page.goto(`${server.url}/round`);
    await tap(/^Trap 2, mid-crop/);
    await tap(/^Count it for the first time/);
    await page.getByRole('link', { name: 'Stop, keep what is entered' }).click();
    await page.goto(`${server.url}/round`);
    await tap('Throw away what was begun');
    expect(await page.getByText('Go on with').count()).toBe(0);
    await tap(/^Three ticks/);
    await page.getByRole('textbox', { name: /^Lowest/ }).fill('11');
    await tap('Back');
    await tap(/^Look under leaves/);
    await tap('Whitefly scales: seen');
    await page.getByRole('link', { name: 'Stop, keep what is entered' }).click();
    await page.goto(`${server.url}/round`);
    await page.getByLabel('Counted on').waitFor();
    expect(await page.getByText('Go on with').count()).toBe(0);
    await tap(/^Look under leaves/);
    const seen = page.getByRole('button', { name: 'Whitefly scales: seen' });
    expect(await seen.getAttribute('aria-pressed')).toBe('true');
    await tap('Back');
    await tap(/^Three ticks/);
    expect(await page.getByRole('textbox', { name: /^Lowest/ }).inputValue()).toBe('11');
  });

  it('asks for the days it hung before anything is sent', async () => {
    await countTheMiddleTrap();
    await page.getByLabel(/^Days it hung/).fill('');
    await tap('Keep this trap');
    await page.getByText('Type how many days it hung, such as 7; this was empty.').waitFor();
    expect(server.writes).toEqual([]);
  });

  // Door trap: counted on 29 April and 6 May; 5 May at noon lies 6 days after the first of them.
  it('takes a count of an earlier day at noon of that day, hung since the count before it', async () => {
    await page.goto(`${server.url}/round`);
    await page.getByLabel('Counted on').fill('2026-05-05');
    await tap(/^Trap 1, by the door/);
    await tap(/^A fresh trap/);
    await tap('All else: 0');
    expect(await page.getByLabel(/^Days it hung/).inputValue()).toBe('6');
    await tap('Keep this trap');
    await page.getByRole('heading', { name: 'What next?' }).waitFor();
    expect(server.writes[0]?.body).toMatchObject({ time: '2026-05-05T11:00:00.000Z', exposureDays: 6 });
  });

  it('does not count a trap on a day before it was hung', async () => {
    await page.goto(`${server.url}/round`);
    await page.getByLabel('Counted on').fill('2026-03-01');
    await tap(/^Trap 2, mid-crop/);
    await page.getByText(/was hung on Sat\s14\sMarch, after the day you count/).waitFor();
    await look('round-1-not-hung');
  });

  it('offers to mend the count of the same day instead of a second one', async () => {
    await page.goto(`${server.url}/round`);
    await tap(/^Trap 1, by the door/);
    await page.getByRole('heading', { name: 'Counted today already' }).waitFor();
    await look('round-1-mend');
    await tap(/^Mend that count/);
    await tap('change Whitefly');
    await tap('Exact number');
    await tap('wipe');
    await tap('9');
    await tap('Keep 9');
    await tap('All else: 0');
    await tap('Keep it mended');
    await page.getByRole('heading', { name: 'What next?' }).waitFor();
    expect(server.writes[0]).toMatchObject({
      method: 'PUT',
      path: '/api/places/lean-to/trap-counts/count-0',
      body: { exposureDays: 7, counts: { whitefly: 9, thrips: 0 } },
    });
  });

  // The fixture expects 12 to 31 whitefly and 1 to 3 winged aphids in the coming week, 8 of 10.
  it('sets a whole fresh week against what was expected, by pest and trap', async () => {
    await page.goto(`${server.url}/round`);
    await tap(/^Trap 2, mid-crop/);
    await tap(/^Count it for the first time/);
    await tap('Exact number');
    await tap('1');
    await tap('4');
    await tap('Keep 14');
    await tap('Not counted');
    await tap('All else: 0');
    await page.getByLabel(/^Days it hung/).fill('7');
    await tap('Keep this trap');
    await page.getByText('14 whitefly on Trap 2, mid-crop; we expected 12 to 31.').waitFor();
    expect(await page.locator('.round-verdict').textContent()).not.toMatch(/aphid|thrips|wasp/);
    await tap('That is all');
    await look('round-9-verdict');
  });

  it('a lost trap is a gap: no counts are sent', async () => {
    await page.goto(`${server.url}/round`);
    await tap(/^Trap 2, mid-crop/);
    await tap(/^Trap lost or ruined/);
    await tap('Keep the gap');
    await page.getByRole('heading', { name: 'What next?' }).waitFor();
    expect(server.writes[0]?.body).toMatchObject({ card: 'lost', counts: {} });
  });
});

describe('leaves, ticks, undo', () => {
  it('a kind that was not touched is not sent, and each entry can be taken back', async () => {
    await page.goto(`${server.url}/round`);
    await tap(/^Look under leaves/);
    await tap('Whitefly scales: seen');
    await tap('more leaves with whitefly scales');
    await tap('Black scales: none');
    await look('round-7-leaves');
    await tap('Keep 10 leaves');
    await look('round-8-ticks');
    await page.getByRole('group', { name: /^Ants/ }).getByRole('button', { name: 'yes' }).click();
    await page.getByLabel(/^Lowest/).fill('11,5');
    await tap('Keep');
    await page.getByText('Type both lowest and highest, or leave both empty; this was empty.').waitFor();
    await page.getByLabel(/^Highest/).fill('24');
    await tap('Keep');
    await page.getByRole('heading', { name: 'Kept: 3 entries.' }).waitFor();
    await look('round-9-kept');
    expect(server.writes.map((each) => each.path.split('/').at(-1))).toEqual([
      'leaf-checks',
      'sightings',
      'daily-extremes',
    ]);
    expect(server.writes[0]?.body).toMatchObject({
      leaves: 10,
      seen: [
        { kind: 'whitefly-scale', infestedLeaves: 2 },
        { kind: 'black-scale', infestedLeaves: 0 },
      ],
    });
    expect(server.writes[2]?.body).toMatchObject({ minC: 11.5, maxC: 24 });
    await tap(/^undo Ants/);
    await page.getByText('Undone:').waitFor();
    expect(server.writes.at(-1)?.path).toMatch(/\/sightings\/new-2\/undo$/);
    await page.getByRole('heading', { name: 'Kept: 2 entries.' }).waitFor();
    expect(errors).toEqual([]);
  });
});

describe('this week', () => {
  it('the main button writes the order that the sentence names', async () => {
    await page.goto(server.url);
    await tap('I have ordered them');
    await page.getByText('Kept:').waitFor();
    expect(server.writes[0]).toMatchObject({
      path: '/api/places/lean-to/orders',
      body: { enemy: 'encarsia-formosa', number: 120, expectedOn: '2026-05-20' },
    });
  });

  it('shows a new sentence by itself when one is issued', async () => {
    await page.goto(server.url);
    await page.getByRole('heading', { level: 1, name: /^Order 2 cards/ }).waitFor();
    server.issue('Order 3 cards of Encarsia by Tue 19 May.');
    await page.getByRole('heading', { level: 1, name: /^Order 3 cards/ }).waitFor();
    expect(errors).toEqual([]);
  });

  it('shows the newest sentence also where it was issued while the page was on its way', async () => {
    server.issue('Order 3 cards of Encarsia by Tue 19 May.');
    let asked = 0;
    await page.route('**/outcome', async (route) => {
      asked += 1;
      const response = await route.fetch();
      const { advice, ...rest } = await response.json();
      const before = {
        ...rest,
        issuedAt: '2026-05-01T09:00:00Z',
        advice: { ...advice, sentence: 'Leave it.' },
      };
      await route.fulfill(asked === 1 ? { json: before } : { response });
    });
    await page.goto(server.url);
    await page.getByRole('heading', { level: 1, name: /^Order 3 cards/ }).waitFor();
    expect(asked).toBe(2);
    server.forget();
    expect(errors).toEqual([]);
  });

  it('says that there is no signal and keeps the last answer', async () => {
    await page.goto(server.url);
    await page.getByRole('heading', { level: 1 }).waitFor();
    await page.context().setOffline(true);
    await tap('I have ordered them');
    await page.getByText('The house does not answer.').waitFor();
    expect(await page.getByRole('heading', { level: 1 }).textContent()).toMatch(/^Order/);
  });
});

describe('sensors', () => {
  it('reads parked messages as °F in one tap', async () => {
    await page.goto(`${server.url}/sensors`);
    await tap('Read all 3 as °F');
    await expect
      .poll(() => server.writes.at(-1))
      .toMatchObject({
        path: '/api/quarantine/reread',
        body: { ids: [41, 40, 39], unit: 'Far' },
      });
  });

  it('keeps what is added to a sensor from a day on, beside all else of it', async () => {
    await page.goto(`${server.url}/sensors`);
    await page.getByText('Bench sensor reads too high or too low?').click();
    const form = page.locator('details', { hasText: 'Bench sensor reads too high' });
    await form.getByRole('button', { name: 'Keep the correction' }).click();
    await form.getByText('Type degrees, such as 1.5 or -0.5; this was empty.').waitFor();
    expect(server.writes).toEqual([]);
    await form.getByLabel('Add').fill('-1.5');
    await form.getByLabel('From the start of').fill('2026-05-02');
    await look('sensors-correction');
    await form.getByRole('button', { name: 'Keep the correction' }).click();
    await expect
      .poll(() => server.writes.at(-1))
      .toMatchObject({
        path: expect.stringMatching(/\/sensors\/bench$/),
        body: { id: 'bench', name: 'Bench sensor', corrections: [{ from: '2026-05-02', addC: -1.5 }] },
      });
    await page.getByText('Bench sensor, from 2 May on 1.5 °C is taken off.').waitFor();
  });
});

describe('releases', () => {
  it('a release begins with the open order, and names what was sprayed lately', async () => {
    await page.goto(`${server.url}/releases`);
    await page.getByText('Enter a release').click();
    const form = page.locator('details', { hasText: 'Enter a release' });
    await expect.poll(() => form.getByLabel('How many animals').inputValue()).toBe('2000');
    expect(await form.getByLabel('Which friend').inputValue()).toBe('phytoseiulus-persimilis');
    expect(await form.getByLabel('As sold').inputValue()).toBe('adults and nymphs in a tube');
    await form.getByLabel('Which friend').selectOption('encarsia-formosa');
    expect(await form.getByLabel('How many animals').inputValue()).toBe('');
    await form.getByText('Soap of 2 May: dry since 3 May.').waitFor();
    await form.getByLabel('Day').fill('2026-05-02');
    await form.getByText('Soap the same day: it may harm or wash off what is released.').waitFor();
    await look('releases-form');
    await tap('Keep the release');
    await form.getByText('Type how many animals, such as 120; this was empty.').waitFor();
    expect(server.writes).toEqual([]);
    await form.getByLabel('How many animals').fill('1');
    await tap('Keep the release');
    await expect.poll(() => server.writes[0]?.body).toMatchObject({ enemy: 'encarsia-formosa', number: 1 });
  });

  it('a wash on the day of a release says so; the plants reached are not made up', async () => {
    await page.goto(`${server.url}/releases`);
    await page.getByText('Enter a wash or spray').click();
    const form = page.locator('details', { hasText: 'Enter a wash or spray' });
    await form.getByLabel('Day').fill('2026-04-13');
    await form.getByText(/^600 swirskii mites released the same day/).waitFor();
    await tap('Keep the wash or spray');
    await expect.poll(() => server.writes.length).toBe(1);
    expect(server.writes[0]?.body).not.toHaveProperty('coveredShare');
  });

  it('lowest and highest are found again, and undone', async () => {
    await page.goto(`${server.url}/releases`);
    await page.getByText('9.5 to 24 °C').waitFor();
    await page
      .getByText(/2 on half|1–5 on half/)
      .first()
      .waitFor();
    await tap('undo 9.5 to 24 °C, Tue 12 May');
    await page.getByText('Undone:').waitFor();
    expect(server.writes[0]?.path).toBe('/api/places/lean-to/daily-extremes/2026-05-12/undo');
  });
});

describe('settings', () => {
  it('a trap gets another name and day; the day left alone keeps its hour', async () => {
    await page.goto(`${server.url}/settings`);
    const traps = page.getByRole('region', { name: 'Traps' });
    await tap('change Trap 1, by the door');
    await traps.getByLabel('Name').first().fill('Trap 1, by the tap');
    await look('settings-trap');
    await tap('Keep the change');
    await page.getByText('Kept:').waitFor();
    await tap('change Trap 2, mid-crop');
    await traps.getByLabel('Hung on').first().fill('2026-04-01');
    await tap('Keep the change');
    await expect.poll(() => server.writes.length).toBe(2);
    expect(server.writes).toMatchObject([
      { method: 'PUT', body: { name: 'Trap 1, by the tap', hungAt: '2026-03-14T08:50:00.000Z' } },
      { method: 'PUT', body: { name: 'Trap 2, mid-crop', hungAt: '2026-04-01T11:00:00.000Z' } },
    ]);
  });

  it('plants are added and changed', async () => {
    await page.goto(`${server.url}/settings`);
    await tap('change tomato');
    await page.getByLabel('How many plants').first().fill('12');
    await tap('Keep the change');
    await expect.poll(() => server.writes.length).toBe(1);
    await page.getByText('Add plants').click();
    await tap('Keep the plants');
    await page.getByText('Type what grows, such as tomato; this was empty.').waitFor();
    await page.getByLabel('What grows').fill('Cucumber');
    await page.getByLabel('How many plants').fill('4');
    await tap('Keep the plants');
    await expect.poll(() => server.writes.length).toBe(2);
    expect(server.writes).toMatchObject([
      { method: 'PUT', path: '/api/places/lean-to/plantings/tomato', body: { crop: 'tomato', plants: 12 } },
      { method: 'POST', path: '/api/places/lean-to/plantings', body: { crop: 'cucumber', plants: 4 } },
    ]);
  });

  it('the kind of place is shown and can be changed', async () => {
    await page.goto(`${server.url}/settings`);
    await page.getByText('12 m², under glass').waitFor();
    await page.getByText('Change The lean-to').click();
    await tap('outdoors');
    await look('settings-place');
    await tap('Keep the place');
    await expect.poll(() => server.writes.at(-1)?.body).toMatchObject({ kind: 'outdoors', areaM2: 12 });
  });
});

describe('from nothing', () => {
  it('four screens make a place, its plants and its first trap', async () => {
    server.empty(true);
    await page.goto(server.url);
    await tap('Next: what grows');
    await page.getByText('Type a name for the place, such as the lean-to; this was empty.').waitFor();
    await look('setup-1-empty');
    await page.getByLabel('Name').fill('The end house');
    expect(await page.getByText(/^Type a name/).count()).toBe(0);
    await tap('Next: what grows');
    await page.getByText('Type the size in m², such as 12; this was empty.').waitFor();
    await page.getByLabel(/^Size/).fill('12');
    await look('setup-1');
    await tap('Next: what grows');
    await tap('Tomato');
    await tap('more tomato');
    expect(await page.getByText(/this was empty/).count()).toBe(0);
    await look('setup-2');
    await tap('Next: pests');
    await tap('Whitefly');
    await tap('Peach aphids');
    await tap('Melon aphids');
    await look('setup-3');
    await tap('Next: where it stands');
    await page.getByLabel(/^Latitude/).fill('52');
    await tap('Keep, and count');
    await page.getByText('Type the degrees east, such as -0.5; this was empty.').waitFor();
    expect(server.writes).toEqual([]);
    await page.getByLabel(/^Longitude/).fill('-0.5');
    await page.getByLabel('Hung on').fill('2026-05-06');
    await page.getByLabel(/^Where your first/).fill('by the door');
    await look('setup-4');
    await tap('Keep, and count');
    await expect.poll(() => server.writes.length).toBe(3);
    expect(server.writes.map((each) => each.body)).toMatchObject([
      {
        id: 'the-end-house',
        areaM2: 12,
        longitudeDeg: -0.5,
        timeZone: 'Europe/London',
        pests: ['trialeurodes-vaporariorum', 'aphis-gossypii'],
      },
      { crop: 'tomato', plants: 7 },
      { id: 'by-the-door', name: 'by the door', hungAt: '2026-05-06T11:00:00.000Z' },
    ]);
    expect(errors).toEqual([]);
  });

  it('a refusal of the house opens the screen that asked, and leaves with it', async () => {
    server.empty(true);
    await page.goto(server.url);
    await page.getByLabel('Name').fill('The end house');
    await page.getByLabel(/^Size/).fill('20000');
    for (const next of ['Next: what grows', 'Next: pests', 'Next: where it stands']) await tap(next);
    await page.getByLabel(/^Latitude/).fill('52');
    await page.getByLabel(/^Longitude/).fill('0');
    server.refuseNext({
      code: 'record-invalid',
      reason: 'One field does not fit.',
      whatToDo: 'Mend the named field and send it again.',
      issues: [{ path: 'areaM2', expected: 'send at most 10000', received: '20000' }],
    });
    await tap('Keep, and count');
    await page.getByText('Send at most 10000; this was 20000.').waitFor();
    await page.getByLabel(/^Size/).fill('20');
    await tap('Next: what grows');
    await page.getByRole('heading', { name: 'What grows there?' }).waitFor();
    expect(await page.getByText('Not kept.').count()).toBe(0);
  });
});
