/** The page docs/warning-scores.md. */
import { percent, table } from './page.ts';
import { type Deadline, daysNeeded, type Pair, type WarningScore } from './warningScores.ts';

export interface WarningStamp {
  version: string;
  /** Last change to the model and the garden, and to the warnings and their judge; each with its day. */
  played: string;
  told: string;
  seeds: string;
  members: number;
}

const sum = (numbers: readonly number[]) => numbers.reduce((total, each) => total + each, 0);

export function warningPage(seasons: readonly WarningScore[], stamp: WarningStamp): string {
  return [
    opening,
    `Version ${stamp.version}, played at commit ${stamp.played}, told at commit ${stamp.told}; ${seasons.length} seasons, ${stamp.seeds}, ${stamp.members} members.`,
    `## In time\n\n${inTime(seasons)}`,
    `## How often\n\n${howOften(seasons)}`,
    `## Without contradiction\n\n${contradictions(seasons)}`,
    limits,
  ].join('\n\n');
}

const opening = `# Whether the warnings of the virtual garden come in time

This page is written by \`npm run study:warnings\`. A season of single insects ([simulator.md](simulator.md)) is played
by a grower who counts on Mondays at nine (ten in summer), does what the advice says and orders on the **last** day. Three suppliers take turns: two days on the way and delivery on Thursday or
Friday; five days and Tuesday to Friday; three days and one delivery a week (invented). A forecast is made at each count
and entry and on the morning of a last day to order, each going on from the one before.

What was entered and forecast is then read to the real rules, outbox, quiet hours and letter of
[warnings.md](warnings.md), with a clock set by hand that is looked at every three hours. One receiver has mail with the
weekly letter (Sunday, six in the evening), one a phone.`;

function inTime(seasons: readonly WarningScore[]): string {
  const all = seasons.flatMap(({ deadlines }) => deadlines);
  const known = all.filter(({ knownDays }) => knownDays >= daysNeeded);
  const late = all.filter(({ knownDays }) => knownDays < daysNeeded);
  const row = (words: string, of: readonly Deadline[]) => [
    words,
    String(of.length),
    ...(['mail', 'push'] as const).flatMap((channel) => {
      const days = of.flatMap(({ toldDays }) => toldDays[channel] ?? []).sort((a, b) => a - b);
      const enough = days.filter((each) => each >= daysNeeded).length;
      const middle = days[Math.floor(days.length / 2)];
      return [
        middle?.toFixed(1) ?? '-',
        days[0]?.toFixed(1) ?? '-',
        of.length === 0 ? '-' : percent(enough / of.length),
      ];
    }),
    String(of.filter(({ toldDays }) => toldDays.push === undefined || toldDays.mail === undefined).length),
  ];
  const head = [
    'Last days to order',
    'How many',
    'Mail: days ahead, middle',
    'fewest',
    `${daysNeeded} days or more`,
    'Phone: middle',
    'fewest',
    `${daysNeeded} days or more`,
    'Never told',
  ];
  return `The rule: the forecast **knew** of a last day to order when some advice named that parcel with that day at least
${daysNeeded} days (72 hours) before the supplier's hour. A parcel that a count asks for with less than that left was not
known; no warning can be earlier than the advice. Days are counted from the message that left to the supplier's hour.

${table(head, [row('known in time', known), row('asked for later than that', late)])}`;
}

function howOften(seasons: readonly WarningScore[]): string {
  const weeks = sum(seasons.map((season) => season.weeks));
  const each = (numbers: readonly number[]) => (sum(numbers) / weeks).toFixed(2);
  const most = (of: (season: WarningScore) => number) =>
    Math.max(...seasons.map((season) => of(season) / season.weeks)).toFixed(2);
  const ways: [string, (season: WarningScore) => number][] = [
    ['mail, the letter counted', ({ messages }) => messages.mail],
    ['mail, the letter not counted', ({ messages, letters }) => messages.mail - letters],
    ['phone', ({ messages }) => messages.push],
  ];
  const rows = ways.map(([words, of]) => [words, each(seasons.map(of)), most(of)]);
  const rules = [...new Set(seasons.flatMap(({ told }) => Object.keys(told)))].sort();
  const byRule = rules.map((rule) => [rule, each(seasons.map(({ told }) => told[rule] ?? 0))]);
  return `Over ${weeks} weeks; a message may hold several things.

${table(['Messages a week', 'Mean', 'In the season with most'], rows)}

${table(['Told to the phone', 'Times a week'], byRule)}`;
}

function contradictions(seasons: readonly WarningScore[]): string {
  const pairs = seasons.flatMap((season) => season.pairs);
  const row = (words: string, what: Pair['what']) => {
    const own = pairs.filter((pair) => pair.what === what);
    return [words, String(own.length), String(own.filter(({ explained }) => !explained).length)];
  };
  return `Two messages to the same receiver within three days contradict each other when

- the first asks for something, and by the second it is not wanted although it was neither done nor missed; it is
  explained when the second names the first as no longer true and says why;
- the first says that something is no longer true, and the second says it again; that counts as unexplained.

${table(
  ['Pairs', 'In all', 'Without an explanation'],
  [row('wanted, then not', 'no-longer-wanted'), row('no longer true, then true again', 'wanted-again')],
)}`;
}

const limits = `## What this does not show

The grower's own garden, a supplier who is late, a grower who misses the day. Between a count and the last day no
forecast is made here, so that a change of mind on the days between is not met; the service makes one each morning.`;
