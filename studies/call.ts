/** How the studies are called. */
import { availableParallelism } from 'node:os';
import { parseArgs } from 'node:util';

export interface Call {
  trials: string[];
  seeds: number[];
  members: number;
  threads: number;
  /** Folder of unfinished work. */
  work: string;
  fixed: boolean;
  /** Write the page from what is on file, without playing more. */
  pageOnly: boolean;
}

/** What a call that names none gets. */
interface Usual {
  seeds: number;
  members: number;
}

export const usage = (name: string, { seeds, members }: Usual) => `Usage: npm run study:${name} -- [options]
  --trials A,B    kinds of season (default: all)
  --seeds N       seasons of each (default ${seeds})
  --first N       first seed (default 1)
  --members N     members of the ensemble (default ${members})
  --threads N     seasons at once (default: one a core)
  --work FOLDER   keeps finished seasons, so that the study goes on where it stopped (default tmp/study-${name})
  --page          write the page from the finished seasons alone
  --fixed         play the small fixed part and write down what it gives
  --help          print this`;

/** Reads the call; prints how to call and answers undefined when asked to. */
export function readCall(
  name: string,
  all: readonly string[],
  usual: Usual = { seeds: 10, members: 300 },
): Call | undefined {
  const { values } = parseArgs({
    options: {
      trials: { type: 'string', default: all.join(',') },
      seeds: { type: 'string', default: String(usual.seeds) },
      first: { type: 'string', default: '1' },
      members: { type: 'string', default: String(usual.members) },
      threads: { type: 'string', default: String(availableParallelism()) },
      work: { type: 'string', default: `tmp/study-${name}` },
      page: { type: 'boolean', default: false },
      fixed: { type: 'boolean', default: false },
      help: { type: 'boolean', short: 'h', default: false },
    },
  });
  if (values.help) {
    process.stdout.write(`${usage(name, usual)}\n`);
    return undefined;
  }
  const first = whole('first', values.first);
  return {
    trials: values.trials.split(','),
    seeds: Array.from({ length: whole('seeds', values.seeds) }, (_, n) => first + n),
    members: whole('members', values.members),
    threads: whole('threads', values.threads),
    work: values.work,
    fixed: values.fixed,
    pageOnly: values.page,
  };
}

function whole(name: string, text: string): number {
  const value = Number(text);
  if (Number.isInteger(value) && value >= 1) return value;
  throw new RangeError(`--${name} is ${text}: send a whole number of at least 1.`);
}

/** No two kinds of season share their luck: seed 3 of the fifth is garden 503. */
export const gardenSeed = (all: readonly string[], trial: string, seed: number) =>
  100 * (all.indexOf(trial) + 1) + seed;
