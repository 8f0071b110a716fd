/**
 * Where the individuals of a cohort stand by age. Age is counted on the species' own clock: the integral of the rate
 * of development, egg (or birth) to adult = 1. The time to the end of a stage is gamma distributed about its mean, with
 * the same coefficient of variation for every stage and at every temperature (the same-shape property: Sharpe, Curry,
 * DeMichele & Cole 1977, J Theor Biol 66:21, from memory).
 */
import { gammaCdf } from '../numerics/distributions.ts';
import type { Development } from '../species/record.ts';

export interface Stage {
  name: string;
  /** Mean age at its end; egg to adult = 1. */
  exit: number;
  /** Share that lives through it without enemies. */
  survival: number;
}

/** Where those of one pace of development, or all of them, stand by age. */
export interface ShareTable {
  /** Rows of the tables per unit of age. */
  resolution: number;
  /** Shares of a cohort past stage i, and in it, at age row / resolution, had nobody died. */
  past: readonly Float64Array[];
  inStage: readonly Float64Array[];
  /** `past` once more, row by row: element row * stages + stage. */
  pastByAge: Float64Array;
  /** Ages between which anybody stands in stage i. */
  from: Float64Array;
  until: Float64Array;
}

export interface StageTable extends ShareTable {
  stages: readonly Stage[];
  /** The same for the fast and the slow half of a cohort: whoever is slow is so for life. */
  paces: readonly ShareTable[];
}

const resolution = 512;
/** Smaller shares count as nobody and larger ones as all, so that a cohort stands in few stages at a time. */
const negligible = 1e-5;

/** Coefficient of variation of the whole when one speed rules all stages: the mean weighted by length. */
export function wholeCv(development: Development): number {
  const total = totalDegreeDays(development);
  return development.stages.reduce((sum, stage) => sum + (stage.degreeDays * stage.cv) / total, 0);
}

/** Degree-days from egg (or birth) to adult. */
export function totalDegreeDays(development: Development): number {
  return development.stages.reduce((sum, stage) => sum + stage.degreeDays, 0);
}

/** The stages of a record on its clock, with the adults not yet laying as a last stage `waiting`. */
export function stagesOf(development: Development, preovipositionDegreeDays: number): Stage[] {
  const total = totalDegreeDays(development);
  let passed = 0;
  const young = development.stages.map((stage) => {
    passed += stage.degreeDays;
    return { name: stage.name, exit: passed / total, survival: stage.survival };
  });
  return [
    ...young,
    { name: 'waiting', exit: 1 + Math.max(preovipositionDegreeDays / total, 1e-3), survival: 1 },
  ];
}

/** Parts of the spread between the two paces and within each: their squares add up to 1. Judgement. */
const between = 0.7;
const within = Math.sqrt(1 - between * between);
/** Two equal parts with mean 0 and variance 1. */
const paceSteps = [-1, 1];

/** Tabulates the shares by age. `cv` is that of the time to the end of any stage. */
export function tabulateStages(stages: readonly Stage[], cv: number): StageTable {
  const paces = paceSteps.map((step) => {
    const slowness = 1 + between * cv * step;
    return tabulate(
      stages.map(({ exit }) => exit * slowness),
      within * cv,
    );
  });
  return {
    ...tabulate(
      stages.map(({ exit }) => exit),
      cv,
    ),
    stages,
    paces,
  };
}

function tabulate(exits: readonly number[], cv: number): ShareTable {
  const shape = 1 / (cv * cv);
  const passed = (age: number, exit: number) => {
    const share = age > 0 ? gammaCdf({ x: age / exit, shape, rate: shape }) : 0;
    return share < negligible ? 0 : share > 1 - negligible ? 1 : share;
  };
  const lastExit = exits.at(-1)!;
  let rows = Math.ceil(lastExit * resolution);
  while (passed(rows / resolution, lastExit) < 1) rows += 8;
  // One row more: the row after the last is read beside it.
  rows += 2;
  const past = exits.map((exit) =>
    Float64Array.from({ length: rows }, (_, row) => passed(row / resolution, exit)),
  );
  const inStage = past.map((column, i) =>
    column.map((share, row) => (i === 0 ? 1 : past[i - 1]![row]!) - share),
  );
  return {
    resolution,
    past,
    inStage,
    pastByAge: Float64Array.from(
      { length: rows * past.length },
      (_, at) => past[at % past.length]![Math.floor(at / past.length)]!,
    ),
    from: Float64Array.from(
      inStage,
      (column) => Math.max(0, column.findIndex((share) => share > 0) - 1) / resolution,
    ),
    until: Float64Array.from(
      inStage,
      (column) => (column.findLastIndex((share) => share > 0) + 1) / resolution,
    ),
  };
}

/** Linear interpolation in a column of the table; 0 before birth, the last row beyond the end. */
export function shareAt(table: ShareTable, column: Float64Array, age: number): number {
  if (age < 0) return 0;
  const position = age * table.resolution;
  if (position >= column.length - 1) return column[column.length - 1]!;
  const row = Math.floor(position);
  const low = column[row]!;
  return low + (position - row) * (column[row + 1]! - low);
}

/**
 * Share of a cohort alive while in stage i, against its number at birth: those who will die in a stage
 * die half at its beginning and half at its end. Element `stages.length` is the share that matures.
 * `hazardFactor` multiplies the hazard of every stage.
 */
export function standingShares(stages: readonly Stage[], hazardFactor: number): Float64Array {
  const standing = new Float64Array(stages.length + 1);
  let alive = 1;
  stages.forEach((stage, i) => {
    const survival = stage.survival ** hazardFactor;
    standing[i] = alive * Math.sqrt(survival);
    alive *= survival;
  });
  standing[stages.length] = alive;
  return standing;
}
