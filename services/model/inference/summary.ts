/** From weighted members to the forecast of one pest: ranges, chances, dates. */
import { quantileRange, type WeightedSample } from '../numerics/quantiles.ts';
import { meanCatch } from '../observation/likelihood.ts';
import { flyingDays, seenYoung, shareInfested } from '../observation/view.ts';
import type { CountedAs, PestForecast, Quantiles } from '../outcome.ts';
import type { PestCourse } from '../population/trajectory.ts';
import type { World } from '../population/world.ts';
import { binomialAt } from './binomialAt.ts';
import { type Chances, mixed, type Persistence } from './chances.ts';
import { dateRange, instantOf } from './dates.ts';
import type { Ensemble } from './ensemble.ts';
import { type CoursesIn, type Problem, trajectoryOf } from './member.ts';
import { poissonAt } from './poissonAt.ts';
import { shownParameters } from './prior.ts';
import { waves } from './waves.ts';

export const weeksAhead = 8;

/** What is fixed about the summary of one pest, so that forecasts with and without a release differ by it alone. */
export interface Summary {
  problem: Problem;
  ensemble: Ensemble;
  startMs: number;
  /** Days from the start to now, and to the end of the look ahead for the limit. */
  today: number;
  lastDay: number;
  weeksPast: number;
  counted: CountedAs;
  chances: Chances;
  persistence: Persistence;
  /** The members in worlds with other interventions. */
  coursesIn: CoursesIn;
}

/** What is drawn for the end of one week: the next count of one whole card or ten leaves, and densities. */
export interface WeekAhead {
  end: string;
  counts: WeightedSample;
  adultsPerM2: WeightedSample;
  youngPerM2: WeightedSample;
}

/** The forecast of a pest as things are. */
export function summarise(summary: Summary): { forecast: PestForecast; ahead: WeekAhead[] } {
  const { problem, ensemble, startMs, today, weeksPast } = summary;
  const { world } = problem;
  const trajectories = ensemble.vectors.map((z, slot) => trajectoryOf(problem, z, slot, world.days));
  const seen: Seen = { summary, world, trajectories };
  const ahead = Array.from({ length: weeksAhead }, (_, i) => drawnWeek(seen, i + 1));
  const forecast = {
    pest: world.pests[0]!.id,
    counted: summary.counted,
    past: Array.from({ length: weeksPast }, (_, i) => ranges(drawnWeek(seen, i - weeksPast + 1))),
    weeks: ahead.map(ranges),
    passesLimit: passesLimit(seen),
    probabilityPresent: probabilityPresent(seen),
    waves: waves(
      { world, trajectories, weights: ensemble.weights, startMs, today },
      problem,
      ensemble.vectors,
    ),
    enemies: enemiesAhead(seen),
    effectiveSampleSize: ensemble.effectiveSampleSize,
  };
  return { forecast, ahead };
}

/** What of a forecast changes in a world with other releases or treatments ahead. */
export type Ahead = Pick<PestForecast, 'weeks' | 'passesLimit' | 'enemies'>;

/** The weeks ahead in such a world: it may differ from now on only. */
export function lookAhead(summary: Summary, world: World): Ahead {
  const { ensemble, today, lastDay, coursesIn } = summary;
  const courseOf = coursesIn(world, Math.floor(Math.max(lastDay, today + 7 * weeksAhead)) + 1);
  const seen: Seen = { summary, world, trajectories: ensemble.vectors.map((_, slot) => courseOf(slot)) };
  return {
    weeks: Array.from({ length: weeksAhead }, (_, i) => ranges(drawnWeek(seen, i + 1))),
    passesLimit: passesLimit(seen),
    enemies: enemiesAhead(seen),
  };
}

/** A sum of weights without the rounding at its ends. */
const asChance = (sum: number): number => (sum > 1 - 1e-9 ? 1 : sum < 1e-9 ? 0 : sum);

/** The courses of all members in one world. */
interface Seen {
  summary: Summary;
  world: World;
  trajectories: readonly PestCourse[];
}

/** Expected count on `day`: of one new card over the seven days before, or leaves with any of ten. */
export function expectedCount(
  { summary, world }: Pick<Seen, 'summary' | 'world'>,
  trajectory: PestCourse,
  slot: number,
  day: number,
): number {
  const { problem, ensemble, chances, counted } = summary;
  const p = shownParameters(ensemble.vectors[slot]!, problem.layout);
  if (counted.unit === 'ten-leaves')
    return 10 * shareInfested(seenYoung(world, trajectory, Math.floor(day)), p, 10);
  return meanCatch({
    backgroundPerDay: p.backgroundPerDay,
    qM2PerDay: p.qM2PerDay * p.trapFactor[chances.trap[slot]!]!,
    flyingDays: flyingDays(trajectory.flying, day - 7, day),
    exposureDays: 7,
    countedFraction: 1,
  });
}

/** The count that a member's draw makes of the expected one. */
function drawnCount({ chances, counted }: Summary, expected: number, slot: number, column: number): number {
  const uniform = chances.uniformAt[slot]![column]!;
  return counted.unit === 'ten-leaves'
    ? binomialAt(10, expected / 10, uniform)
    : poissonAt(expected * chances.gammaAt[slot]![column]!, uniform);
}

/** Week `index` ends `index` weeks from now; 0 ends now. */
function drawnWeek(seen: Seen, index: number): WeekAhead & { probabilityOverLimit: number } {
  const { summary, trajectories } = seen;
  const { ensemble, today, startMs, counted, weeksPast, persistence } = summary;
  const { weights } = ensemble;
  const endDay = today + 7 * index;
  const expected = trajectories.map((course, slot) => expectedCount(seen, course, slot, endDay));
  const column = index + weeksPast - 1;
  const counts = expected.map((mean, slot) => drawnCount(summary, mean, slot, column));
  const at = Math.floor(endDay);
  const over = expected.reduce((sum, mean, slot) => sum + (mean > counted.limit ? weights[slot]! : 0), 0);
  const ofDay = (pick: (trajectory: PestCourse) => Float64Array): WeightedSample => ({
    values: trajectories.map((trajectory) => pick(trajectory)[at]!),
    weights,
  });
  return {
    end: instantOf(startMs, endDay),
    counts: mixed(counts, weights, persistence, { index, unit: counted.unit }),
    adultsPerM2: ofDay((trajectory) => trajectory.adults),
    youngPerM2: ofDay((trajectory) => trajectory.young),
    probabilityOverLimit: asChance(over),
  };
}

function ranges({
  end,
  counts,
  adultsPerM2,
  youngPerM2,
  probabilityOverLimit,
}: ReturnType<typeof drawnWeek>) {
  const of = ({ values, weights }: WeightedSample): Quantiles => quantileRange(values, weights);
  return {
    end,
    count: of(counts),
    adultsPerM2: of(adultsPerM2),
    youngPerM2: of(youngPerM2),
    probabilityOverLimit,
  };
}

function passesLimit(seen: Seen): PestForecast['passesLimit'] {
  const { ensemble, startMs, today, lastDay, counted } = seen.summary;
  const firstDays = seen.trajectories.map((course, slot) => {
    for (let day = today; day <= lastDay; day++) {
      if (expectedCount(seen, course, slot, day) > counted.limit) return day;
    }
    return Number.POSITIVE_INFINITY;
  });
  const passing = firstDays.flatMap((day, slot) =>
    day <= lastDay ? [{ day, weight: ensemble.weights[slot]! }] : [],
  );
  const probability = passing.reduce((sum, { weight }) => sum + weight, 0);
  const by = instantOf(startMs, lastDay);
  if (!(probability > 0)) return { probability: 0, by };
  const days = passing.map(({ day }) => day);
  const when = dateRange(
    startMs,
    days,
    passing.map(({ weight }) => weight),
  );
  return { probability: asChance(probability), by, when };
}

/** Chance that at least one insect of the pest is in the house today. */
function probabilityPresent({ summary, world, trajectories }: Seen): number {
  const at = Math.floor(summary.today);
  const inHouse = (trajectory: PestCourse) => (trajectory.adults[at]! + trajectory.young[at]!) * world.areaM2;
  const present = trajectories.reduce(
    (sum, trajectory, slot) => sum + (inHouse(trajectory) >= 1 ? summary.ensemble.weights[slot]! : 0),
    0,
  );
  return asChance(present);
}

function enemiesAhead({ summary, world, trajectories }: Seen) {
  const { ensemble, startMs, today } = summary;
  const ends = Array.from({ length: weeksAhead + 1 }, (_, week) => today + 7 * week);
  return world.enemies.flatMap((enemy, i) => {
    if (!enemy.released) return [];
    const ranges = (value: (trajectory: PestCourse, day: number) => number) =>
      ends.map((end) => ({
        end: instantOf(startMs, end),
        range: quantileRange(
          trajectories.map((t) => value(t, Math.floor(end))),
          ensemble.weights,
        ),
      }));
    const hunters = ranges((t, day) => t.enemies[i]!.hunters[day]!);
    const perM2 = hunters.map(({ end, range }) => ({ end, density: range }));
    if (enemy.kind !== 'parasitoid') return [{ enemy: enemy.id, perM2 }];
    const parasitised = ranges((t, day) => {
      const taken = t.enemies[i]!.hidden[day]! + t.enemies[i]!.visible[day]!;
      return taken > 0 ? taken / (taken + t.scales[day]!) : 0;
    });
    return [
      {
        enemy: enemy.id,
        perM2,
        parasitisedShare: parasitised.map(({ end, range }) => ({ end, share: range })),
      },
    ];
  });
}
