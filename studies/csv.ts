/** Tables of comma-separated values without quotes. */
import { readFileSync } from 'node:fs';

/** One object a row. */
export function readCsv(path: string): Record<string, string>[] {
  const [head = '', ...lines] = readFileSync(path, 'utf8').trim().split('\n');
  const names = head.split(',');
  return lines.map((line) => {
    const cells = line.split(',');
    return Object.fromEntries(names.map((name, i) => [name, cells[i] ?? '']));
  });
}
