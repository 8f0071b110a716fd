/**
 * A plain table; the first column is the row's head. In little room, as on a phone, the rows of one with many columns
 * stand as short lists, so that no column is out of sight; what is wider still scrolls inside its own frame.
 */
import type { FigureTable } from '../figures/palette.ts';
import { scrolling } from './scrolling.ts';

interface TableProps extends FigureTable {
  caption: string;
  /** Rows drawn bold. */
  strong?: (row: number) => boolean;
}
/** More columns than a phone has room for. */
const columnsOfAPhone = 4;

export function Table({ head, rows, caption, strong }: TableProps) {
  return (
    <section class="table-frame" {...scrolling(`${caption}: table`)}>
      <table class={head.length > columnsOfAPhone ? 'stacks' : undefined}>
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
                  <td key={column} data-head={head[column]}>
                    {cell}
                  </td>
                ),
              )}
            </tr>
          ))}
        </tbody>
      </table>
    </section>
  );
}
