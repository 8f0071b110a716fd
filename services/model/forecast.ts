/**
 * forecast(season, asOf, options) -> Forecast: everything known up to an instant, carried eight weeks ahead. The
 * same season, instant and seed give the same forecast bit for bit (docs/forecast.md).
 */
import { temperatureOutlook } from './climate/outlook.ts';
import { temperatureCurve } from './climate/temperatureCurve.ts';
import type { Courses } from './inference/courses.ts';
import { outdoorDoubts, pestDoubts, temperatureDoubts } from './inference/doubts.ts';
import type { Read } from './inference/ensemble.ts';
import { daysAhead, fitPest } from './inference/fitPest.ts';
import type { LeavesAhead } from './inference/leafTotals.ts';
import { fewMembers, type OverLimit } from './inference/overLimit.ts';
import { seasonPath, seasonStartMs, upTo } from './inference/seasonPath.ts';
import type { Ahead, WeekAhead } from './inference/summary.ts';
import { outlookDays, temperatureDays } from './inference/temperatureSummary.ts';
import { ledger } from './ledger.ts';
import type { WeightedSample } from './numerics/quantiles.ts';
import { seeded } from './numerics/random.ts';
import type { Forecast } from './outcome.ts';
import { type PestId, pestIds, type Release, type Season, type Treatment } from './season.ts';

export interface ForecastOptions {
  seed?: number;
  /** Members of the ensemble. */
  members?: number;
  /** An earlier fit of this season: where nothing known to it has changed, this one goes on from it and finds the same. */
  earlier?: Pick<Fit, 'read'>;
}

/** Releases and treatments on top of those made. */
export interface More {
  releases?: readonly Release[];
  treatments?: readonly Treatment[];
}

/** A forecast that can be asked "what if": the same members and temperature paths with one thing changed. */
export interface Fit {
  forecast: Forecast;
  /** The last days with counts of each pest, as they were read. */
  read: ReadonlyMap<PestId, readonly Read[]>;
  /** What the ranges of the weeks ahead are taken from, for scoring. */
  ahead(pest: PestId): readonly WeekAhead[];
  /** What leaf checks ahead would count in all, for scoring counts of every insect. */
  leafTotals(pest: PestId, checks: readonly LeavesAhead[]): readonly WeightedSample[];
  /** The pest with more done than was. */
  withMore(pest: PestId, more: More): Ahead;
  /** Weeks over the limit and damage in few possible seasons with more done: cheap enough for many plans. */
  overLimit(pest: PestId, more: More, members?: number): OverLimit;
  /** How few possible seasons went and may go on, had the releases of these ids not been made. */
  without(pest: PestId, releaseIds: readonly string[]): Courses;
}

const defaultMembers = 300;

/** The forecast of a season at an instant; data after it are not read. */
export function forecast(season: Season, asOf: string, options: ForecastOptions = {}): Forecast {
  return fitSeason(season, asOf, options).forecast;
}

/** The forecast, kept with its members for what-if questions. */
function fitSeason(whole: Season, asOf: string, options: ForecastOptions = {}): Fit {
  const { seed = 1, members = defaultMembers, earlier } = options;
  const asOfMs = Date.parse(asOf);
  const season = upTo(whole, asOfMs);
  const curve = temperatureCurve(season, asOfMs);
  const ahead = daysAhead(season.place, asOfMs);
  const outlook = temperatureOutlook(curve, season, {
    fromMs: asOfMs,
    days: ahead + 1,
    members,
    random: seeded(seed),
  });
  const startMs = seasonStartMs(season, asOfMs);
  const path = seasonPath(season, curve, outlook, {
    startMs,
    asOfMs,
    daysAhead: ahead,
    random: seeded(seed + 1),
  });
  const fits = season.place.pests.map((pest) =>
    fitPest(season, pest, {
      path,
      anomalyC: outlook.anomalyC,
      asOfMs,
      members,
      // By the pest itself: its forecast must not change when another pest is followed too.
      seed: seed + 101 * (pestIds.indexOf(pest) + 1),
      ...(earlier?.read.has(pest) ? { earlier: earlier.read.get(pest)! } : {}),
    }),
  );
  const fitOf = (pest: PestId) => {
    const found = fits.find((one) => one.forecast.pest === pest);
    if (!found)
      throw new RangeError(`${pest} is not among the pests of ${season.place.id}: add it to the place`);
    return found;
  };
  const readingTimes = season.readings.map((reading) => Date.parse(reading.time));
  const lastReadingMs = readingTimes.reduce<number | undefined>((a, b) => Math.max(a ?? b, b), undefined);
  return {
    forecast: {
      placeId: season.place.id,
      asOf: new Date(asOfMs).toISOString(),
      seed,
      members,
      temperature: {
        days: temperatureDays(curve, season.place.timeZone),
        outlook: outlookDays(outlook, season.place.timeZone),
      },
      ledger: ledger(season, curve, outlook, asOfMs),
      pests: fits.map((one) => one.forecast),
      doubts: [
        ...temperatureDoubts(curve, lastReadingMs, asOfMs),
        ...outdoorDoubts(season, asOfMs),
        ...fits.flatMap((one) => pestDoubts(one.shown, one.forecast, asOfMs)),
      ],
    },
    read: new Map(fits.map(({ forecast: { pest }, read }) => [pest, read])),
    ahead: (pest) => fitOf(pest).ahead,
    leafTotals: (pest, checks) => fitOf(pest).leafTotals(checks, seeded(seed + 2)),
    withMore: (pest, { releases = [], treatments = [] }) =>
      fitOf(pest).again([...season.releases, ...releases], [...season.treatments, ...treatments]),
    overLimit: (pest, { releases = [], treatments = [] }, few = fewMembers) =>
      fitOf(pest).overLimit([...season.releases, ...releases], [...season.treatments, ...treatments], few),
    without: (pest, releaseIds) =>
      fitOf(pest).courses(season.releases.filter(({ id }) => !releaseIds.includes(id))),
  };
}

export { fitSeason as fit };
