/** The pages besides this week's: fetched when one is opened, or in quiet after the first load. */
import { signal } from '@preact/signals';
import type { Pages } from './pages/all.ts';

export const others = signal<Pages | undefined>(undefined);
export const othersMissing = signal(false);

let fetching = false;
export function fetchOthers(): void {
  if (fetching || others.value) return;
  fetching = true;
  othersMissing.value = false;
  import('./pages/all.ts').then(
    ({ pages }) => {
      others.value = pages;
    },
    () => {
      othersMissing.value = true;
      fetching = false;
    },
  );
}
