/** One member of the ensemble: its vector, what it shows in the counts so far, and how likely they are. */
import type { Shown } from '../observation/counts.ts';
import { leafLogLikelihood, trapLogLikelihood, type Viewed, view } from '../observation/view.ts';
import { carryOn, type MemberParameters, simulate, standAt } from '../population/simulate.ts';
import { type Standing, sharesPast } from '../population/standing.ts';
import { courseOf, type PestCourse } from '../population/trajectory.ts';
import type { World } from '../population/world.ts';
import { type Layout, memberParameters, shownParameters } from './prior.ts';

/** What the ensemble of one pest is about. */
export interface Problem {
  world: World;
  layout: Layout;
  shown: Shown;
  hostFactor: number;
  /** First day on which members have a temperature of their own. */
  anomalyFromDay: number;
  /** Own path of each member ahead, by slot. */
  anomalyC: readonly Float64Array[];
  /** Days on which young are added up. */
  wanted: Uint8Array;
}

/** Counts that came on one day. */
export interface CountDay {
  day: number;
  traps: readonly number[];
  leaves: readonly number[];
}

export interface Member {
  z: Float64Array;
  viewed: Viewed;
  /** Log-likelihood of the counts of earlier days, and of the day at hand. */
  before: number;
  now: number;
}

/** Counts by day, in time. */
export function countDays(shown: Shown): CountDay[] {
  const days = new Map<number, { day: number; traps: number[]; leaves: number[] }>();
  const of = (day: number) => {
    const known = days.get(day) ?? { day, traps: [], leaves: [] };
    days.set(day, known);
    return known;
  };
  for (const [i, window] of shown.traps.entries()) of(Math.max(0, Math.floor(window.toDay))).traps.push(i);
  for (const [i, look] of shown.leaves.entries()) of(Math.max(0, Math.floor(look.day))).leaves.push(i);
  return [...days.values()].sort((a, b) => a.day - b.day);
}

/** Parameters of a vector in the slot of a member (whose own path ahead it takes). */
export function parametersOf(problem: Problem, z: Float64Array, slot: number): MemberParameters {
  const { hostFactor, anomalyFromDay } = problem;
  const anomalyC = problem.anomalyC[slot] ?? new Float64Array(0);
  return memberParameters(z, problem.layout, problem.world, { hostFactor, anomalyFromDay, anomalyC });
}

/** The trajectory of a vector in a slot, over the first `days` days. */
export function trajectoryOf(problem: Problem, z: Float64Array, slot: number, days: number): PestCourse {
  return courseOf(simulate(problem.world, parametersOf(problem, z, slot), days, problem.wanted), 0);
}

/** Courses of members by slot, over the first `days` days of a world. */
export type CoursesIn = (world: World, days: number) => (slot: number) => PestCourse;

/** The courses of the members in other worlds: each stands once at the beginning of `day` and is carried on from there, where the past is the same. */
export function coursesFrom(problem: Problem, vectors: readonly Float64Array[], day: number): CoursesIn {
  const { wanted } = problem;
  const kept: { p: MemberParameters; standing: Standing }[] = [];
  /** A world may be asked for what it costs and for its forecast: the longer first spares the second. */
  const known = new WeakMap<World, { days: number; course: PestCourse }[]>();
  const standingOf = (slot: number) => {
    if (kept[slot]) return kept[slot];
    const p = parametersOf(problem, vectors[slot]!, slot);
    kept[slot] = { p, standing: standAt(problem.world, p, day, wanted) };
    return kept[slot];
  };
  return (world, days) => {
    if (!sharesPast(problem.world, world, day)) {
      return (slot) => trajectoryOf({ ...problem, world }, vectors[slot]!, slot, days);
    }
    const courses = known.get(world) ?? [];
    known.set(world, courses);
    return (slot) => {
      const before = courses[slot];
      if (before && before.days >= days) return before.course;
      const { p, standing } = standingOf(slot);
      const course = courseOf(carryOn(standing, world, p, { days, wanted }), 0);
      courses[slot] = { days, course };
      return course;
    };
  };
}

/** A member simulated up to count day `last` and weighed against the counts up to then. */
export function weigh(problem: Problem, z: Float64Array, days: readonly CountDay[], last: number): Member {
  const course = trajectoryOf(problem, z, -1, days[last]!.day + 1);
  return weighViewed(problem, z, view(problem.world, course, problem.shown), days, last);
}

/** The same for a vector whose population has not changed: nothing is simulated. */
export function weighViewed(
  problem: Problem,
  z: Float64Array,
  viewed: Viewed,
  days: readonly CountDay[],
  last: number,
): Member {
  const p = shownParameters(z, problem.layout);
  const ofDay = ({ traps, leaves }: CountDay): number => {
    let sum = 0;
    for (const i of traps) sum += trapLogLikelihood(problem.shown.traps[i]!, viewed.flyingDays[i]!, p);
    for (const i of leaves) {
      const seen = { youngPerM2: viewed.youngPerM2[i]!, visiblePerM2: viewed.visiblePerM2[i]! };
      sum += leafLogLikelihood(problem.shown.leaves[i]!, seen, p);
    }
    return sum;
  };
  let before = 0;
  for (let i = 0; i < last; i++) before += ofDay(days[i]!);
  return { z, viewed, before, now: ofDay(days[last]!) };
}
