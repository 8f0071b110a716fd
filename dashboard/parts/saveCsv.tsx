/** Saves the numbers of a figure as a file for any spreadsheet. */
import type { FigureTable } from '../figures/palette.ts';
import { csvOf } from '../words/csv.ts';
import { slugFrom } from '../words/slugs.ts';

function save(name: string, text: string): void {
  // The mark at the start tells spreadsheets that the letters are UTF-8.
  const url = URL.createObjectURL(new Blob(['\ufeff', text], { type: 'text/csv;charset=utf-8' }));
  const link = Object.assign(document.createElement('a'), { href: url, download: `${name}.csv` });
  link.click();
  URL.revokeObjectURL(url);
}

export const SaveCsv = ({ title, table }: { title: string; table: FigureTable }) => (
  <button
    type="button"
    class="text-button save-csv"
    aria-label={`Save as CSV: ${title}`}
    onClick={() => save(slugFrom(title), csvOf(table.head, table.rows))}
  >
    Save as CSV
  </button>
);
