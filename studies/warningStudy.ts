/** `npm run study:warnings`: plays seasons by the advice, reads them to the warnings, writes docs/warning-scores.md. */
import { execFileSync } from 'node:child_process';
import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { trialByName, trials } from '../simulators/trials.ts';
import { gardenSeed, readCall } from './call.ts';
import { stampNow } from './page.ts';
import { type Job, runJobs } from './pool.ts';
import { fixedWarnings } from './warningFixed.ts';
import { warningPage } from './warningPage.ts';
import { scoreTold, type WarningScore } from './warningScores.ts';
import type { Diary, WarningTask } from './warningSeason.ts';
import { tellDiary } from './warningTelling.ts';

const names = trials.map(({ name }) => name);
/** Kinds in which something happens in the weeks that are played. */
const played = [
  'no-pest',
  'early-whitefly',
  'missed-month',
  'dead-sensor',
  'heat-wave',
  'cold-house',
  'summer-thrips',
  'dry-mites',
  'winged-aphids',
  'two-pests',
];
/** Weeks of each season; later ones mostly rest, and cost hours. */
const weeks = 18;
const say = (line: string) => process.stderr.write(`${line}\n`);

async function main() {
  const call = readCall('warnings', played, { seeds: 5, members: 60 });
  if (!call) return;
  if (call.fixed) return writeFixed();
  for (const trial of call.trials) trialByName(trial);
  const whenPlayed = lastChange('services/model', 'simulators', 'studies/warningSeason.ts');
  const jobs = call.seeds.flatMap((seed) =>
    call.trials.map((trial): Job<WarningTask> => {
      const task = { trial, seed: gardenSeed(names, trial, seed), members: call.members, weeks };
      return { key: `${whenPlayed.split(' ')[0]} ${trial} ${task.seed} ${call.members} ${weeks}`, task };
    }),
  );
  const diaries = await runJobs<WarningTask, Diary>({
    jobs,
    file: join(call.work, 'seasons.jsonl'),
    worker: new URL('./warningWorker.ts', import.meta.url),
    threads: call.pageOnly ? 0 : call.threads,
    say,
  });
  const scores: WarningScore[] = [];
  for (const diary of diaries) {
    if (diary === undefined) continue;
    scores.push(scoreTold(diary, await tellDiary(diary)));
    say(`told ${scores.length}: ${diary.task.trial} ${diary.task.seed}`);
  }
  if (scores.length === 0) throw new Error('No season is finished: leave out --page.');
  const { version, seeds, members } = stampNow(
    `seeds ${call.seeds[0]} to ${call.seeds.at(-1)} of each kind`,
    call.members,
  );
  const told = lastChange('services/warnings', 'studies/warning*.ts');
  const page = warningPage(scores, { version, played: whenPlayed, told, seeds, members });
  writeFileSync('docs/warning-scores.md', `${page}\n`);
  say(`Wrote docs/warning-scores.md from ${scores.length} seasons`);
}

/** Short name and day of the last commit that touched any of these. */
function lastChange(...paths: string[]): string {
  return execFileSync('git', ['log', '-1', '--format=%h of %cs', '--', ...paths], {
    encoding: 'utf8',
  }).trim();
}

async function writeFixed() {
  const file = 'tests/recovery/fixed-warnings.json';
  writeFileSync(file, `${JSON.stringify(await fixedWarnings(), null, 2)}\n`);
  say(`Wrote ${file}`);
}

await main();
