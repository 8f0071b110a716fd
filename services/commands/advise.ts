/** `npm run -s advise -- FILE --as-of ISO [--json]`: what to do now, with every way that was weighed. */
import { withNeededReadings } from '../forecasting/neededReadings.ts';
import { type Advice, advise } from '../model/index.ts';
import { askedAsOf, asOfOptions, calling, listed, oneFile, readSeason, runAsProgram } from './seasonFile.ts';
import type { Output } from './terminal.ts';

const usage = `Usage: npm run -s advise -- FILE --as-of ISO [--json]
  FILE     a season file (docs/data.md)
  --as-of  the instant to advise at, such as 2026-05-13T06:10:00Z; later entries are not used
  --json   print the advice as JSON: decision, ways with their expected loss, conditions
  --help   print this`;

/** Runs the command. Answers the exit code: 0 done, 2 the call or the file needs mending. */
export const run = (args: readonly string[], output: Output): number =>
  calling({ args, options: asOfOptions, usage, output }, ({ values, positionals }) => {
    const file = oneFile(positionals, usage);
    const asOf = askedAsOf(values['as-of'], usage);
    const season = readSeason(file);
    output.progress(`${season.place.name}: weighing what could be done ...`);
    const advice = advise(withNeededReadings(season, asOf), asOf);
    output.result(values.json ? JSON.stringify(advice, null, 2) : inWords(advice));
  });

/** The advice as a person reads it. */
export function inWords(advice: Advice): string {
  const ways = (advice.ways ?? []).map(
    ({ label, expectedLoss, harm, money, weeksOver }) =>
      `${label}: ${expectedLoss.toFixed(2)}, of it harm ${harm.toFixed(2)} and money ${money.toFixed(2)}; ${weeksOver} weeks over your limit`,
  );
  return [
    advice.sentence,
    ...listed('Why', advice.reasons),
    ...listed('What each way may cost, the least first', ways),
    ...listed(
      'Conditions',
      advice.conditions.map(({ verdict, text }) => `${verdictWords[verdict]}: ${text}`),
    ),
    ...listed('What would change it', advice.wouldChange),
    ...listed('Cautions', advice.cautions),
  ].join('\n');
}

const verdictWords = { holds: 'holds', fails: 'fails', 'cannot-say': 'cannot say' } as const;

runAsProgram(import.meta.url, run);
