/** The model bundled for a page and run in Chromium says what it says in Node, number by number. */
import { readFileSync } from 'node:fs';
import type { Browser } from 'playwright-core';
import { build } from 'vite';
import { afterAll, beforeAll, expect, it } from 'vitest';
import type * as Core from '../../services/model/index.ts';
import { forecastAndAdvise, seasonSchema } from '../../services/model/index.ts';
import { launchChromium } from './chromium.ts';

const root = new URL('../../', import.meta.url).pathname;
const season = JSON.parse(readFileSync(`${root}tests/fixtures/small-season.json`, 'utf8'));
const asOf = '2026-05-24T09:00:00Z';

declare const core: typeof Core;

let browser: Browser;
beforeAll(async () => {
  await build({
    configFile: false,
    logLevel: 'error',
    build: {
      lib: {
        entry: `${root}services/model/index.ts`,
        formats: ['iife'],
        name: 'core',
        fileName: () => 'core.js',
      },
      outDir: `${root}tmp/core`,
      emptyOutDir: true,
      target: 'es2022',
    },
  });
  browser = await launchChromium();
});
afterAll(() => browser?.close());

/** Every leaf with its path, such as `advice.chanceIfLeft`. */
function leaves(value: unknown, path: string): [path: string, leaf: unknown][] {
  if (typeof value !== 'object' || value === null) return [[path, value]];
  return Object.entries(value).flatMap(([key, each]) => leaves(each, path === '' ? key : `${path}.${key}`));
}

it('forecast and advice in Chromium agree with Node to 1e-9 relative', async () => {
  const page = await browser.newPage();
  await page.addScriptTag({ path: `${root}tmp/core/core.js` });
  const there = await page.evaluate(
    ({ season, asOf }) => JSON.stringify(core.forecastAndAdvise(core.seasonSchema.parse(season), asOf)),
    { season, asOf },
  );
  const here = JSON.stringify(forecastAndAdvise(seasonSchema.parse(season), asOf));
  const [found, expected] = [there, here].map((text) => leaves(JSON.parse(text), ''));
  expect(found!.map(([path]) => path)).toEqual(expected!.map(([path]) => path));
  const differing = found!.filter(([, leaf], i) => !agrees(leaf, expected![i]![1]));
  expect(differing).toEqual([]);
  expect(expected!.filter(([, leaf]) => typeof leaf === 'number').length).toBeGreaterThan(500);
});

function agrees(one: unknown, other: unknown): boolean {
  if (typeof one !== 'number' || typeof other !== 'number') return one === other;
  return Math.abs(one - other) <= 1e-9 * Math.max(Math.abs(one), Math.abs(other));
}
