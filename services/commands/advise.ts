/** `npm run -s advise -- FILE --as-of ISO [--json]`: what to do now, with every way that was weighed. */
import { withNeededReadings } from '../forecasting/neededReadings.ts';
import { type Advice, advise, currencyOf, formatDay, speciesById, type Way } from '../model/index.ts';
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
    output.result(
      call.values.json ? JSON.stringify(advice, null, 2) : inWords(advice, currencyOf(season.place)),
    );
  });

/** The advice as a person reads it; sums are in the currency of the place. */
export function inWords(advice: Advice, currency: string): string {
  const ways = advisedFirst(advice);
  return [
    advice.sentence,
    ...because(ways, currency),
    ...listed(
      'Ways, the advised one first, then by what may be lost until the season ends',
      ways.map((way) => wayWords(way, currency)),
    ),
    ...whyNotTheLeast(advice),
    ...listed('Why', advice.reasons),
    ...listed(
      'Conditions',
      advice.conditions.map(({ verdict, text }) => `${verdictWords[verdict]}: ${text}`),
    ),
    ...listed('What would change it', advice.wouldChange),
    ...listed(
      'Days to keep',
      advice.daysToKeep.map(({ day, verb, text }) => `${formatDay(day)}: ${verb.toLowerCase()} ${text}`),
    ),
    ...followedUp(advice),
    ...listed('Cautions', advice.cautions),
  ].join('\n');
}

function advisedFirst({ ways = [], wayAdvised }: Advice): Way[] {
  const advised = ways.filter(({ id }) => id === wayAdvised);
  return [...advised, ...ways.filter((way) => !advised.includes(way))];
}

/** What the decision turns on: the way advised beside leaving it, or beside the next best. */
function because([advised, ...others]: readonly Way[], currency: string): string[] {
  const beside = others.find(({ kind }) => kind === 'leave') ?? others[0];
  if (!advised || !beside) return [];
  const [own, other] = [advised, beside].map(
    ({ expectedLoss }) => `about ${Math.round(expectedLoss)} ${currency}`,
  );
  return [`Crop and money together, ${own} may be lost so, ${other} by “${beside.label}”.`];
}

function wayWords({ label, expectedLoss, money, weeksOver }: Way, currency: string): string {
  const sum = Math.round(expectedLoss);
  const paid = Math.round(money);
  const over = Math.round(weeksOver);
  const weeks = `${over} ${over === 1 ? 'week' : 'weeks'} over your limit`;
  // As told, crop and money add up to the sum.
  return `${label}: about ${sum} ${currency}, ${sum - paid} of the crop and ${paid} paid; about ${weeks}`;
}

/** Why a way that loses less than the one advised is not advised. */
function whyNotTheLeast({ ways: [least] = [], wayAdvised }: Advice): string[] {
  if (!least || least.id === wayAdvised) return [];
  return [`“${least.label}” may spare a little more: docs/advice.md, Decision, says when it is not advised.`];
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
