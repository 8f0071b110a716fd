/** A season out of the store and into it: what a forecast is computed from, and what a person takes away. */
import { findDoubts, type OutdoorPoint, type Reading, type Season } from '../model/index.ts';
import { RefusalError } from '../refusals.ts';
import {
  byFile,
  enteredSeason,
  type RecordData,
  type RecordKind,
  type Store,
  type StoredOutdoorPoint,
  type StoredReading,
} from '../store/store.ts';
import { canonicalSeason, isoInstant, withCanonicalRecords } from './canonicalSeason.ts';
import { neededReadings } from './neededReadings.ts';
import { stretches } from './stretches.ts';

/** Large files are written in parts, so that live readings are stored in between. */
const readingsAtOnce = 5000;

type Entry = { [K in RecordKind]: { kind: K; id: string; data: RecordData[K] } }[RecordKind];

/**
 * What a forecast is computed from: everything entered in a place, and of its readings up to and including `asOfMs`
 * those it needs, in canonical order.
 * @throws RefusalError `record-unknown`
 */
export async function assembleSeason(store: Store, placeId: string, asOfMs: number): Promise<Season> {
  const season = seasonWithout(store, placeId);
  const readings: Reading[] = [];
  for await (const some of neededReadings(store.readings, placeId, asOfMs)) {
    for (const reading of some) readings.push(readingOf(reading));
  }
  return withCanonicalRecords({ ...season, readings });
}

/** Everything entered, without readings. @throws RefusalError `record-unknown` */
export function seasonWithout(store: Store, placeId: string): Season {
  const entered = enteredSeason(store, placeId);
  if (!entered) {
    throw new RefusalError({ code: 'record-unknown', reason: `There is no place ${placeId}.` });
  }
  return {
    ...entered,
    outlook: store.records.get('outlook', placeId, 'given')?.data ?? [],
    outdoor: store.outdoor.list(placeId).map(outdoorOf),
  };
}

/**
 * The text of the season file with all readings, piece by piece, without ever holding them.
 * @throws RefusalError `record-unknown`, before the first piece
 */
export async function* seasonText(store: Store, placeId: string): AsyncGenerator<string> {
  const season = seasonWithout(store, placeId);
  // Sensors that only their readings mention are named too.
  const mentioned = (await store.readings.latest(placeId)).map(readingOf);
  const named = { ...withCanonicalRecords({ ...season, readings: mentioned }), readings: [] };
  let before = '{';
  for (const [name, value] of Object.entries(named)) {
    yield `${before}${JSON.stringify(name)}:`;
    before = ',';
    if (name === 'readings') yield* readingsText(store, placeId);
    else yield JSON.stringify(value);
  }
  yield '}';
}

async function* readingsText(store: Store, placeId: string): AsyncGenerator<string> {
  let before = '[';
  for await (const some of stretches(store.readings, placeId)) {
    yield before + some.map((reading) => JSON.stringify(readingOf(reading))).join(',');
    before = ',';
  }
  yield before === '[' ? '[]' : ']';
}

/** Without its doubt, which the model finds again. */
export function readingOf({ sensorId, timeMs, temperatureC, humidityPct }: StoredReading): Reading {
  const time = isoInstant(timeMs);
  return humidityPct === undefined
    ? { sensorId, time, temperatureC }
    : { sensorId, time, temperatureC, humidityPct };
}

function outdoorOf({ timeMs, temperatureC, issuedMs }: StoredOutdoorPoint): OutdoorPoint {
  const time = isoInstant(timeMs);
  return issuedMs === undefined
    ? { time, temperatureC }
    : { time, temperatureC, issuedAt: isoInstant(issuedMs) };
}

/**
 * Stores a validated season under its own ids, instead of whatever the place held; earlier versions
 * of its records stay in their history. An import that was cut short can simply be repeated; the
 * place is written last, so that a new one is not seen before it is whole.
 * @throws RefusalError `place-exists` unless `replace`; `record-invalid` for an id used twice
 */
export async function importSeason(
  store: Store,
  season: Season,
  { replace, atMs }: { replace: boolean; atMs: number },
): Promise<void> {
  const { place, ...inputs } = canonicalSeason(season);
  const placeId = place.id;
  const entries = entriesOf(inputs);
  refuseRepeatedIds(entries);
  if (!replace && store.records.get('place', placeId, placeId)) throw placeExists(placeId);
  removeOthers(store, placeId, entries, atMs);
  await store.readings.clear(placeId);
  store.outdoor.clear(placeId);
  store.outdoor.add(placeId, inputs.outdoor.map(storedOutdoor));
  for (const entry of entries) putIfNew(store, placeId, entry, atMs);
  const readings = storedReadings({ place, ...inputs });
  for (let start = 0; start < readings.length; start += readingsAtOnce) {
    await store.readings.add(placeId, readings.slice(start, start + readingsAtOnce));
  }
  putIfNew(store, placeId, { kind: 'place', id: placeId, data: place }, atMs);
}

const recordKinds: readonly Exclude<RecordKind, 'place'>[] = [
  'planting',
  'sensor',
  'dailyExtremes',
  'trap',
  'trapCount',
  'leafCheck',
  'sighting',
  'release',
  'order',
  'treatment',
  'outlook',
];

function entriesOf(season: Omit<Season, 'place'>): Entry[] {
  const named = <K extends RecordKind, T extends { id: string }>(kind: K, list: readonly T[]) =>
    list.map((data) => ({ kind, id: data.id, data }));
  return [
    ...named('planting', season.plantings),
    ...named('sensor', season.sensors),
    ...season.dailyExtremes.map((data) => ({ kind: 'dailyExtremes' as const, id: data.day, data })),
    ...named('trap', season.traps),
    ...named('trapCount', season.trapCounts),
    ...named('leafCheck', season.leafChecks),
    ...named('sighting', season.sightings),
    ...named('release', season.releases),
    ...named('order', season.orders),
    ...named('treatment', season.treatments),
    ...(season.outlook.length > 0 ? [{ kind: 'outlook' as const, id: 'given', data: season.outlook }] : []),
  ];
}

function storedOutdoor({ time, temperatureC, issuedAt }: OutdoorPoint): StoredOutdoorPoint {
  const point = { timeMs: Date.parse(time), temperatureC };
  return issuedAt === undefined ? point : { ...point, issuedMs: Date.parse(issuedAt) };
}

function storedReadings(season: Season): StoredReading[] {
  const readings = season.readings.map(({ time, sensorId, temperatureC, humidityPct }) => ({
    sensorId,
    timeMs: Date.parse(time),
    temperatureC,
    ...(humidityPct !== undefined && { humidityPct }),
  }));
  const doubts = new Map(findDoubts(readings, season.place).map((d) => [keyOf(d), d.doubt]));
  return readings.map((reading) => {
    const doubt = doubts.get(keyOf(reading));
    return doubt === undefined ? reading : { ...reading, doubt };
  });
}

function removeOthers(store: Store, placeId: string, entries: readonly Entry[], atMs: number): void {
  const kept = new Set(entries.map(({ kind, id }) => `${kind} ${id}`));
  for (const kind of recordKinds) {
    for (const { id } of store.records.list(kind, placeId)) {
      if (!kept.has(`${kind} ${id}`)) store.records.remove({ kind, placeId, id, atMs, madeBy: byFile });
    }
  }
}

function putIfNew(store: Store, placeId: string, entry: Entry, atMs: number): void {
  const present = store.records.get(entry.kind, placeId, entry.id)?.data;
  if (JSON.stringify(present) === JSON.stringify(entry.data)) return;
  store.records.put({ ...entry, placeId, atMs, madeBy: byFile });
}

function refuseRepeatedIds(entries: readonly Entry[]): void {
  const seen = new Set<string>();
  for (const { kind, id } of entries) {
    const key = `${kind} ${id}`;
    if (seen.has(key)) throw repeatedId(kind, id);
    seen.add(key);
  }
}

function repeatedId(kind: RecordKind, id: string): RefusalError {
  return new RefusalError({
    code: 'record-invalid',
    reason: `The file holds two ${kind} entries called ${id}. Nothing was imported.`,
    issues: [{ path: kind, expected: 'give each entry of a list its own id or day', received: id }],
  });
}

function placeExists(placeId: string): RefusalError {
  return new RefusalError({
    code: 'place-exists',
    reason: `There is a place ${placeId} already. Nothing was imported.`,
    issues: [{ path: 'place.id', expected: 'send an id that is free, or replace', received: placeId }],
  });
}

function keyOf({ sensorId, timeMs }: { sensorId: string; timeMs: number }): string {
  return `${sensorId} ${timeMs}`;
}
