/** `npm run study:forecast`: plays the test bed, scores every forecast, writes docs/forecast-scores.md. */
import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { trialByName, trials } from '../simulators/trials.ts';
import { gardenSeed, readCall } from './call.ts';
import { fixedSummary, fixedTasks } from './fixedForecasts.ts';
import { forecastPage } from './forecastPage.ts';
import { type SeasonScore, scoreSeason, type Task } from './forecastSeason.ts';
import { stampNow } from './page.ts';
import { type Job, runJobs } from './pool.ts';

const names = trials.map(({ name }) => name);
const say = (line: string) => process.stderr.write(`${line}\n`);

async function main() {
  const call = readCall('forecast', names);
  if (!call) return;
  if (call.fixed) return writeFixed();
  for (const trial of call.trials) trialByName(trial);
  const { first, last } = { first: call.seeds[0]!, last: call.seeds.at(-1)! };
  const stamp = stampNow(`seeds ${first} to ${last} of each kind`, call.members);
  const jobs = call.trials.flatMap((trial) =>
    call.seeds.map((seed): Job<Task> => {
      const task = { trial, seed: gardenSeed(names, trial, seed), members: call.members };
      return { key: `${stamp.commit} ${trial} ${task.seed} ${call.members}`, task };
    }),
  );
  const seasons = await runJobs<Task, SeasonScore>({
    jobs,
    file: join(call.work, 'seasons.jsonl'),
    worker: new URL('./forecastWorker.ts', import.meta.url),
    threads: call.pageOnly ? 0 : call.threads,
    say,
  });
  const finished = seasons.filter((season) => season !== undefined);
  if (finished.length === 0) throw new Error('No season is finished: leave out --page.');
  writeFileSync('docs/forecast-scores.md', `${forecastPage(finished, stamp)}\n`);
  say(`Wrote docs/forecast-scores.md from ${finished.length} seasons`);
}

function writeFixed() {
  const seasons = fixedTasks.map((task) => {
    say(`${task.trial}, garden ${task.seed}`);
    return scoreSeason(task, () => performance.now());
  });
  writeFileSync('tests/recovery/fixed-forecasts.json', `${JSON.stringify(fixedSummary(seasons), null, 2)}\n`);
  say('Wrote tests/recovery/fixed-forecasts.json');
}

await main();
