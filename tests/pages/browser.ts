/** What the page checks ask of a page in Chromium. */
import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import type { Browser, BrowserContext, Page } from 'playwright-core';

const axeSource = readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8');

export interface Look {
  width: number;
  height: number;
  dark?: boolean;
  /** A screen that is tapped. */
  touch?: boolean;
}

/** A busy machine is slow and not wrong. */
const patienceMs = 120_000;

export async function contextOf(
  browser: Browser,
  { width, height, dark = false, touch = false }: Look,
): Promise<BrowserContext> {
  const context = await browser.newContext({
    viewport: { width, height },
    hasTouch: touch,
    reducedMotion: 'reduce',
    timezoneId: 'Europe/London',
    locale: 'en-GB',
    colorScheme: dark ? 'dark' : 'light',
  });
  context.setDefaultTimeout(patienceMs);
  return context;
}

/** Errors of the page from now on: console errors and uncaught exceptions. */
export function errorsOf(page: Page): string[] {
  const errors: string[] = [];
  page.on('console', (message) => {
    if (message.type() === 'error') errors.push(message.text());
  });
  page.on('pageerror', (error) => errors.push(String(error)));
  return errors;
}

/** Waits until every figure is drawn and every font is there. */
export async function settled(page: Page): Promise<void> {
  await page.waitForSelector('h1');
  await page.locator('[aria-busy=true]').waitFor({ state: 'detached' });
  await page.waitForFunction(() =>
    [...document.querySelectorAll('canvas')].every((canvas) => canvas.dataset.drawn === 'yes'),
  );
  await page.evaluate(() => document.fonts.ready.then(() => undefined));
}

/** Waits until a page whose look was changed is laid out and its figures have taken their new size. */
export const drawnAgain = (page: Page): Promise<void> =>
  page.evaluate(
    () =>
      new Promise((resolve) => {
        requestAnimationFrame(() => requestAnimationFrame(() => resolve()));
      }),
  );

declare const axe: {
  run(
    root: Document,
    options: object,
  ): Promise<{ violations: { id: string; nodes: { target: unknown[]; failureSummary?: string }[] }[] }>;
};

/** WCAG 2.2 A and AA and good practice; one line for each place that violates a rule. */
export async function violations(page: Page): Promise<string[]> {
  const seen = page.viewportSize();
  await unroll(page);
  if (!(await page.evaluate(() => 'axe' in globalThis))) await page.evaluate(axeSource);
  const found = await page.evaluate(async () => {
    const tags = ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa', 'best-practice'];
    const result = await axe.run(document, { runOnly: tags, resultTypes: ['violations'] });
    return result.violations.flatMap((each) =>
      each.nodes.map((node) => `${each.id}: ${node.target.join(' ')} ${node.failureSummary ?? ''}`),
    );
  });
  if (seen) await page.setViewportSize(seen);
  return found;
}

/** Makes the window as high as the page: bars fixed to its end then cover nothing that scrolling would free. */
export async function unroll(page: Page): Promise<void> {
  const width = page.viewportSize()?.width ?? 360;
  const height = await page.evaluate(() => document.documentElement.scrollHeight);
  await page.setViewportSize({ width, height: Math.max(height, 640) });
}

/** How far the page can be scrolled sideways, in px. */
export const sideways = (page: Page): Promise<number> =>
  page.evaluate(() => document.documentElement.scrollWidth - document.documentElement.clientWidth);

/** Things to press that are smaller than 48 px, links inside prose and hidden ones excepted. */
export const smallTargets = (page: Page): Promise<string[]> =>
  page.evaluate(() => {
    const all = [
      ...document.querySelectorAll<HTMLElement>(
        'button, input, select, summary, nav a, a.key, a.main-button',
      ),
    ];
    return all
      .filter((each) => each.getAttribute('type') !== 'checkbox' && each.checkVisibility())
      .map((each) => ({ each, box: each.getBoundingClientRect() }))
      .filter(({ box }) => box.width > 0 && (box.height < 47.5 || box.width < 47.5))
      .map(({ each, box }) => `${each.outerHTML.slice(0, 80)} ${box.width}x${box.height}`);
  });
