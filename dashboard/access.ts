/** Who this browser is to the house. Nothing else is asked before that is known. */
import { computed, signal } from '@preact/signals';
import { get, whenLocked } from './api.ts';

export interface AccessState {
  /** Whether the house has a passphrase; until then everybody on its machine is the owner. */
  passphrase: boolean;
  you: 'nobody' | 'reader' | 'helper' | 'owner';
  name?: string;
}

export const access = signal<AccessState | undefined>(undefined);

/** False only of those the house knows as another: without signal nobody is kept from what may be theirs. */
export const isOwner = computed(() => (access.value?.you ?? 'owner') === 'owner');

/** Asks again, after something changed. */
export async function learnAccess(): Promise<void> {
  const answer = await get<AccessState>('/api/access');
  if (answer.ok) access.value = answer.data;
}

/** Resolves when the house may be asked; never while it is locked to this browser. Without signal all may go on. */
export const letIn: Promise<void> = learnAccess().then(() =>
  access.value?.you === 'nobody' ? new Promise(() => {}) : undefined,
);

whenLocked(() => {
  access.value = { passphrase: true, you: 'nobody' };
});

/** After a sign-in everything begins anew, in the address the reader was at. */
export function beginAnew(): void {
  location.replace(location.pathname);
}
