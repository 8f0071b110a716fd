/** One pest of a season: its world, its counts, its members, its forecast. */
import type { Random } from '../numerics/random.ts';
import { middleOf, type Shown, shownOf } from '../observation/counts.ts';
import type { PestForecast } from '../outcome.ts';
import { createWorld, type World, withInterventions } from '../population/world.ts';
import type { PestId, Place, Release, Season, Treatment } from '../season.ts';
import { pestTraits, speciesById } from '../species/catalogue.ts';
import { dayMs } from '../units.ts';
import { drawChances, drawPersistence, type Persistence } from './chances.ts';
import { sampleEnsemble } from './ensemble.ts';
import { countDays, type Problem } from './member.ts';
import { layoutOf } from './prior.ts';
import { type SeasonPath, seasonEndMs } from './seasonPath.ts';
import { type Summary, summarise, weeksAhead } from './summary.ts';
import { lastCountSurprise } from './surprise.ts';

/** Catch a trap and week that is still fine, where the person set none: judgement. */
const defaultLimit = 10;
/** How far ahead "passes your limit" looks. */
export const limitWeeksAhead = 10;

export interface PestFit {
  forecast: PestForecast;
  shown: Shown;
  /** The same members with other releases and treatments. */
  again(releases: readonly Release[], treatments: readonly Treatment[]): PestForecast;
}

export interface Setting {
  path: SeasonPath;
  anomalyC: readonly Float64Array[];
  asOfMs: number;
  members: number;
  random: Random;
}

/** Fits one pest of the season to its counts. */
export function fitPest(season: Season, pest: PestId, setting: Setting): PestFit {
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
  const caught = windows.reduce((sum, w) => sum + middleOf(w), 0);
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
