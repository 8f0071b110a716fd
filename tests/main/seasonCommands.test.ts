import { execFile, spawn } from 'node:child_process';
import { once } from 'node:events';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { promisify } from 'node:util';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { run } from '../../services/commands/forecast.ts';
import { adviceSchema, forecastSchema } from '../../services/model/index.ts';
import { aPlace } from '../api/house.ts';

let folder: string;
const fileOf = (name: string, content: unknown) => {
  const path = join(folder, name);
  writeFileSync(path, typeof content === 'string' ? content : JSON.stringify(content));
  return path;
};
beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), 'glasstide-'));
});
afterAll(() => rmSync(folder, { recursive: true }));

function runIt(...args: string[]) {
  const lines = { result: '', progress: '' };
  const code = run(args, {
    result: (text) => {
      lines.result += text;
    },
    progress: (text) => {
      lines.progress += text;
    },
  });
  return { code, ...lines };
}

const asOf = '2026-05-13T06:10:00Z';
const aSeason = {
  format: 'glasstide-season',
  version: 1,
  place: aPlace,
  dailyExtremes: ['2026-05-09', '2026-05-10', '2026-05-11', '2026-05-12'].map((day) => ({
    day,
    minC: 12,
    maxC: 27,
  })),
  traps: [{ id: 'door', name: 'Door', hungAt: '2026-05-05T08:00:00Z' }],
  trapCounts: [
    { id: 'w19', trapId: 'door', time: '2026-05-12T18:00:00Z', exposureDays: 7, counts: { whitefly: 3 } },
  ],
};

describe('the forecast command', () => {
  test('prints forecast and advice as documented JSON, progress apart', () => {
    const { code, result, progress } = runIt(fileOf('a.json', aSeason), '--as-of', asOf, '--json');
    const { forecast, advice } = JSON.parse(result);
    expect(code).toBe(0);
    expect(forecastSchema.parse(forecast)).toEqual(forecast);
    expect(adviceSchema.parse(advice)).toEqual(advice);
    expect(progress).toContain('Lean-to: 0 readings, 1 trap count,');
  });

  test('prints the sentence first for a person', () => {
    const file = fileOf('b.json', aSeason);
    const { advice } = JSON.parse(runIt(file, '--as-of', asOf, '--json').result);
    const { code, result } = runIt(file, '--as-of', asOf);
    expect(code).toBe(0);
    expect(result.split('\n')[0]).toBe(advice.sentence);
    expect(result).toContain('\nWhitefly, expected a trap and week if left\n');
    expect(result).toMatch(/to \w{3} \d+ \w{3}: about \d+; half of the time \d+ to \d+, 8 of 10 \d+ to \d+/);
  });

  test('the order of the entries in the file does not matter', () => {
    const reversed = { ...aSeason, dailyExtremes: aSeason.dailyExtremes.toReversed() };
    const one = runIt(fileOf('c.json', aSeason), '--as-of', asOf, '--json');
    const other = runIt(fileOf('d.json', reversed), '--as-of', asOf, '--json');
    expect(other.result).toBe(one.result);
  });

  test('a file that needs mending: each field by its path', () => {
    const trapCounts = [{ ...aSeason.trapCounts[0], exposureDays: -7 }];
    const { code, result, progress } = runIt(fileOf('e.json', { ...aSeason, trapCounts }), '--as-of', asOf);
    expect([code, result]).toEqual([2, '']);
    expect(progress).toContain('trapCounts[0].exposureDays is -7: send days above 0');
  });

  test.each([
    ['no file', [], /Name one season file.*Usage:/s],
    ['a file that is not there', ['none.json', '--as-of', asOf], /^There is no file none\.json\.$/],
    ['a folder', ['tests', '--as-of', asOf], /^tests is a folder/],
    ['a file that is not JSON', ['README.md', '--as-of', asOf], /^README\.md is not JSON/],
    ['no time', ['a.json'], /--as-of is missing/],
    ['a time that is none', ['a.json', '--as-of', 'noon'], /--as-of is noon: send a date and time/],
    ['an unknown option', ['a.json', '--colour'], /--colour.*Usage:/s],
  ])('%s: says so and what to do', (_, args, words) => {
    const { code, result, progress } = runIt(...args);
    expect([code, result]).toEqual([2, '']);
    expect(progress).toMatch(words);
  });

  test.each(['--help', '-h'])('%s prints the usage and is no mistake', (option) => {
    expect(runIt(option)).toEqual({ code: 0, result: expect.stringMatching(/^Usage:/), progress: '' });
  });

  test('ends quietly when the reader closes the pipe', async () => {
    const file = fileOf('g.json', aSeason);
    const args = ['--import', 'tsx', 'services/commands/forecast.ts', file, '--as-of', asOf, '--json'];
    const child = spawn(process.execPath, args, { stdio: ['ignore', 'pipe', 'pipe'] });
    child.stdout.destroy();
    let told = '';
    child.stderr.on('data', (part) => {
      told += part;
    });
    const [code] = await once(child, 'close');
    expect([code, told.trim().split('\n')]).toEqual([0, [expect.stringMatching(/^Lean-to: /)]]);
  });

  test('as npm runs it', async () => {
    const file = fileOf('f.json', aSeason);
    const command = ['run', '-s', 'forecast', '--', file, '--as-of', asOf, '--json'];
    const { stdout } = await promisify(execFile)('npm', command, { maxBuffer: 64 * 1024 * 1024 });
    expect(JSON.parse(stdout).forecast.placeId).toBe('lean-to');
  });
});
