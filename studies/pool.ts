/**
 * Runs many seasons on several threads and keeps each as one line of JSON as soon as it is done, so that a study that
 * was ended goes on where it stopped.
 */
import { appendFileSync, existsSync, mkdirSync, readFileSync } from 'node:fs';
import { dirname } from 'node:path';
import { Worker } from 'node:worker_threads';

export interface Job<Task> {
  /** The same for the same work: what it was asked and of which version. */
  key: string;
  task: Task;
}

export interface Done<Result> {
  key: string;
  result: Result;
}

export interface Run<Task> {
  jobs: readonly Job<Task>[];
  /** Where the lines are kept. */
  file: string;
  /** A module that answers messages: `answerJobs` of worker.ts. */
  worker: URL;
  threads: number;
  say: (line: string) => void;
}

/** Results in the order of the jobs; those on file are not done again. */
export async function runJobs<Task, Result>(run: Run<Task>): Promise<Result[]> {
  const { jobs, file, threads, say } = run;
  mkdirSync(dirname(file), { recursive: true });
  const done = new Map(linesOf<Result>(file).map(({ key, result }) => [key, result]));
  const open = jobs.filter(({ key }) => !done.has(key));
  say(`${jobs.length} seasons, ${jobs.length - open.length} of them on file in ${file}`);
  let finished = jobs.length - open.length;
  const queue = [...open];
  const onDone = ({ key, result }: Done<Result>) => {
    appendFileSync(file, `${JSON.stringify({ key, result })}\n`);
    done.set(key, result);
    finished += 1;
    say(`${finished} of ${jobs.length}: ${key}`);
  };
  await Promise.all(
    Array.from({ length: Math.min(threads, open.length) }, () => workThrough(run, queue, onDone)),
  );
  return jobs.map(({ key }) => done.get(key)!);
}

/** A line that was cut off when a study was ended is as if it had not been done. */
function linesOf<Result>(file: string): Done<Result>[] {
  if (!existsSync(file)) return [];
  return readFileSync(file, 'utf8')
    .split('\n')
    .flatMap((line) => {
      try {
        return line === '' ? [] : [JSON.parse(line) as Done<Result>];
      } catch {
        return [];
      }
    });
}

/** One thread takes jobs until there are no more. */
function workThrough<Task, Result>(
  { worker: url, say }: Run<Task>,
  queue: Job<Task>[],
  onDone: (done: Done<Result>) => void,
): Promise<void> {
  return new Promise((resolve, reject) => {
    const worker = startWorker(url);
    const next = () => {
      const job = queue.shift();
      if (job) worker.postMessage(job);
      else void worker.terminate().then(() => resolve(), reject);
    };
    worker.on('message', (answer: Done<Result> | { progress: string }) => {
      if ('progress' in answer) return say(answer.progress);
      onDone(answer);
      next();
    });
    worker.on('error', reject);
    next();
  });
}

/** Node 20 gives a thread no loader for TypeScript: one line of JavaScript fetches tsx, then the module. */
function startWorker(url: URL): Worker {
  const [loader, file] = [import.meta.resolve('tsx/esm/api'), url.href].map((part) => JSON.stringify(part));
  return new Worker(`import(${loader}).then(({ register }) => { register(); return import(${file}); });`, {
    eval: true,
  });
}
