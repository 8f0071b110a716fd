/** Adding a sensor, which shows the topic to publish to, and typing in lowest and highest. */

import { useState } from 'preact/hooks';
import type { DailyExtremes, Sensor } from '../../../services/model/index.ts';
import { enterAndTell } from '../../entries.ts';
import { useDay } from '../../parts/chosenDay.ts';
import { Choice, Field, issueFor, numberFrom } from '../../parts/field.tsx';
import { Form, Opening } from '../../parts/form.tsx';
import { place, today } from '../../state.ts';
import { addDays, dayAndMonth } from '../../words/dates.ts';
import { celsiusTyped, degreeSign } from '../../words/habits.ts';
import { slugFrom } from '../../words/slugs.ts';

const units: readonly { value: Sensor['unit']; label: string }[] = [
  { value: 'Cel', label: '°C' },
  { value: 'Far', label: '°F' },
  { value: 'K', label: 'K' },
];

/** The topic a board publishes on. */
export const topicOf = (sensorId: string): string =>
  `glasstide/${place.value?.id ?? '<place>'}/readings/${sensorId}`;

export function AddSensor({ taken }: { taken: readonly string[] }) {
  const [name, setName] = useState('');
  const [unit, setUnit] = useState<Sensor['unit']>('Cel');
  const [topic, setTopic] = useState('');
  const [pointer, setPointer] = useState('');
  const id = slugFrom(name, taken);
  const send = () => {
    const data: Sensor = {
      id,
      name,
      unit,
      ...(topic && { topic }),
      ...(pointer && { pointers: { temperature: pointer } }),
    };
    return enterAndTell('sensors', data, `${name} added`);
  };
  return (
    <Opening title="Add a sensor">
      <Form onSend={send} onKept={() => setName('')} button="Add the sensor">
        {(refused) => (
          <>
            <Field
              label="Name"
              value={name}
              onText={setName}
              issue={issueFor(refused, 'name')}
              hint="such as bench"
            />
            <p>
              Let the board publish a plain number, JSON or SenML on{' '}
              <code>{topicOf(name ? id : '<sensor>')}</code>
            </p>
            <Choice label="Speaks in" value={unit} options={units} onChoose={setUnit} />
            <Field
              label="Its own topic, if it publishes elsewhere"
              value={topic}
              onText={setTopic}
              issue={issueFor(refused, 'topic')}
            />
            <Field
              label="Where the temperature stands in its JSON"
              value={pointer}
              onText={setPointer}
              hint="the way to it, such as /values/temp; empty for the usual names"
              issue={issueFor(refused, 'pointers.temperature')}
            />
          </>
        )}
      </Form>
    </Opening>
  );
}

export function TypeIn() {
  const [day, setDay] = useDay();
  const [low, setLow] = useState('');
  const [high, setHigh] = useState('');
  const send = () => {
    const data: Partial<DailyExtremes> = { day };
    const [minC, maxC] = [numberFrom(low), numberFrom(high)];
    if (minC !== undefined) data.minC = celsiusTyped(minC);
    if (maxC !== undefined) data.maxC = celsiusTyped(maxC);
    return enterAndTell(
      'daily-extremes',
      data,
      `${low} to ${high} ${degreeSign()} on ${day && dayAndMonth(day)}`,
    );
  };
  const toNextDay = () => {
    setLow('');
    setHigh('');
    if (day < today.value) setDay(addDays(day, 1));
  };
  return (
    <Opening title="No sensor? Type in lowest and highest">
      <Form onSend={send} onKept={toNextDay} button="Keep the day">
        {(refused) => (
          <>
            <Field label="Day" type="date" value={day} onText={setDay} issue={issueFor(refused, 'day')} />
            <Field
              label="Lowest"
              unit={degreeSign()}
              inputMode="decimal"
              value={low}
              onText={setLow}
              issue={issueFor(refused, 'minC')}
            />
            <Field
              label="Highest"
              unit={degreeSign()}
              inputMode="decimal"
              value={high}
              onText={setHigh}
              issue={issueFor(refused, 'maxC')}
            />
          </>
        )}
      </Form>
    </Opening>
  );
}
