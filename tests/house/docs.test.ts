/** What the pages of docs/ name exists: settings, routes, pages of the dashboard, codes of refusals. Commands and paths: house.test.ts. */
import { execFileSync } from 'node:child_process';
import { readFileSync } from 'node:fs';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { refusals } from '../../services/refusals.ts';
import { openHouse } from '../api/house.ts';
import { shownPages } from './shownPages.ts';

const read = (path: string) => readFileSync(path, 'utf8');
const list = (...paths: string[]) =>
  execFileSync('git', ['ls-files', '--', ...paths], { encoding: 'utf8' })
    .split('\n')
    .filter(Boolean);
const pages = list('README.md', 'DEVELOPERS.md', 'docs/*.md');
const all = (pattern: RegExp, text: string) => [...text.matchAll(pattern)].map((match) => match[1] ?? '');
const setting = /\b(GLASSTIDE_[A-Z_]+)/g;

describe('settings', () => {
  const sources = list('services/*.ts', 'simulators/*.ts').map(read).join('\n');
  const known = new Set(all(setting, sources));

  it.each(pages)('%s names only those that are read', (page) => {
    expect(all(setting, read(page)).filter((name) => !known.has(name))).toEqual([]);
  });

  it('each one that is read stands in docs/operations.md', () => {
    const told = new Set(all(setting, read('docs/operations.md')));
    expect([...new Set(all(setting, read('services/config.ts')))].filter((name) => !told.has(name))).toEqual(
      [],
    );
  });
});

describe('routes', () => {
  let house: Awaited<ReturnType<typeof openHouse>>;
  /** Method and path as served: `GET /api/places/{place}/seasons`. */
  let served: string[];
  /** `:place`, `{place}` and `<noun>` each stand for one part of a path. */
  const isServed = (path: string, method = '[A-Z]+') => {
    const parts = path.replace(/\?.*$/, '').replace(/:\w+|\{\w+\}|<\w+>/g, '[^/]+');
    return served.some((route) => new RegExp(`^${method} ${parts}$`).test(route));
  };
  beforeAll(async () => {
    house = await openHouse();
    const document: { paths: Record<string, object> } = (await house.app.inject('/api/openapi.json')).json();
    served = Object.entries(document.paths).flatMap(([path, methods]) =>
      Object.keys(methods).map((method) => `${method.toUpperCase()} ${path}`),
    );
  });
  afterAll(() => house.close());

  it.each(pages)('%s names only those that are served', (page) => {
    const named = [...read(page).matchAll(/`(GET|POST|PUT|DELETE|PATCH) (\/api[^\s`]*)`/g)];
    const missing = named.filter(([, method, path = '']) => !isServed(path, method));
    expect(missing.map(([whole]) => whole)).toEqual([]);
    const bare = all(/`(\/api\/[^\s`]+)`/g, read(page)).filter((path) => !isServed(path));
    expect(bare).toEqual([]);
  });
});

it('docs/needs.md and docs/first-month.md name pages of the dashboard that are there', () => {
  const paths = all(/`(\/[a-z-]+(?:\/[a-z-]+)?)`/g, read('docs/needs.md'));
  expect(paths.length).toBeGreaterThan(20);
  expect(paths.filter((path) => !shownPages.has(path))).toEqual([]);
  const titles = all(/(?<!\*)\*([A-Z][^*\n]+)\*(?!\*)/g, read('docs/first-month.md'));
  expect(titles.length).toBeGreaterThan(10);
  const known = new Set(shownPages.values());
  expect(titles.filter((title) => !known.has(title))).toEqual([]);
});

it('a code in brackets after "refused" is one of the catalogue, on every page', () => {
  const codes = pages.flatMap((page) => all(/[Rr]efused \(`([a-z]+(?:-[a-z]+)+)`/g, read(page)));
  expect(codes.length).toBeGreaterThan(0);
  for (const code of codes) expect(refusals).toHaveProperty(code);
});

it('what the pages of the weekly walk call a button is written on one', () => {
  const sources = list('dashboard/*.tsx').map(read).join('\n');
  const buttons = all(/(?:press|Settings\*,) "([^"]+)"/g, read('docs/first-month.md'));
  expect(buttons.length).toBeGreaterThan(1);
  for (const words of buttons) expect(sources, words).toContain(words);
});
