/**
 * Sequential Monte Carlo over the days with counts: members are weighted by the likelihood, tempered when a count
 * is a surprise, resampled when few carry the weight, and moved again by simulating them anew (Chopin 2002,
 * Biometrika 89:539; Del Moral, Doucet & Jasra 2006, JRSS B 68:411, from memory). Seeded.
 */
import { type Random, seeded, standardNormal } from '../numerics/random.ts';
import { isSame, type Known, knownUpTo } from './known.ts';
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
  /** Members after each of the last days with counts. */
  read: readonly Read[];
}

/** Members after the counts of a day, from which a later fit goes on. */
export interface Read {
  known: Known;
  vectors: readonly Float64Array[];
  weights: Float64Array;
  sizes: StepSizes;
  /** Which moves come next. */
  turn: number;
}

/** So many days: the evening of the last was not measured yet, readings of a week are thinned, a count is mended. */
const daysKept = 22;

/**
 * Members given the counts. `earlier` are days read by an earlier fit: it goes on from the last whose facts are still
 * the same, and so finds the very members that it would have found from the start.
 */
export function sampleEnsemble(
  problem: Problem,
  drawn: { members: number; seed: number },
  earlier: readonly Read[] = [],
): Ensemble {
  const days = countDays(problem.shown);
  const known = days.map((day) => knownUpTo(problem, day, drawn));
  const { first, kept } = goOn(known, earlier);
  let { vectors, weights, sizes, turn } = kept.at(-1) ?? start(problem, drawn);
  const read = [...kept];
  let beforeLast: Ensemble['beforeLast'];
  for (let last = first; last < days.length; last++) {
    const ready = vectors.map((z) => weigh(problem, z, days, last));
    if (last === days.length - 1) beforeLast = { members: ready, weights, day: days[last]! };
    const random = seeded(1000 * drawn.seed + last + 1);
    const step = { problem, days, last, sizes: { ...sizes }, random, turn: { next: turn } };
    const after = readDay(step, ready, weights);
    vectors = after.members.map((member) => member.z);
    weights = after.weights;
    sizes = step.sizes;
    turn = step.turn.next;
    read.push({ known: known[last]!, vectors, weights, sizes, turn });
  }
  return {
    vectors,
    weights,
    effectiveSampleSize: effectiveSize(weights),
    ...(beforeLast ? { beforeLast } : {}),
    read: read.filter(({ known: { day } }) => day > (days.at(-1)?.day ?? 0) - daysKept),
  };
}

/** Before any count. */
function start(
  { layout }: Problem,
  { members, seed }: { members: number; seed: number },
): Omit<Read, 'known'> {
  const random = seeded(1000 * seed);
  return {
    vectors: Array.from({ length: members }, () =>
      Float64Array.from({ length: layout.length }, () => standardNormal(random)),
    ),
    weights: new Float64Array(members).fill(1 / members),
    sizes: firstStepSizes(),
    turn: 1,
  };
}

/** The first day to read, and the days before it that were read with the same facts; the last day is always read. */
function goOn(known: readonly Known[], earlier: readonly Read[]): { first: number; kept: readonly Read[] } {
  for (let day = known.length - 2; day >= 0; day--) {
    const at = earlier.findIndex((read) => isSame(read.known, known[day]!));
    if (at >= 0) return { first: day + 1, kept: earlier.slice(0, at + 1) };
  }
  return { first: 0, kept: [] };
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
 * All four each time cost twice as much and found no more (docs/forecast.md); without the population part in two turns
 * of three its ranges were too narrow.
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
  turn.next = (turn.next + 1) % moveTurns.length;
  for (const kind of moveTurns[turn.next]!) {
    round(kind);
    round('shown');
    round('shown');
  }
  return members;
}
