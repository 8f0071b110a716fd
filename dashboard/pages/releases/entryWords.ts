/** Each kind of entry in the words of its row. */

import type {
  DailyExtremes,
  LeafCheck,
  Order,
  Planting,
  Release,
  Trap,
  TrapCount,
  Treatment,
} from '../../../services/model/index.ts';
import type { Recorded } from '../../api.ts';
import { currency, zone } from '../../state.ts';
import { dayAndMonth, dayWords, instantOf, localDay } from '../../words/dates.ts';
import { inOwnHabits } from '../../words/habits.ts';
import { animals, capital, leafKindWords, treatmentNames } from '../../words/names.ts';
import { countedWords, money } from '../../words/numbers.ts';
import { countWords } from '../round/keep.ts';
import type { EntryWords } from './entryRow.tsx';

const priceNote = (price: number | undefined) => (price === undefined ? '' : money(price, currency.value));
const joined = (...parts: string[]) => parts.filter(Boolean).join(', ');

export function releaseWords(record: Recorded<Release>): EntryWords {
  const { enemy, form, number, time, aliveShare, price } = record.data;
  const alive = aliveShare < 1 ? `${Math.round(aliveShare * 100)} of 100 came alive` : '';
  const name = `${animals(number, enemy)} released`;
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
  const timeZone = zone.value;
  const arrived = arrivedAt ? `came ${dayAndMonth(localDay(Date.parse(arrivedAt), timeZone))}` : '';
  const due = !arrivedAt && expectedOn ? `due ${dayWords(expectedOn)}` : '';
  const name = `${animals(number, enemy)} ordered`;
  return {
    noun: 'orders',
    record,
    timeMs: Date.parse(orderedAt),
    name,
    note: joined(arrived, due, priceNote(price)),
  };
}

/** What is taken when nobody says how many plants were reached; not repeated as if it had been typed. */
const usualShare = 0.8;
const ofTen = (share: number) => `${Math.round(share * 100) / 10} of 10`;

export function treatmentWords(record: Recorded<Treatment>): EntryWords {
  const { kind, time, coveredShare } = record.data;
  const note = coveredShare === usualShare ? '' : `about ${ofTen(coveredShare)} plants reached`;
  return { noun: 'treatments', record, timeMs: Date.parse(time), name: treatmentNames[kind], note };
}

export function trapCountWords(record: Recorded<TrapCount>, traps: readonly Recorded<Trap>[]): EntryWords {
  const { time, trapId, card, exposureDays, note } = record.data;
  const name = traps.find((each) => each.data.id === trapId)?.data.name ?? trapId;
  const gap = card === 'lost' || card === 'down' ? `trap ${card}, a gap` : countWords(record.data);
  const hung = card === 'same' ? 'same trap as before' : '';
  const days = `${exposureDays} ${exposureDays === 1 ? 'day' : 'days'}`;
  return {
    noun: 'trap-counts',
    record,
    timeMs: Date.parse(time),
    name,
    note: joined(gap, hung, days, note ?? ''),
  };
}

/** Leaves with any; where all were counted too, how many in all. */
function seenWords({ kind, infestedLeaves, total }: LeafCheck['seen'][number]): string {
  const inAll = total === undefined ? '' : countedWords(total);
  const counted =
    infestedLeaves === undefined ? inAll || '0' : `${infestedLeaves}${inAll && ` (${inAll} in all)`}`;
  return `${leafKindWords[kind].name.toLowerCase()} ${counted}`;
}

export function leafWords(record: Recorded<LeafCheck>, plantings: readonly Recorded<Planting>[]): EntryWords {
  const { time, leaves, seen, plantingId, note = '' } = record.data;
  const crop = plantings.find(({ id }) => id === plantingId)?.data.crop ?? plantingId;
  return {
    noun: 'leaf-checks',
    record,
    timeMs: Date.parse(time),
    name: `${leaves} ${leaves === 1 ? 'leaf' : 'leaves'}${crop ? ` of ${crop.toLowerCase()}` : ''}`,
    note: joined(...seen.map(seenWords), note),
  };
}

export interface Sighting {
  id: string;
  time: string;
  what: string;
  note?: string;
}
export function sightingWords(record: Recorded<Sighting>): EntryWords {
  const { time, what, note = '' } = record.data;
  return { noun: 'sightings', record, timeMs: Date.parse(time), name: `${capital(what)} seen`, note };
}

export function extremesWords(record: Recorded<DailyExtremes>): EntryWords {
  const { day, minC, maxC } = record.data;
  const timeMs = instantOf(day, 12, zone.value);
  return {
    noun: 'daily-extremes',
    record,
    timeMs,
    name: inOwnHabits(`${minC} to ${maxC} °C`),
    note: 'lowest and highest',
  };
}
