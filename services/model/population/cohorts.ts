/**
 * Births by day as cohorts, oldest first. How many of a cohort pass the end of each stage in a day follows from its age
 * alone; what is taken is taken from those who stand in the stage, so that eating eggs spares larvae of the same day.
 * A cohort stands in a few stages at a time, so each stage keeps the range of cohorts that anybody stands in.
 */
import { type ShareTable, type StageTable, shareAt } from './stages.ts';

export interface Cohorts {
  /** What all that follows is written in. */
  memory: Float64Array;
  table: StageTable;
  /** Share alive in each stage, then of those who mature (standingShares). */
  standing: Float64Array;
  /** Share of those leaving each stage that lives on in the next. */
  crossing: Float64Array;
  /** Everybody stands where they do at this clock. */
  clock: number;
  clockAtBirth: Float64Array;
  /** Cohorts first..end-1 may still hold young. */
  first: number;
  end: number;
  /** By pace of development: the slow and the fast half of every cohort. */
  paces: readonly Pace[];
}

/** All cohorts of one pace. Of cohort c and stage i, `number[c * stages + i]` and so on: what is read together lies together. */
interface Pace {
  table: ShareTable;
  /** By stage: cohorts from..to-1 may stand in it. Later stages hold older cohorts, so both fall with the stage. */
  from: Int32Array;
  to: Int32Array;
  /** Number alive. */
  number: Float64Array;
  /** Share of the cohort in the stage, and past it, had nobody died. */
  share: Float64Array;
  past: Float64Array;
}

/** Of seasons that are over, by length: a browser hands out fresh memory more slowly than a season is simulated in it. */
const spare = new Map<number, Float64Array[]>();
const nothing = new Float64Array(0);

/** So many numbers, whatever they are: a cohort is written as a whole before it is read. */
const memoryFor = (length: number): Float64Array => spare.get(length)?.pop() ?? new Float64Array(length);

/** Gives back the memory of cohorts that nobody will look at again. */
export function dropCohorts(cohorts: Cohorts): void {
  const { memory } = cohorts;
  const same = spare.get(memory.length);
  if (same) same.push(memory);
  else spare.set(memory.length, [memory]);
  cohorts.memory = nothing;
}

/** No cohorts yet, at clock 0; room for `capacity` births. Insects per m2. */
export function noCohorts(table: StageTable, standing: Float64Array, capacity: number): Cohorts {
  const stages = table.stages.length;
  const memory = memoryFor((1 + 3 * table.paces.length * stages) * capacity);
  const cells = (piece: number) =>
    memory.subarray((1 + piece * stages) * capacity, (1 + (piece + 1) * stages) * capacity);
  return {
    memory,
    table,
    standing,
    crossing: Float64Array.from(table.stages, (_, i) => standing[i + 1]! / standing[i]!),
    clock: 0,
    clockAtBirth: memory.subarray(0, capacity),
    first: 0,
    end: 0,
    paces: table.paces.map((pace, p) => ({
      table: pace,
      from: new Int32Array(stages),
      to: new Int32Array(stages),
      number: cells(3 * p),
      share: cells(3 * p + 1),
      past: cells(3 * p + 2),
    })),
  };
}

/** Makes cohorts stand as others of the same table do; there must be room for them. */
export function copyCohorts(into: Cohorts, from: Cohorts): void {
  const { first, end } = from;
  const stages = from.table.stages.length;
  into.clock = from.clock;
  into.first = first;
  into.end = end;
  into.clockAtBirth.set(from.clockAtBirth.subarray(first, end), first);
  into.paces.forEach((pace, p) => {
    const of = from.paces[p]!;
    pace.from.set(of.from);
    pace.to.set(of.to);
    for (const cells of ['number', 'share', 'past'] as const) {
      pace[cells].set(of[cells].subarray(first * stages, end * stages), first * stages);
    }
  });
}

/** Adds `number` born when the clock stood at `clockAtBirth`, not after now; they stand where their age says, with others of that age. */
export function addBirths(cohorts: Cohorts, clockAtBirth: number, number: number): void {
  if (!(number > 0)) return;
  const { paces, standing, table } = cohorts;
  const stages = table.stages.length;
  let at = cohorts.end;
  while (at > cohorts.first && cohorts.clockAtBirth[at - 1]! > clockAtBirth) at -= 1;
  const isNew = at === cohorts.first || cohorts.clockAtBirth[at - 1] !== clockAtBirth;
  if (isNew) openCohort(cohorts, at, clockAtBirth);
  else at -= 1;
  const age = cohorts.clock - clockAtBirth;
  for (const pace of paces) {
    let before = 1;
    for (let i = 0; i < stages; i++) {
      const cell = at * stages + i;
      const past = shareAt(pace.table, pace.table.past[i]!, age);
      pace.past[cell] = past;
      pace.share[cell] = before - past;
      pace.number[cell] = pace.number[cell]! + (number / paces.length) * standing[i]! * (before - past);
      before = past;
    }
    widen(cohorts, pace);
  }
}

/** An empty cohort at `at`; where others were born later they make room, and stages are gone through from the oldest on again. */
function openCohort(cohorts: Cohorts, at: number, bornAt: number): void {
  const { clockAtBirth, paces, first, end, table } = cohorts;
  const stages = table.stages.length;
  if (end === clockAtBirth.length) throw new RangeError('more births than room for cohorts');
  clockAtBirth.copyWithin(at + 1, at, end);
  clockAtBirth[at] = bornAt;
  cohorts.end += 1;
  for (const { from, to, number, share, past } of paces) {
    if (at < end) {
      for (const cells of [number, share, past])
        cells.copyWithin((at + 1) * stages, at * stages, end * stages);
      from.fill(first);
    }
    for (let i = 0; i < stages; i++) {
      // Who is older than one that has come to a stage has come to it too.
      if (to[i]! > at) to[i] = to[i]! + 1;
      number[at * stages + i] = 0;
    }
  }
}

/** Lets the cohorts that have come of age for a stage into it. */
function widen({ clockAtBirth, clock, end }: Cohorts, { table, to }: Pace): void {
  for (let i = 0; i < to.length; i++) {
    let until = to[i]!;
    while (until < end && clock - clockAtBirth[until]! >= table.from[i]!) until += 1;
    to[i] = until;
  }
}

/** Lets go of the cohorts that have left a stage for good. */
function narrow({ clockAtBirth, clock }: Cohorts, { table, from, to }: Pace): void {
  for (let i = 0; i < to.length; i++) {
    let first = from[i]!;
    while (first < to[i]! && clock - clockAtBirth[first]! >= table.until[i]!) first += 1;
    from[i] = first;
  }
}

/** Moves everybody on to `clock`; returns the number that leaves the last stage alive meanwhile. */
export function growTo(cohorts: Cohorts, clock: number): number {
  cohorts.clock = clock;
  let matured = 0;
  let first = cohorts.end;
  for (const pace of cohorts.paces) {
    widen(cohorts, pace);
    matured += passOn(cohorts, pace);
    narrow(cohorts, pace);
    first = Math.min(first, pace.from.at(-1)!);
  }
  cohorts.first = first;
  return matured;
}

/** The same for those of one pace, cohort by cohort: who leaves a stage enters the next, and may leave that too. */
function passOn({ clock, clockAtBirth, crossing, end }: Cohorts, pace: Pace): number {
  const { table, from, to, number, share, past } = pace;
  const { resolution, pastByAge } = table;
  const stages = crossing.length;
  const last = stages - 1;
  const lastRow = pastByAge.length / stages - 2;
  let lowest = last;
  let highest = last;
  let matured = 0;
  for (let at = from[last]!; at < end; at++) {
    while (lowest > 0 && at >= from[lowest - 1]!) lowest -= 1;
    while (highest >= 0 && at >= to[highest]!) highest -= 1;
    const position = (clock - clockAtBirth[at]!) * resolution;
    const row = position < lastRow ? position | 0 : lastRow;
    const between = position < lastRow ? position - row : 1;
    let entering = 0;
    let enteringShare = 0;
    for (let i = lowest; i <= highest; i++) {
      const cell = at * stages + i;
      const low = pastByAge[row * stages + i]!;
      const now = low + between * (pastByAge[(row + 1) * stages + i]! - low);
      const passing = now - past[cell]!;
      const standing = share[cell]! + enteringShare;
      const alive = number[cell]! + entering;
      const all = passing >= standing;
      const leaving = all ? alive : (alive * passing) / standing;
      past[cell] = now;
      share[cell] = all ? 0 : standing - passing;
      number[cell] = alive - leaving;
      enteringShare = passing;
      entering = leaving * crossing[i]!;
      if (i === last) matured += leaving;
    }
  }
  return matured * crossing[last]!;
}

/** Number alive in a stage now. */
export function inStage({ paces, table }: Cohorts, i: number): number {
  const stages = table.stages.length;
  let sum = 0;
  for (const { number, from, to } of paces) {
    for (let at = from[i]!; at < to[i]!; at++) sum += number[at * stages + i]!;
  }
  return sum;
}

/** Number alive in all stages together now. */
export function standingNumber(cohorts: Cohorts): number {
  let sum = 0;
  for (let i = 0; i < cohorts.table.stages.length; i++) sum += inStage(cohorts, i);
  return sum;
}

/** Mean age of those in the first `stages` stages, egg (or birth) to adult = 1; NaN without any. */
export function meanAge(cohorts: Cohorts, stages: number): number {
  const all = cohorts.table.stages.length;
  let sum = 0;
  let ages = 0;
  for (const { number, from, to } of cohorts.paces) {
    for (let i = 0; i < stages; i++) {
      for (let at = from[i]!; at < to[i]!; at++) {
        sum += number[at * all + i]!;
        ages += number[at * all + i]! * Math.min(1, cohorts.clock - cohorts.clockAtBirth[at]!);
      }
    }
  }
  return ages / sum;
}

/** Takes the share `shares[stage]` of those alive in each stage and returns the number taken. */
export function takeFromStages({ paces, table }: Cohorts, shares: Float64Array): number {
  const stages = table.stages.length;
  let taken = 0;
  for (const { number, from, to } of paces) {
    for (let i = 0; i < stages; i++) {
      const share = shares[i]!;
      if (share === 0) continue;
      const kept = 1 - share;
      for (let at = from[i]!; at < to[i]!; at++) {
        const cell = at * stages + i;
        taken += number[cell]! * share;
        number[cell] = number[cell]! * kept;
      }
    }
  }
  return taken;
}

/** Keeps the share `survival` of all young. */
export function thinYoung({ paces, table, first, end }: Cohorts, survival: number): void {
  const stages = table.stages.length;
  for (const { number } of paces) {
    for (let cell = first * stages; cell < end * stages; cell++) number[cell] = number[cell]! * survival;
  }
}
