/**
 * Births by day as cohorts (renewal form). A cohort keeps its number at birth, thinned by whatever takes
 * from it besides the deaths of its stages; its stages follow from its age alone.
 */
import { type StageTable, shareAt } from './stages.ts';

export interface Cohorts {
  table: StageTable;
  /** Share standing in each stage, then the share that matures (standingShares). */
  standing: Float64Array;
  clockAtBirth: Float64Array;
  number: Float64Array;
  /** Cohorts first..end-1 may still hold young. */
  first: number;
  end: number;
  /** Share of each cohort alive in each stage, [cohort * stages + stage], when the clock stands at `hereAt`. */
  here: Float64Array;
  hereAt: number;
}

/** No cohorts yet; room for `capacity` births. Insects per m2. */
export function noCohorts(table: StageTable, standing: Float64Array, capacity: number): Cohorts {
  return {
    table,
    standing,
    clockAtBirth: new Float64Array(capacity),
    number: new Float64Array(capacity),
    first: 0,
    end: 0,
    here: new Float64Array(capacity * table.stages.length),
    hereAt: Number.NaN,
  };
}

/** Adds a cohort born when the clock stood at `clockAtBirth`. Cohorts need not come in order of age. */
export function addBirths(cohorts: Cohorts, clockAtBirth: number, number: number): void {
  if (!(number > 0)) return;
  if (cohorts.end === cohorts.number.length) throw new RangeError('more births than room for cohorts');
  cohorts.clockAtBirth[cohorts.end] = clockAtBirth;
  cohorts.number[cohorts.end] = number;
  cohorts.end += 1;
  cohorts.hereAt = Number.NaN;
}

/** Works out where everybody stands, once for all that hunt or count at the same time. */
export function standAt(cohorts: Cohorts, clock: number): void {
  if (cohorts.hereAt === clock) return;
  const { table, standing, clockAtBirth, here } = cohorts;
  const { packed } = table;
  const stages = table.stages.length;
  for (let i = cohorts.first; i < cohorts.end; i++) {
    const position = Math.min(Math.max(0, clock - clockAtBirth[i]!), table.allMatured) * table.resolution;
    const row = Math.floor(position);
    const part = position - row;
    let from = row * stages;
    let to = i * stages;
    for (let stage = 0; stage < stages; stage++, from++, to++) {
      const low = packed[from]!;
      here[to] = standing[stage]! * (low + part * (packed[from + stages]! - low));
    }
  }
  cohorts.hereAt = clock;
}

/** Number that leaves the last stage alive while the clock goes from `from` to `to`. */
export function maturing(cohorts: Cohorts, from: number, to: number): number {
  const { table, standing, clockAtBirth, number } = cohorts;
  let sum = 0;
  for (let i = cohorts.first; i < cohorts.end; i++) {
    const age = to - clockAtBirth[i]!;
    if (age <= table.firstMaturing) continue;
    const before = from - clockAtBirth[i]!;
    if (before >= table.allMatured) {
      if (i === cohorts.first) cohorts.first += 1;
      continue;
    }
    sum += number[i]! * (shareAt(table, table.matured, age) - shareAt(table, table.matured, before));
  }
  return sum * standing[table.stages.length]!;
}

/** Number alive in stage `stage` when the clock stands at `clock`, not before the last birth. */
export function inStage(cohorts: Cohorts, stage: number, clock: number): number {
  const { table, here, number, clockAtBirth } = cohorts;
  const stages = table.stages.length;
  let sum = 0;
  if (cohorts.hereAt === clock) {
    for (let i = cohorts.first; i < cohorts.end; i++) sum += number[i]! * here[i * stages + stage]!;
    return sum;
  }
  const column = table.inStage[stage]!;
  for (let i = cohorts.first; i < cohorts.end; i++) {
    sum += number[i]! * shareAt(table, column, clock - clockAtBirth[i]!);
  }
  return sum * cohorts.standing[stage]!;
}

/** Number alive in all stages together when the clock stands at `clock`. */
export function standingNumber(cohorts: Cohorts, clock: number): number {
  standAt(cohorts, clock);
  let sum = 0;
  for (let stage = 0; stage < cohorts.table.stages.length; stage++) sum += inStage(cohorts, stage, clock);
  return sum;
}

/**
 * Takes the share `factor` x `takenShares[stage]` of those alive in each stage and returns the number taken. A
 * cohort that stands in several stages is thinned as a whole by its mean share: it stands in two at most times.
 */
export function takeFromStages(
  cohorts: Cohorts,
  takenShares: Float64Array,
  clock: number,
  factor = 1,
): number {
  standAt(cohorts, clock);
  const { here, number } = cohorts;
  const stages = takenShares.length;
  let total = 0;
  for (let i = cohorts.first; i < cohorts.end; i++) {
    let alive = 0;
    let taken = 0;
    for (let stage = 0; stage < stages; stage++) {
      const standing = here[i * stages + stage]!;
      alive += standing;
      taken += standing * takenShares[stage]!;
    }
    if (!(taken > 0)) continue;
    taken *= factor;
    total += number[i]! * taken;
    number[i] = number[i]! * (1 - taken / alive);
  }
  return total;
}
