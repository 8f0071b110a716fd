/**
 * A journey's two sides: a house that really runs, with broker, store and forecasts and a clock set by hand, and a
 * person at it, on a phone with a thumb or at a desk with keys alone.
 */
import { mkdirSync, mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import mqtt from 'mqtt';
import type { Browser, Locator, Page } from 'playwright-core';
import { afterAll, beforeAll, expect } from 'vitest';
import { start } from '../../services/main.ts';
import { type Advice, type Place, type Season, seasonSchema } from '../../services/model/index.ts';
import {
  contextOf,
  errorsOf,
  settled,
  sideways,
  smallTargets,
  unroll,
  violations,
} from '../pages/browser.ts';
import { launchChromium } from '../pages/chromium.ts';
import { call } from './service.ts';

const root = new URL('../../', import.meta.url).pathname;
const shots = `${root}tmp/pages`;

export const smallSeason: Season = seasonSchema.parse(
  JSON.parse(readFileSync(`${root}tests/fixtures/small-season.json`, 'utf8')),
);

/** Every journey is walked by both. */
export const people = [
  { by: 'thumb', width: 360 },
  { by: 'keys', width: 1280 },
] as const;
type Person = (typeof people)[number];

export interface House {
  url: string;
  /** What the house answers, past the pages. */
  ask<T>(path: string): Promise<T>;
  /** A board publishes and waits until each message is taken. */
  publish(topic: string, payloads: readonly string[]): Promise<void>;
  /** Everything that was entered is in the forecast. */
  settled(): Promise<void>;
  /** Later: the clock stands at another instant. */
  later(iso: string): void;
}

async function openHouse(at: string, season: Season | undefined) {
  const dataDir = mkdtempSync(join(tmpdir(), 'glasstide-visit-'));
  const clock = { ms: Date.parse(at), nowMs: () => clock.ms };
  const service = await start(
    { dataDir, httpHost: '127.0.0.1', httpPort: 0, mqtt: { embeddedPort: 0 }, demo: false, log: 'silent' },
    clock,
  );
  const url = `http://127.0.0.1:${service.httpPort}`;
  if (season) await call(url, 'POST', '/api/season', season);
  await service.settled();
  const house: House = {
    url,
    ask: (path) => call(url, 'GET', path),
    async publish(topic, payloads) {
      const board = await mqtt.connectAsync(`mqtt://127.0.0.1:${service.mqttPort}`, { protocolVersion: 4 });
      for (const payload of payloads) await board.publishAsync(topic, payload, { qos: 1 });
      await board.endAsync();
    },
    settled: service.settled,
    later: (iso) => {
      clock.ms = Date.parse(iso);
    },
  };
  const close = async () => {
    await service.close();
    rmSync(dataDir, { recursive: true, force: true });
  };
  return { house, close };
}

/** Reaches a thing by the tabulator key from wherever the focus is, and sees that the focus can be seen there. */
async function tabTo(page: Page, target: Locator): Promise<void> {
  await target.waitFor();
  for (let stops = 0; stops < 400; stops += 1) {
    const at = await target.evaluate((each) => {
      const outline = getComputedStyle(each);
      return each === document.activeElement && `${outline.outlineStyle} ${outline.outlineWidth}`;
    });
    if (at) return expect(at).toMatch(/^solid [1-9]/);
    await page.keyboard.press('Tab');
  }
  throw new Error(`No key leads to ${target}`);
}

interface Hand {
  press(target: Locator): Promise<void>;
  type(field: Locator, text: string): Promise<void>;
}
const hands: Record<Person['by'], (page: Page) => Hand> = {
  thumb: () => ({
    press: (target) => target.tap(),
    type: (field, text) => field.fill(text),
  }),
  keys: (page) => ({
    async press(target) {
      await tabTo(page, target);
      await page.keyboard.press('Enter');
    },
    async type(field, text) {
      await tabTo(page, field);
      await page.keyboard.press('ControlOrMeta+A');
      await page.keyboard.type(text);
    },
  }),
};

/** The pages that a phone has in its foot bar, by the name they have there; the others are in its contents. */
const footNames: Record<string, string> = {
  'This week': 'This week',
  'The round': 'Count',
  'What is coming': 'Ahead',
  'Who is it?': 'Who is it?',
};

type Name = string | RegExp;

function visitOf(page: Page, { by, width }: Person, house: House) {
  const hand = hands[by](page);
  /** What can be pressed, by the name a screen reader says. */
  const named = (name: Name) =>
    page
      .getByRole('button', { name })
      .or(page.getByRole('link', { name }))
      .or(page.locator('summary', { hasText: name }))
      .filter({ visible: true })
      .first();
  const press = (name: Name) => hand.press(named(name));
  const follow = (name: string) =>
    hand.press(page.getByRole('link', { name, exact: true }).filter({ visible: true }).first());
  return {
    page,
    house,
    press,
    type: (label: Name, text: string) =>
      hand.type(page.getByLabel(label).filter({ visible: true }).first(), text),
    /** The page says it, somewhere. */
    reads: (words: Name) => page.getByText(words).filter({ visible: true }).first().waitFor(),
    /** The page says it as its first heading. */
    heads: (words: Name) => page.getByRole('heading', { level: 1, name: words }).waitFor(),
    /** Opens a page as the person would, from the contents. */
    async turnTo(name: string) {
      const inFootBar = footNames[name];
      if (width === 1280) return follow(name);
      if (inFootBar) return follow(inFootBar);
      await follow('House book');
      await follow(name);
    },
    /** Waits until all that was entered is in the sentence and the page says it; answers the sentence. */
    async sentence(): Promise<string> {
      await house.settled();
      await page.goto(house.url);
      const { places } = await house.ask<{ places: Place[] }>('/api/places');
      const { advice } = await house.ask<{ advice: Advice }>(`/api/places/${places[0]?.id}/outcome`);
      await page.locator('h1', { hasText: advice.sentence }).waitFor();
      return advice.sentence;
    },
    /** A picture to be looked at, and the rules that hold on every screen. */
    async look(name: string) {
      await settled(page);
      const seen = page.viewportSize();
      await unroll(page);
      await page.screenshot({ path: `${shots}/journey-${name}-${width}.png` });
      if (seen) await page.setViewportSize(seen);
      expect(await violations(page)).toEqual([]);
      expect(await page.locator('h1').count()).toBe(1);
      expect(await sideways(page)).toBeLessThanOrEqual(0);
      expect(await smallTargets(page)).toEqual([]);
    },
  };
}
export type Visit = ReturnType<typeof visitOf>;

/** Walks a journey in a house of its own; page errors on the way are faults, a network cut on purpose is none. */
export function journeys() {
  let browser: Browser;
  beforeAll(async () => {
    mkdirSync(shots, { recursive: true });
    browser = await launchChromium();
  });
  afterAll(() => browser?.close());
  return async function walk(
    person: Person,
    { at, season, path = '/' }: { at: string; season?: Season; path?: string },
    journey: (visit: Visit) => Promise<void>,
  ): Promise<void> {
    const { house, close } = await openHouse(at, season);
    const context = await contextOf(browser, {
      width: person.width,
      height: person.width === 360 ? 740 : 900,
      touch: person.by === 'thumb',
    });
    // The page reckons its time from the house's and its own clock: with this one at rest, it is the house's.
    await context.clock.setFixedTime(at);
    const page = await context.newPage();
    try {
      const errors = errorsOf(page);
      await page.goto(house.url + path);
      await journey(visitOf(page, person, house));
      expect(errors.filter((each) => !each.includes('ERR_INTERNET_DISCONNECTED'))).toEqual([]);
    } catch (fault) {
      await page.screenshot({ path: `${shots}/journey-stopped-${person.width}.png`, fullPage: true });
      throw fault;
    } finally {
      await context.close();
      await close();
    }
  };
}
