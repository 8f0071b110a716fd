/** Each kind of entry in the words of its row. */
import type { LeafCheck, Order, Release, Trap, TrapCount, Treatment } from '../../../services/model/index.ts';
import type { Recorded } from '../../api.ts';
import { place } from '../../state.ts';
import { dayAndMonth, dayWords, localDay } from '../../words/dates.ts';
import { enemyWords, leafKindWords, treatmentNames } from '../../words/names.ts';
import { money } from '../../words/numbers.ts';
import { countWords } from '../round/keep.ts';
import type { EntryWords } from './entryRow.tsx';

export const currency = () => place.value?.supplier?.currency;
const priceNote = (price: number | undefined) => (price === undefined ? '' : money(price, currency()));
const joined = (...parts: string[]) => parts.filter(Boolean).join(', ');

export function releaseWords(record: Recorded<Release>): EntryWords {
  const { enemy, form, number, time, aliveShare, price } = record.data;
  const alive = aliveShare < 1 ? `${Math.round(aliveShare * 100)} of 100 came alive` : '';
  const name = `${number} ${enemyWords[enemy].name} released`;
  return {
    noun: 'releases',
    record,
    timeMs: Date.parse(time),
    name,
    note: joined(form, alive, priceNote(price)),
  };
}

export function orderWords(record: Recorded<Order>): EntryWords {
  const { enemy, number, orderedAt, expectedOn, arrivedAt, price } = record.data;
  const timeZone = place.value?.timeZone ?? 'UTC';
  const arrived = arrivedAt ? `came ${dayAndMonth(localDay(Date.parse(arrivedAt), timeZone))}` : '';
  const due = !arrivedAt && expectedOn ? `due ${dayWords(expectedOn)}` : '';
  const name = `${number} ${enemyWords[enemy].name} ordered`;
  return {
    noun: 'orders',
    record,
    timeMs: Date.parse(orderedAt),
    name,
    note: joined(arrived, due, priceNote(price)),
  };
}

export function treatmentWords(record: Recorded<Treatment>): EntryWords {
  const { kind, time, coveredShare } = record.data;
  const note = `${Math.round(coveredShare * 100)} of 100 plants reached`;
  return { noun: 'treatments', record, timeMs: Date.parse(time), name: treatmentNames[kind], note };
}

export function trapCountWords(record: Recorded<TrapCount>, traps: readonly Recorded<Trap>[]): EntryWords {
  const { time, trapId, card } = record.data;
  const name = traps.find((each) => each.data.id === trapId)?.data.name ?? trapId;
  const gap = card === 'lost' || card === 'down' ? `trap ${card}, a gap` : countWords(record.data);
  return { noun: 'trap-counts', record, timeMs: Date.parse(time), name, note: gap };
}

export function leafWords(record: Recorded<LeafCheck>): EntryWords {
  const { time, leaves, seen } = record.data;
  const words = seen.map(
    (each) => `${leafKindWords[each.kind].name.toLowerCase()} ${each.infestedLeaves ?? 'counted'}`,
  );
  return {
    noun: 'leaf-checks',
    record,
    timeMs: Date.parse(time),
    name: `${leaves} leaves`,
    note: words.join(', '),
  };
}
