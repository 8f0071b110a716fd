/** Warnings: raised once, kept while their reason lasts, withdrawn when it is gone. */
import type { Store, Warning } from '../store/store.ts';
import { countDue } from './rules/countDue.ts';
import { orderBy } from './rules/orderBy.ts';
import { releaseToday } from './rules/releaseToday.ts';
import type { WarningRule } from './rules/rule.ts';
import { sensorSilent } from './rules/sensorSilent.ts';

export const warningRules: readonly WarningRule[] = [orderBy, releaseToday, countDue, sensorSilent];

/**
 * Compares what the rules say now with the warnings kept: raises new ones, withdraws those whose
 * reason is gone, wakes those whose time of putting off is over. Answers the open ones, nearest first.
 */
export async function updateWarnings(store: Store, placeId: string, nowMs: number): Promise<Warning[]> {
  const place = store.records.get('place', placeId, placeId);
  const issued = store.issued.latest(placeId);
  if (!place || place.deleted || !issued) return [];
  const facts = {
    place: place.data,
    issued,
    sensors: store.records.list('sensor', placeId).map((s) => ({ id: s.id, name: s.data.name })),
    latest: await store.readings.latest(placeId),
    nowMs,
  };
  const raised = warningRules.flatMap((rule) =>
    rule.raise(facts).map((warning) => ({ rule: rule.id, reason: '', ends: '', ...warning })),
  );
  for (const warning of raised) {
    const known = store.warnings.get(placeId, warning.id);
    if (known === undefined || known.state === 'withdrawn') {
      store.warnings.save({ ...warning, placeId, raisedAtMs: nowMs, state: 'open' });
    } else if (known.state === 'put-off' && (known.putOffUntilMs ?? 0) <= nowMs) {
      store.warnings.save({ ...known, state: 'open' });
    } else if (known.state === 'open' && known.text !== warning.text) {
      store.warnings.save({ ...known, text: warning.text, deadlineMs: warning.deadlineMs });
    }
  }
  const current = new Set(raised.map((warning) => warning.id));
  for (const known of store.warnings.list(placeId)) {
    const lasting = known.state === 'open' || known.state === 'put-off';
    if (lasting && !current.has(known.id)) store.warnings.save({ ...known, state: 'withdrawn' });
  }
  return store.warnings.list(placeId).filter((warning) => warning.state === 'open');
}
