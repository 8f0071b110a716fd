import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { refusals } from '../../services/refusals.ts';

const rows = readFileSync('docs/errors.md', 'utf8')
  .split('\n')
  .flatMap((line) => {
    const row = /^\| `([a-z-]+)` \| (\d{3}) \| (.+) \| (.+) \|$/.exec(line);
    return row ? [{ code: row[1]!, status: Number(row[2]), meaning: row[3]!, whatToDo: row[4]! }] : [];
  });

test('docs/errors.md holds every code with its status and what to do, and no other', () => {
  const written = rows.map(({ code, status, whatToDo }) => ({ code, status, whatToDo }));
  const known = Object.entries(refusals).map(([code, refusal]) => ({ code, ...refusal }));
  expect(written).toEqual(known);
});

test('every code has a meaning of its own', () => {
  expect(new Set(rows.map((row) => row.meaning)).size).toBe(rows.length);
});
