/** What is added to a sensor from a day on: entered, told and taken away. */
import { useState } from 'preact/hooks';
import type { Sensor } from '../../../services/model/index.ts';
import { changeAndTell } from '../../entries.ts';
import { tellRefused } from '../../notices.ts';
import { dayMissing, Field, numberFrom, refusedHere } from '../../parts/field.tsx';
import { Form, Opening } from '../../parts/form.tsx';
import { today } from '../../state.ts';
import { dayAndMonth } from '../../words/dates.ts';
import { celsiusStepTyped, degreeSign } from '../../words/habits.ts';
import { unbroken } from '../../words/numbers.ts';
import { addAmiss, addedWords, withCorrection, withoutCorrection } from './corrected.ts';

export function Corrections({ sensor }: { sensor: Sensor }) {
  const [typed, setTyped] = useState('');
  const [from, setFrom] = useState('');
  const { corrections = [], id, name } = sensor;
  const send = async () => {
    const amiss = refusedHere(addAmiss(typed), dayMissing('from', from, today.value));
    if (amiss) return { ok: false as const, refused: amiss };
    const correction = { from, addC: celsiusStepTyped(numberFrom(typed) ?? 0) };
    const words = `${name}, from ${dayAndMonth(from)} on ${addedWords(correction)}`;
    return changeAndTell('sensors', id, withCorrection(sensor, correction), words);
  };
  const takeAway = async (day: string) => {
    const words = `${name}, correction of ${dayAndMonth(day)} taken away`;
    const answer = await changeAndTell('sensors', id, withoutCorrection(sensor, day), words);
    if (!answer.ok) tellRefused(answer.refused, `${words}.`);
  };
  return (
    <>
      {corrections.map((each) => (
        <p key={each.from} class="beside-button">
          <span>{unbroken(`From ${dayAndMonth(each.from)} on ${addedWords(each)}.`)}</span>
          <button type="button" class="text-button" onClick={() => void takeAway(each.from)}>
            Take away
          </button>
        </p>
      ))}
      <Opening title={`${name} reads too high or too low?`}>
        <Form onSend={send} onKept={() => setTyped('')} button="Keep the correction">
          {(refused) => (
            <>
              <p class="note">
                Hang a thermometer you trust beside it for an hour. Type how much more that one shows, with a
                minus if it shows less. Readings stay as they came; the forecast takes them corrected.
              </p>
              <Field
                label="Add"
                unit={degreeSign()}
                value={typed}
                onText={setTyped}
                issue={refused?.issues?.find(({ path }) => /addC$/.test(path))}
                hint="such as 1.5 or -0.5; 0 ends a correction"
              />
              <Field
                label="From the start of"
                type="date"
                max={today.value}
                value={from}
                onText={setFrom}
                issue={refused?.issues?.find(({ path }) => /from$/.test(path))}
              />
            </>
          )}
        </Form>
      </Opening>
    </>
  );
}
