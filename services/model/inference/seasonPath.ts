/** The temperature of a whole season hour by hour: as measured up to now, as expected from now on. */
import { addDays, localDay, startOfLocalDay } from '../climate/calendar.ts';
import { dayLengthHours, dayOfYear } from '../climate/dayLength.ts';
import { dailyDeficitKPa } from '../climate/dryAir.ts';
import { type TemperatureOutlook, temperatureOutlook } from '../climate/outlook.ts';
import { hourlyMeans, type TemperatureCurve } from '../climate/temperatureCurve.ts';
import { finite } from '../numerics/finite.ts';
import type { Random } from '../numerics/random.ts';
import type { HourlyPath } from '../population/dayTables.ts';
import type { Place, Season } from '../season.ts';
import { dayMs, hourMs } from '../units.ts';

export interface SeasonPath extends HourlyPath {
  startMs: number;
  /** Days from the start to now, with a fraction. */
  today: number;
}

/** Only what was known at an instant; what happened later to a trap or an order is taken off it. */
export function upTo(season: Season, asOfMs: number): Season {
  const known = <T extends { time: string }>(records: readonly T[]): T[] =>
    records.filter((record) => Date.parse(record.time) <= asOfMs);
  const isKnown = (time: string | undefined): time is string =>
    time !== undefined && Date.parse(time) <= asOfMs;
  const today = localDay(asOfMs, season.place.timeZone);
  return {
    ...season,
    readings: known(season.readings),
    traps: season.traps
      .filter((trap) => isKnown(trap.hungAt))
      .map(({ takenDownAt, ...trap }) => (isKnown(takenDownAt) ? { ...trap, takenDownAt } : trap)),
    trapCounts: known(season.trapCounts),
    leafChecks: known(season.leafChecks),
    sightings: known(season.sightings),
    releases: known(season.releases),
    treatments: known(season.treatments),
    orders: season.orders
      .filter((order) => isKnown(order.orderedAt))
      .map(({ arrivedAt, ...order }) => (isKnown(arrivedAt) ? { ...order, arrivedAt } : order)),
    dailyExtremes: season.dailyExtremes.filter((extremes) => extremes.day < today),
    outdoor: season.outdoor.filter(({ time, issuedAt }) => isKnown(issuedAt ?? time)),
  };
}

/** A forecast that starts anew each year begins with the counts of at least so many days. */
const leastBackDays = 28;

/**
 * Local midnight before the first record; once that is more than a year ago, its last anniversary at least four weeks
 * back, so that the fits of a year go on from one another and the pest is again expected to come when it was first.
 */
export function seasonStartMs(season: Season, asOfMs: number): number {
  const { timeZone } = season.place;
  const records = [season.readings, season.trapCounts, season.leafChecks, season.releases, season.treatments];
  let firstMs = asOfMs;
  for (const times of records) for (const { time } of times) firstMs = Math.min(firstMs, Date.parse(time));
  for (const { day } of season.dailyExtremes) firstMs = Math.min(firstMs, startOfLocalDay(day, timeZone));
  for (const { hungAt } of season.traps) firstMs = Math.min(firstMs, Date.parse(hungAt));
  const first = localDay(firstMs, timeZone);
  const latest = localDay(asOfMs - leastBackDays * dayMs, timeZone);
  return startOfLocalDay(asOfMs - firstMs <= 366 * dayMs ? first : anniversary(first, latest), timeZone);
}

/** The last day of the same date up to `latest`; 28 February stands for the 29th. */
function anniversary(first: string, latest: string): string {
  const date = first.slice(4) === '-02-29' ? '-02-28' : first.slice(4);
  const year = Number(latest.slice(0, 4));
  return `${year}${date}` <= latest ? `${year}${date}` : `${year - 1}${date}`;
}

/** Hourly means over whole days from the start to `daysAhead` full days after today. */
export function seasonPath(
  season: Season,
  curve: TemperatureCurve | undefined,
  outlook: TemperatureOutlook,
  span: { startMs: number; asOfMs: number; daysAhead: number; random: Random },
): SeasonPath {
  const { startMs, asOfMs, daysAhead, random } = span;
  const today = (asOfMs - startMs) / dayMs;
  const hours = (Math.floor(today) + 1 + daysAhead) * 24;
  const measured = curve ? hourlyMeans(curve) : undefined;
  const daysBefore = Math.ceil(((measured?.startMs ?? asOfMs) - startMs) / dayMs);
  const before =
    daysBefore > 0
      ? temperatureOutlook(undefined, season, { fromMs: startMs, days: daysBefore, members: 1, random })
      : undefined;
  const hourlyC = Float64Array.from({ length: hours }, (_, hour) => {
    const middleMs = startMs + (hour + 0.5) * hourMs;
    const source =
      middleMs >= asOfMs
        ? { startMs: outlook.startMs, meanC: outlook.hourlyC }
        : measured && middleMs >= measured.startMs
          ? measured
          : { startMs, meanC: before?.hourlyC ?? outlook.hourlyC };
    const at = Math.floor((middleMs - source.startMs) / hourMs);
    return finite(source.meanC[Math.min(at, source.meanC.length - 1)]!, 'hourly temperature');
  });
  const daylight = Uint8Array.from({ length: hours }, (_, hour) =>
    isDaylight(startMs + (hour + 0.5) * hourMs, season.place) ? 1 : 0,
  );
  const days = hours / 24;
  return {
    startMs,
    today,
    hourlyC,
    daylight,
    dayLengthH: Float64Array.from({ length: days }, (_, day) =>
      dayLengthHours({
        latitudeDeg: season.place.latitudeDeg,
        dayOfYear: dayOfYear(startMs + (day + 0.5) * dayMs),
      }),
    ),
    longestDayH: longestDayHours(season.place),
    deficitKPa: dailyDeficitKPa(season.readings, { startMs, asOfMs, days }),
  };
}

/** At the summer solstice of its half of the earth. */
const longestDayHours = ({ latitudeDeg }: Place): number =>
  dayLengthHours({ latitudeDeg, dayOfYear: latitudeDeg >= 0 ? 172 : 355 });

/** Within half a day length of mean solar noon. */
function isDaylight(timeMs: number, place: Place): boolean {
  const solarHour = (timeMs / hourMs + place.longitudeDeg / 15) % 24;
  const fromNoon = Math.abs(((solarHour + 24) % 24) - 12);
  return fromNoon < dayLengthHours({ latitudeDeg: place.latitudeDeg, dayOfYear: dayOfYear(timeMs) }) / 2;
}

/** Last instant of the growing season that is still ahead. */
export function seasonEndMs(place: Place, asOfMs: number): number {
  const today = localDay(asOfMs, place.timeZone);
  const year = Number(today.slice(0, 4));
  const end = `${year}-${place.seasonEnd}` >= today ? year : year + 1;
  return startOfLocalDay(addDays(`${end}-${place.seasonEnd}`, 1), place.timeZone);
}
