/** `npm run -s advise -- FILE --as-of ISO [--json]`: what to do now, with every way that was weighed. */
import { withNeededReadings } from '../forecasting/neededReadings.ts';
import { type Advice, advise, formatDay, speciesById } from '../model/index.ts';
import { askedSeason, asOfOptions, calling, listed, runAsProgram } from './seasonFile.ts';
import type { Output } from './terminal.ts';

const usage = `Usage: npm run -s advise -- FILE --as-of ISO [--json]
  FILE     a season file (docs/data.md)
  --as-of  the instant to advise at, such as 2026-05-13T06:10:00Z; later entries are not used
  --json   print the advice as JSON: decision, ways with their expected loss, conditions
  --help   print this`;

/** Runs the command. Answers the exit code: 0 done, 2 the call or the file needs mending. */
export const run = (args: readonly string[], output: Output): number =>
  calling({ args, options: asOfOptions, usage, output }, (call) => {
    const { season, asOf } = askedSeason(call, usage);
    output.progress(`${season.place.name}: weighing what could be done ...`);
    const advice = advise(withNeededReadings(season, asOf), asOf);
    output.result(call.values.json ? JSON.stringify(advice, null, 2) : inWords(advice));
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
    ...whyNotTheFirst(advice),
    ...listed(
      'Conditions',
      advice.conditions.map(({ verdict, text }) => `${verdictWords[verdict]}: ${text}`),
    ),
    ...listed('What would change it', advice.wouldChange),
    ...followedUp(advice),
    ...listed('Cautions', advice.cautions),
  ].join('\n');
}

/** Why a way that loses less than the one advised stands above it. */
function whyNotTheFirst({ ways: [first] = [], decision, plan }: Advice): string[] {
  const buys = decision === 'order' || decision === 'top-up';
  if (!first || first.id.startsWith('later-')) return [];
  if (buys && first.id.startsWith('wash-then-'))
    return ['To wash first needs the same parcel: order it now; a wash before it comes may spare more.'];
  const advised = buys ? `release-${plan?.enemy}` : decision === 'wash' ? 'wash' : 'leave';
  if (first.id.startsWith(advised)) return [];
  return [
    'The first of these may spare a little more; only a clear gain is advised (docs/advice.md, Decision).',
  ];
}

/** What became of the releases of the season. */
function followedUp({ followUp }: Advice): string[] {
  const releases = (followUp?.releases ?? []).map(
    ({ number, enemy, on, evidence, next, effects }) =>
      `${number} ${speciesById(enemy).shortName} of ${formatDay(on)}: ${[...evidence, next.text, ...effects.map(({ text }) => text)].join(' ')}`,
  );
  const held = (followUp?.pests ?? []).map(({ text }) => text);
  const suggestions = (followUp?.nextYear ?? []).map(({ text, evidence }) => `${text} ${evidence}`);
  return [
    ...listed('What became of the releases', [...releases, ...held]),
    ...listed('For next year', suggestions),
  ];
}

const verdictWords = { holds: 'holds', fails: 'fails', 'cannot-say': 'cannot say' } as const;

runAsProgram(import.meta.url, run);
