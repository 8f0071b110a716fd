/** The House book: on the phone, the contents of everything. */
import { PageHead } from '../parts/section.tsx';
import { pageNames, Shell } from '../parts/shell.tsx';

const about: Record<string, string> = {
  '/': 'the sentence and its evidence',
  '/round': 'traps, leaves, three ticks',
  '/ahead': 'counts, waves, what if, degree-days, warmth',
  '/releases': 'what came, what was done, with undo',
  '/season': 'money, your limit, how good the forecasts were',
  '/who-is-it': 'friends and pests by pictures',
  '/sensors': 'what reads well, what was refused',
  '/settings': 'places, plants, traps, limits, supplier, copies',
};

export function HouseBook() {
  return (
    <Shell>
      <PageHead sentence="House book" />
      <ul class="book">
        {pageNames.map((page) => (
          <li key={page.path}>
            <a href={page.path}>{page.name}</a>
            <span class="note">{about[page.path]}</span>
          </li>
        ))}
      </ul>
    </Shell>
  );
}
