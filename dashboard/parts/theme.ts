/** Light, dark, or as the phone has it; remembered on this phone. */
import { effect, signal } from '@preact/signals';

export type Theme = 'phone' | 'light' | 'dark';
const shelf = 'glasstide.theme';
const stored = localStorage.getItem(shelf);

export const theme = signal<Theme>(stored === 'light' || stored === 'dark' ? stored : 'phone');

effect(() => {
  const chosen = theme.value;
  localStorage.setItem(shelf, chosen);
  if (chosen === 'phone') delete document.documentElement.dataset.theme;
  else document.documentElement.dataset.theme = chosen;
});
