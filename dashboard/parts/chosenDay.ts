/** The day that a form is about. */
import { useState } from 'preact/hooks';
import { today } from '../state.ts';

/** The day of a field: until one is chosen `first`, or else today, also once midnight or the house's clock has come. */
export function useDay(first?: string): [string, (day: string) => void] {
  const [chosen, choose] = useState(first);
  return [chosen ?? today.value, choose];
}
