import { execFileSync } from 'node:child_process';
import { existsSync, readdirSync, readFileSync, statSync } from 'node:fs';
import { join } from 'node:path';
import { satisfies } from 'semver';
import { describe, expect, it } from 'vitest';
import { refusals } from '../../services/refusals.ts';
import { shownPages } from './shownPages.ts';

const read = (path: string) => readFileSync(path, 'utf8');
const run = (command: string, ...args: string[]) => execFileSync(command, args, { encoding: 'utf8' });
const tracked = run('git', 'ls-files').split('\n').filter(Boolean);

describe('the house keeps its own rules', () => {
  it('biome: form and lint', () => {
    run('npx', 'biome', 'check', '.');
  });

  it('typescript: strict types', () => {
    run('npx', 'tsc', '--noEmit');
  });

  it('arrows point one way and no circles (tests/house/arrows.cjs)', () => {
    run(
      'npx',
      'depcruise',
      '--config',
      'tests/house/arrows.cjs',
      'services',
      'dashboard',
      'simulators',
      'studies',
      'tests',
    );
  });

  it('the top level holds exactly what DEVELOPERS.md names', () => {
    const named = [
      'README.md',
      'DEVELOPERS.md',
      'LICENSE',
      'package.json',
      'package-lock.json',
      'tsconfig.json',
    ];
    const rooms = ['services', 'dashboard', 'simulators', 'studies', 'tests', 'docs', 'packaging'];
    const insisted = ['biome.json', 'vite.config.ts', 'vitest.config.ts'];
    const top = new Set(tracked.map((path) => path.split('/')[0] ?? path));
    expect([...top].filter((name) => !name.startsWith('.')).sort()).toEqual(
      [...named, ...rooms, ...insisted].sort(),
    );
    for (const name of insisted) expect(read('DEVELOPERS.md')).toContain(name);
  });
});

interface LockEntry {
  version?: string;
  engines?: { node?: string };
}

describe('dependencies', () => {
  const lock: { packages: Record<string, LockEntry> } = JSON.parse(read('package-lock.json'));
  const manifest: Record<'dependencies' | 'devDependencies', Record<string, string>> = JSON.parse(
    read('package.json'),
  );

  it.each(['20.20.2', '22.23.3', '24.21.0'])('no locked package excludes Node %s', (node) => {
    const excluding = Object.entries(lock.packages)
      .filter(([path, entry]) => path !== '' && entry.engines?.node && !satisfies(node, entry.engines.node))
      .map(([path, entry]) => `${path} ${entry.version} wants ${entry.engines?.node}`);
    expect(excluding).toEqual([]);
  });

  it('every direct dependency has its sentence of reason, and no other has', () => {
    const page = read('docs/decisions/0001-dependencies.md');
    const reasons = [...page.matchAll(/^\| `([^`]+)` \|/gm)].map((match) => match[1]);
    const direct = [...Object.keys(manifest.dependencies), ...Object.keys(manifest.devDependencies)];
    expect(reasons.sort()).toEqual(direct.sort());
  });

  it('versions are exact and the lock names no download address', () => {
    for (const version of Object.values({ ...manifest.dependencies, ...manifest.devDependencies })) {
      expect(version).toMatch(/^\d+\.\d+\.\d+$/);
    }
    expect(read('package-lock.json')).not.toMatch(/"resolved"/);
  });
});

describe('documents keep their word', () => {
  const pages = tracked.filter((path) => path.endsWith('.md'));

  it.each(pages)('%s: links, paths and commands exist', (page) => {
    const text = read(page);
    const scripts: Record<string, string> = JSON.parse(read('package.json')).scripts;
    for (const match of text.matchAll(/npm run (?:-s )?([a-z]+(?::[a-z]+)*)/g))
      expect(scripts).toHaveProperty(match[1] ?? '');
    for (const match of text.matchAll(/\]\((?!https?:|#|mailto:)([^)#]+)(?:#[^)]*)?\)/g)) {
      const target = join(page, '..', match[1] ?? '');
      expect(existsSync(target), `${page} links to ${match[1]}`).toBe(true);
    }
    for (const match of text.matchAll(
      /`((?:services|dashboard|simulators|studies|packaging|tests|docs)\/[\w./-]*)`/g,
    )) {
      expect(existsSync(match[1] ?? ''), `${page} names ${match[1]}`).toBe(true);
    }
  });

  it('commands in the code blocks of README.md name existing files', () => {
    const commands = [...read('README.md').matchAll(/```sh\n(.*?)```/gs)].flatMap((block) =>
      (block[1] ?? '').split(/\s+/),
    );
    const files = commands.filter((word) => /^[\w.-][\w./-]*\.[a-z]+$/.test(word));
    expect(files).not.toEqual([]);
    expect(files.filter((file) => !tracked.includes(file))).toEqual([]);
  });

  it('docs/errors.md and the catalogue of refusals name the same codes', () => {
    const named = [...read('docs/errors.md').matchAll(/^\| `([a-z-]+)` \|/gm)].map((match) => match[1]);
    expect(named.sort()).toEqual(Object.keys(refusals).sort());
  });

  it('docs/needs.md answers every need once, with pages that are there and a test or "not yet"', () => {
    const pages = [...shownPages.keys()];
    const rows = [...read('docs/needs.md').matchAll(/^\| (\d+) \| [^|]+ \| ([^|]+) \| ([^|]*)\|$/gm)];
    expect(rows.map(([, number]) => Number(number))).toEqual(Array.from({ length: 38 }, (_, i) => i + 1));
    for (const [row, , where = '', shownBy = ''] of rows) {
      for (const [, page] of where.matchAll(/`(\/[^`]*)`/g)) expect(pages, row).toContain(page);
      if (where !== 'not yet') expect(shownBy, row).toMatch(/`tests\/[\w/]+\.test\.ts`/);
    }
  });

  it('no file names a machine path or a registry host', () => {
    const suspicious =
      /(^|[\s"'(=])\/((work|root|home)\/|tmp\/[a-z])[\w-]|registry\.(npmjs|yarnpkg)\.|deb\.debian/m;
    const hits = tracked
      .filter((path) => /\.(ts|tsx|md|json|css|html|sh|cjs|mjs)$/.test(path) && path !== 'package-lock.json')
      .filter((path) => path !== 'tests/house/house.test.ts' && suspicious.test(read(path)));
    expect(hits).toEqual([]);
  });
});

describe('sizes', () => {
  it('no source file is longer than a person reads in one sitting', () => {
    const long = ['services', 'dashboard', 'simulators', 'studies']
      .flatMap((folder) => walk(folder))
      .filter((path) => /\.(ts|tsx|css)$/.test(path))
      .map((path) => ({ path, lines: read(path).split('\n').length }))
      .filter(({ lines }) => lines > 300);
    expect(long).toEqual([]);
  });
});

function walk(folder: string): string[] {
  return readdirSync(folder).flatMap((name) => {
    const path = join(folder, name);
    return statSync(path).isDirectory() ? walk(path) : [path];
  });
}
