/** The three forms: a release, an order, a wash or spray. */
import { useState } from 'preact/hooks';
import type { EnemyId, Order, Release, Treatment } from '../../../services/model/index.ts';
import { enterAndTell } from '../../entries.ts';
import { Choice, Field, issueFor, numberFrom } from '../../parts/field.tsx';
import { Form, Opening } from '../../parts/form.tsx';
import { nowMs, place } from '../../state.ts';
import { dayAndMonth, instantOf, localDay } from '../../words/dates.ts';
import { capital, enemyWords, treatmentNames } from '../../words/names.ts';

const enemyOptions = Object.entries(enemyWords).map(([value, words]) => ({
  value: value as EnemyId,
  label: capital(words.name),
}));
const treatmentOptions = Object.entries(treatmentNames).map(([value, label]) => ({
  value: value as Treatment['kind'],
  label,
}));

const zone = () => place.value?.timeZone ?? 'UTC';
const today = () => localDay(nowMs.value, zone());

/** A day typed in becomes an instant: now if it is today, else noon of that day. */
function timeOf(day: string): string {
  if (day === '') return '';
  return new Date(day === today() ? nowMs.value : instantOf(day, 12, zone())).toISOString();
}

const priceOf = (text: string) => {
  const price = numberFrom(text);
  return price === undefined ? {} : { price };
};

export function ReleaseForm() {
  const [enemy, setEnemy] = useState<EnemyId>('encarsia-formosa');
  const [form, setForm] = useState<string | undefined>(undefined);
  const [number, setNumber] = useState('');
  const [day, setDay] = useState(today());
  const [alive, setAlive] = useState('100');
  const [price, setPrice] = useState('');
  const send = () => {
    const data: Omit<Release, 'id'> = {
      enemy,
      form: form ?? enemyWords[enemy].form,
      number: numberFrom(number) ?? 0,
      time: timeOf(day),
      aliveShare: (numberFrom(alive) ?? 100) / 100,
      ...priceOf(price),
    };
    return enterAndTell(
      'releases',
      data,
      `${number} ${enemyWords[enemy].name} released ${day && dayAndMonth(day)}`,
    );
  };
  return (
    <Opening title="Enter a release">
      <Form onSend={send} onKept={() => setNumber('')} button="Keep the release" main>
        {(refused) => (
          <>
            <Choice label="Which friend" value={enemy} options={enemyOptions} onChoose={setEnemy} />
            <Field
              label="As sold"
              value={form ?? enemyWords[enemy].form}
              onText={setForm}
              issue={issueFor(refused, 'form')}
            />
            <Field
              label="How many animals"
              value={number}
              onText={setNumber}
              inputMode="numeric"
              hint="animals, not cards or sachets"
              issue={issueFor(refused, 'number')}
            />
            <Field label="Day" type="date" value={day} onText={setDay} issue={issueFor(refused, 'time')} />
            <Field
              label="Came alive"
              unit="of 100"
              value={alive}
              onText={setAlive}
              inputMode="numeric"
              issue={issueFor(refused, 'aliveShare')}
            />
            <Field
              label="Price, if you like"
              value={price}
              onText={setPrice}
              inputMode="decimal"
              issue={issueFor(refused, 'price')}
            />
          </>
        )}
      </Form>
    </Opening>
  );
}

export function OrderForm() {
  const [enemy, setEnemy] = useState<EnemyId>('encarsia-formosa');
  const [number, setNumber] = useState('');
  const [day, setDay] = useState(today());
  const [expected, setExpected] = useState('');
  const [price, setPrice] = useState('');
  const send = () => {
    const data: Omit<Order, 'id'> = {
      enemy,
      number: numberFrom(number) ?? 0,
      orderedAt: timeOf(day),
      ...(expected && { expectedOn: expected }),
      ...priceOf(price),
    };
    return enterAndTell(
      'orders',
      data,
      `${number} ${enemyWords[enemy].name} ordered ${day && dayAndMonth(day)}`,
    );
  };
  return (
    <Opening title="Enter an order">
      <Form onSend={send} onKept={() => setNumber('')} button="Keep the order" main>
        {(refused) => (
          <>
            <Choice label="Which friend" value={enemy} options={enemyOptions} onChoose={setEnemy} />
            <Field
              label="How many animals"
              value={number}
              onText={setNumber}
              inputMode="numeric"
              issue={issueFor(refused, 'number')}
            />
            <Field
              label="Ordered on"
              type="date"
              value={day}
              onText={setDay}
              issue={issueFor(refused, 'orderedAt')}
            />
            <Field
              label="Expected on, if you know"
              type="date"
              value={expected}
              onText={setExpected}
              issue={issueFor(refused, 'expectedOn')}
            />
            <Field
              label="Price, if you like"
              value={price}
              onText={setPrice}
              inputMode="decimal"
              issue={issueFor(refused, 'price')}
            />
          </>
        )}
      </Form>
    </Opening>
  );
}

export function TreatmentForm() {
  const [kind, setKind] = useState<Treatment['kind']>('water-jet');
  const [day, setDay] = useState(today());
  const [covered, setCovered] = useState('80');
  const send = () => {
    const data: Omit<Treatment, 'id'> = {
      kind,
      time: timeOf(day),
      coveredShare: (numberFrom(covered) ?? 80) / 100,
    };
    return enterAndTell('treatments', data, `${treatmentNames[kind]}, ${day && dayAndMonth(day)}`);
  };
  return (
    <Opening title="Enter a wash or spray">
      <Form onSend={send} button="Keep the wash or spray" main>
        {(refused) => (
          <>
            <Choice label="What" value={kind} options={treatmentOptions} onChoose={setKind} />
            <Field
              label="Day"
              type="date"
              value={day}
              onText={setDay}
              hint="old ones count too: residue can last for weeks"
              issue={issueFor(refused, 'time')}
            />
            <Field
              label="Plants reached"
              unit="of 100"
              value={covered}
              onText={setCovered}
              inputMode="numeric"
              issue={issueFor(refused, 'coveredShare')}
            />
          </>
        )}
      </Form>
    </Opening>
  );
}
