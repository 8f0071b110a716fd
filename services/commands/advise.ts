/** `npm run -s advise -- FILE --as-of ISO [--json]`: what to do now, with every way that was weighed. */
import { type Advice, advise } from '../model/index.ts';
import { askedAsOf, calling, type Output, oneFile, readSeason, runAsProgram } from './seasonFile.ts';

const usage = `Usage: npm run -s advise -- FILE --as-of ISO [--json]
  FILE     a season file (docs/data.md)
  --as-of  the instant to advise at, such as 2026-05-13T06:10:00Z; later entries are not used
  --json   print the advice as JSON: decision, ways with their expected loss, conditions
  --help   print this`;

const options = {
  'as-of': { type: 'string' },
  json: { type: 'boolean', default: false },
  help: { type: 'boolean', short: 'h', default: false },
} as const;

/** Runs the command. Answers the exit code: 0 done, 2 the call or the file needs mending. */
export const run = (args: readonly string[], output: Output): number =>
  calling({ args, options, usage, output }, ({ values, positionals }) => {
    const file = oneFile(positionals, usage);
    const asOf = askedAsOf(values['as-of'], usage);
    const season = readSeason(file);
    output.progress(`${season.place.name}: weighing what could be done ...`);
    const advice = advise(season, asOf);
    output.result(values.json ? JSON.stringify(advice, null, 2) : inWords(advice));
  });

/** The advice as a person reads it. */
export function inWords(advice: Advice): string {
  const list = (title: string, lines: readonly string[]) =>
    lines.length === 0 ? [] : ['', title, ...lines.map((line) => `  ${line}`)];
  const ways = (advice.ways ?? []).map(
    ({ label, expectedLoss, harm, money, weeksOver }) =>
      `${label}: ${expectedLoss.toFixed(2)}, of it harm ${harm.toFixed(2)} and money ${money.toFixed(2)}; ${weeksOver} weeks over your limit`,
  );
  return [
    advice.sentence,
    ...list('Why', advice.reasons),
    ...list('What each way may cost, the least first', ways),
    ...list(
      'Conditions',
      advice.conditions.map(({ verdict, text }) => `${verdictWords[verdict]}: ${text}`),
    ),
    ...list('What would change it', advice.wouldChange),
    ...list('Cautions', advice.cautions),
  ].join('\n');
}

const verdictWords = { holds: 'holds', fails: 'fails', 'cannot-say': 'cannot say' } as const;

runAsProgram(import.meta.url, run);
