/**
 * `npm run study:cages`: replays the cages of tests/data, scores every forecast and keeps what docs/real-counts.md is
 * written from; the page itself is written afterwards by `npm run realcounts`.
 */
import { writeFileSync } from 'node:fs';
import { availableParallelism } from 'node:os';
import { parseArgs } from 'node:util';
import { type CageResult, type CageScores, type CageTask, fixedCages, seriesScores } from './cageScores.ts';
import { allCages } from './cages.ts';
import { stampNow } from './page.ts';
import { type Job, runJobs } from './pool.ts';

const usage = `Usage: npm run study:cages -- [options]
  --members N     members of the ensemble (default 300)
  --threads N     cages at once (default: one a core)
  --work FOLDER   keeps finished cages, so that the study goes on where it stopped (default tmp/study-cages)
  --fixed         replay the small fixed part alone and write down what it gives
  --help          print this`;

const say = (line: string) => process.stderr.write(`${line}\n`);
const write = (file: string, data: unknown) => {
  writeFileSync(file, `${JSON.stringify(data, null, 2)}\n`);
  say(`Wrote ${file}`);
};

async function main() {
  const { values } = parseArgs({
    options: {
      members: { type: 'string', default: '300' },
      threads: { type: 'string', default: String(availableParallelism()) },
      work: { type: 'string', default: 'tmp/study-cages' },
      fixed: { type: 'boolean', default: false },
      help: { type: 'boolean', short: 'h', default: false },
    },
  });
  if (values.help) return process.stdout.write(`${usage}\n`);
  write('tests/recovery/fixed-cages.json', fixedCages());
  if (values.fixed) return;
  const members = Number(values.members);
  const stamp = stampNow('seed 1', members);
  const results = await runJobs<CageTask, CageResult>({
    jobs: allCages().map(({ season }): Job<CageTask> => {
      const task = { cage: season.place.id, members };
      return { key: `${stamp.commit} ${task.cage} ${members}`, task };
    }),
    file: `${values.work}/cages.jsonl`,
    worker: new URL('./cageWorker.ts', import.meta.url),
    threads: Number(values.threads),
    say,
  });
  const scores: CageScores = { stamp, series: seriesScores(results) };
  write('tests/recovery/cage-scores.json', scores);
}

await main();
