/**
 * Births by day as cohorts, oldest first. How many of a cohort pass the end of each stage in a day follows from its age
 * alone; what is taken is taken from those who stand in the stage, so that eating eggs spares larvae of the same day.
 * A cohort stands in a few stages at a time, so each stage keeps the range of cohorts that anybody stands in.
 */
import { columns } from '../numerics/columns.ts';
import { type ShareTable, type StageTable, shareAt } from './stages.ts';

export interface Cohorts {
  table: StageTable;
  /** Share alive in each stage, then of those who mature (standingShares). */
  standing: Float64Array;
  /** Everybody stands where they do at this clock. */
  clock: number;
  clockAtBirth: Float64Array;
  /** Cohorts first..end-1 may still hold young. */
  first: number;
  end: number;
  /** By pace of development: the slow and the fast half of every cohort. */
  paces: readonly Pace[];
  /** Scratch by cohort: those who enter a stage, alive, and had nobody died. */
  entering: Float64Array;
  enteringShare: Float64Array;
}

interface Pace {
  table: ShareTable;
  stages: readonly StageColumns[];
}

/** One stage of all cohorts; those from..to-1 may stand in it. */
interface StageColumns {
  from: number;
  to: number;
  /** Number alive. */
  number: Float64Array;
  /** Share of the cohort in the stage, and past it, had nobody died. */
  share: Float64Array;
  past: Float64Array;
  /** Share of those leaving the stage that lives on in the next. */
  crossing: number;
}

/** No cohorts yet, at clock 0; room for `capacity` births. Insects per m2. */
export function noCohorts(table: StageTable, standing: Float64Array, capacity: number): Cohorts {
  const each = 3 * table.stages.length;
  const [clockAtBirth, entering, enteringShare, ...rest] = columns(3 + each * table.paces.length, capacity);
  return {
    table,
    standing,
    clock: 0,
    clockAtBirth: clockAtBirth!,
    first: 0,
    end: 0,
    paces: table.paces.map((pace, p) => ({
      table: pace,
      stages: table.stages.map((_, i) => ({
        from: 0,
        to: 0,
        number: rest[each * p + 3 * i]!,
        share: rest[each * p + 3 * i + 1]!,
        past: rest[each * p + 3 * i + 2]!,
        crossing: standing[i + 1]! / standing[i]!,
      })),
    })),
    entering: entering!,
    enteringShare: enteringShare!,
  };
}

/** Makes cohorts stand as others of the same table do; there must be room for them. */
export function copyCohorts(into: Cohorts, from: Cohorts): void {
  const { first, end } = from;
  into.clock = from.clock;
  into.first = first;
  into.end = end;
  const copy = (to: Float64Array, of: Float64Array) => to.set(of.subarray(first, end), first);
  copy(into.clockAtBirth, from.clockAtBirth);
  into.paces.forEach(({ stages }, pace) => {
    stages.forEach((stage, i) => {
      const of = from.paces[pace]!.stages[i]!;
      stage.from = of.from;
      stage.to = of.to;
      copy(stage.number, of.number);
      copy(stage.share, of.share);
      copy(stage.past, of.past);
    });
  });
}

/** Adds `number` born when the clock stood at `clockAtBirth`, not after now; they stand where their age says, with others of that age. */
export function addBirths(cohorts: Cohorts, clockAtBirth: number, number: number): void {
  if (!(number > 0)) return;
  const { paces, standing } = cohorts;
  let at = cohorts.end;
  while (at > cohorts.first && cohorts.clockAtBirth[at - 1]! > clockAtBirth) at -= 1;
  const isNew = at === cohorts.first || cohorts.clockAtBirth[at - 1] !== clockAtBirth;
  if (isNew) openCohort(cohorts, at, clockAtBirth);
  else at -= 1;
  const age = cohorts.clock - clockAtBirth;
  for (const pace of paces) {
    let before = 1;
    for (let i = 0; i < pace.stages.length; i++) {
      const stage = pace.stages[i]!;
      const past = shareAt(pace.table, pace.table.past[i]!, age);
      stage.past[at] = past;
      stage.share[at] = before - past;
      stage.number[at] = stage.number[at]! + (number / paces.length) * standing[i]! * (before - past);
      before = past;
      widen(cohorts, pace, i);
    }
  }
}

/** An empty cohort at `at`; where others were born later they make room, and ranges begin anew. */
function openCohort(cohorts: Cohorts, at: number, bornAt: number): void {
  const { clockAtBirth, paces, first, end } = cohorts;
  if (end === clockAtBirth.length) throw new RangeError('more births than room for cohorts');
  clockAtBirth.copyWithin(at + 1, at, end);
  clockAtBirth[at] = bornAt;
  cohorts.end += 1;
  for (const { stages } of paces) {
    for (const stage of stages) {
      if (at < end) {
        for (const column of [stage.number, stage.share, stage.past]) column.copyWithin(at + 1, at, end);
        stage.from = first;
        stage.to = first;
      }
      stage.number[at] = 0;
    }
  }
}

/** Lets in the cohorts that have come of age for a stage. */
function widen({ clockAtBirth, clock, end }: Cohorts, { table, stages }: Pace, i: number): void {
  const stage = stages[i]!;
  const from = table.from[i]!;
  while (stage.to < end && clock - clockAtBirth[stage.to]! >= from) stage.to += 1;
}

/** Moves everybody on to `clock`; returns the number that leaves the last stage alive meanwhile. */
export function growTo(cohorts: Cohorts, clock: number): number {
  cohorts.clock = clock;
  let matured = 0;
  let first = cohorts.end;
  for (const pace of cohorts.paces) {
    matured += passOn(cohorts, pace);
    first = Math.min(first, pace.stages.at(-1)!.from);
  }
  cohorts.first = first;
  return matured;
}

/** The same for those of one pace, stage by stage: who leaves one enters the next, and may leave that too. */
function passOn(cohorts: Cohorts, pace: Pace): number {
  const { clock, clockAtBirth, entering, enteringShare, first, end } = cohorts;
  const { table, stages } = pace;
  const { resolution } = table;
  entering.fill(0, first, end);
  enteringShare.fill(0, first, end);
  let leavingLast = 0;
  for (let i = 0; i < stages.length; i++) {
    const stage = stages[i]!;
    const { number, share, past, crossing } = stage;
    const column = table.past[i]!;
    const lastRow = column.length - 2;
    widen(cohorts, pace, i);
    leavingLast = 0;
    for (let at = stage.from; at < stage.to; at++) {
      const position = (clock - clockAtBirth[at]!) * resolution;
      let now = 1;
      if (position < lastRow) {
        const row = position | 0;
        const low = column[row]!;
        now = low + (position - row) * (column[row + 1]! - low);
      }
      const passing = now - past[at]!;
      const standing = share[at]! + enteringShare[at]!;
      const alive = number[at]! + entering[at]!;
      const all = passing >= standing;
      const leaving = all ? alive : (alive * passing) / standing;
      past[at] = now;
      share[at] = all ? 0 : standing - passing;
      number[at] = alive - leaving;
      enteringShare[at] = passing;
      entering[at] = leaving * crossing;
      leavingLast += leaving;
    }
    const until = table.until[i]!;
    while (stage.from < stage.to && clock - clockAtBirth[stage.from]! >= until) stage.from += 1;
  }
  return leavingLast * stages.at(-1)!.crossing;
}

/** Number alive in a stage now. */
export function inStage({ paces }: Cohorts, i: number): number {
  let sum = 0;
  for (const { stages } of paces) {
    const { number, from, to } = stages[i]!;
    for (let at = from; at < to; at++) sum += number[at]!;
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
  let sum = 0;
  let ages = 0;
  for (const pace of cohorts.paces) {
    for (let i = 0; i < stages; i++) {
      const { number, from, to } = pace.stages[i]!;
      for (let at = from; at < to; at++) {
        sum += number[at]!;
        ages += number[at]! * Math.min(1, cohorts.clock - cohorts.clockAtBirth[at]!);
      }
    }
  }
  return ages / sum;
}

/** Takes the share `shares[stage]` of those alive in each stage and returns the number taken. */
export function takeFromStages({ paces }: Cohorts, shares: Float64Array): number {
  let taken = 0;
  for (const { stages } of paces) {
    for (let i = 0; i < stages.length; i++) {
      const share = shares[i]!;
      if (share === 0) continue;
      const { number, from, to } = stages[i]!;
      const kept = 1 - share;
      for (let at = from; at < to; at++) {
        taken += number[at]! * share;
        number[at] = number[at]! * kept;
      }
    }
  }
  return taken;
}

/** Keeps the share `survival` of all young. */
export function thinYoung({ paces }: Cohorts, survival: number): void {
  for (const { stages } of paces) {
    for (const { number, from, to } of stages) {
      for (let at = from; at < to; at++) number[at] = number[at]! * survival;
    }
  }
}
