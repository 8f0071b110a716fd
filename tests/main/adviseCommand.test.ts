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

  test('tells what each way may cost, and the conditions', () => {
    const advice = adviseFrom(invented(), fixedFit({ left: 0.8, released: 0.3 }), asOf);
    const words = inWords(advice);
    expect(words).toContain('What each way may cost, the least first\n');
    for (const { label } of advice.ways ?? []) expect(words).toContain(`${label}: `);
    expect(words).toMatch(/holds: /);
    expect(words).not.toContain('What became of the releases');
  });

  test('says why the way that stands first is not the one advised', () => {
    const advice = adviseFrom(invented(), fixedFit({ left: 0.8, released: 0.3 }), asOf);
    const [way] = advice.ways ?? [];
    const first = (id: string) => inWords({ ...advice, decision: 'order', ways: [{ ...way!, id }] });
    expect(first('wash-then-amblyseius-swirskii')).toContain('To wash first needs the same parcel');
    expect(first('wash')).toContain('only a clear gain is advised');
    expect(first(`release-${advice.plan?.enemy}`)).not.toContain('only a clear gain');
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
    const words = inWords(adviseFrom(invented({ releases }), fixedFit({ left: 0.8 }), asOf));
    expect(words).toContain(
      'What became of the releases\n  120 Encarsia of Sun 10 May: Black scales are expected from Sun 31 May on. Look under ten leaves for black scales on Sun 31 May.',
    );
  });
});
