/**
 * Sequential Monte Carlo over the days with counts: members are weighted by the likelihood, tempered when a count
 * is a surprise, resampled when few carry the weight, and moved again by simulating them anew (Chopin 2002,
 * Biometrika 89:539; Del Moral, Doucet & Jasra 2006, JRSS B 68:411, from memory). Seeded.
 */
import { type Random, standardNormal } from '../numerics/random.ts';
import { type CountDay, countDays, type Member, type Problem, weigh, weighViewed } from './member.ts';
import { adaptedSize, firstStepSizes, type MoveKind, moveTurns, propose, type StepSizes } from './moves.ts';

export interface Ensemble {
  /** One vector a member. */
  vectors: readonly Float64Array[];
  /** Adding up to 1. */
  weights: Float64Array;
  effectiveSampleSize: number;
  /** Members and weights just before the last day with counts was read; absent without counts. */
  beforeLast?: { members: readonly Member[]; weights: Float64Array; day: CountDay };
}

/** Members given the counts. */
export function sampleEnsemble(problem: Problem, members: number, random: Random): Ensemble {
  let vectors: Float64Array[] = Array.from({ length: members }, () =>
    Float64Array.from({ length: problem.layout.length }, () => standardNormal(random)),
  );
  let weights: Float64Array = new Float64Array(members).fill(1 / members);
  const days = countDays(problem.shown);
  const sizes = firstStepSizes();
  const turn = { next: 1 };
  let beforeLast: Ensemble['beforeLast'];
  for (let last = 0; last < days.length; last++) {
    const ready = vectors.map((z) => weigh(problem, z, days, last));
    if (last === days.length - 1) beforeLast = { members: ready, weights, day: days[last]! };
    const read = readDay({ problem, days, last, sizes, random, turn }, ready, weights);
    vectors = read.members.map((member) => member.z);
    weights = read.weights;
  }
  return {
    vectors,
    weights,
    effectiveSampleSize: effectiveSize(weights),
    ...(beforeLast ? { beforeLast } : {}),
  };
}

interface Step {
  problem: Problem;
  days: readonly CountDay[];
  last: number;
  sizes: StepSizes;
  random: Random;
  /** Which moves come next. */
  turn: { next: number };
}

/** Reads the counts of one day, in as many tempered steps as they need. */
function readDay(step: Step, ready: Member[], weightsBefore: Float64Array) {
  let members = ready;
  let weights: Float64Array = weightsBefore;
  let power = 0;
  while (power < 1) {
    const next = power + largestStep(members, weights, 1 - power);
    weights = reweighted(members, weights, next - power);
    power = next;
    if (power < 1 || effectiveSize(weights) < 0.55 * members.length) {
      members = resampled(members, weights, step.random);
      weights = new Float64Array(members.length).fill(1 / members.length);
      members = moved(step, members, power);
    }
  }
  return { members, weights };
}

/** Largest increase of the power of the likelihood that leaves half of the members effective. */
function largestStep(members: readonly Member[], weights: Float64Array, most: number): number {
  const enough = (increase: number) =>
    effectiveSize(reweighted(members, weights, increase)) >= members.length / 2;
  if (enough(most)) return most;
  let low = 0;
  let high = most;
  for (let i = 0; i < 20; i++) {
    const middle = (low + high) / 2;
    if (enough(middle)) low = middle;
    else high = middle;
  }
  // Weights already below half (they were kept between days): go on in small steps after resampling.
  return Math.max(low, Math.min(most, 0.01));
}

function reweighted(members: readonly Member[], weights: Float64Array, power: number): Float64Array {
  const top = members.reduce((most, member) => Math.max(most, member.now), Number.NEGATIVE_INFINITY);
  const raw = weights.map((weight, i) => weight * Math.exp(power * (members[i]!.now - top)));
  const total = raw.reduce((sum, weight) => sum + weight, 0);
  return raw.map((weight) => weight / total);
}

/** 1 / sum of squared weights that add up to 1. */
export function effectiveSize(weights: Float64Array): number {
  return 1 / weights.reduce((sum, weight) => sum + weight * weight, 0);
}

/** Systematic resampling: one uniform number, evenly spaced pointers. */
function resampled(members: readonly Member[], weights: Float64Array, random: Random): Member[] {
  const n = members.length;
  const start = random();
  let sum = weights[0]!;
  let i = 0;
  return Array.from({ length: n }, (_, pointer) => {
    while (sum < (pointer + start) / n && i < n - 1) {
      i += 1;
      sum += weights[i]!;
    }
    return members[i]!;
  });
}

/**
 * Two of the four kinds of moves in turn, each with a simulation, and after each two of the observation part without.
 * All four each time cost twice as much and found no more (docs/forecast.md).
 */
function moved(step: Step, start: readonly Member[], power: number): Member[] {
  const { problem, days, last, sizes, random, turn } = step;
  const weeksSoFar = Math.min(problem.layout.weeks, Math.floor(days[last]!.day / 7) + 1);
  let members = [...start];
  const target = (member: Member) => member.before + power * member.now;
  const round = (kind: MoveKind | 'shown') => {
    const others = members.map((member) => member.z);
    const context = { layout: problem.layout, weeksSoFar, size: sizes[kind], random };
    let accepted = 0;
    members = members.map((member) => {
      const { z, logPriorRatio } = propose(kind, member.z, others, context);
      const chance = Math.log(random());
      const tried =
        kind === 'shown' ? weighViewed(problem, z, member.viewed, days, last) : weigh(problem, z, days, last);
      if (chance >= target(tried) - target(member) + logPriorRatio) return member;
      accepted += 1;
      return tried;
    });
    sizes[kind] = adaptedSize(sizes[kind], accepted / members.length);
  };
  turn.next = 1 - turn.next;
  for (const kind of moveTurns[turn.next]!) {
    round(kind);
    round('shown');
    round('shown');
  }
  return members;
}
