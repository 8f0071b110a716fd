/** Starts the dashboard: which page, when which house. */
import { effect } from '@preact/signals';
import { render } from 'preact';
import { useEffect, useRef } from 'preact/hooks';
import './styles/tokens.css';
import './styles/base.css';
import './styles/layout.css';
import './styles/footBar.css';
import './styles/parts.css';
import './styles/labels.css';
import './styles/figures.css';
import './styles/book.css';
import './styles/week.css';
import './styles/forms.css';
import './styles/fields.css';
import './styles/entries.css';
import './styles/round.css';
import './styles/leaves.css';
import './styles/people.css';
import './styles/print.css';
import { access } from './access.ts';
import { listen } from './live.ts';
import { installWorker } from './offline/install.ts';
import { fetchOthers, others, othersMissing } from './others.ts';
import type { Pages } from './pages/all.ts';
import { ThisWeek } from './pages/thisWeek.tsx';
import { Unlock } from './pages/unlock.tsx';
import './parts/ownHabits.ts';
import { PageHead } from './parts/section.tsx';
import { Shell } from './parts/shell.tsx';
import { path, startRouter } from './router.ts';
import { place, placePath, places, resource } from './state.ts';

const firstPages: Pages = {
  '/': { title: 'This week', page: ThisWeek },
};

function NoPage() {
  return (
    <Shell>
      <PageHead
        sentence="There is no such page."
        note={
          <>
            The <a href="/book">house book</a> names all there are.
          </>
        }
      />
    </Shell>
  );
}

function Waiting() {
  const refused = places.value.refused;
  return (
    <Shell footBar={false}>
      {refused && <PageHead sentence={refused.reason} note={refused.whatToDo} />}
      {!refused && <p class="note">Fetching the house.</p>}
    </Shell>
  );
}

function Coming() {
  return (
    <Shell>
      {othersMissing.value ? (
        <>
          <PageHead sentence="This page did not come" note="It needs signal the first time." />
          <button type="button" class="key wide-key" onClick={() => location.reload()}>
            Try again
          </button>
        </>
      ) : (
        <div aria-busy="true">
          <PageHead sentence="Fetching the page" note="The first time it comes from the house." />
        </div>
      )}
    </Shell>
  );
}

/** After a change of page the reader stands at its sentence, not at the old link; also when the page came later. */
function usePageFocus(shown: string, title: string): void {
  const first = useRef(shown);
  const moved = useRef(false);
  useEffect(() => {
    document.title = `${title} - glasstide`;
    moved.current ||= shown !== first.current;
    if (moved.current) document.querySelector<HTMLElement>('main')?.focus({ preventScroll: true });
  }, [shown, title]);
}

/** A house may be locked before anything is set up in it. */
function addressNow(): string {
  const isSetUp = !places.value.data || place.value !== undefined;
  return isSetUp || path.value === '/people' ? path.value : '/new-place';
}

function House() {
  const address = addressNow();
  const found = firstPages[address] ?? others.value?.[address];
  const coming = !found && !others.value;
  useEffect(() => {
    if (coming) fetchOthers();
  }, [address, coming]);
  usePageFocus(
    path.value,
    found?.title ?? (othersMissing.value ? 'Did not come' : coming ? 'Fetching' : 'No such page'),
  );
  if (access.value?.you === 'nobody') return <Unlock />;
  if (!places.value.data) return <Waiting />;
  const Page = found?.page ?? (coming ? Coming : NoPage);
  return <Page key={place.value?.id ?? 'none'} />;
}

/** Answers that come beside the script are drawn at once with the sentence; who waits longer sees for what. */
const patienceMs = 500;

/** True once there is something to draw: the week, another page with its house, or a locked door. */
function isDrawable(): boolean {
  if (access.value?.you === 'nobody') return true;
  if (!places.value.data) return false;
  if (place.value && path.value === '/') return resource(placePath('outcome')).value.atMs !== undefined;
  return firstPages[path.value] !== undefined || others.value !== undefined;
}

const firstAnswer = () =>
  new Promise<void>((drawable) => {
    const stop = effect(() => {
      if (isDrawable()) drawable();
    });
    setTimeout(() => {
      stop();
      drawable();
    }, patienceMs);
  });

/** The first load belongs to the sentence: the other pages, and the files for a day without signal, come after it. */
const afterMs = 3_000;
addEventListener('load', () =>
  setTimeout(() => {
    fetchOthers();
    installWorker();
  }, afterMs),
);

startRouter();
void listen();
if (!firstPages[path.value]) fetchOthers();
const house = document.getElementById('house');
void firstAnswer().then(() => {
  if (house) render(<House />, house);
});
