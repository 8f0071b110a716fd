/** One order and one spelling for a season, so that the same inputs are the same file and the same forecast. */
import type { OutdoorPoint, Reading, Season, Sensor } from '../model/index.ts';

/**
 * Sorts every list (by time, then id), writes reading times in UTC, drops repeated readings (the
 * first stays, as in the store) and names the sensors that only their readings mention.
 */
export function canonicalSeason(season: Season): Season {
  return withCanonicalRecords({ ...season, readings: canonicalReadings(season.readings) });
}

/** The same for a season whose readings are canonical already, as the store hands them out. */
export function withCanonicalRecords(season: Season): Season {
  const { readings } = season;
  return {
    ...season,
    plantings: sorted(season.plantings, idOf),
    sensors: sorted([...season.sensors, ...unnamedSensors(season.sensors, readings)], idOf),
    dailyExtremes: sorted(season.dailyExtremes, ({ day }) => day),
    traps: sorted(season.traps, idOf),
    trapCounts: byTime(season.trapCounts),
    leafChecks: byTime(season.leafChecks),
    sightings: byTime(season.sightings),
    releases: byTime(season.releases),
    orders: sorted(season.orders, (o) => timeKey(o.orderedAt) + o.id),
    treatments: byTime(season.treatments),
    outlook: sorted(season.outlook, ({ time }) => timeKey(time)),
    outdoor: canonicalOutdoor(season.outdoor),
  };
}

/** `2026-05-13T06:10:00Z`; parts of a second only where there are any. */
export function isoInstant(timeMs: number): string {
  const text = new Date(timeMs).toISOString();
  return timeMs % 1000 === 0 ? `${text.slice(0, -5)}Z` : text;
}

/** Works on numbers, because a season may hold hundreds of thousands of readings. */
function canonicalReadings(readings: readonly Reading[]): Reading[] {
  return readings
    .map((reading) => ({ reading, timeMs: Date.parse(reading.time) }))
    .sort((a, b) => a.timeMs - b.timeMs || compare(a.reading.sensorId, b.reading.sensorId))
    .filter(({ reading, timeMs }, index, all) => {
      const before = all[index - 1];
      return before?.timeMs !== timeMs || before.reading.sensorId !== reading.sensorId;
    })
    .map(({ reading, timeMs }) => ({ ...reading, time: isoInstant(timeMs) }));
}

/** By time, then issue; measured before forecast. The first of one instant and issue stays. */
function canonicalOutdoor(points: readonly OutdoorPoint[]): OutdoorPoint[] {
  const keyOf = ({ time, issuedAt }: OutdoorPoint) => timeKey(time) + (issuedAt ? timeKey(issuedAt) : '');
  return sorted(points, keyOf)
    .filter((point, index, all) => index === 0 || keyOf(all[index - 1]!) !== keyOf(point))
    .map(({ time, temperatureC, issuedAt }) => ({
      time: isoInstant(Date.parse(time)),
      temperatureC,
      ...(issuedAt !== undefined && { issuedAt: isoInstant(Date.parse(issuedAt)) }),
    }));
}

/** As on arrival over MQTT: a sensor nobody has described yet is called by its id. */
function unnamedSensors(sensors: readonly Sensor[], readings: readonly Reading[]): Sensor[] {
  const named = new Set(sensors.map(idOf));
  const unnamed = new Set(readings.map((r) => r.sensorId).filter((id) => !named.has(id)));
  return [...unnamed].map((id) => ({ id, name: id, unit: 'Cel' }));
}

function byTime<T extends { id: string; time: string }>(list: readonly T[]): T[] {
  return sorted(list, ({ id, time }) => `${timeKey(time)} ${id}`);
}

function sorted<T>(list: readonly T[], keyOf: (entry: T) => string): T[] {
  return list
    .map((entry) => ({ entry, key: keyOf(entry) }))
    .sort((a, b) => compare(a.key, b.key))
    .map(({ entry }) => entry);
}

/** The same instant has one key whatever its offset, and keys sort as time does. */
function timeKey(time: string): string {
  return String(Date.parse(time)).padStart(15, '0');
}

function idOf({ id }: { id: string }): string {
  return id;
}

function compare(a: string, b: string): number {
  if (a === b) return 0;
  return a < b ? -1 : 1;
}
