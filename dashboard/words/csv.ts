/** A table as CSV (RFC 4180: fields in quotes where needed, lines end in CR LF). */
const field = (text: string): string => (/[",\r\n]/.test(text) ? `"${text.replaceAll('"', '""')}"` : text);

export const csvOf = (head: readonly string[], rows: readonly (readonly string[])[]): string =>
  [head, ...rows]
    .map((row) => `${row.map((cell) => field(cell.replaceAll('\u00a0', ' '))).join(',')}\r\n`)
    .join('');
