/**
 * What an entry says about others and about time, checked alike however it came: does what it names exist,
 * and could it have happened then?
 */
import type { Refusal } from './refusals.ts';
import type { RecordData, RecordKind, Records } from './store/store.ts';

type Lookup = Pick<Records, 'get'>;

/** Clocks of phone and house may differ by this much. */
const aheadMs = 5 * 60_000;
/** No local day begins earlier than this before the same day in UTC: the easternmost zone is UTC+14. */
const easternmostMs = 14 * 3_600_000;

/** Fields that say when something happened. */
const pastFields = ['time', 'hungAt', 'takenDownAt', 'orderedAt', 'arrivedAt'];

/** Why an entry cannot be kept in this place; undefined when it can. */
export function entryRefusal<K extends RecordKind>(
  records: Lookup,
  entry: { kind: K; placeId: string; data: RecordData[K]; nowMs: number },
): Refusal | undefined {
  const { placeId, data, nowMs } = entry;
  const ahead = dateAhead(data, nowMs);
  if (ahead) return ahead;
  if (entry.kind === 'trapCount') return trapCountRefusal(records, placeId, data as RecordData['trapCount']);
  if (entry.kind === 'leafCheck') return leafCheckRefusal(records, placeId, data as RecordData['leafCheck']);
  return undefined;
}

function dateAhead(data: object, nowMs: number): Refusal | undefined {
  const latest = (field: string) => nowMs + (field === 'day' ? easternmostMs : aheadMs);
  const ahead = Object.entries(data).find(
    ([field, value]) =>
      (field === 'day' || pastFields.includes(field)) && Date.parse(String(value)) > latest(field),
  );
  if (!ahead) return undefined;
  const [path, received] = [ahead[0], String(ahead[1])];
  const now = new Date(nowMs).toISOString();
  return {
    code: 'date-ahead',
    reason: `The entry is dated ${received}, and it is ${now} now. Nothing was changed.`,
    issues: [{ path, expected: `send a ${path === 'day' ? 'day' : 'time'} up to ${now}`, received }],
  };
}

function trapCountRefusal(
  records: Lookup,
  placeId: string,
  count: RecordData['trapCount'],
): Refusal | undefined {
  const trap = records.get('trap', placeId, count.trapId);
  if (!trap) return unknown('trapId', 'trap', count.trapId);
  const { hungAt } = trap.data;
  if (Date.parse(count.time) >= Date.parse(hungAt)) return undefined;
  return {
    code: 'count-before-trap',
    reason: `The count is dated ${count.time}, and trap ${count.trapId} was hung at ${hungAt}. Nothing was changed.`,
    issues: [{ path: 'time', expected: `send a time at or after ${hungAt}`, received: count.time }],
  };
}

function leafCheckRefusal(
  records: Lookup,
  placeId: string,
  check: RecordData['leafCheck'],
): Refusal | undefined {
  const { plantingId } = check;
  if (plantingId === undefined || records.get('planting', placeId, plantingId)) return undefined;
  return unknown('plantingId', 'planting', plantingId);
}

function unknown(path: string, noun: string, received: string): Refusal {
  return {
    code: 'reference-unknown',
    reason: `There is no ${noun} ${received} in this place. Nothing was changed.`,
    issues: [{ path, expected: `send the id of a ${noun} of this place`, received }],
  };
}
