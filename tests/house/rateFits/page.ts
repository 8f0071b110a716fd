/** Writes docs/rate-laws.md: `npm run fits`. A test fits anew and compares the page. */
import { writeFileSync } from 'node:fs';
import { pathToFileURL } from 'node:url';
import { type RateLaw, rateBy } from '../../../services/model/climate/rateLaws.ts';
import type { DevelopmentTable } from '../../../services/model/species/developmentTables.ts';
import { allFits, chosenFit, type Fit } from './fits.ts';

export const rateLawsPage = 'docs/rate-laws.md';

const intro = `# Rate laws fitted to published days

Each table below is one paper, one stage, one host. Every law is fitted to it alone by least squares of the rate
(1 / days) on temperature; a threshold or a parameter never travels to another table. \`npm run fits\` writes this
page from the tables in \`services/model/species/developmentTables.ts\`; the laws stand in
\`services/model/climate/rateLaws.ts\`.

How to read it. *Sum of squares*: of the rates, per day squared. *AICc*: lower is better; a dash where the points are
too few for it (they must exceed the parameters by more than two). *Held*: "no" where a parameter ran to the edge of its
range or no point feels it; such a fit draws a curve, but its parameters mean nothing and are not shown. *Suggested*: the
lowest AICc among laws that are held, or, where no law has an AICc, the least sum of squares among those with the fewest
parameters. Where the days lengthen again in the heat only laws that turn there count: with six points AICc would rather
take a straight line and deny the heat.

Five to seven points settle little: the difference between two good laws is smaller than the difference between two
papers. The lower end of a curve is no threshold. A law says nothing outside the temperatures of its table.

Sharpe-Schoolfield is fitted with its heat side only, by the 298.15 K convention: the tables hold too few points for
six parameters.

In use: the forecast of the peach-potato aphid runs by Brière-1 of DeLoach 1974. Taylor's bell fits better but never
reaches zero, and the forecast meets temperatures outside the table; of the laws that end on both sides Brière-1 has
the lowest AICc. The forecast of the tobacco whitefly runs by Brière-1 of Wang & Tsai 1996, the one table of it that
spans 15 to 35 °C; the two temperatures read on tomato agree with it. All other species develop along the line of their
record: the melon aphid by that of Zamani et al. 2006, whose table shows no slowing before the heat that none survived,
and the tables of the rest either show none or contradict the line in the cold. The greenhouse whitefly has no table at
all.

What that changed for the peach-potato aphid, before and after, against papers it was not fitted to (root mean square of
the log of days to adult): Barlow 1962 0.52 and 0.30, the unnamed study of \`tests/published/rateFits.test.ts\` 0.39 and
0.11, a plastic house (Kim et al. 2012) 0.21 and 0.15. At 10 °C the line was nearer to Barlow, and at 26.7 °C to the plastic
house. Growth a day is mixed: nearer at 10 °C, lower than published by 5 % at 17 °C (0.205 for 0.2157) where the line met it.
`;

/** The page as text. */
export function rateLawsText(): string {
  return `${[intro.trimEnd(), ...allFits().map(({ table, fits }) => section(table, fits))].join('\n\n')}\n`;
}

function section(table: DevelopmentTable, fits: readonly Fit[]): string {
  const chosen = chosenFit(table, fits);
  const temperatures = table.days.map(([temperatureC]) => `${temperatureC} °C`);
  const laws = fits.map((fit) => [
    fit.name,
    fit.held ? wordsOf(fit.law) : '-',
    fit.sumOfSquares.toExponential(2),
    fit.r2.toFixed(4),
    fit.aicc?.toFixed(1) ?? '-',
    fit.held ? 'yes' : 'no',
  ]);
  const days = fits.map((fit) => [fit.name, ...table.days.map(([t]) => daysText(1 / rateBy(fit.law, t)))]);
  const none = table.noneAtC === undefined ? '' : ` None developed at ${table.noneAtC} °C.`;
  return `## ${table.species}, ${table.stage}, on ${table.on}

${table.source}.${table.note === undefined ? '' : ` Note: ${table.note}.`}${none}

${lines(['law', 'parameters', 'sum of squares', 'R2', 'AICc', 'held'], laws)}

${lines(['days at', ...temperatures], [['published', ...table.days.map(([, d]) => String(d))], ...days])}

Suggested: ${chosen === undefined ? 'none' : chosen.name}.`;
}

/** Parameters by name, four figures; `heat` of Sharpe-Schoolfield is opened. */
function wordsOf(law: RateLaw): string {
  const flat = Object.entries(law).flatMap(([name, value]) =>
    typeof value === 'object' ? Object.entries(value) : [[name, value] as const],
  );
  return flat
    .filter(([name]) => name !== 'kind')
    .map(([name, value]) => `${name} ${Number(Number(value).toPrecision(4))}`)
    .join(', ');
}

const daysText = (days: number) => (Number.isFinite(days) ? Number(days.toPrecision(3)).toString() : 'never');

function lines(head: readonly string[], body: readonly (readonly string[])[]): string {
  const row = (cells: readonly string[]) => `| ${cells.join(' | ')} |`;
  return [row(head), row(head.map(() => '---')), ...body.map(row)].join('\n');
}

if (process.argv[1] && import.meta.url === pathToFileURL(process.argv[1]).href) {
  writeFileSync(rateLawsPage, rateLawsText());
}
