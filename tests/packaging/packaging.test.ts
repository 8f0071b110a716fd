/** What can be said of the files in packaging/ without systemd and container tools: what they name is there. */
import { execFileSync } from 'node:child_process';
import { existsSync, readFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { describe, expect, it } from 'vitest';

const read = (path: string) => readFileSync(path, 'utf8');
const run = (command: string, ...args: string[]) => execFileSync(command, args, { encoding: 'utf8' });

const container = read('packaging/Containerfile');
const unit = read('packaging/glasstide.service');
const copied = [...container.matchAll(/^COPY (?!--from)(.+) \S+$/gm)].flatMap(([, paths]) =>
  paths!.split(' '),
);
const inContainer: string[] = JSON.parse(/^CMD (\[.*\])$/m.exec(container)?.[1] ?? '[]');
const inUnit = /^ExecStart=\S*\/(node .*)$/m.exec(unit)?.[1]?.split(' ') ?? [];
const inScripts: string[] = JSON.parse(read('package.json')).scripts.start.split(' && ').at(-1).split(' ');
const sourceOf = (built: string) => built.replace(/^dist\//, '').replace(/\.js$/, '.ts');

describe('the container file', () => {
  it('copies what git keeps, and nothing that may lie about beside it', () => {
    expect(copied).toContain('package-lock.json');
    const tracked = run('git', 'ls-files', ...copied).split('\n');
    for (const path of copied) expect(tracked.some((file) => file.startsWith(path))).toBe(true);
    expect(copied).not.toContain('.');
  });

  it('copies whatever the copied sources import', () => {
    const sources = run('git', 'ls-files', ...copied)
      .split('\n')
      .filter((file) => /\.tsx?$/.test(file));
    const imported = sources.flatMap((file) =>
      [...read(file).matchAll(/(?:from|import) '(\.[^']+)'/g)].map(([, to]) => join(dirname(file), to!)),
    );
    expect(imported.length).toBeGreaterThan(sources.length);
    expect(imported.filter((file) => !copied.includes(file.split('/')[0]!))).toEqual([]);
  });
});

describe('what starts the service', () => {
  it('is one command for npm start, the unit and the container, with flags that node knows', () => {
    expect(inContainer).toEqual(inUnit);
    expect(inScripts).toEqual(inUnit);
    const [, ...args] = inContainer;
    // Node ends with status 9 at a flag that it does not know.
    expect(run(process.execPath, ...args.slice(0, -1), '--version')).toContain(process.version);
  });

  it('names programs that the build makes, here and in the guide', () => {
    const guide = read('docs/first-machine.md') + container;
    const programs = [...guide.matchAll(/dist\/[\w/]+\.js/g)].map(([program]) => program);
    expect(programs.length).toBeGreaterThan(1);
    for (const program of [...programs, inUnit.at(-1)!])
      expect(existsSync(sourceOf(program)), program).toBe(true);
  });

  it('sets only settings that there are', () => {
    const known = read('services/config.ts');
    const set = `${container}${unit}`.match(/GLASSTIDE_\w+/g) ?? [];
    expect(set.length).toBeGreaterThan(3);
    for (const name of set) expect(known).toContain(`${name}:`);
  });
});
