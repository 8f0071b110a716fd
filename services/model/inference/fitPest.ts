/** One pest of a season: its world, its counts, its members, its forecast. */
import type { WeightedSample } from '../numerics/quantiles.ts';
import { type Random, seeded } from '../numerics/random.ts';
import { antDays } from '../observation/ants.ts';
import { cardsHanging } from '../observation/cards.ts';
import { infestedOf, middleOf, type Shown, shownOf } from '../observation/counts.ts';
import type { CountedAs, PestForecast } from '../outcome.ts';
import { createWorld, type World, withInterventions } from '../population/world.ts';
import {
  isCountedOnLeaves,
  type PestId,
  type Place,
  type Release,
  type Season,
  type Treatment,
  usualLimits,
} from '../season.ts';
import { pestTraits, speciesById } from '../species/catalogue.ts';
import { leafKindOf, seenAs } from '../species/signs.ts';
import { dayMs } from '../units.ts';
import { drawChances, drawPersistence, insuranceWeight, type Persistence } from './chances.ts';
import { type Courses, courses } from './courses.ts';
import { type Read, sampleEnsemble } from './ensemble.ts';
import { friendsInDoubt } from './friendsInDoubt.ts';
import { type LeavesAhead, leafTotals } from './leafTotals.ts';
import { countDays, coursesFrom, type Problem } from './member.ts';
import { type OverLimit, overLimit } from './overLimit.ts';
import { layoutOf } from './prior.ts';
import { type SeasonPath, seasonEndMs } from './seasonPath.ts';
import { type Ahead, lookAhead, type Summary, summarise, type WeekAhead, weeksAhead } from './summary.ts';
import { lastCountSurprise } from './surprise.ts';

/** How far ahead "passes your limit" looks. */
export const limitWeeksAhead = 10;
/** Ways are weighed to the end of the season, or so far. */
const mostWeeksWeighed = 30;

/** Whole days ahead that a fit looks at. */
export const daysAhead = (place: Place, asOfMs: number): number =>
  Math.max(7 * limitWeeksAhead, Math.floor(weighedDays(place, asOfMs))) + 1;

const weighedDays = (place: Place, asOfMs: number): number =>
  Math.min(7 * mostWeeksWeighed, (seasonEndMs(place, asOfMs) - asOfMs) / dayMs);

export interface PestFit {
  forecast: PestForecast;
  /** What the forecast's ranges are taken from, by week ahead. */
  ahead: readonly WeekAhead[];
  shown: Shown;
  /** Where a later fit goes on. */
  read: readonly Read[];
  /** What leaf checks ahead would count in all. */
  leafTotals(checks: readonly LeavesAhead[], random: Random): WeightedSample[];
  /** The same members with other releases and treatments. */
  again(releases: readonly Release[], treatments: readonly Treatment[]): Ahead;
  /** Few of them, week by week against the limit. */
  overLimit(releases: readonly Release[], treatments: readonly Treatment[], members: number): OverLimit;
  /** Few of them, week by week from the first count on, had only these releases been made. */
  courses(releases: readonly Release[]): Courses;
}

export interface Setting {
  path: SeasonPath;
  anomalyC: readonly Float64Array[];
  asOfMs: number;
  members: number;
  seed: number;
  /** Days that an earlier fit of this pest has read. */
  earlier?: readonly Read[];
}

/** Fits one pest of the season to its counts. */
export function fitPest(season: Season, pest: PestId, setting: Setting): PestFit {
  const { path, anomalyC, asOfMs, members, seed, earlier } = setting;
  const { startMs, today } = path;
  const { place, releases, treatments } = season;
  const days = Math.floor(path.hourlyC.length / 24);
  const world = createWorld([pest], {
    startMs,
    areaM2: place.areaM2,
    path,
    releases,
    treatments,
    ants: antDays(season.sightings, startMs, days),
    cards: cardsHanging(season, startMs, days),
  });
  const shown = shownOf(season, pest, startMs);
  const layout = layoutOf(world, Math.max(1, shown.trapIds.length));
  const weeksPast = Math.floor(today / 7);
  const counted = countedAs(place, pest);
  const tolerance = counted.limit / usualLimits[counted.unit];
  const inDoubt = friendsInDoubt(season, pest, asOfMs);
  const weighedTo = today + weighedDays(place, asOfMs);
  const lastDay = Math.min(today + 7 * limitWeeksAhead, weighedTo);
  const problem: Problem = {
    world,
    layout,
    shown,
    hostFactor: hostFactor(season, pest),
    anomalyFromDay: Math.floor(today) + 1,
    anomalyC,
    wanted: wantedDays(world, shown, { today, weeksPast, weighedTo, unit: counted.unit }),
  };
  const ensemble = sampleEnsemble(problem, { members, seed }, earlier);
  const random = seeded(seed);
  const chances = drawChances(problem, ensemble, weeksPast + weeksAhead, random);
  const summary: Summary = {
    problem,
    ensemble,
    startMs,
    today,
    lastDay,
    weeksPast,
    counted,
    chances,
    persistence: persistenceOf(world, shown, { today, unit: counted.unit }, random),
    coursesIn: coursesFrom(problem, ensemble.vectors, Math.floor(today)),
  };
  let last: { key: string; world: World } | undefined;
  /** Asked twice in a row it is the same world, whose courses are known. */
  const worldWith = (...made: [readonly Release[], readonly Treatment[]]): World => {
    const key = JSON.stringify(made);
    if (last?.key !== key) last = { key, world: withInterventions(world, ...made) };
    return last.world;
  };
  const surprise = lastCountSurprise(ensemble, shown, layout);
  const now = summarise(summary);
  return {
    forecast: { ...now.forecast, ...(surprise !== undefined && { lastCountSurprise: surprise }) },
    ahead: now.ahead,
    shown,
    read: ensemble.read,
    leafTotals: (checks, drawing) => leafTotals(summary, checks, drawing),
    again: (otherReleases, otherTreatments) => lookAhead(summary, worldWith(otherReleases, otherTreatments)),
    overLimit: (otherReleases, otherTreatments, few) =>
      overLimit(summary, worldWith(otherReleases, otherTreatments), {
        tolerance,
        weighedTo,
        inDoubt,
        members: few,
      }),
    courses: (made) => courses(summary, withInterventions(world, made, treatments)),
  };
}

/** Days on which young are added up: leaf checks, the ends of the weeks drawn, and all ahead where leaves tell. */
function wantedDays(
  world: World,
  shown: Shown,
  span: { today: number; weeksPast: number; weighedTo: number; unit: CountedAs['unit'] },
): Uint8Array {
  const { today, weeksPast, weighedTo, unit } = span;
  const wanted = new Uint8Array(world.days);
  for (const look of shown.leaves) wanted[Math.max(0, Math.floor(look.day))] = 1;
  for (let week = -weeksPast; today + 7 * week <= weighedTo || week <= weeksAhead; week++)
    wanted[Math.floor(today + 7 * week)] = 1;
  if (unit === 'ten-leaves') wanted.fill(1, Math.floor(today), Math.floor(weighedTo) + 1);
  return wanted;
}

/** "As last time": the last day with counts, when it is no older than three weeks. */
function persistenceOf(world: World, shown: Shown, summary: SpanAndUnit, random: Random): Persistence {
  const last = summary.unit === 'trap-week' ? lastCatch(shown) : lastInfested(shown);
  if (!last || summary.today - last.day > 21) return drawPersistence(0, 0, random);
  return drawPersistence(insuranceWeight(world), last.value, random);
}

interface SpanAndUnit {
  today: number;
  unit: CountedAs['unit'];
}

/** Catch per trap and week of the last day with trap counts. */
function lastCatch(shown: Shown): { day: number; value: number } | undefined {
  const last = countDays({ ...shown, leaves: [] }).at(-1);
  if (!last) return undefined;
  const windows = last.traps.map((i) => shown.traps[i]!);
  const caught = windows.reduce((sum, w) => sum + middleOf(w), 0);
  const weeks = windows.reduce((sum, w) => sum + ((w.toDay - w.fromDay) * w.countedFraction) / 7, 0);
  return { day: last.day, value: caught / weeks };
}

/** Leaves with any, of ten, at the last leaf check that tells. */
function lastInfested({ leaves }: Shown): { day: number; value: number } | undefined {
  const last = leaves.filter((look) => infestedOf(look) !== undefined).at(-1);
  return last && { day: last.day, value: (10 * infestedOf(last)!) / last.leaves };
}

/** What is counted of the pest, and the person's limit or the usual one. */
function countedAs(place: Place, pest: PestId): CountedAs {
  const { trap } = seenAs(pest);
  const limit = (unit: CountedAs['unit']) => place.limits[pest] ?? usualLimits[unit];
  return trap && !isCountedOnLeaves(place, pest)
    ? { unit: 'trap-week', kind: trap, limit: limit('trap-week') }
    : { unit: 'ten-leaves', kind: leafKindOf(pest), limit: limit('ten-leaves') };
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
