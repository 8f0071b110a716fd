/** What commands on season files have in common: reading the call and the file, and saying what to mend. */
import { readFileSync } from 'node:fs';
import { pathToFileURL } from 'node:url';
import { type ParseArgsConfig, parseArgs } from 'node:util';
import { canonicalSeason, isoInstant } from '../forecasting/canonicalSeason.ts';
import { issuesOf, pathName, stateOf } from '../issues.ts';
import { instant, type Season, seasonSchema } from '../model/index.ts';
import { CannotRun, type Output, onTheTerminal } from './terminal.ts';

type Options = NonNullable<ParseArgsConfig['options']>;
type Call<O extends Options> = ReturnType<
  typeof parseArgs<{ args: string[]; options: O; allowPositionals: true }>
>;

/** Reads the call and does the work, or prints how to call. Answers the exit code: 0 done, 2 something needs mending. */
export function calling<O extends Options>(
  how: { args: readonly string[]; options: O; usage: string; output: Output },
  work: (call: Call<O>) => void,
): number {
  const { args, options, usage, output } = how;
  try {
    const call = parsed(args, options, usage);
    if ('help' in call.values && call.values.help) output.result(usage);
    else work(call);
    return 0;
  } catch (error) {
    if (!(error instanceof CannotRun)) throw error;
    output.progress(error.message);
    return 2;
  }
}

function parsed<O extends Options>(args: readonly string[], options: O, usage: string): Call<O> {
  try {
    return parseArgs({ args: [...args], options, allowPositionals: true });
  } catch (error) {
    throw new CannotRun(`${wordsOf(error)}\n${usage}`);
  }
}

/** The one file that was named. */
function oneFile(positionals: readonly string[], usage: string): string {
  const [file, ...others] = positionals;
  if (file === undefined || others.length > 0) throw new CannotRun(`Name one season file.\n${usage}`);
  return file;
}

/** The instant of `--as-of`. */
function askedAsOf(given: string | undefined, usage: string): string {
  const asOf = instant.safeParse(given);
  if (asOf.success) return isoInstant(Date.parse(asOf.data));
  const received = given ?? 'missing';
  throw new CannotRun(`--as-of is ${received}: ${asOf.error.issues[0]?.message ?? 'send a time'}.\n${usage}`);
}

/** The one season file that was named, and the instant asked for. */
export function askedSeason(
  { values, positionals }: Call<typeof asOfOptions>,
  usage: string,
): { season: Season; asOf: string } {
  const file = oneFile(positionals, usage);
  const asOf = askedAsOf(values['as-of'], usage);
  return { season: readSeason(file), asOf };
}

/** How to call a command that answers for an instant. */
export const asOfOptions = {
  'as-of': { type: 'string' },
  json: { type: 'boolean', default: false },
  help: { type: 'boolean', short: 'h', default: false },
} as const;

/** Lines below a title; nothing without any. */
export const listed = (title: string, lines: readonly string[]): string[] =>
  lines.length === 0 ? [] : ['', title, ...lines.map((line) => `  ${line}`)];

export const many = ({ length }: readonly unknown[], noun: string) =>
  `${length} ${noun}${length === 1 ? '' : 's'}`;

/** Reads a season file; what is wrong with it is said field by field. */
export function readSeason(file: string): Season {
  const content = jsonOf(file);
  const result = seasonSchema.safeParse(content);
  if (result.success) return canonicalSeason(result.data);
  const issues = issuesOf(result.error, content);
  const lines = issues.slice(0, 10).map((i) => `  ${stateOf(i, pathName)}: ${i.expected}`);
  const more = issues.length > 10 ? [`  and ${issues.length - 10} more`] : [];
  throw new CannotRun([`${file} is not a season file yet; mend these fields:`, ...lines, ...more].join('\n'));
}

function jsonOf(file: string): unknown {
  const text = textOf(file);
  try {
    return JSON.parse(text);
  } catch (error) {
    throw new CannotRun(`${file} is not JSON, so it is no season file: ${wordsOf(error)}.`);
  }
}

function textOf(file: string): string {
  try {
    return readFileSync(file, 'utf8');
  } catch (error) {
    const code = error instanceof Error && 'code' in error ? error.code : undefined;
    if (code === 'ENOENT') throw new CannotRun(`There is no file ${file}.`);
    if (code === 'EISDIR') throw new CannotRun(`${file} is a folder. Name a season file.`);
    throw new CannotRun(`${file} could not be read: ${wordsOf(error)}.`);
  }
}

const wordsOf = (error: unknown): string => (error instanceof Error ? error.message : String(error));

/** Runs a command when its file is the program. */
export function runAsProgram(url: string, run: (args: readonly string[], output: Output) => number): void {
  if (process.argv[1] === undefined || url !== pathToFileURL(process.argv[1]).href) return;
  // Whoever reads along, such as `head`, has seen enough and closed the pipe.
  process.stdout.on('error', (error: NodeJS.ErrnoException) => {
    if (error.code !== 'EPIPE') throw error;
    process.exit();
  });
  process.exitCode = run(process.argv.slice(2), onTheTerminal);
}
