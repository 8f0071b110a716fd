/** True when there is room for a desktop figure. */
import { signal } from '@preact/signals';

const query = matchMedia('(min-width: 700px)');
export const wide = signal(query.matches);
query.addEventListener('change', () => {
  wide.value = query.matches;
});
