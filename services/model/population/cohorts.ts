/**
 * Births by day as cohorts (renewal form), oldest first. A cohort keeps its number at birth, thinned by whatever takes
 * from it besides the deaths of its stages; its stages follow from its age alone. A cohort stands in one or two stages
 * at most times, so each stage keeps the range of cohorts that anybody stands in, and only those are gone through.
 */
import { columns } from '../numerics/columns.ts';
import { type StageTable, shareAt } from './stages.ts';

export interface Cohorts {
  table: StageTable;
  /** Share standing in each stage, then the share that matures (standingShares). */
  standing: Float64Array;
  /** Everybody stands where they do at this clock. */
  clock: number;
  clockAtBirth: Float64Array;
  number: Float64Array;
  /** Share of each cohort that had matured, had nobody died. */
  matured: Float64Array;
  /** Cohorts first..end-1 may still hold young. */
  first: number;
  end: number;
  /** Cohorts from[i]..to[i]-1 may stand in stage i; the last element: may be maturing. */
  from: Int32Array;
  to: Int32Array;
  /** Share of each cohort alive in stage i, for the cohorts in its range. */
  here: readonly Float64Array[];
  /** Scratch by cohort. */
  alive: Float64Array;
  taken: Float64Array;
}

/** No cohorts yet, at clock 0; room for `capacity` births. Insects per m2. */
export function noCohorts(table: StageTable, standing: Float64Array, capacity: number): Cohorts {
  const ranges = table.stages.length + 1;
  const [clockAtBirth, number, matured, alive, taken, ...here] = columns(5 + table.stages.length, capacity);
  return {
    table,
    standing,
    clock: 0,
    clockAtBirth: clockAtBirth!,
    number: number!,
    matured: matured!,
    first: 0,
    end: 0,
    from: new Int32Array(ranges),
    to: new Int32Array(ranges),
    here,
    alive: alive!,
    taken: taken!,
  };
}

/** Adds a cohort born when the clock stood at `clockAtBirth`, not after now; it stands where its age says. */
export function addBirths(cohorts: Cohorts, clockAtBirth: number, number: number): void {
  if (!(number > 0)) return;
  if (cohorts.end === cohorts.number.length) throw new RangeError('more births than room for cohorts');
  let at = cohorts.end;
  while (at > cohorts.first && cohorts.clockAtBirth[at - 1]! > clockAtBirth) at -= 1;
  cohorts.end += 1;
  if (at < cohorts.end - 1) {
    insertAt(cohorts, at);
    for (let range = 0; range < cohorts.from.length; range++) {
      cohorts.from[range] = cohorts.first;
      cohorts.to[range] = cohorts.first;
    }
  }
  cohorts.clockAtBirth[at] = clockAtBirth;
  cohorts.number[at] = number;
  cohorts.matured[at] = shareAt(cohorts.table, cohorts.table.matured, cohorts.clock - clockAtBirth);
  if (at < cohorts.end - 1) {
    stand(cohorts);
    return;
  }
  const age = cohorts.clock - clockAtBirth;
  for (let stage = 0; stage < cohorts.here.length && age >= cohorts.table.from[stage]!; stage++) {
    cohorts.to[stage] = cohorts.end;
    cohorts.here[stage]![at] =
      cohorts.standing[stage]! * shareAt(cohorts.table, cohorts.table.inStage[stage]!, age);
  }
}

/** Makes room for one more at `at`, among the cohorts born later. */
function insertAt(cohorts: Cohorts, at: number): void {
  for (const column of [cohorts.clockAtBirth, cohorts.number, cohorts.matured]) {
    column.copyWithin(at + 1, at, cohorts.end - 1);
  }
}

/** Moves everybody on to `clock`; returns the number that leaves the last stage alive meanwhile. */
export function growTo(cohorts: Cohorts, clock: number): number {
  cohorts.clock = clock;
  stand(cohorts);
  return maturing(cohorts);
}

/** Works out where everybody stands, stage by stage over those who may stand in it. */
function stand(cohorts: Cohorts): void {
  const { table, standing, clockAtBirth, here, clock, from, to } = cohorts;
  const { resolution } = table;
  for (let stage = 0; stage < here.length; stage++) {
    moveRange(cohorts, stage);
    const shares = here[stage]!;
    const column = table.inStage[stage]!;
    const alive = standing[stage]!;
    const high = to[stage]!;
    for (let i = from[stage]!; i < high; i++) {
      const position = (clock - clockAtBirth[i]!) * resolution;
      const row = position | 0;
      const share = column[row]!;
      shares[i] = alive * (share + (position - row) * (column[row + 1]! - share));
    }
  }
}

/** Moves the range of a stage on: the oldest are past it, the youngest come of age. */
function moveRange({ table, clockAtBirth, clock, first, end, from, to }: Cohorts, range: number): void {
  let low = Math.max(first, from[range]!);
  while (low < end && clock - clockAtBirth[low]! >= table.until[range]!) low += 1;
  let high = Math.max(low, to[range]!);
  while (high < end && clock - clockAtBirth[high]! >= table.from[range]!) high += 1;
  from[range] = low;
  to[range] = high;
}

/** Number that has matured since the last call; cohorts that all have leave. */
function maturing(cohorts: Cohorts): number {
  const { table, standing, clockAtBirth, number, matured, clock, end, to } = cohorts;
  const last = table.stages.length;
  const { resolution, matured: column } = table;
  let high = Math.max(cohorts.first, to[last]!);
  while (high < end && clock - clockAtBirth[high]! >= table.from[last]!) high += 1;
  to[last] = high;
  let sum = 0;
  for (let i = cohorts.first; i < high; i++) {
    const position = Math.min((clock - clockAtBirth[i]!) * resolution, column.length - 2);
    const row = position | 0;
    const share = column[row]! + (position - row) * (column[row + 1]! - column[row]!);
    sum += number[i]! * (share - matured[i]!);
    matured[i] = share;
  }
  while (cohorts.first < high && matured[cohorts.first] === 1) cohorts.first += 1;
  return sum * standing[last]!;
}

/** Number alive in a stage now. */
export function inStage({ number, here, from, to }: Cohorts, stage: number): number {
  const shares = here[stage]!;
  const high = to[stage]!;
  let sum = 0;
  for (let i = from[stage]!; i < high; i++) sum += number[i]! * shares[i]!;
  return sum;
}

/** Number alive in all stages together now. */
export function standingNumber(cohorts: Cohorts): number {
  let sum = 0;
  for (let stage = 0; stage < cohorts.here.length; stage++) sum += inStage(cohorts, stage);
  return sum;
}

/**
 * Takes the share `shares[stage]` of those alive in each stage and returns the number taken. A cohort that stands in
 * several stages is thinned as a whole by its mean share: it stands in two at most times.
 */
export function takeFromStages(cohorts: Cohorts, shares: Float64Array): number {
  const { number, here, from, to, first, end, alive, taken } = cohorts;
  alive.fill(0, first, end);
  taken.fill(0, first, end);
  for (let stage = 0; stage < here.length; stage++) {
    const standing = here[stage]!;
    const share = shares[stage]!;
    const high = to[stage]!;
    for (let i = from[stage]!; i < high; i++) {
      alive[i] = alive[i]! + standing[i]!;
      taken[i] = taken[i]! + standing[i]! * share;
    }
  }
  let sum = 0;
  for (let i = first; i < end; i++) {
    if (taken[i] === 0) continue;
    sum += number[i]! * taken[i]!;
    number[i] = number[i]! * (1 - taken[i]! / alive[i]!);
  }
  return sum;
}

/** Keeps the share `survival` of all young. */
export function thinYoung({ number, first, end }: Cohorts, survival: number): void {
  for (let i = first; i < end; i++) number[i] = number[i]! * survival;
}
