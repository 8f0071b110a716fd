/** The supplier: cut-off, lead days, weekdays, fee, prices. Order-by dates come from these. */
import { useState } from 'preact/hooks';
import { currencyOf, type EnemyId, type Place, type Supplier } from '../../../services/model/index.ts';
import {
  Field,
  issueFor,
  Key,
  numberFrom,
  numberMissing,
  numberOdd,
  refusedHere,
} from '../../parts/field.tsx';
import { Form, Opening } from '../../parts/form.tsx';
import { Section } from '../../parts/section.tsx';
import { habits } from '../../words/habits.ts';
import { capital, enemyWords } from '../../words/names.ts';
import { changePlace } from './places.tsx';

const weekdays = ['Mon', 'Tue', 'Wed', 'Thu', 'Fri', 'Sat', 'Sun'] as const;
const enemies = Object.keys(enemyWords) as EnemyId[];

interface WeekdayKeysProps {
  label: string;
  days: readonly number[];
  onChange: (days: number[]) => void;
}
function WeekdayKeys({ label, days, onChange }: WeekdayKeysProps) {
  const toggle = (day: number) =>
    onChange(days.includes(day) ? days.filter((each) => each !== day) : [...days, day].sort((a, b) => a - b));
  return (
    <fieldset class="keys">
      <legend>{label}</legend>
      {(habits.value.weekStart === 7 ? [7, 1, 2, 3, 4, 5, 6] : [1, 2, 3, 4, 5, 6, 7]).map((day) => (
        <Key key={day} pressed={days.includes(day)} onPress={() => toggle(day)}>
          {weekdays[day - 1]}
        </Key>
      ))}
    </fieldset>
  );
}

const text = (value: number | undefined) => (value === undefined ? '' : String(value));

export function SupplierPart({ shown }: { shown: Place }) {
  const known = shown.supplier;
  const [lead, setLead] = useState(text(known?.leadDays ?? 2));
  const [cutoff, setCutoff] = useState(text(known?.cutoffHour ?? 12));
  const [ordering, setOrdering] = useState<number[]>(known?.orderWeekdays ?? [1, 2, 3, 4]);
  const [delivery, setDelivery] = useState<number[]>(known?.deliveryWeekdays ?? [2, 3, 4, 5]);
  const [currency, setCurrency] = useState(currencyOf(shown));
  const [fee, setFee] = useState(text(known?.parcelFee ?? 0));
  const [prices, setPrices] = useState<Partial<Record<EnemyId, string>>>(
    Object.fromEntries(
      Object.entries(known?.pricePerAnimal ?? {}).map(([enemy, price]) => [enemy, String(price)]),
    ),
  );
  const send = async () => {
    const price = 'type the price of one animal, or leave it empty';
    const refused = refusedHere(
      numberMissing('supplier.leadDays', lead, 'type the days from order to parcel, such as 2'),
      numberMissing('supplier.cutoffHour', cutoff, 'type an hour of the day, such as 12'),
      numberMissing('supplier.parcelFee', fee, 'type the fee of a parcel, or 0'),
      ...enemies.map((enemy) => numberOdd(`supplier.pricePerAnimal.${enemy}`, prices[enemy] ?? '', price)),
    );
    if (refused) return { ok: false as const, refused };
    const pricePerAnimal: Supplier['pricePerAnimal'] = {};
    for (const enemy of enemies) {
      const price = numberFrom(prices[enemy] ?? '');
      if (price !== undefined) pricePerAnimal[enemy] = price;
    }
    const supplier: Supplier = {
      leadDays: numberFrom(lead) ?? 0,
      cutoffHour: numberFrom(cutoff) ?? 0,
      orderWeekdays: ordering,
      deliveryWeekdays: delivery,
      currency,
      parcelFee: numberFrom(fee) ?? 0,
      pricePerAnimal,
    };
    return changePlace({ ...shown, supplier }, 'your supplier. Order-by days are worked out again.');
  };
  return (
    <Section title="Supplier">
      <p class="note">
        {known
          ? `Orders before ${known.cutoffHour}:00, ${known.leadDays} days from order to parcel.`
          : `Not typed in yet: days to order by and prices are assumed, sums are in ${currencyOf(shown)}.`}
      </p>
      <Opening title={known ? 'Change the supplier' : 'Type in the supplier'}>
        <Form onSend={send} button="Keep the supplier">
          {(refused) => (
            <>
              <Field
                label="From order to parcel"
                unit="days"
                inputMode="numeric"
                value={lead}
                onText={setLead}
                issue={issueFor(refused, 'supplier.leadDays')}
              />
              <Field
                label="Last hour of the day to order"
                unit="0 to 24"
                inputMode="numeric"
                value={cutoff}
                onText={setCutoff}
                issue={issueFor(refused, 'supplier.cutoffHour')}
              />
              <WeekdayKeys label="Takes orders on" days={ordering} onChange={setOrdering} />
              <WeekdayKeys label="Delivers on" days={delivery} onChange={setDelivery} />
              <Field
                label="Currency"
                unit="three letters"
                hint="of every sum told here, such as GBP or USD; nothing is converted"
                value={currency}
                onText={(typed) => setCurrency(typed.toUpperCase())}
                issue={issueFor(refused, 'supplier.currency')}
              />
              <Field
                label="Fee of a parcel"
                inputMode="decimal"
                value={fee}
                onText={setFee}
                issue={issueFor(refused, 'supplier.parcelFee')}
              />
              <h3>Price of one animal</h3>
              {enemies.map((enemy) => (
                <Field
                  key={enemy}
                  label={capital(enemyWords[enemy].name)}
                  unit={currency}
                  inputMode="decimal"
                  value={prices[enemy] ?? ''}
                  onText={(typed) => setPrices((old) => ({ ...old, [enemy]: typed }))}
                  issue={issueFor(refused, `supplier.pricePerAnimal.${enemy}`)}
                />
              ))}
            </>
          )}
        </Form>
      </Opening>
    </Section>
  );
}
