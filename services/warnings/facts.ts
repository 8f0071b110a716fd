/** What the rules judge by, out of the store. */
import { addDays, knownPoints, type Place, startOfLocalDay } from '../model/index.ts';
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
    outdoorHighC: (day) => outdoorHighC(store, season.place, day, nowMs),
    lasts: (id) => lasting.has(id),
    nowMs,
  };
}

function outdoorHighC(store: Store, place: Place, day: string, nowMs: number): number | undefined {
  const fromMs = startOfLocalDay(day, place.timeZone);
  const toMs = startOfLocalDay(addDays(day, 1), place.timeZone);
  const points = store.outdoor
    .list(place.id)
    .filter(({ timeMs }) => timeMs >= fromMs && timeMs < toMs)
    .map(({ timeMs, issuedMs, temperatureC }) => ({
      time: new Date(timeMs).toISOString(),
      temperatureC,
      ...(issuedMs !== undefined && { issuedAt: new Date(issuedMs).toISOString() }),
    }));
  const known = knownPoints(points, nowMs).map(({ temperatureC }) => temperatureC);
  return known.length > 0 ? Math.max(...known) : undefined;
}
