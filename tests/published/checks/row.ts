/** What a check against a published value is, and how it is judged. */
import type { SpeciesId } from '../../../services/model/season.ts';
import type { Mark } from '../../../services/model/species/record.ts';

export type AnySpeciesId = SpeciesId;

export const noRecord = 'no record yet';

/** A number or truth of ours, or in words why there is none. */
export type Answer = number | boolean | string;

/** As a share of the published value, in its unit, or as bounds; absent where none was asked: shown, not judged. */
export type Tolerance = { share: number } | { within: number } | { from: number; to: number };

interface Common {
  /** `C1`..`C22` of pests, `E1`..`E29` of natural enemies, `D` for days beyond those lists. */
  id: string;
  /** An id of the catalogue, or in words what has no record there. */
  species: string;
  what: string;
  source: string;
  /** SEEN in print, from memory, derived; `same`: the source is that of the parameter in use. */
  mark: Mark | 'same';
  note?: string;
}

export interface NumberRow extends Common {
  kind: 'number';
  published: number;
  /** As printed, where it is not one number. */
  printed?: string;
  unit: string;
  tolerance?: Tolerance;
  ours: () => Answer;
  /** Why it lies outside its tolerance. A row with a reason must lie outside, one without inside. */
  reason?: string;
}

/** An order, a sign, an outcome. */
export interface OutcomeRow extends Common {
  kind: 'outcome';
  published: string;
  ours: () => Answer;
  reason?: string;
}

/** A check that nothing in the tool can answer yet. */
export interface OpenRow extends Common {
  kind: 'open';
  published: string;
  notAnswered: string;
}

export type Row = NumberRow | OutcomeRow | OpenRow;

export type Verdict = 'within' | 'outside' | 'shown' | 'not answered';

export interface Judged {
  row: Row;
  answer: Answer;
  verdict: Verdict;
}

/** Works a row out and compares it with what is published. */
export function judge(row: Row): Judged {
  if (row.kind === 'open') return { row, answer: row.notAnswered, verdict: 'not answered' };
  const answer = row.ours();
  return { row, answer, verdict: verdictOf(row, answer) };
}

function verdictOf(row: NumberRow | OutcomeRow, answer: Answer): Verdict {
  if (answer === noRecord) return 'not answered';
  if (row.kind === 'outcome') return answer === true ? 'within' : 'outside';
  if (row.tolerance === undefined) return 'shown';
  return typeof answer === 'number' && isWithin(row.published, row.tolerance, answer) ? 'within' : 'outside';
}

function isWithin(published: number, tolerance: Tolerance, ours: number): boolean {
  if ('share' in tolerance) return Math.abs(ours / published - 1) <= tolerance.share;
  if ('within' in tolerance) return Math.abs(ours - published) <= tolerance.within;
  return ours >= tolerance.from && ours <= tolerance.to;
}
