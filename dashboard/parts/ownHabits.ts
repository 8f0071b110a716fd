/** Habits as the browser's language has them, or as chosen; remembered on this phone. */
import { effect } from '@preact/signals';
import { type Habits, habits, habitsOf } from '../words/habits.ts';

const shelf = 'glasstide.habits';

/** What was chosen before; a damaged note counts as none. */
function chosen(): Partial<Habits> {
  try {
    const { degrees, dayFirst, weekStart, area } = JSON.parse(
      localStorage.getItem(shelf) ?? '{}',
    ) as Partial<Habits>;
    return {
      ...((degrees === 'C' || degrees === 'F') && { degrees }),
      ...(typeof dayFirst === 'boolean' && { dayFirst }),
      ...((weekStart === 1 || weekStart === 7) && { weekStart }),
      ...((area === 'm2' || area === 'ft2') && { area }),
    };
  } catch {
    return {};
  }
}

habits.value = { ...habitsOf(navigator.language), ...chosen() };
let first = true;
effect(() => {
  const text = JSON.stringify(habits.value);
  // As long as nothing is chosen, another language may bring other habits.
  if (!first) localStorage.setItem(shelf, text);
  first = false;
});
