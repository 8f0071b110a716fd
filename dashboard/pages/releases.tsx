/** Releases and orders: what came, what was hung, what was washed, newest first, each with its undo. */
import type { LeafCheck, Order, Release, TrapCount, Treatment } from '../../services/model/index.ts';
import type { Recorded } from '../api.ts';
import { change, type Noun } from '../entries.ts';
import { PageHead, Section } from '../parts/section.tsx';
import { Shell } from '../parts/shell.tsx';
import { nowMs, place, placePath, resource } from '../state.ts';
import { dayAndMonth, dayWords, localDay } from '../words/dates.ts';
import { capital, enemyWords, leafKindWords, treatmentNames } from '../words/names.ts';
import { money } from '../words/numbers.ts';
import { EntryRow, type EntryWords } from './releases/entryRow.tsx';
import { OrderForm, ReleaseForm, TreatmentForm } from './releases/forms.tsx';
import { countWords } from './round/keep.ts';

const records = <T,>(noun: Noun) =>
  resource<{ records: Recorded<T>[] }>(placePath(noun)).value.data?.records ?? [];
const currency = () => place.value?.supplier?.currency;
const priceNote = (price: number | undefined) => (price === undefined ? '' : money(price, currency()));
const joined = (...parts: string[]) => parts.filter(Boolean).join(', ');

function releaseWords(record: Recorded<Release>): EntryWords {
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

function orderWords(record: Recorded<Order>): EntryWords {
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

function treatmentWords(record: Recorded<Treatment>): EntryWords {
  const { kind, time, coveredShare } = record.data;
  const note = `${Math.round(coveredShare * 100)} of 100 plants reached`;
  return { noun: 'treatments', record, timeMs: Date.parse(time), name: treatmentNames[kind], note };
}

function trapCountWords(record: Recorded<TrapCount>): EntryWords {
  const { time, trapId, counts, card } = record.data;
  const gap = card === 'lost' || card === 'down' ? `trap ${card}, a gap` : countWords(counts);
  return { noun: 'trap-counts', record, timeMs: Date.parse(time), name: `Trap ${trapId}`, note: gap };
}

function leafWords(record: Recorded<LeafCheck>): EntryWords {
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

const newestFirst = (a: EntryWords, b: EntryWords) => b.timeMs - a.timeMs;

function Parcel({ order }: { order: Recorded<Order> }) {
  const { enemy, number, expectedOn } = order.data;
  const arrive = () =>
    void change('orders', order.id, { ...order.data, arrivedAt: new Date(nowMs.value).toISOString() });
  return (
    <div class="parcel">
      <p>
        <strong>
          {number} {enemyWords[enemy].name}
        </strong>{' '}
        {expectedOn ? `due ${dayWords(expectedOn)}` : 'on the way'}. When the parcel comes: look at it the
        same day, keep a few in a jar.
      </p>
      <button type="button" class="key wide-key" onClick={arrive}>
        The parcel is here
      </button>
    </div>
  );
}

function List({ title, entries, empty }: { title: string; entries: EntryWords[]; empty: string }) {
  return (
    <Section title={title}>
      {entries.length === 0 && <p class="note">{empty}</p>}
      <ul class="entries">
        {entries.map((entry) => (
          <EntryRow key={`${entry.noun} ${entry.record.id}`} entry={entry} now={nowMs.value} />
        ))}
      </ul>
    </Section>
  );
}

function headSentence(releases: readonly Recorded<Release>[], waiting: readonly Recorded<Order>[]): string {
  const order = waiting[0]?.data;
  if (order) {
    return `${capital(enemyWords[order.enemy].name)}: on the way${order.expectedOn ? `, due ${dayWords(order.expectedOn)}` : ''}.`;
  }
  if (releases.length === 0) return 'Nothing released or ordered yet this season.';
  return releases.length === 1 ? 'One release this season.' : `${releases.length} releases this season.`;
}

export function Releases() {
  const releases = records<Release>('releases');
  const orders = records<Order>('orders');
  const waiting = orders.filter((each) => !each.data.arrivedAt);
  const done = [
    ...releases.map(releaseWords),
    ...orders.map(orderWords),
    ...records<Treatment>('treatments').map(treatmentWords),
  ].sort(newestFirst);
  const counted = [
    ...records<TrapCount>('trap-counts').map(trapCountWords),
    ...records<LeafCheck>('leaf-checks').map(leafWords),
  ].sort(newestFirst);
  const prices = [...releases, ...orders].map((each) => each.data.price ?? 0);
  const spent = Math.max(
    releases.reduce((sum, each) => sum + (each.data.price ?? 0), 0),
    orders.reduce((sum, each) => sum + (each.data.price ?? 0), 0),
  );
  return (
    <Shell>
      <PageHead
        sentence={headSentence(releases, waiting)}
        note={prices.some((price) => price > 0) && `Money so far: about ${money(spent, currency())}.`}
      />
      {waiting.map((order) => (
        <Parcel key={order.id} order={order} />
      ))}
      <div class="openings">
        <ReleaseForm />
        <OrderForm />
        <TreatmentForm />
      </div>
      <List
        title="Released, ordered, washed"
        entries={done}
        empty="What you enter above stands here, newest first."
      />
      <List title="Counted" entries={counted} empty="Counts of the round stand here." />
    </Shell>
  );
}
