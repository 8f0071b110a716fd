/** A plain table; the first column is the row's head, wide ones scroll inside their own frame. */
import type { FigureTable } from '../figures/palette.ts';
import { scrolling } from './scrolling.ts';

interface TableProps extends FigureTable {
  caption: string;
  /** Rows drawn bold. */
  strong?: (row: number) => boolean;
}
export function Table({ head, rows, caption, strong }: TableProps) {
  return (
    <section class="table-frame" {...scrolling(caption)}>
      <table>
        <caption class="unseen">{caption}</caption>
        <thead>
          <tr>
            {head.map((cell) => (
              <th key={cell} scope="col">
                {cell}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {rows.map((row, index) => (
            <tr key={index} class={strong?.(index) ? 'strong' : undefined}>
              {row.map((cell, column) =>
                column === 0 ? (
                  <th key={column} scope="row">
                    {cell}
                  </th>
                ) : (
                  <td key={column}>{cell}</td>
                ),
              )}
            </tr>
          ))}
        </tbody>
      </table>
    </section>
  );
}
