/**
 * Writes docs/accuracy.md from the checks: `npm run accuracy`. A test compares the page with a fresh one, so a
 * miss cannot be mended or made without the page saying so.
 */
import { writeFileSync } from 'node:fs';
import { pathToFileURL } from 'node:url';
import { allRecords } from '../../../services/model/species/catalogue.ts';
import { topics } from './all.ts';
import { byHand, opening } from './prose.ts';
import { type Answer, type Judged, judge, type NumberRow, type OutcomeRow, type Tolerance } from './row.ts';

export const accuracyPagePath = 'docs/accuracy.md';

/** The whole page. */
export function accuracyPage(): string {
  const judged = topics.map(({ title, rows }) => ({ title, rows: rows.map(judge) }));
  const all = judged.flatMap(({ rows }) => rows);
  const sections = [
    opening,
    summary(all),
    misses(all),
    ...judged.map(({ title, rows }) => `## ${title}\n\n${checks(rows)}`),
    byHand,
  ];
  return `${sections.join('\n\n')}\n`;
}

function summary(all: readonly Judged[]): string {
  const count = (verdict: Judged['verdict']) => all.filter((row) => row.verdict === verdict).length;
  return `Of ${all.length} checks ${count('within')} lie within the tolerance asked, ${count('outside')} outside, \
${count('shown')} had none and are only shown, ${count('not answered')} cannot be answered yet.`;
}

function misses(all: readonly Judged[]): string {
  const outside = all.filter(({ verdict }) => verdict === 'outside');
  const lines = outside.map((judged) => {
    const { row, answer } = judged;
    const reason = row.kind === 'open' ? '' : (row.reason ?? '');
    return [row.id, `${nameOf(row.species)}: ${row.what}`, published(judged), figure(answer), reason];
  });
  return `## What misses, and why\n\n${table(['Check', 'What', 'Published', 'Ours', 'Why'], lines)}`;
}

function checks(rows: readonly Judged[]): string {
  const sources = [...new Set(rows.map(({ row }) => row.source))];
  const lines = rows.map((judged) => {
    const { row, answer, verdict } = judged;
    return [
      row.id,
      nameOf(row.species),
      row.note ? `${row.what} (${row.note})` : row.what,
      published(judged),
      figure(answer),
      row.kind === 'open' ? '' : difference(row, answer),
      row.kind === 'number' ? allowed(row.tolerance) : '',
      verdict === 'outside' ? '**outside**' : verdict,
      `${sources.indexOf(row.source) + 1}${markWords[row.mark]}`,
    ];
  });
  const head = ['Check', 'Species', 'What', 'Published', 'Ours', 'Difference', 'Asked', 'Result', 'Source'];
  return `${table(head, lines)}\n\n${sources.map((source, i) => `${i + 1}. ${source}`).join('\n')}`;
}

const markWords = { SEEN: '', MEM: ', from memory', DER: ', derived', same: ', same paper as in use' };

const names = new Map<string, string>(allRecords.map(({ id, commonName }) => [id, commonName]));
const nameOf = (id: string) => names.get(id) ?? id;

function published({ row }: Judged): string {
  if (row.kind !== 'number') return row.published;
  return row.printed ?? `${Number(row.published.toPrecision(4))} ${row.unit}`;
}

function difference(row: NumberRow | OutcomeRow, answer: Answer): string {
  if (row.kind !== 'number' || typeof answer !== 'number') return answer === true ? '' : 'not so';
  const { printed, published } = row;
  if (printed !== undefined || published === 0) return '';
  const share = Math.round((answer / published - 1) * 100);
  return `${share > 0 ? '+' : ''}${share} %`;
}

function allowed(tolerance: Tolerance | undefined): string {
  if (tolerance === undefined) return 'none';
  if ('share' in tolerance) return `±${figure(100 * tolerance.share)} %`;
  if ('within' in tolerance) return `±${figure(tolerance.within)}`;
  const { from, to } = tolerance;
  return to === Number.POSITIVE_INFINITY ? `above ${figure(from)}` : `${figure(from)} to ${figure(to)}`;
}

/** Three figures that count; truths as yes and no. */
function figure(answer: Answer): string {
  if (typeof answer === 'boolean') return answer ? 'so' : 'not so';
  if (typeof answer === 'string') return answer;
  // Below a thousandth the fourth figure is noise of the arithmetic.
  return String(Number((Math.abs(answer) < 1e-6 ? 0 : answer).toPrecision(3)));
}

function table(head: readonly string[], lines: readonly (readonly string[])[]): string {
  const row = (cells: readonly string[]) => `| ${cells.join(' | ')} |`;
  return [row(head), row(head.map(() => '---')), ...lines.map(row)].join('\n');
}

if (process.argv[1] && import.meta.url === pathToFileURL(process.argv[1]).href) {
  writeFileSync(accuracyPagePath, accuracyPage());
}
