/** What became of a message at one place. */
import type { Refusal } from '../refusals.ts';

export interface Result {
  placeId?: string;
  /** For the page of arrivals: how it was read, or why it was not. */
  readAs: string;
  changed?: 'reading' | 'record';
  /** The page of arrivals has it already: it was written with the readings. */
  noted?: true;
  /** All or part of the message could not be used, so it is kept in quarantine. */
  refusal?: Refusal;
}

export function refused(placeId: string | undefined, refusal: Refusal): Result {
  return { ...(placeId !== undefined && { placeId }), readAs: `Not used: ${refusal.reason}`, refusal };
}
