/** Releases and orders: what came, what was hung, what was washed, newest first, each with its undo. */
import type {
  DailyExtremes,
  LeafCheck,
  Order,
  Planting,
  Release,
  ReleaseFollowUp,
  Trap,
  TrapCount,
  Treatment,
} from '../../services/model/index.ts';
import type { Outcome, Recorded } from '../api.ts';
import { change, type Noun } from '../entries.ts';
import { tellRefused } from '../notices.ts';
import { OwnerOnly, ownerEnters } from '../parts/ownerOnly.tsx';
import { PageHead, Section } from '../parts/section.tsx';
import { Shell } from '../parts/shell.tsx';
import { nowMs, placePath, resource, today } from '../state.ts';
import { dayWords } from '../words/dates.ts';
import { animals, capital, enemyWords } from '../words/names.ts';
import { money, unbroken } from '../words/numbers.ts';
import { parcelCare } from '../words/parcel.ts';
import { type Entry, EntryRow, type EntryWords } from './releases/entryRow.tsx';
import {
  extremesWords,
  leafWords,
  orderWords,
  releaseWords,
  type Sighting,
  sightingWords,
  trapCountWords,
  treatmentWords,
} from './releases/entryWords.ts';
import { FollowUps } from './releases/followUp.tsx';
import { OrderForm, ReleaseForm, TreatmentForm } from './releases/forms.tsx';
import { notSetOut, onTheWay } from './releases/onTheWay.ts';
import { TakenBack } from './releases/takenBack.tsx';
import type { ShoppingAnswer } from './shopping.tsx';

const records = <T,>(noun: Noun) =>
  resource<{ records: Recorded<T>[] }>(placePath(noun)).value.data?.records ?? [];

const newestFirst = (a: EntryWords, b: EntryWords) => b.timeMs - a.timeMs;

function Parcel({ order }: { order: Recorded<Order> }) {
  const { enemy, number, expectedOn } = order.data;
  const arrive = async () => {
    const arrivedAt = new Date(nowMs.value).toISOString();
    const answer = await change('orders', order.id, { ...order.data, arrivedAt });
    if (!answer.ok) tellRefused(answer.refused);
  };
  return (
    <div class="parcel">
      <p>
        <strong>{animals(number, enemy)}</strong> {expectedOn ? `due ${dayWords(expectedOn)}` : 'on the way'}.{' '}
        {unbroken(parcelCare(expectedOn, today.value))}
      </p>
      <OwnerOnly>
        <button type="button" class="key wide-key" onClick={() => void arrive()}>
          The parcel is here
        </button>
      </OwnerOnly>
    </div>
  );
}

const entriesOf = <T,>(all: readonly Recorded<T>[], words: (record: Recorded<T>) => EntryWords): Entry[] =>
  all.map((record) => ({ ...words(record), told: (version) => words(version as Recorded<T>) }));

function Rows({ entries }: { entries: readonly Entry[] }) {
  return (
    <ul class="entries">
      {entries.map((entry) => (
        <EntryRow key={`${entry.noun} ${entry.record.id}`} entry={entry} now={nowMs.value} />
      ))}
    </ul>
  );
}

const shownAtOnce = 6;

function List({ title, entries, empty }: { title: string; entries: Entry[]; empty: string }) {
  const earlier = entries.slice(shownAtOnce);
  return (
    <Section title={title}>
      {entries.length === 0 && <p class="note">{empty}</p>}
      <Rows entries={entries.slice(0, shownAtOnce)} />
      {earlier.length > 0 && (
        <details>
          <summary>Earlier ones, {earlier.length}</summary>
          <Rows entries={earlier} />
        </details>
      )}
    </Section>
  );
}

function headSentence(
  releases: readonly Recorded<Release>[],
  waiting: readonly Recorded<Order>[],
  newest: ReleaseFollowUp | undefined,
): string {
  const order = waiting[0]?.data;
  if (order?.arrivedAt) return `${capital(enemyWords[order.enemy].name)}: here, ready to be set out.`;
  if (order) {
    return `${capital(enemyWords[order.enemy].name)}: on the way${order.expectedOn ? `, due ${dayWords(order.expectedOn)}` : ''}.`;
  }
  if (newest) return newest.next.text;
  if (releases.length === 0) return 'Nothing released or ordered yet this season.';
  return releases.length === 1 ? 'One release this season.' : `${releases.length} releases this season.`;
}

export function Releases() {
  const releases = records<Release>('releases');
  const orders = records<Order>('orders');
  const treatments = records<Treatment>('treatments');
  const traps = records<Trap>('traps');
  const plantings = records<Planting>('plantings');
  const waiting = onTheWay(orders, releases);
  const unreleased = notSetOut(orders, releases);
  const done = [
    ...entriesOf(releases, releaseWords),
    ...entriesOf(orders, orderWords),
    ...entriesOf(treatments, treatmentWords),
  ].sort(newestFirst);
  const counted = [
    ...entriesOf(records<TrapCount>('trap-counts'), (each) => trapCountWords(each, traps)),
    ...entriesOf(records<LeafCheck>('leaf-checks'), (each) => leafWords(each, plantings)),
    ...entriesOf(records<Sighting>('sightings'), sightingWords),
  ].sort(newestFirst);
  const warmth = entriesOf(records<DailyExtremes>('daily-extremes'), extremesWords).sort(newestFirst);
  const spent = resource<ShoppingAnswer>(placePath('shopping')).value.data;
  const followUp = resource<Outcome | null>(placePath('outcome')).value.data?.advice.followUp;
  return (
    <Shell>
      <PageHead
        sentence={unbroken(headSentence(releases, unreleased, followUp?.releases[0]))}
        note={
          spent &&
          spent.thisSeason.totalToDate > 0 &&
          `Money this season: about ${money(spent.thisSeason.totalToDate, spent.currency)}.`
        }
      />
      {waiting.map((order) => (
        <Parcel key={order.id} order={order} />
      ))}
      <div class="openings">
        <OwnerOnly line={ownerEnters}>
          <ReleaseForm waiting={unreleased} treatments={treatments} />
          <OrderForm />
        </OwnerOnly>
        <TreatmentForm releases={releases} />
      </div>
      <a class="text-link" href="/shopping">
        Shopping list, prices and sums
      </a>
      {followUp && <FollowUps releases={followUp.releases} currency={followUp.currency} />}
      <List
        title="Released, ordered, washed"
        entries={done}
        empty="What you enter above stands here, newest first."
      />
      <List title="Counted and seen" entries={counted} empty="What you enter in the round stands here." />
      <List
        title="Lowest and highest"
        entries={warmth}
        empty="Days typed in under Sensors or in the round stand here."
      />
      <TakenBack
        telling={[
          { noun: 'releases', words: releaseWords },
          { noun: 'orders', words: orderWords },
          { noun: 'treatments', words: treatmentWords },
          { noun: 'trap-counts', words: (each) => trapCountWords(each, traps) },
          { noun: 'leaf-checks', words: (each) => leafWords(each, plantings) },
          { noun: 'sightings', words: sightingWords },
          { noun: 'daily-extremes', words: extremesWords },
        ]}
      />
    </Shell>
  );
}
