/**
 * Writes docs/species/*.md from the species records: `npx tsx tests/house/speciesPages.ts`. A test compares
 * the pages with the records, so a value cannot change in one and not in the other.
 */
import { mkdirSync, writeFileSync } from 'node:fs';
import { pathToFileURL } from 'node:url';
import {
  allRecords,
  enemyRecords,
  pestRecords,
  speciesById,
  visitorRecords,
} from '../../services/model/species/catalogue.ts';
import type {
  Adult,
  Attack,
  EnemyTraits,
  FittedDevelopment,
  Mark,
  PestTraits,
  PublishedRow,
  SpeciesRecord,
  TemperatureFactor,
} from '../../services/model/species/record.ts';

export const speciesPagesFolder = 'docs/species';

const markWords: Record<Mark, string> = { SEEN: 'read', MEM: 'from memory', DER: 'derived' };

/** All pages by file name, the list of species first. */
export function speciesPages(): Map<string, string> {
  return new Map([
    ['README.md', contents()],
    ...allRecords.map((record) => [`${record.id}.md`, speciesPage(record)] as const),
  ]);
}

function contents(): string {
  const list = (records: readonly SpeciesRecord[]) => records.map(entry).join('\n');
  return `# Species

What is known of each species, what of it is in use, and what is not known. The pages are written from the
records in \`services/model/species\` by \`npx tsx tests/house/speciesPages.ts\`; change the record, then write
the pages anew.

## Pests

${list(pestRecords)}

## Natural enemies

${list(enemyRecords)}

## Natural enemies that come by themselves

Nobody sells them; they are told apart when they are seen.

${list(visitorRecords)}

## How to read the tables

Values that contradict each other stand side by side. "Read": seen in the source, mostly its abstract, or in a
collection that names the study. "From memory": the paper was not seen; treat the value as to be verified.
"Derived": worked out from other values, as the source or the note says.
`;
}

function entry({ id, commonName, name, notAdvised }: SpeciesRecord): string {
  const line = `- [${commonName}](${id}.md), *${name}*`;
  return notAdvised === undefined ? line : `${line}. Not advised: ${notAdvised}`;
}

/** The page of one species. */
export function speciesPage(record: SpeciesRecord): string {
  const { commonName, name, traits } = record;
  const sections = [
    `# ${commonName[0]!.toUpperCase()}${commonName.slice(1)}`,
    `*${name}*, ${traits.kind === 'pest' ? 'a pest' : 'a natural enemy'}. [All species](README.md)`,
    ...(record.notAdvised === undefined ? [] : [`Not advised: ${record.notAdvised}`]),
    development(record),
    adults(traits.adult),
    traits.kind === 'pest' ? pestSections(traits) : enemySections(traits),
    published(record.rows),
    `## Open questions\n\n${record.openQuestions.map((question) => `- ${question}`).join('\n')}`,
  ];
  return `${sections.join('\n\n')}\n`;
}

function development({ development: law }: SpeciesRecord): string {
  const total = law.stages.reduce((sum, stage) => sum + stage.degreeDays, 0);
  const daysAt20C = (degreeDays: number) => (degreeDays / (20 - law.lowerC)).toFixed(1);
  const lines = law.stages.map((stage) => [
    stage.name,
    figure(stage.degreeDays),
    daysAt20C(stage.degreeDays),
    `${figure(stage.cv * 100)} %`,
    `${figure(stage.survival * 100)} %`,
  ]);
  const all = ['all', figure(total), daysAt20C(total), '', ''];
  return `## Development in use

Begins above ${law.lowerC} °C, is fastest from ${law.plateauC} °C and ends at ${law.zeroC} °C. Between ${law.lowerC} and ${law.plateauC} °C the days
are the degree-days divided by the degrees above ${law.lowerC} °C. The degree-day ledger counts no more than ${law.plateauC} °C.${fittedText(law.fitted)}

${table(['Stage', 'Degree-days', 'Days at 20 °C', 'Spread', 'Lives through'], [...lines, all])}

Source: ${law.source}`;
}

const fittedText = (fitted: FittedDevelopment | undefined) =>
  fitted === undefined
    ? ''
    : `

The forecast runs by a law fitted to one published table instead, \`${fitted.table}\` in [rate laws](../rate-laws.md);
the stages share its time by their degree-days.`;

function adults(adult: Adult): string {
  return `## Adults in use

${table(
  ['What', 'Value'],
  [
    ['Before the first egg or young', `${adult.preovipositionDegreeDays} degree-days`],
    ['Life at 20 °C, from then on', `${adult.lifeDaysAt20C} days`],
    ['Eggs or young a female and day, first days, at best', figure(adult.eggsPerDay)],
    ['Share of females', `${figure(adult.femaleShare * 100)} %`],
    ['Eggs or young by temperature', factor(adult.fecundityByTemperature)],
  ],
)}

Source: ${adult.source}`;
}

function pestSections(traits: PestTraits): string {
  const crops = Object.entries(traits.hostFactor).map(([crop, value]) => `${crop} ${value}`);
  return `## Heat, flight and plants in use

${table(
  ['What', 'Value'],
  [
    [
      'Heat harms from',
      `${traits.heatFromC} °C; at 39 °C ${figure(traits.heatHazardAt39C * 100)} % die in an hour`,
    ],
    ['Flight by temperature', factor(traits.flightByTemperature)],
    ['Eggs and survival by plant, others 1', crops.join(', ')],
    ['Laying halves at', `${traits.crowdingPerM2} adults a m2 of ground`],
    ...(traits.winged === undefined
      ? []
      : [['Winged', `${figure(traits.winged.always * 100)} to ${figure(traits.winged.crowded * 100)} %`]]),
    ...(traits.antsAttend ? [['Ants', 'attend it']] : []),
  ],
)}`;
}

function enemySections(traits: EnemyTraits): string {
  return `## What it attacks, in use

${table(['Prey', 'How', 'Stages', 'At most a day', 'Search', 'Source'], traits.attacks.map(attackCells))}

## Warmth, air and hunting in use

${table(['What', 'Value'], huntingCells(traits))}${traits.release === undefined ? '' : releaseSection(traits.release)}`;
}

function attackCells({
  prey,
  kind,
  stages,
  ceilingPerDay,
  preference,
  halfSearchPerM2,
  source,
}: Attack): string[] {
  const search = [
    `${preference ?? 1}`,
    ...(halfSearchPerM2 === undefined ? [] : [`half of that at ${halfSearchPerM2} a m2`]),
  ];
  return [
    speciesById(prey).commonName,
    kind,
    stages.join(', '),
    figure(ceilingPerDay),
    search.join(', '),
    source,
  ];
}

function huntingCells(traits: EnemyTraits): string[][] {
  const { eggHalfFailsAtVpdKPa, rests, huntingStages, livesOnPollen, interferencePerM2, antsTake } = traits;
  const cell = (what: string, value: string | undefined) => (value === undefined ? [] : [[what, value]]);
  return [
    ['Lives above', `${traits.livesAboveC} °C`],
    ['Hunts above', `${traits.huntsAboveC} °C`],
    ['Hunting by temperature', factor(traits.activityByTemperature)],
    ['Ground searched by one in a day', `${traits.searchM2PerDay} m2`],
    ...cell('Stages that hunt', huntingStages?.join(', ')),
    ...cell('Adults', traits.adultsLeave && 'fly off'),
    ...cell(
      'Half the eggs fail at a vapour pressure deficit of',
      eggHalfFailsAtVpdKPa === undefined ? undefined : `${eggHalfFailsAtVpdKPa} kPa`,
    ),
    ...cell('Rests', rests && restText(rests)),
    ...cell('Lays on pollen or plant alone', percent(livesOnPollen)),
    ...cell(
      'Search halves among',
      interferencePerM2 === undefined ? undefined : `${interferencePerM2} of them a m2 of ground`,
    ),
    ...cell('Search lost to ants', percent(antsTake)),
    ...cell(
      'Lays half at',
      traits.halfFedAt === undefined ? undefined : `${percent(traits.halfFedAt)} of its fill`,
    ),
    ...cell(
      'Leaves or starves without food after',
      traits.starvesInDays === undefined ? undefined : `${traits.starvesInDays} days`,
    ),
  ];
}

const restText = ({ belowDayLengthH, belowC }: NonNullable<EnemyTraits['rests']>) =>
  `on days shorter than ${belowDayLengthH} hours${belowC === undefined ? '' : ` and cooler than ${belowC} °C`}`;

function releaseSection(release: NonNullable<EnemyTraits['release']>): string {
  return `

## Release in use

${table(
  ['What', 'Value'],
  [
    ['Released as', `${release.form}, ${release.perPiece} to a ${release.piece[0]}`],
    ['How many', `${release.perM2} a m2`],
    ['Where', `${release.verb}: ${release.where}`],
    ['Share that settles', `${figure(release.establishes * 100)} %`],
    ['Look after', `${release.lookAfterDays} days, for ${release.lookFor}`],
  ],
)}

Source: ${release.source}`;
}

/** Sources are numbered, so that the table stays narrow enough to read. */
function published(rows: readonly PublishedRow[]): string {
  const sources = [...new Set(rows.map((row) => row.source))];
  const lines = rows.map((row) => [
    row.what,
    row.low === undefined || row.high === undefined
      ? figure(row.value)
      : `${figure(row.low)} to ${figure(row.high)}`,
    row.unit,
    row.conditions,
    `${sources.indexOf(row.source) + 1}`,
    markWords[row.mark],
    row.note ?? '',
  ]);
  return `## Published values

${table(['What', 'Value', 'Unit', 'Conditions', 'Source', 'How', 'Note'], lines)}

${sources.map((source, i) => `${i + 1}. ${source}`).join('\n')}`;
}

const percent = (share: number | undefined) => (share === undefined ? undefined : `${figure(share * 100)} %`);

const factor = (points: TemperatureFactor) =>
  points.map(([temperatureC, value]) => `${value} at ${temperatureC} °C`).join(', ');

const figure = (value: number) => String(Number(value.toPrecision(6)));

function table(head: readonly string[], lines: readonly (readonly string[])[]): string {
  const row = (cells: readonly string[]) => `| ${cells.join(' | ')} |`;
  return [row(head), row(head.map(() => '---')), ...lines.map(row)].join('\n');
}

if (process.argv[1] && import.meta.url === pathToFileURL(process.argv[1]).href) {
  mkdirSync(speciesPagesFolder, { recursive: true });
  for (const [file, text] of speciesPages()) writeFileSync(`${speciesPagesFolder}/${file}`, text);
}
