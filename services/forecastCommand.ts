/** `npm run -s forecast -- FILE --as-of ISO [--json]`: forecast and advice from a season file, without the service. */
import { readFileSync } from 'node:fs';
import { pathToFileURL } from 'node:url';
import { parseArgs } from 'node:util';
import { canonicalSeason, isoInstant } from './forecasting/canonicalSeason.ts';
import { issuesOf, pathName, stateOf } from './issues.ts';
import type { CountedAs, PestForecast, Season } from './model/index.ts';
import {
  type Advice,
  type Forecast,
  forecastAndAdvise,
  formatDay,
  instant,
  localDay,
  seasonSchema,
  speciesById,
} from './model/index.ts';

const usage = `Usage: npm run -s forecast -- FILE --as-of ISO [--json]
  FILE     a season file (docs/data.md)
  --as-of  the instant to forecast from, such as 2026-05-13T06:10:00Z; later entries are not used
  --json   print { forecast, advice } as JSON
  --help   print this`;

export interface Output {
  result(text: string): void;
  progress(text: string): void;
}

/** What the person asked for cannot be done as asked; the message says what to change. */
class CannotRun extends Error {}

/** Runs the command. Answers the exit code: 0 done, 2 the call or the file needs mending. */
export function run(args: readonly string[], output: Output): number {
  try {
    const call = readCall(args);
    if (call === 'help') {
      output.result(usage);
      return 0;
    }
    const { file, asOf, json } = call;
    const season = readSeason(file);
    const { readings, trapCounts, leafChecks } = season;
    output.progress(
      `${season.place.name}: ${many(readings, 'reading')}, ${many(trapCounts, 'trap count')}, ${many(leafChecks, 'leaf check')}. Working out the forecast ...`,
    );
    const outcome = forecastAndAdvise(season, asOf, {});
    output.result(json ? JSON.stringify(outcome, null, 2) : inWords(outcome, season.place.timeZone));
    return 0;
  } catch (error) {
    if (!(error instanceof CannotRun)) throw error;
    output.progress(error.message);
    return 2;
  }
}

const many = ({ length }: readonly unknown[], noun: string) => `${length} ${noun}${length === 1 ? '' : 's'}`;

function readCall(args: readonly string[]): { file: string; asOf: string; json: boolean } | 'help' {
  const { values, positionals } = parsed(args);
  if (values.help) return 'help';
  const [file, ...others] = positionals;
  const asOf = instant.safeParse(values['as-of']);
  if (file === undefined || others.length > 0) throw new CannotRun(`Name one season file.\n${usage}`);
  if (!asOf.success) {
    const received = values['as-of'] ?? 'missing';
    throw new CannotRun(
      `--as-of is ${received}: ${asOf.error.issues[0]?.message ?? 'send a time'}.\n${usage}`,
    );
  }
  return { file, asOf: isoInstant(Date.parse(asOf.data)), json: values.json };
}

function parsed(args: readonly string[]) {
  const options = {
    'as-of': { type: 'string' },
    json: { type: 'boolean', default: false },
    help: { type: 'boolean', short: 'h', default: false },
  } as const;
  try {
    return parseArgs({ args: [...args], options, allowPositionals: true });
  } catch (error) {
    throw new CannotRun(`${wordsOf(error)}\n${usage}`);
  }
}

function readSeason(file: string): Season {
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

/** The outcome as a person reads it. */
export function inWords(
  { forecast, advice }: { forecast: Forecast; advice: Advice },
  timeZone: string,
): string {
  const list = (title: string, lines: readonly string[]) =>
    lines.length === 0 ? [] : ['', title, ...lines.map((line) => `  ${line}`)];
  return [
    advice.sentence,
    ...list('Why', advice.reasons),
    ...forecast.pests.flatMap((pest) =>
      list(`${nameOf(pest)}, ${expected[pest.counted.unit]}`, weeks(pest, timeZone)),
    ),
    ...list(
      'What we do not know',
      advice.doubts.map((doubt) => doubt.text),
    ),
    ...list('Cautions', advice.cautions),
  ].join('\n');
}

const expected: Record<CountedAs['unit'], string> = {
  'trap-week': 'expected a trap and week if left',
  'ten-leaves': 'leaves with any expected of ten if left',
};

function nameOf({ pest }: PestForecast): string {
  const { shortName } = speciesById(pest);
  return shortName.charAt(0).toUpperCase() + shortName.slice(1);
}

function weeks(pest: PestForecast, timeZone: string): string[] {
  return pest.weeks.map(({ end, count }) => {
    const { q10, q25, q50, q75, q90 } = count;
    const day = formatDay(localDay(Date.parse(end), timeZone));
    const n = Math.round;
    return `to ${day}: about ${n(q50)}; half of the time ${n(q25)} to ${n(q75)}, 8 of 10 ${n(q10)} to ${n(q90)}`;
  });
}

if (process.argv[1] !== undefined && import.meta.url === pathToFileURL(process.argv[1]).href) {
  // Whoever reads along, such as `head`, has seen enough and closed the pipe.
  process.stdout.on('error', (error: NodeJS.ErrnoException) => {
    if (error.code !== 'EPIPE') throw error;
    process.exit();
  });
  process.exitCode = run(process.argv.slice(2), {
    result: (text) => process.stdout.write(`${text}\n`),
    progress: (text) => process.stderr.write(`${text}\n`),
  });
}
