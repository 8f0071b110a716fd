/** The one strip on top: what an action left behind, or the worst state of the house. */
import { signal } from '@preact/signals';
import type { Refused } from './api.ts';

export interface Notice {
  kind: 'refused' | 'fault' | 'offline' | 'missed' | 'undone' | 'kept' | 'working' | 'loading';
  /** The first words, bold. */
  lead: string;
  text: string;
  /** The whole strip is the target. */
  action?: { label: string; run: () => void };
}

/** What the last action left behind; stays until the page is left or the next action. */
export const notice = signal<Notice | undefined>(undefined);

/** A key that has no form to stand in tells its refusal in the strip; `words` are what was asked. */
export function tellRefused({ reason, whatToDo }: Refused, words = '', lead = 'Not kept:'): void {
  notice.value = { kind: 'refused', lead, text: [words, reason, whatToDo].filter(Boolean).join(' ') };
}
