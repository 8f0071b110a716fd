/** Live changes: one event stream, gathered for a moment so that a busy house does not flood the page. */
import { signal } from '@preact/signals';
import { sendOutbox } from './outbox.ts';
import { offline, refresh } from './state.ts';

type What = 'reading' | 'record' | 'outcome' | 'quarantine' | 'warning';
const touched: Record<What, RegExp> = {
  reading: /\/(readings|temperature|arrivals)/,
  record: /\/api\/places(\/|$)/,
  outcome: /\/(outcome|warnings|issued)/,
  quarantine: /\/(quarantine|arrivals)/,
  warning: /\/warnings/,
};
const gatherMs = 1_000;

/** True from an entry until the new outcome is there. */
export const working = signal(false);

export function listen(): void {
  const waiting = new Set<What>();
  const flush = () => {
    for (const what of waiting) refresh(touched[what]);
    if (waiting.has('outcome')) working.value = false;
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
