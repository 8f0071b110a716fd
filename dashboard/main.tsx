/** Starts the dashboard: which page, when which house. */
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
import { Ahead } from './pages/ahead.tsx';
import { HouseBook } from './pages/houseBook.tsx';
import { People } from './pages/people.tsx';
import { Phone } from './pages/phone.tsx';
import { Releases } from './pages/releases.tsx';
import { Round } from './pages/round.tsx';
import { SeasonPage } from './pages/season.tsx';
import { Sensors } from './pages/sensors.tsx';
import { Settings } from './pages/settings.tsx';
import { SetUp } from './pages/setUp.tsx';
import { Shopping } from './pages/shopping.tsx';
import { Telling } from './pages/telling.tsx';
import { ThisWeek } from './pages/thisWeek.tsx';
import { Unlock } from './pages/unlock.tsx';
import { Well } from './pages/well.tsx';
import { AllPictures, WhoIsIt } from './pages/whoIsIt.tsx';
import './parts/ownHabits.ts';
import { PageHead } from './parts/section.tsx';
import { Shell } from './parts/shell.tsx';
import { path, startRouter } from './router.ts';
import { place, places } from './state.ts';

const pages: Record<string, { title: string; page: () => preact.JSX.Element }> = {
  '/': { title: 'This week', page: ThisWeek },
  '/round': { title: 'The round', page: Round },
  '/ahead': { title: 'What is coming', page: Ahead },
  '/releases': { title: 'Releases and orders', page: Releases },
  '/season': { title: 'The season', page: SeasonPage },
  '/shopping': { title: 'Shopping list', page: Shopping },
  '/sensors': { title: 'Sensors', page: Sensors },
  '/who-is-it': { title: 'Who is it?', page: WhoIsIt },
  '/who-is-it/pictures': { title: 'All pictures', page: AllPictures },
  '/phone': { title: 'Kept on this phone', page: Phone },
  '/settings': { title: 'Settings', page: Settings },
  '/people': { title: 'People and boards', page: People },
  '/well': { title: 'Is all well?', page: Well },
  '/telling': { title: 'How you are told', page: Telling },
  '/book': { title: 'House book', page: HouseBook },
  '/new-place': { title: 'A new place', page: SetUp },
};

function NoPage() {
  return (
    <Shell>
      <PageHead sentence="There is no such page." note="The contents name all there are." />
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

/** After a change of page the reader stands at its sentence, not at the old link. */
function usePageFocus(shown: string): void {
  const first = useRef(true);
  useEffect(() => {
    document.title = `${pages[shown]?.title ?? 'No such page'} - glasstide`;
    if (!first.current) document.querySelector<HTMLElement>('main')?.focus({ preventScroll: true });
    first.current = false;
  }, [shown]);
}

function House() {
  const found = pages[path.value];
  usePageFocus(path.value);
  if (access.value?.you === 'nobody') return <Unlock />;
  if (!places.value.data) return <Waiting />;
  // A house may be locked before anything is set up in it.
  if (!place.value) return path.value === '/people' ? <People /> : <SetUp />;
  const Page = found?.page ?? NoPage;
  return <Page key={place.value.id} />;
}

startRouter();
void listen();
installWorker();
const house = document.getElementById('house');
if (house) render(<House />, house);
