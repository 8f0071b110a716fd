/**
 * The pages in a throttled Chromium: bytes of script and time until the sentence stands, against an empty page of the
 * same server, and how long "What if" takes for an answer, against the first working-through of the season.
 */
import { writeFileSync } from 'node:fs';
import { gzipSync } from 'node:zlib';
import type { Page } from 'playwright-core';
import { forecastAndAdvise, type Season } from '../../services/model/index.ts';
import { contextOf } from '../pages/browser.ts';
import { buildDashboard } from '../pages/build.ts';
import { launchChromium } from '../pages/chromium.ts';
import { startFixtureServer } from '../pages/fixtureServer.ts';

/** A phone of the middle class in a garden: slow processor, 1.6 Mbit/s, 150 ms there and back. Common practice, no source. */
const slowness = 4;
const network = { offline: false, latency: 150, downloadThroughput: 200_000, uploadThroughput: 94_000 };
const runs = 5;

const middle = (times: readonly number[]): number =>
  [...times].sort((a, b) => a - b)[times.length >> 1] ?? Number.NaN;

interface Heard {
  kind: string;
  askedMs: number;
  toldMs: number;
}
declare const heard: Heard[];

/**
 * Tells by the clock of the page when its sentence is drawn. Asking from outside, which puts a script of its own into the
 * page, took a sixth of a second of the slow processor.
 */
const watchFor = (drawn: string) => `
  new MutationObserver((_, watching) => {
    if (!document.querySelector('${drawn}')) return;
    watching.disconnect();
    requestAnimationFrame(() => tellDrawn(String(performance.now())));
  }).observe(document, { childList: true, subtree: true });`;

/** Notes in the page when its computing thread was asked and when it told. Text: tsx would write its own helpers into it. */
const listenToThread = `
  const Plain = Worker;
  globalThis.heard = [];
  globalThis.Worker = class extends Plain {
    constructor(...where) {
      super(...where);
      this.addEventListener('message', ({ data }) =>
        heard.push({ kind: data.kind, askedMs: this.askedMs, toldMs: performance.now() }));
    }
    postMessage(message) {
      this.askedMs = performance.now();
      super.postMessage(message);
    }
  };`;

async function whatIfMs(page: Page): Promise<{ beginMs: number; answerMs: number }> {
  await page.getByRole('button', { name: 'Try a release' }).click();
  for (let tries = 1; tries <= runs; tries += 1) {
    // Looked up now and then: at every frame, as is usual, it would take a core of its own.
    const polling = 100;
    const told = (n: number) => heard.filter(({ kind }) => kind === 'tried').length === n;
    await page.waitForFunction(told, tries, { polling });
    await page.getByRole('button', { name: tries % 2 ? 'a week later' : 'a week earlier' }).click();
  }
  const all = await page.evaluate(() => heard);
  const times = (of: string) =>
    all.filter(({ kind }) => kind === of).map(({ askedMs, toldMs }) => toldMs - askedMs);
  return { beginMs: middle(times('ready')), answerMs: middle(times('tried').slice(1)) };
}

/** Script that an address brings before anything is opened in it. */
async function scriptBytes(page: Page, url: string, drawn: string): Promise<number> {
  await page.goto(url);
  await page.waitForSelector(drawn);
  const scripts = await page.evaluate(() =>
    performance.getEntriesByType('resource').flatMap(({ name }) => (name.endsWith('.js') ? [name] : [])),
  );
  const bodies = await Promise.all(scripts.map(async (script) => (await fetch(script)).arrayBuffer()));
  return bodies.reduce((sum, body) => sum + gzipSync(Buffer.from(body)).length, 0);
}

export async function pageLines(season: Season, asOf: string): Promise<string[]> {
  const outcome = forecastAndAdvise(season, asOf, { seed: 1 });
  const path = `/api/places/${season.place.id}`;
  const dist = buildDashboard('bench');
  writeFileSync(`${dist}/empty.html`, '<!doctype html><title>empty</title><h1>empty</h1>');
  const server = await startFixtureServer(dist, {
    '/api/health': { status: 'well', reasons: [], now: asOf, demo: false, version: '0.1.0' },
    '/api/places': { places: [season.place] },
    [`${path}/outcome`]: { issuedAt: asOf, ...outcome },
    [`${path}/season`]: season,
    [`${path}/temperature`]: { points: [], doubted: [] },
  });
  const browser = await launchChromium();
  /** Each time a phone that has never been here. */
  const usableMs = async (at: string, drawn: string): Promise<number> => {
    const times: number[] = [];
    for (let run = 0; run < runs; run += 1) {
      const context = await contextOf(browser, { width: 360, height: 740 });
      await context.addInitScript({ content: watchFor(drawn) });
      const page = await context.newPage();
      const devtools = await context.newCDPSession(page);
      await devtools.send('Network.enable');
      await devtools.send('Network.emulateNetworkConditions', network);
      await devtools.send('Emulation.setCPUThrottlingRate', { rate: slowness });
      await devtools.send('Runtime.enable');
      await devtools.send('Runtime.addBinding', { name: 'tellDrawn' });
      const told = new Promise<number>((resolve) => {
        devtools.on('Runtime.bindingCalled', ({ payload }) => resolve(Number(payload)));
      });
      await page.goto(server.url + at);
      times.push(await told);
      await context.close();
    }
    return middle(times);
  };
  try {
    const context = await contextOf(browser, { width: 360, height: 740 });
    await context.addInitScript({ content: listenToThread });
    const page = await context.newPage();
    const ofWeek = await scriptBytes(page, server.url, 'h1 .verb');
    const ofOthers = await scriptBytes(page, `${server.url}/book`, '.book');
    await page.goto(`${server.url}/ahead`);
    const { beginMs, answerMs } = await whatIfMs(page);
    await context.close();
    // The verb on yellow: the heading before it only says that the week is being fetched.
    const [empty, week] = [await usableMs('/empty.html', 'h1'), await usableMs('/', 'h1 .verb')];
    return [
      `first load: ${(ofWeek / 1000).toFixed(0)} kB of script for the week, ${(ofOthers / 1000).toFixed(0)} for any other page, compressed`,
      `on a slow phone the sentence stands after ${week.toFixed(0)} ms, ${(week / empty).toFixed(1)} x an empty page (${empty.toFixed(0)} ms)`,
      `what if: ${answerMs.toFixed(0)} ms an answer, ${(answerMs / beginMs).toFixed(3)} of working through the season (${beginMs.toFixed(0)} ms)`,
    ];
  } finally {
    await browser.close();
    await server.close();
  }
}
