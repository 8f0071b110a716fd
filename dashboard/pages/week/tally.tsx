/** On paper only: a sheet to count on, for hands that shall not hold a phone. */
import type { LeafKind, Trap } from '../../../services/model/index.ts';
import type { Recorded } from '../../api.ts';
import { place, placePath, resource } from '../../state.ts';
import { leafKindWords, trapKindNames } from '../../words/names.ts';
import { kinds } from '../round/draft.ts';

const mostTraps = 4;
const plants = ['1', '2', '3', '4', '5'];
const leafKinds = Object.keys(leafKindWords) as LeafKind[];

interface SheetProps {
  caption: string;
  columns: readonly string[];
  rows: readonly string[];
}
const Sheet = ({ caption, columns, rows }: SheetProps) => (
  <table class="tally-sheet">
    <caption>{caption}</caption>
    <thead>
      <tr>
        <td />
        {columns.map((column) => (
          <th key={column} scope="col">
            {column}
          </th>
        ))}
      </tr>
    </thead>
    <tbody>
      {rows.map((row) => (
        <tr key={row}>
          <th scope="row">{row}</th>
          {columns.map((column) => (
            <td key={column} class="tally-box" />
          ))}
        </tr>
      ))}
    </tbody>
  </table>
);

const Boxes = ({ name, words }: { name: string; words: readonly string[] }) => (
  <p>
    {name}{' '}
    {words.map((each) => (
      <span key={each} class="tally-tick">
        <span class="tally-square" /> {each}
      </span>
    ))}
  </p>
);

export function Tally() {
  const records = resource<{ records: Recorded<Trap>[] }>(placePath('traps')).value.data?.records ?? [];
  const hanging = records.map(({ data }) => data).filter(({ takenDownAt }) => takenDownAt === undefined);
  const outdoors = place.value?.kind === 'outdoors';
  return (
    <section class="tally print-only" aria-label="Tally sheet">
      <div class="tally-head">
        <h2>Tally sheet</h2>
        <p>Date ______________ Counted by ______________</p>
      </div>
      <div class="tally-sheets">
        {!outdoors && (
          <div>
            <Sheet
              caption="On the yellow traps"
              columns={hanging.length === 0 ? ['Trap'] : hanging.slice(0, mostTraps).map(({ name }) => name)}
              rows={kinds.map((kind) => trapKindNames[kind])}
            />
            <Boxes name="Trap:" words={['new', 'same', 'taken down', 'lost']} />
            <Boxes name="Counted:" words={['whole', 'half', 'one column']} />
          </div>
        )}
        <div>
          <Sheet
            caption="Under two leaves of each plant, top and low"
            columns={plants}
            rows={leafKinds.map((kind) => leafKindWords[kind].name)}
          />
          <p>0 if looked and none; leave empty if not looked.</p>
        </div>
      </div>
      <Boxes
        name=""
        words={['ants on the plants', 'sprayed or washed: what, when ______________', 'old leaves stripped']}
      />
      <p>Lowest ______ Highest ______</p>
    </section>
  );
}
