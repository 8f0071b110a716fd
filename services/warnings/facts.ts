/** What the rules judge by, out of the store. */
import { enteredSeason, type Store } from '../store/store.ts';
import { dayMs, type WarningFacts } from './rules/rule.ts';

/** Undefined for a place that is gone or has no forecast yet. */
export async function factsOf(
  store: Store,
  placeId: string,
  nowMs: number,
): Promise<WarningFacts | undefined> {
  const season = enteredSeason(store, placeId);
  const issued = store.issued.latest(placeId);
  if (season === undefined || issued === undefined) return undefined;
  const lasting = new Set(
    store.warnings
      .list(placeId)
      .filter(({ state }) => state === 'open' || state === 'put-off')
      .map(({ id }) => id),
  );
  return {
    season,
    issued,
    latest: await store.readings.latest(placeId),
    lastDay: await store.readings.range(placeId, { fromMs: nowMs - dayMs, toMs: nowMs }),
    lasts: (id) => lasting.has(id),
    nowMs,
  };
}
