/** `npm run -s fuzz -- [--inputs N] [--seed S]`: ends with 1 at the first input that breaks something, and prints it. */
import { parseArgs } from 'node:util';
import { inputsOf, parts } from './parts.ts';

const { values } = parseArgs({
  options: { inputs: { type: 'string', default: '100000' }, seed: { type: 'string', default: '1' } },
});
const [inputs, seed] = [values.inputs, values.seed].map(Number);
if (!inputs || !seed) throw new Error('Say --inputs 100000 --seed 1.');
const { gc } = globalThis;
if (!gc) throw new Error('Start node with --expose-gc, as npm run fuzz does.');

/** In tenths, so that the memory after the first can be held against that after the last. */
const tenths = 10;
const startedMs = performance.now();
const done = new Map<string, number>();
const heapMB: number[] = [];
for (let tenth = 0; tenth < tenths; tenth += 1) {
  for (const part of parts) {
    const some = inputsOf(part, inputs / tenths);
    await part.run(some, tenths * seed + tenth);
    done.set(part.name, (done.get(part.name) ?? 0) + some);
  }
  gc();
  heapMB.push(process.memoryUsage().heapUsed / 1e6);
  process.stderr.write(`${tenth + 1} of ${tenths}, heap ${heapMB.at(-1)?.toFixed(0)} MB\n`);
}

const rows: [string, number][] = [
  ...done,
  ['all inputs', [...done.values()].reduce((sum, count) => sum + count, 0)],
  ['heap after a tenth, MB', Math.round(heapMB[0] ?? 0)],
  ['heap after all, MB', Math.round(heapMB.at(-1) ?? 0)],
  ['seconds', Math.round((performance.now() - startedMs) / 1000)],
];
process.stdout.write('| what | number |\n|---|---|\n');
for (const [what, number] of rows) process.stdout.write(`| ${what} | ${number.toLocaleString('en-GB')} |\n`);
