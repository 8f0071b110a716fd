/**
 * forecast(season, asOf, options) -> Forecast: everything known up to an instant, carried eight weeks ahead. The
 * same season, instant and seed give the same forecast bit for bit (docs/forecast.md).
 */
import { temperatureOutlook } from './climate/outlook.ts';
import { temperatureCurve } from './climate/temperatureCurve.ts';
import { pestDoubts, temperatureDoubts } from './inference/doubts.ts';
import { sampleEnsemble } from './inference/ensemble.ts';
import { countDays, type Problem } from './inference/member.ts';
import { layoutOf } from './inference/prior.ts';
import { type SeasonPath, seasonEndMs, seasonPath, seasonStartMs, upTo } from './inference/seasonPath.ts';
import {
  drawChances,
  drawPersistence,
  type Persistence,
  type Summary,
  summarise,
  weeksAhead,
} from './inference/summary.ts';
import { lastCountSurprise } from './inference/surprise.ts';
import { outlookDays, temperatureDays } from './inference/temperatureSummary.ts';
import { ledger } from './ledger.ts';
import { type Random, seeded } from './numerics/random.ts';
import { type Shown, shownOf } from './observation/counts.ts';
import type { Forecast, PestForecast } from './outcome.ts';
import { createWorld, type World, withInterventions } from './population/world.ts';
import type { PestId, Place, Release, Season, Treatment } from './season.ts';
import { pestTraits, speciesById } from './species/catalogue.ts';
import { dayMs } from './units.ts';

export interface ForecastOptions {
  seed?: number;
  /** Members of the ensemble. */
  members?: number;
}

/** A forecast that can be asked "what if": the same members and temperature paths with one thing changed. */
export interface Fit {
  forecast: Forecast;
  /** The pest with these releases on top of those made. */
  withReleases(pest: PestId, releases: readonly Release[]): PestForecast;
  /** The pest with this treatment on top of those made. */
  withTreatment(pest: PestId, treatment: Treatment): PestForecast;
}

const defaultMembers = 300;
/** Catch a trap and week that is still fine, where the person set none: judgement. */
const defaultLimit = 10;
const limitWeeksAhead = 10;

/** The forecast of a season at an instant; data after it are not read. */
export function forecast(season: Season, asOf: string, options: ForecastOptions = {}): Forecast {
  return fitSeason(season, asOf, options).forecast;
}

/** The forecast, kept with its members for what-if questions. */
function fitSeason(whole: Season, asOf: string, options: ForecastOptions = {}): Fit {
  const { seed = 1, members = defaultMembers } = options;
  const asOfMs = Date.parse(asOf);
  const season = upTo(whole, asOfMs);
  const curve = temperatureCurve(season, asOfMs);
  const daysAhead = 7 * limitWeeksAhead + 1;
  const outlook = temperatureOutlook(curve, season, {
    fromMs: asOfMs,
    days: daysAhead + 1,
    members,
    random: seeded(seed),
  });
  const startMs = seasonStartMs(season, asOfMs);
  const path = seasonPath(season, curve, outlook, { startMs, asOfMs, daysAhead, random: seeded(seed + 1) });
  const fits = season.place.pests.map((pest, i) =>
    fitPest(season, pest, {
      path,
      anomalyC: outlook.anomalyC,
      asOfMs,
      members,
      random: seeded(seed + 101 * (i + 1)),
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
        ...fits.flatMap((one) => pestDoubts(one.shown, one.forecast, asOfMs)),
      ],
    },
    withReleases: (pest, releases) => fitOf(pest).again([...season.releases, ...releases], season.treatments),
    withTreatment: (pest, treatment) => fitOf(pest).again(season.releases, [...season.treatments, treatment]),
  };
}

export { fitSeason as fit };

interface PestFit {
  forecast: PestForecast;
  shown: Shown;
  /** The same members with other releases and treatments. */
  again(releases: readonly Release[], treatments: readonly Treatment[]): PestForecast;
}

interface Setting {
  path: SeasonPath;
  anomalyC: readonly Float64Array[];
  asOfMs: number;
  members: number;
  random: Random;
}

function fitPest(season: Season, pest: PestId, setting: Setting): PestFit {
  const { path, anomalyC, asOfMs, members, random } = setting;
  const { startMs, today } = path;
  const { place, releases, treatments } = season;
  const world = createWorld({ pestId: pest, startMs, areaM2: place.areaM2, path, releases, treatments });
  const shown = shownOf(season, pest, startMs);
  const layout = layoutOf(world, Math.max(1, shown.trapIds.length));
  const weeksPast = Math.floor(today / 7);
  const problem: Problem = {
    world,
    layout,
    shown,
    hostFactor: hostFactor(season, pest),
    anomalyFromDay: Math.floor(today) + 1,
    anomalyC,
    wanted: wantedDays(world, shown, today, weeksPast),
  };
  const ensemble = sampleEnsemble(problem, members, random);
  const chances = drawChances(problem, ensemble, weeksPast + weeksAhead, random);
  const summary: Summary = {
    problem,
    ensemble,
    startMs,
    today,
    lastDay: Math.min(today + 7 * limitWeeksAhead, (seasonEndMs(place, asOfMs) - startMs) / dayMs),
    weeksPast,
    limitPerTrapWeek: limitOf(place, pest),
    chances,
    persistence: persistenceOf(pest, shown, today, random),
  };
  const surprise = lastCountSurprise(ensemble, shown, layout);
  const withSurprise = (one: PestForecast): PestForecast =>
    surprise === undefined ? one : { ...one, lastCountSurprise: surprise };
  return {
    forecast: withSurprise(summarise(summary, world)),
    shown,
    again: (otherReleases, otherTreatments) =>
      withSurprise(summarise(summary, withInterventions(world, otherReleases, otherTreatments))),
  };
}

/** Days on which young are added up: leaf checks, and the ends of the weeks drawn. */
function wantedDays(world: World, shown: Shown, today: number, weeksPast: number): Uint8Array {
  const wanted = new Uint8Array(world.days);
  for (const look of shown.leaves) wanted[Math.max(0, Math.floor(look.day))] = 1;
  for (let week = -weeksPast; week <= weeksAhead; week++) wanted[Math.floor(today + 7 * week)] = 1;
  return wanted;
}

/** "As last time": catch per trap and week of the last day with counts, when it is no older than three weeks. */
function persistenceOf(pest: PestId, shown: Shown, today: number, random: Random): Persistence {
  const last = countDays({ ...shown, leaves: [] }).at(-1);
  if (!last || today - last.day > 21) return drawPersistence(0, 0, random);
  const windows = last.traps.map((i) => shown.traps[i]!);
  const caught = windows.reduce((sum, w) => sum + (w.low + Math.min(w.high, 2 * w.low + 10)) / 2, 0);
  const weeks = windows.reduce((sum, w) => sum + ((w.toDay - w.fromDay) * w.countedFraction) / 7, 0);
  return drawPersistence(pest === 'trialeurodes-vaporariorum' ? 0.1 : 0.3, caught / weeks, random);
}

function limitOf(place: Place, pest: PestId): number {
  return place.limits[pest] ?? defaultLimit;
}

/** How well the plants in the house suit the pest, by number of plants; 1 where nothing is known. */
function hostFactor(season: Season, pest: PestId): number {
  const known = pestTraits(speciesById(pest)).hostFactor;
  const factorOf = (crop: string) => {
    const words = crop.toLowerCase();
    return Object.entries(known).find(([word]) => words.includes(word))?.[1] ?? 1;
  };
  const plants = season.plantings.reduce((sum, planting) => sum + planting.plants, 0);
  if (plants === 0) return 1;
  return season.plantings.reduce(
    (sum, planting) => sum + (factorOf(planting.crop) * planting.plants) / plants,
    0,
  );
}
