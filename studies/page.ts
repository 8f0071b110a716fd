/** What pages of studies share: tables, and the stamp by which a result can be made again. */
import { execFileSync } from 'node:child_process';
import { readFileSync } from 'node:fs';

export interface Stamp {
  version: string;
  /** Of the last change to what is judged and the judge. */
  commit: string;
  date: string;
  seeds: string;
  members: number;
}

/** Version of the package, and the last commit that touched the model, the garden or the study. */
export function stampNow(seeds: string, members: number): Stamp {
  const manifest: { version: string } = JSON.parse(readFileSync('package.json', 'utf8'));
  const log = ['log', '-1', '--format=%h %cs', '--', 'services/model', 'simulators', 'studies'];
  const [commit = '', date = ''] = execFileSync('git', log, { encoding: 'utf8' }).trim().split(' ');
  return { version: manifest.version, commit, date, seeds, members };
}

export const stampWords = ({ version, commit, date, seeds, members }: Stamp, seasons: number) =>
  `Version ${version}, commit ${commit} of ${date}; ${seasons} seasons, ${seeds}, ${members} members.`;

export const percent = (part: number) => `${Math.round(100 * part)} %`;

export function table(head: readonly string[], rows: readonly (readonly string[])[]): string {
  const line = (cells: readonly string[]) => `| ${cells.join(' | ')} |`;
  return [line(head), line(head.map(() => '---')), ...rows.map(line)].join('\n');
}
