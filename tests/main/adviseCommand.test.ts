import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, describe, expect, test } from 'vitest';
import { inWords, run } from '../../services/commands/advise.ts';
import { adviceSchema, adviseFrom } from '../../services/model/index.ts';
import { asOf, fixedFit, invented } from '../planning/season.ts';

const folder = mkdtempSync(join(tmpdir(), 'glasstide-'));
afterAll(() => rmSync(folder, { recursive: true }));

function runIt(...args: string[]) {
  const lines = { result: '', progress: '' };
  const add = (to: keyof typeof lines) => (text: string) => {
    lines[to] += text;
  };
  return { code: run(args, { result: add('result'), progress: add('progress') }), lines };
}

describe('the advise command', () => {
  test('prints the advice as documented JSON, progress apart', () => {
    const file = join(folder, 'season.json');
    writeFileSync(file, JSON.stringify(invented({ trapCounts: [] })));
    const { code, lines } = runIt(file, '--as-of', asOf, '--json');
    expect(code).toBe(0);
    expect(adviceSchema.parse(JSON.parse(lines.result))).toMatchObject({ decision: 'wait', verb: 'Count' });
    expect(lines.progress).toContain('The pear yard house');
  });

  test('says what to mend in a call without an instant', () => {
    const { code, lines } = runIt(join(folder, 'season.json'));
    expect(code).toBe(2);
    expect(lines.progress).toContain('--as-of is missing');
  });

  test('begins with the sentence, what it turns on, and the way advised; then what each other may cost', () => {
    // Of 100 possible seasons 80 or 31 lie eight weeks over the limit: 6.4 and 2.5 weeks.
    const advice = adviseFrom(invented(), fixedFit({ left: 0.8, released: 0.3 }), asOf);
    const [sentence, turnsOn, , title, first, ...rest] = inWords(advice, 'GBP').split('\n');
    expect(sentence).toBe(advice.sentence);
    expect(turnsOn).toMatch(
      /^Crop and money together, about \d+ GBP may be lost so, about \d+ GBP by “Leave it”\.$/,
    );
    expect(title).toBe('Ways, the advised one first, then by what may be lost until the season ends');
    expect(first).toMatch(
      /^ {2}2 cards of Encarsia: about \d+ GBP, \d+ of the crop and \d+ paid; about \d weeks over your limit$/,
    );
    for (const { label } of advice.ways ?? [])
      expect([first, ...rest].join('\n')).toContain(`  ${label}: about `);
    expect(rest.join('\n')).toMatch(/ {2}holds: /);
    expect(rest.join('\n')).toMatch(/Days to keep\n {2}Mon 18 May: order 2 cards of Encarsia, 120 in all/);
    expect(rest.join('\n')).not.toContain('What became of the releases');
  });

  test('puts the way advised first and says why one that loses less is not it', () => {
    const advice = adviseFrom(invented(), fixedFit({ left: 0.8, released: 0.3 }), asOf);
    const own = advice.ways?.find(({ id }) => id === advice.wayAdvised);
    expect(own).toMatchObject({ kind: 'now', plan: { enemy: advice.plan?.enemy } });
    const below = inWords({ ...advice, ways: [{ ...own!, id: 'other', label: 'Another way' }, own!] }, 'EUR');
    expect(below.split('\n')[4]).toContain(own!.label);
    expect(below).toContain('“Another way” may spare a little more: docs/advice.md');
    expect(inWords({ ...advice, ways: [own!] }, 'EUR')).not.toContain('may spare a little more');
  });

  test('tells what became of a release', () => {
    const releases = [
      {
        id: 'r',
        enemy: 'encarsia-formosa',
        form: 'pupa on card',
        number: 120,
        time: '2026-05-10T08:00:00Z',
      },
    ];
    const words = inWords(adviseFrom(invented({ releases }), fixedFit({ left: 0.8 }), asOf), 'EUR');
    expect(words).toContain(
      'What became of the releases\n  120 Encarsia of Sun 10 May: Black scales are expected from Sun 31 May on. Look under ten leaves for black scales on Sun 31 May.',
    );
  });
});
