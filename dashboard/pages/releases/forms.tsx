/** The three forms: a release, an order, a wash or spray. */
import { useState } from 'preact/hooks';
import type { EnemyId, Order, Release, Treatment } from '../../../services/model/index.ts';
import type { Outcome, Recorded } from '../../api.ts';
import { enterAndTell } from '../../entries.ts';
import { useDay } from '../../parts/chosenDay.ts';
import {
  Choice,
  dayMissing,
  Field,
  issueFor,
  numberFrom,
  numberMissing,
  numberOdd,
  refusedHere,
  textMissing,
} from '../../parts/field.tsx';
import { Form, Opening } from '../../parts/form.tsx';
import { currency, nowMs, placePath, resource, today, zone } from '../../state.ts';
import { dayAndMonth, entryTime } from '../../words/dates.ts';
import { animals, capital, enemyWords, treatmentNames } from '../../words/names.ts';
import { meantRelease, releaseCaution, washCaution } from './meant.ts';

const enemyOptions = Object.entries(enemyWords).map(([value, words]) => ({
  value: value as EnemyId,
  label: capital(words.name),
}));
const treatmentOptions = Object.entries(treatmentNames).map(([value, label]) => ({
  value: value as Treatment['kind'],
  label,
}));

const timeOf = (day: string) => entryTime(day, nowMs.value, zone.value);

const priceOf = (text: string) => {
  const price = numberFrom(text);
  return price === undefined ? {} : { price };
};

/** A line to think about, never a veto. */
const Caution = ({ text }: { text: string | undefined }) => (
  <div role="status">{text && <p class="field-issue">{text}</p>}</div>
);

const numberWords = 'type how many animals, such as 120';
const priceWords = 'type a price, or leave it empty';

interface ReleaseFormProps {
  /** Orders that are still to be released. */
  waiting: readonly Recorded<Order>[];
  treatments: readonly Recorded<Treatment>[];
}
export function ReleaseForm({ waiting, treatments }: ReleaseFormProps) {
  const plan = resource<Outcome>(placePath('outcome')).value.data;
  const [chosen, setEnemy] = useState<EnemyId | undefined>(undefined);
  const [form, setForm] = useState<string | undefined>(undefined);
  const [number, setNumber] = useState<string | undefined>(undefined);
  const [day, setDay] = useDay();
  const [alive, setAlive] = useState('100');
  const [price, setPrice] = useState('');
  const meant = meantRelease(waiting, plan?.advice);
  const enemy = chosen ?? meant.enemy;
  const shown = {
    form: form ?? (enemy === meant.enemy ? meant.form : enemyWords[enemy].form),
    number: number ?? (enemy === meant.enemy ? meant.number : ''),
  };
  const send = async () => {
    const refused = refusedHere(
      textMissing('form', shown.form, 'type the form as sold'),
      numberMissing('number', shown.number, numberWords, 0),
      dayMissing('time', day, today.value),
      numberOdd('aliveShare', alive, 'type how many of 100, or leave it empty'),
      numberOdd('price', price, priceWords),
    );
    if (refused) return { ok: false as const, refused };
    const data: Omit<Release, 'id'> = {
      enemy,
      form: shown.form,
      number: numberFrom(shown.number) ?? 0,
      time: timeOf(day),
      aliveShare: (numberFrom(alive) ?? 100) / 100,
      ...priceOf(price),
    };
    return enterAndTell('releases', data, `${animals(data.number, enemy)} released ${dayAndMonth(day)}`);
  };
  const kept = () => {
    setEnemy(enemy);
    setForm(undefined);
    setNumber('');
  };
  const caution = releaseCaution({ enemy, day, advice: plan?.advice, treatments, timeZone: zone.value });
  return (
    <Opening title="Enter a release">
      <Form onSend={send} onKept={kept} button="Keep the release" main>
        {(refused) => (
          <>
            <Choice label="Which friend" value={enemy} options={enemyOptions} onChoose={setEnemy} />
            <Field label="As sold" value={shown.form} onText={setForm} issue={issueFor(refused, 'form')} />
            <Field
              label="How many animals"
              value={shown.number}
              onText={setNumber}
              inputMode="numeric"
              hint="animals, not cards or sachets"
              issue={issueFor(refused, 'number')}
            />
            <Field
              label="Day"
              type="date"
              value={day}
              max={today.value}
              onText={setDay}
              issue={issueFor(refused, 'time')}
            />
            <Caution text={caution} />
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
              unit={currency.value}
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
  const [day, setDay] = useDay();
  const [expected, setExpected] = useState('');
  const [price, setPrice] = useState('');
  const send = async () => {
    const refused = refusedHere(
      numberMissing('number', number, numberWords, 0),
      dayMissing('orderedAt', day, today.value),
      numberOdd('price', price, priceWords),
    );
    if (refused) return { ok: false as const, refused };
    const data: Omit<Order, 'id'> = {
      enemy,
      number: numberFrom(number) ?? 0,
      orderedAt: timeOf(day),
      ...(expected && { expectedOn: expected }),
      ...priceOf(price),
    };
    return enterAndTell('orders', data, `${animals(data.number, enemy)} ordered ${dayAndMonth(day)}`);
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
              unit={currency.value}
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

export function TreatmentForm({ releases }: { releases: readonly Recorded<Release>[] }) {
  const [kind, setKind] = useState<Treatment['kind']>('water-jet');
  const [day, setDay] = useDay();
  const [covered, setCovered] = useState('');
  const send = async () => {
    const refused = refusedHere(
      dayMissing('time', day, today.value),
      numberOdd('coveredShare', covered, 'type how many of 10 plants, or leave it empty'),
    );
    if (refused) return { ok: false as const, refused };
    const share = numberFrom(covered);
    const data = { kind, time: timeOf(day), ...(share !== undefined && { coveredShare: share / 10 }) };
    return enterAndTell('treatments', data, `${treatmentNames[kind]}, ${dayAndMonth(day)}`);
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
              max={today.value}
              onText={setDay}
              hint="old ones count too: residue can last for weeks"
              issue={issueFor(refused, 'time')}
            />
            <Caution text={washCaution(day, releases, zone.value)} />
            <Field
              label="Plants reached"
              unit="of 10"
              value={covered}
              onText={setCovered}
              inputMode="decimal"
              hint="about 8 of 10 plants, unless you say otherwise"
              issue={issueFor(refused, 'coveredShare')}
            />
          </>
        )}
      </Form>
    </Opening>
  );
}
