/** `npm run study:advice`: plays seasons by habit, by rule and by the advice, writes docs/advice-scores.md. */
import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { trialByName, trials } from '../simulators/trials.ts';
import { advicePage } from './advicePage.ts';
import { type AdviceScore, type AdviceTask, playAdvice } from './adviceSeason.ts';
import { gardenSeed, readCall } from './call.ts';
import { fixedAdviceSummary, fixedAdviceTasks } from './fixedAdvice.ts';
import { stampNow } from './page.ts';
import { type Job, runJobs } from './pool.ts';

const names = trials.map(({ name }) => name);
/** Without their own parcels the others would be the same seasons again. */
const played = [
  'no-pest',
  'early-whitefly',
  'heat-wave',
  'late-arrival',
  'cold-house',
  'summer-thrips',
  'dry-mites',
  'managed-mites',
  'winged-aphids',
  'two-pests',
];
/** The search costs as much as all the rest. */
const seedsSearched = 4;
const say = (line: string) => process.stderr.write(`${line}\n`);

async function main() {
  const call = readCall('advice', played);
  if (!call) return;
  if (call.fixed) return writeFixed();
  for (const trial of call.trials) trialByName(trial);
  const stamp = stampNow(`seeds ${call.seeds[0]} to ${call.seeds.at(-1)} of each kind`, call.members);
  const jobs = call.trials.flatMap((trial) =>
    call.seeds.map((seed): Job<AdviceTask> => {
      const searched = seed < call.seeds[0]! + seedsSearched;
      const task = { trial, seed: gardenSeed(names, trial, seed), members: call.members, searched };
      return {
        key: `${stamp.commit} ${trial} ${task.seed} ${call.members}${searched ? ' searched' : ''}`,
        task,
      };
    }),
  );
  const seasons = await runJobs<AdviceTask, AdviceScore>({
    jobs,
    file: join(call.work, 'seasons.jsonl'),
    worker: new URL('./adviceWorker.ts', import.meta.url),
    threads: call.pageOnly ? 0 : call.threads,
    say,
  });
  const finished = seasons.filter((season) => season !== undefined);
  if (finished.length === 0) throw new Error('No season is finished: leave out --page.');
  writeFileSync('docs/advice-scores.md', `${advicePage(finished, stamp)}\n`);
  say(`Wrote docs/advice-scores.md from ${finished.length} seasons`);
}

function writeFixed() {
  const seasons = fixedAdviceTasks.map((task) => {
    say(`${task.trial}, garden ${task.seed}`);
    return playAdvice(task, () => performance.now());
  });
  writeFileSync(
    'tests/recovery/fixed-advice.json',
    `${JSON.stringify(fixedAdviceSummary(seasons), null, 2)}\n`,
  );
  say('Wrote tests/recovery/fixed-advice.json');
}

await main();
