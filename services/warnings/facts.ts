/** What the rules judge by, out of the store. */
import type { Season } from '../model/index.ts';
import type { RecordKind, Store } from '../store/store.ts';
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

/** Everything entered in a place; readings are left out, for the rules ask the forecast about the temperature. */
export function enteredSeason(store: Store, placeId: string): Season | undefined {
  const place = store.records.get('place', placeId, placeId)?.data;
  if (place === undefined) return undefined;
  const all = <K extends RecordKind>(kind: K) => store.records.list(kind, placeId).map((r) => r.data);
  return {
    format: 'glasstide-season',
    version: 1,
    place,
    plantings: all('planting'),
    sensors: all('sensor'),
    readings: [],
    dailyExtremes: all('dailyExtremes'),
    traps: all('trap'),
    trapCounts: all('trapCount'),
    leafChecks: all('leafCheck'),
    sightings: all('sighting'),
    releases: all('release'),
    orders: all('order'),
    treatments: all('treatment'),
    outlook: [],
    outdoor: [],
  };
}
