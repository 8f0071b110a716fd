/** Checks that need other records: does what is named exist, and could it have happened then? */
import { type Refusal, RefusalError } from '../refusals.ts';
import type { RecordData, RecordKind, Records } from '../store/store.ts';

type Lookup = Pick<Records, 'get'>;

/** Throws a refusal when a count names no trap of this place or was made before the trap was hung. */
export function checkReferences(records: Lookup, kind: RecordKind, placeId: string, data: object): void {
  if (kind === 'trapCount') checkTrapCount(records, placeId, data as RecordData['trapCount']);
  if (kind === 'leafCheck') checkLeafCheck(records, placeId, data as RecordData['leafCheck']);
}

function checkTrapCount(records: Lookup, placeId: string, count: RecordData['trapCount']): void {
  const trap = records.get('trap', placeId, count.trapId);
  if (!trap) throw unknown('trapId', 'trap', count.trapId);
  const { hungAt } = trap.data;
  if (Date.parse(count.time) < Date.parse(hungAt)) {
    throw new RefusalError({
      code: 'count-before-trap',
      reason: `The count is dated ${count.time}, and trap ${count.trapId} was hung at ${hungAt}. Nothing was changed.`,
      issues: [{ path: 'time', expected: `send a time at or after ${hungAt}`, received: count.time }],
    });
  }
}

function checkLeafCheck(records: Lookup, placeId: string, check: RecordData['leafCheck']): void {
  if (check.plantingId === undefined) return;
  const planting = records.get('planting', placeId, check.plantingId);
  if (!planting) throw unknown('plantingId', 'planting', check.plantingId);
}

function unknown(path: string, noun: string, received: string): RefusalError {
  const refusal: Refusal = {
    code: 'reference-unknown',
    reason: `There is no ${noun} ${received} in this place. Nothing was changed.`,
    issues: [{ path, expected: `send the id of a ${noun} of this place`, received }],
  };
  return new RefusalError(refusal);
}
