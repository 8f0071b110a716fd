/** The shopping list: what to order by when, what is on the way, what it costs. */
import type { EnemyId, Order, PestId } from '../../services/model/index.ts';
import { Almanac, Line } from '../parts/almanac.tsx';
import { OwnerOnly, ownerEnters } from '../parts/ownerOnly.tsx';
import { PageHead, Section } from '../parts/section.tsx';
import { Shell } from '../parts/shell.tsx';
import { type Spending, Spent } from '../parts/spent.tsx';
import { Table } from '../parts/table.tsx';
import { placePath, resource } from '../state.ts';
import { dayWords } from '../words/dates.ts';
import { capital, enemyWords, pestNames } from '../words/names.ts';
import { money } from '../words/numbers.ts';
import { type OrderSum, orderSumWords } from '../words/parcel.ts';

interface Parcel {
  orderBy: string;
  arrivesOn: string;
  items: {
    enemy: EnemyId;
    number: number;
    words: string;
    sum?: OrderSum;
    pests: PestId[];
    waitsDays: number;
    price?: number;
  }[];
  price?: number;
  fee?: number;
  spared?: number;
  currency?: string;
}
export interface ShoppingAnswer {
  parcels: Parcel[];
  onTheWay: (Order & { words: string })[];
  prices: { enemy: EnemyId; day: string; perAnimal: number; from: 'order' | 'supplier' }[];
  thisSeason: Spending;
  lastSeason: Spending;
  currency?: string;
}

const days = (n: number) => (n === 1 ? '1 day' : `${n} days`);

function itemNote({ pests, waitsDays, sum, number }: Parcel['items'][number]): string {
  const notes = [
    `for ${pests.map((pest) => pestNames[pest]).join(' and ')}`,
    sum && orderSumWords(sum, number),
    waitsDays > 0 && `waits ${days(waitsDays)} for the rest`,
  ];
  return notes.filter(Boolean).join('; ');
}

function ParcelPart({ parcel }: { parcel: Parcel }) {
  const { items, currency, fee, price, spared } = parcel;
  return (
    <Section title={`Order by ${dayWords(parcel.orderBy)}`} beside={`comes ${dayWords(parcel.arrivesOn)}`}>
      <Almanac>
        {items.map((item) => (
          <Line
            key={item.enemy}
            name={item.words}
            value={item.price === undefined ? 'no price' : money(item.price, currency)}
            note={itemNote(item)}
          />
        ))}
        {fee !== undefined && fee > 0 && <Line name="Fee of the parcel" value={money(fee, currency)} />}
        {price !== undefined && <Line name="Together" value={money(price, currency)} />}
      </Almanac>
      {spared !== undefined && (
        <p class="note">One parcel instead of several saves {money(spared, currency)}.</p>
      )}
      <OwnerOnly line={ownerEnters}>
        <a class="key wide-key" href="/releases">
          Enter the order
        </a>
      </OwnerOnly>
    </Section>
  );
}

function headSentence({ parcels, onTheWay }: ShoppingAnswer): string {
  const [next] = parcels;
  if (next) {
    const what = next.items.map(({ words }) => words).join(' and ');
    return `Order ${what} by ${dayWords(next.orderBy)}.`;
  }
  if (onTheWay.length > 0) return 'Nothing to order: what is wanted is on its way.';
  return 'Nothing to order now.';
}

function OnTheWay({ orders }: { orders: ShoppingAnswer['onTheWay'] }) {
  if (orders.length === 0) return null;
  return (
    <Section title="On the way">
      <Almanac>
        {orders.map(({ id, words, expectedOn, arrivedAt }) => (
          <Line
            key={id}
            name={words}
            value={arrivedAt ? 'has come' : expectedOn ? `due ${dayWords(expectedOn)}` : 'ordered'}
          />
        ))}
      </Almanac>
    </Section>
  );
}

function Sums({ answer }: { answer: ShoppingAnswer }) {
  const { thisSeason, lastSeason, currency } = answer;
  const { unpriced } = thisSeason;
  return (
    <Section title="This season and the last">
      <Spent thisSeason={thisSeason} lastSeason={lastSeason} currency={currency} />
      {unpriced > 0 && (
        <p class="note">
          {unpriced === 1 ? 'One entry has no price' : `${unpriced} entries have no price`}: the sum is too
          small by it.
        </p>
      )}
    </Section>
  );
}

function Prices({ answer }: { answer: ShoppingAnswer }) {
  const { prices, currency = '' } = answer;
  if (prices.length === 0) return null;
  return (
    <Section title="Prices as they were">
      <Table
        caption="Price of one animal, newest first"
        head={['Day', 'Friend', `One animal, ${currency}`, 'From']}
        rows={[...prices]
          .reverse()
          .map(({ day, enemy, perAnimal, from }) => [
            dayWords(day),
            capital(enemyWords[enemy].name),
            perAnimal.toFixed(3),
            from === 'order' ? 'an order, fee shared' : 'the list',
          ])}
      />
    </Section>
  );
}

export function Shopping() {
  const { data, refused } = resource<ShoppingAnswer>(placePath('shopping')).value;
  if (!data) {
    return (
      <Shell>
        <PageHead sentence={refused?.reason ?? 'Shopping list'} note={refused?.whatToDo} />
      </Shell>
    );
  }
  return (
    <Shell>
      <PageHead
        sentence={headSentence(data)}
        note="Dates and prices come from your supplier in the settings."
      />
      {data.parcels.map((parcel) => (
        <ParcelPart key={parcel.orderBy + parcel.items[0]?.enemy} parcel={parcel} />
      ))}
      <OnTheWay orders={data.onTheWay} />
      <Sums answer={data} />
      <Prices answer={data} />
    </Shell>
  );
}
