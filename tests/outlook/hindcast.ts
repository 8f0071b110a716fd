/**
 * The outlook as it would have been issued on each day of a log, against what came. Only readings up to that day
 * are handed over; the air outdoors ahead, where used, is what came, as a forecast without error would have it.
 */
import { temperatureOutlook } from '../../services/model/climate/outlook.ts';
import { type OutlookLaw, outlookLaw } from '../../services/model/climate/outlookLaw.ts';
import { temperatureCurve } from '../../services/model/climate/temperatureCurve.ts';
import { seeded } from '../../services/model/numerics/random.ts';
import { type OutdoorPoint, type Season, seasonSchema } from '../../services/model/season.ts';
import type { Log, LoggedHour } from './logs.ts';

const hourMs = 3_600_000;
const dayMs = 24 * hourMs;
export const longestLeadDays = 14;

/** One day ahead, said on one day. */
export interface Said {
  originMs: number;
  leadDays: number;
  /** What came, daily mean. */
  cameC: number;
  saidC: number;
  members: readonly number[];
  yesterdayC: number;
  lastWeekC: number;
  /** Days of readings behind. */
  daysBehind: number;
}

export interface HindcastOptions {
  law?: OutlookLaw;
  members?: number;
  /** Days of readings before the first outlook. */
  firstDay?: number;
  everyDays?: number;
  /** Hand over the air outdoors: past as measured, ahead as it came plus this error. */
  outdoors?: (leadDays: number, origin: number) => number;
  /** Forget readings older than this. */
  keepDays?: number;
}

const iso = (timeMs: number) => new Date(timeMs).toISOString();

export function hindcast(log: Log, options: HindcastOptions = {}): Said[] {
  const { law = outlookLaw, members = 99, firstDay = 7, everyDays = 1, keepDays = 400 } = options;
  const hours = new Map(log.hours.map((hour) => [hour.timeMs, hour]));
  const firstMs = Math.ceil(log.hours[0]!.timeMs / dayMs) * dayMs;
  const lastMs = log.hours.at(-1)!.timeMs;
  const inside = log.hours.filter((hour) => hour.insideC !== undefined);
  const all: Said[] = [];
  for (let originMs = firstMs + firstDay * dayMs; originMs < lastMs; originMs += everyDays * dayMs) {
    const dayMean = (startMs: number) => meanOfDay(hours, startMs);
    const behind = Array.from({ length: 7 }, (_, i) => dayMean(originMs - (i + 1) * dayMs)).filter(
      (value) => value !== undefined,
    );
    const yesterdayC = dayMean(originMs - dayMs);
    if (yesterdayC === undefined || behind.length < Math.min(4, firstDay)) continue;
    const readings = inside.filter(
      // The mean of an hour, at its middle.
      ({ timeMs }) => timeMs + hourMs / 2 <= originMs && timeMs >= originMs - keepDays * dayMs,
    );
    const season = seasonOf(
      log,
      readings,
      options.outdoors ? outdoorPoints(log, originMs, options.outdoors) : [],
    );
    const curve = temperatureCurve(season, originMs);
    const span = { fromMs: originMs, days: longestLeadDays, members, random: seeded(originMs / hourMs) };
    const outlook = temperatureOutlook(curve, season, span, law);
    const lastWeekC = behind.reduce((sum, value) => sum + value, 0) / behind.length;
    for (let day = 0; day < longestLeadDays; day += 1) {
      const cameC = dayMean(originMs + day * dayMs);
      if (cameC === undefined) continue;
      const ahead = outlook.hourlyC.subarray(24 * day, 24 * day + 24);
      const saidC = ahead.reduce((sum, value) => sum + value, 0) / 24;
      all.push({
        originMs,
        leadDays: day + 1,
        cameC,
        saidC,
        members: outlook.anomalyC.map((path) => saidC + path[day]!),
        yesterdayC,
        lastWeekC,
        daysBehind: readings.length / 24,
      });
    }
  }
  return all;
}

function meanOfDay(hours: ReadonlyMap<number, LoggedHour>, startMs: number): number | undefined {
  const values = Array.from({ length: 24 }, (_, h) => hours.get(startMs + h * hourMs)?.insideC).filter(
    (value) => value !== undefined,
  );
  return values.length < 22 ? undefined : values.reduce((sum, value) => sum + value, 0) / values.length;
}

function seasonOf(log: Log, readings: readonly LoggedHour[], outdoor: OutdoorPoint[]): Season {
  const place = {
    id: 'log',
    name: log.name,
    kind: log.kind,
    areaM2: 96,
    latitudeDeg: log.latitudeDeg,
    longitudeDeg: 0,
    timeZone: 'UTC',
    pests: [],
    limits: {},
    seasonEnd: '10-15',
  };
  const empty = seasonSchema.parse({ format: 'glasstide-season', version: 1, place });
  return {
    ...empty,
    readings: readings.map(({ timeMs, insideC }) => ({
      sensorId: 'log',
      time: iso(timeMs + hourMs / 2),
      temperatureC: insideC!,
    })),
    outdoor,
  };
}

function outdoorPoints(
  log: Log,
  originMs: number,
  error: (leadDays: number, origin: number) => number,
): OutdoorPoint[] {
  const endMs = originMs + 10 * dayMs;
  return log.hours.flatMap(({ timeMs, outsideC }) => {
    const middleMs = timeMs + hourMs / 2;
    if (outsideC === undefined || middleMs > endMs) return [];
    if (middleMs <= originMs) return [{ time: iso(middleMs), temperatureC: outsideC }];
    const leadDays = Math.ceil((middleMs - originMs) / dayMs);
    const temperatureC = outsideC + error(leadDays, originMs);
    return [{ time: iso(middleMs), temperatureC, issuedAt: iso(originMs) }];
  });
}
