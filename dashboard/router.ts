/** Paths of the pages over the history of the browser. Links stay ordinary links. */
import { signal } from '@preact/signals';
import { notice } from './notices.ts';
import { leavePage } from './state.ts';

export const path = signal(location.pathname);

function show(next: string): void {
  if (next === path.value) return;
  leavePage();
  notice.value = undefined;
  path.value = next;
}

export function go(next: string): void {
  history.pushState(null, '', next);
  show(location.pathname);
  scrollTo(0, 0);
}

/** Takes clicks on links within the dashboard; everything else is left to the browser. */
export function startRouter(): void {
  addEventListener('popstate', () => show(location.pathname));
  document.addEventListener('click', (event) => {
    const link = (event.target as Element | null)?.closest?.('a');
    if (!link || event.defaultPrevented || event.button !== 0 || event.metaKey || event.ctrlKey) return;
    const url = new URL(link.href, location.href);
    const elsewhere = url.origin !== location.origin || url.pathname.startsWith('/api/');
    if (elsewhere || link.target || link.hasAttribute('download')) return;
    if (url.pathname === location.pathname && url.hash) return;
    event.preventDefault();
    go(url.pathname);
  });
}
