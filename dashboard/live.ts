/** Live changes: one event stream, gathered for a moment so that a busy house does not flood the page. */
import { computed, effect, signal } from '@preact/signals';
import { letIn } from './access.ts';
import type { Outcome } from './api.ts';
import { sendOutbox } from './offline/outbox.ts';
import { health, offline, place, placePath, refresh, resource, shownAt } from './state.ts';

type What = 'reading' | 'record' | 'outcome' | 'quarantine' | 'warning';
const touched: Record<What, RegExp> = {
  reading: /\/(readings|temperature|arrivals)/,
  record: /\/api\/places(\/|$)/,
  outcome: /\/(outcome|warnings|issued)/,
  quarantine: /\/(quarantine|arrivals)/,
  warning: /\/warnings/,
};
const gatherMs = 1_000;

interface Issued {
  placeId: string;
  issuedAt: string;
}

/** The last entry that the sentence does not know yet: its place and the service's time of keeping it. */
const entry = signal<{ outcomePath: string; keptAt: string } | undefined>(undefined);

/** Call when an entry of the chosen place is kept. */
export function awaitOutcome(keptAt: string): void {
  entry.value = { outcomePath: placePath('outcome'), keptAt };
}

/** True from an entry until an outcome is there that was begun after it, or none can be worked out. */
export const working = computed(
  () => entry.value?.outcomePath === placePath('outcome') && health.value.data?.status !== 'unwell',
);

effect(() => {
  if (!place.value || entry.value?.outcomePath !== placePath('outcome')) return;
  const issuedAt = resource<Outcome>(entry.value.outcomePath).value.data?.issuedAt;
  if (issuedAt && Date.parse(issuedAt) >= Date.parse(entry.value.keptAt)) entry.value = undefined;
});

/** The stream opens once the house may be asked. */
export async function listen(): Promise<void> {
  await letIn;
  const waiting = new Set<What>();
  const flush = () => {
    for (const what of waiting) refresh(touched[what]);
    refresh(/\/api\/health/);
    waiting.clear();
  };
  const events = new EventSource('/api/events');
  events.addEventListener('change', (event) => {
    const { what } = JSON.parse((event as MessageEvent<string>).data) as { what: What };
    if (!(what in touched)) return;
    if (waiting.size === 0) setTimeout(flush, gatherMs);
    waiting.add(what);
  });
  // One may have been issued between the answer that is shown and this stream.
  events.addEventListener('issued', (event) => {
    const { placeId, issuedAt } = JSON.parse((event as MessageEvent<string>).data) as Issued;
    const shown = shownAt<Outcome | null>(`/api/places/${placeId}/outcome`);
    if (shown !== undefined && shown?.issuedAt !== issuedAt) refresh(touched.outcome);
  });
  events.addEventListener('open', () => {
    if (offline.value) refresh(/./);
    offline.value = false;
    void sendOutbox();
  });
  events.addEventListener('error', () => {
    offline.value = true;
  });
  addEventListener('online', () => void sendOutbox());
}
