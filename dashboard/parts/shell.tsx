/** Head, contents and foot bar around every page. */
import type { ComponentChildren } from 'preact';
import { path } from '../router.ts';
import { health, place, places, today } from '../state.ts';
import { dayWords, longDayWords, weekNumber } from '../words/dates.ts';
import { areaSign, ownArea } from '../words/habits.ts';
import { LabelShape } from './seedLabel.tsx';
import { Strip } from './strip.tsx';

export const pageNames: readonly { path: string; name: string }[] = [
  { path: '/', name: 'This week' },
  { path: '/round', name: 'The round' },
  { path: '/ahead', name: 'What is coming' },
  { path: '/releases', name: 'Releases and orders' },
  { path: '/season', name: 'The season' },
  { path: '/sensors', name: 'Sensors' },
  { path: '/who-is-it', name: 'Who is it?' },
  { path: '/settings', name: 'Settings' },
];
const footNames: readonly { path: string; name: string }[] = [
  { path: '/', name: 'This week' },
  { path: '/round', name: 'Count' },
  { path: '/ahead', name: 'Ahead' },
  { path: '/who-is-it', name: 'Who is it?' },
  { path: '/book', name: 'House book' },
];
const footPath = (current: string) =>
  footNames.find((each) => each.path !== '/' && current.startsWith(each.path))?.path ??
  (current === '/' ? '/' : '/book');

const current = (chosen: boolean) => (chosen ? { 'aria-current': 'page' as const } : {});

export function Head() {
  const practice = health.value.data?.demo ? ', practice' : '';
  const several = (places.value.data?.places.length ?? 0) > 1;
  return (
    <header class="head">
      <a class="brand" href="/">
        glasstide
      </a>
      <span class="head-date">
        <span class="narrow">{dayWords(today.value)}</span>
        <span class="wide">{longDayWords(today.value)}</span>, week {weekNumber(today.value)}
        {practice}
      </span>
      {place.value && (
        <span class="head-place">
          <span>
            <strong>{place.value.name}</strong>, {ownArea(place.value.areaM2)} {areaSign()}
          </span>
          {several && <a href="/settings">other places</a>}
        </span>
      )}
    </header>
  );
}

function Contents() {
  return (
    <nav class="contents" aria-label="House book">
      <p class="note">House book</p>
      <ul>
        {pageNames.map((page) => (
          <li key={page.path}>
            <a href={page.path} {...current(page.path === path.value)}>
              {page.name}
            </a>
          </li>
        ))}
      </ul>
      <p class="note">Kept on your own machine.</p>
    </nav>
  );
}

function FootBar() {
  return (
    <nav class="foot-bar" aria-label="Pages">
      {footNames.map((page) => {
        const chosen = page.path === footPath(path.value);
        return (
          <a key={page.path} href={page.path} {...current(chosen)}>
            {chosen && <LabelShape point="down" />}
            <span>{page.name}</span>
          </a>
        );
      })}
    </nav>
  );
}

interface ShellProps {
  /** Pages with a thumb bar of their own show no foot bar. */
  footBar?: boolean;
  children: ComponentChildren;
}
export function Shell({ footBar = true, children }: ShellProps) {
  return (
    <div class={footBar ? 'shell' : 'shell no-foot'}>
      <a class="skip" href="#content">
        To the sentence
      </a>
      <Strip />
      <Head />
      <div class="columns">
        <Contents />
        <main id="content" tabIndex={-1}>
          {children}
        </main>
      </div>
      {footBar && <FootBar />}
    </div>
  );
}
