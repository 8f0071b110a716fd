/**
 * Every published value against ours. A row without a reason must lie within its tolerance; one with a reason must
 * lie outside, so that a mended miss is noticed; what cannot be answered yet is listed on the page all the same.
 */
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { allRecords } from '../../../services/model/species/catalogue.ts';
import { topics } from './all.ts';
import { accuracyPage, accuracyPagePath } from './page.ts';
import { judge, noRecord, type Row } from './row.ts';

const knownIds = allRecords.map(({ id }) => id);
const rows = topics.flatMap((topic) => topic.rows);

describe.each(topics)('$title', ({ rows }) => {
  const answerable = rows.filter((row) => row.kind !== 'open');

  it.each(answerable)('$id $species, $what: $published ($source)', (row) => {
    const { answer, verdict } = judge(row);
    if (answer === noRecord) expect(knownIds).not.toContain(row.species);
    else if (row.kind === 'number' && row.tolerance === undefined) expect(Number.isFinite(answer)).toBe(true);
    else expect(verdict, `ours is ${answer}`).toBe(row.reason ? 'outside' : 'within');
  });
});

describe('the list of checks', () => {
  it('leaves out none of C1 to C22 and E1 to E29', () => {
    const named = (letter: string, count: number) =>
      Array.from({ length: count }, (_, i) => `${letter}${i + 1}`);
    const listed = new Set(rows.map(({ id }) => id));
    expect([...named('C', 22), ...named('E', 29)].filter((id) => !listed.has(id))).toEqual([]);
  });

  it('says the same thing once', () => {
    const keys = rows.map((row: Row) => `${row.id} ${row.species} ${row.what} ${row.source}`);
    expect(keys.filter((key, i) => keys.indexOf(key) !== i)).toEqual([]);
  });

  it('stands on docs/accuracy.md as it is now (otherwise: npm run accuracy)', () => {
    expect(readFileSync(accuracyPagePath, 'utf8')).toBe(accuracyPage());
  });
});
