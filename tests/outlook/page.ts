/**
 * Writes docs/outlook.md: `npm run outlook`, or `npm run outlook -- FOLDER` with the folder of the tunnel logs, which
 * are not in the repository (then `npm run fix`). A test compares the page with what is computed anew.
 */
import { readFileSync, writeFileSync } from 'node:fs';
import { pathToFileURL } from 'node:url';
import { outlookLaw } from '../../services/model/climate/outlookLaw.ts';
import {
  chosenLines,
  type Line,
  leads,
  measuredLines,
  type TunnelLines,
  tunnelLines,
  youngLines,
} from './study.ts';

export const outlookFile = 'docs/outlook.md';
export const tunnelFile = 'tests/outlook/tunnels.json';

const degrees = (value: number) => value.toFixed(1);

function table(lines: readonly Line[]): string {
  const row = (cells: readonly string[]) => `| ${cells.join(' | ')} |`;
  const head = ['', 'days', ...leads.map((lead) => `${lead}`), 'in 50 / 80 / 95 %'];
  const sameAsBefore = (i: number) => lines[i - 1]?.scores[0]?.lastWeekC === lines[i]!.scores[0]!.lastWeekC;
  const body = lines.flatMap(({ what, days, scores, covered }, i) => [
    ...(sameAsBefore(i) ? [] : plain(lines[i]!)),
    [
      `**${what}**`,
      String(days),
      ...scores.map(({ rmseC }) => degrees(rmseC)),
      covered.map((share) => Math.round(100 * share)).join(' / '),
    ],
  ]);
  return [row(head), row(head.map(() => '---')), ...body.map(row)].join('\n');
}

/** What anybody can say, above the outlook of the same days. */
function plain({ scores }: Line): string[][] {
  return [
    ['as yesterday', '', ...scores.map(({ yesterdayC }) => degrees(yesterdayC)), ''],
    ['mean of the last week', '', ...scores.map(({ lastWeekC }) => degrees(lastWeekC)), ''],
  ];
}

/** Lines on which the mean of the last week was closer at some lead, told in full. */
function worse(lines: readonly Line[]): string {
  const told = lines.flatMap(({ what, scores }) => {
    const at = scores.filter(
      ({ rmseC, yesterdayC, lastWeekC }) => rmseC > Math.min(yesterdayC, lastWeekC) + 0.05,
    );
    return at.length === 0 ? [] : [`- ${what}: ${at.map(({ leadDays }) => leadDays).join(', ')} days ahead`];
  });
  return told.length === 0 ? 'Nowhere.' : told.join('\n');
}

function constants(): string {
  const { habitDays, weather, house, seasonSlope, memoryDays, spread, responseSpread, forecastErrorC } =
    outlookLaw;
  const spreadOf = ({ sdC, first, slope }: typeof spread) => `${sdC} min(1, ${first} + ${slope} lead) °C`;
  return `habit of ${habitDays} days; of the last day's departure ${weather.share} a day later, dying in
${weather.lastsDays} days (${house.share} where the air outdoors is known); ${seasonSlope} of the latitude's course of the year; learning
forgets in ${memoryDays} days; slope ${outlookLaw.priorSlopes.meanC[0]} on the air outdoors before anything is learned; spread
${spreadOf(spread)}, with the air outdoors ${spreadOf(responseSpread)} and the slope times
${forecastErrorC.first} + ${forecastErrorC.slope} (lead - 1) °C for the forecast's own error.`;
}

/** The whole page; `tunnel` are the lines of the tunnel houses. */
export function outlookPage(tunnel: TunnelLines): string {
  const [chosen, measured, young] = [chosenLines(), measuredLines(), youngLines()];
  return `# How good the outlook is

The outlook as it would have been issued each day of a log, against what came. Only what was known on the day is
handed over. Root mean square of the errors of daily means in °C, by days ahead; beside it two things anybody can say,
and how often what came lay in the ranges. Written by \`npm run outlook\`; a test keeps the page fresh.

Logs: two unheated tunnel houses in north-east Italy, 2021-22 (data of Brentarolli et al., GPL-3, not in this
repository: their lines are kept from the last run with them, \`npm run outlook -- FOLDER\`); a heated glasshouse in
the Netherlands, 2022 (data of Koidra 2023, MIT), the only one with its air outdoors; the open air at New York, 2013
(CC0); and, because no log of an unheated house with its air outdoors is at hand, a simulated house under a real
typical year of north-west Italy (PVGIS, (c) European Union, CC BY 4.0).

"Air outdoors known" is a forecast without error, better than any to be had. "With a forecast" it errs by 0.8 °C on
the first day and 0.25 more each day (from memory, one error for a whole forecast); nothing is known beyond ten days.

## Measured on the half not used for choosing

${table([...tunnel.measured, ...measured])}

Where one of the two plain sayings was closer by more than 0.05 °C:

${worse([...tunnel.measured, ...measured])}

## The half the constants were chosen on

${table([...tunnel.chosen, ...chosen])}

Where one of the two plain sayings was closer by more than 0.05 °C:

${worse([...tunnel.chosen, ...chosen])}

Chosen: ${constants()}

They were scanned on a coarse grid; the optimum is flat. Habits of 14 to 28 days, 0.6 to all of the last day's
departure and 3.5 to 5 days of it differ by less than 0.01 of the error. Learning from each house how much of the
departure goes on gained nothing. The slopes before learning are judgement: an unheated house would have 0.8, the
heated one has less than 0.4.

## With three days of readings

The measured half again, every day with only the last three days of readings:

${table([...tunnel.young, ...young])}

## What to make of it

- Without an outdoor forecast the outlook is a little closer than either saying in the tunnels, in the open air and in
  the simulated house. In the heated glasshouse in May it was further off: it expected the warming of the season, which
  vents held off and June did not bring. A month holds about two independent fortnights, so this is told, not tuned away.
- With an outdoor forecast its error is about halved in the first days, in the same glasshouse too, from three days of
  readings on. In winter, when heating holds that house, nothing is gained.
- Ranges promise 50, 80 and 95 %. They are too narrow where fitful weather follows steady, as in the open air in
  autumn, and too wide where a house is held by its heating.
- One house, two tunnels under one sky, one airport and a simulation are few.
`;
}

export const keptTunnels = (): TunnelLines => JSON.parse(readFileSync(tunnelFile, 'utf8')) as TunnelLines;

if (process.argv[1] && import.meta.url === pathToFileURL(process.argv[1]).href) {
  const folder = process.argv[2];
  if (folder !== undefined) {
    const short = (_: string, value: unknown) =>
      typeof value === 'number' ? Number(value.toFixed(4)) : value;
    writeFileSync(tunnelFile, `${JSON.stringify(tunnelLines(folder), short, 2)}\n`);
  }
  writeFileSync(outlookFile, outlookPage(keptTunnels()));
}
