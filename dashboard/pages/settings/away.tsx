/** Days away from home: parcels are planned past them, and a count that falls on them is told. */
import { useState } from 'preact/hooks';
import type { Place } from '../../../services/model/index.ts';
import type { Issue } from '../../api.ts';
import { tellRefused } from '../../notices.ts';
import { Field, refusedHere, textMissing } from '../../parts/field.tsx';
import { Form, Opening } from '../../parts/form.tsx';
import { Section } from '../../parts/section.tsx';
import { nowMs } from '../../state.ts';
import { dayWords, localDay, rangeWords } from '../../words/dates.ts';
import { changePlace } from './places.tsx';

type Span = NonNullable<Place['awayDays']>[number];

const workedOut = 'Days to order are worked out again.';

function lastMissing(from: string, to: string): Issue | undefined {
  const path = 'awayDays.to';
  if (to === '' || to >= from) return textMissing(path, to, 'choose the last day away');
  return { path, expected: 'choose a last day not before the first', received: dayWords(to) };
}

export function AwayDays({ shown }: { shown: Place }) {
  const [from, setFrom] = useState('');
  const [to, setTo] = useState('');
  const { awayDays = [], timeZone } = shown;
  const today = localDay(nowMs.value, timeZone);
  const ahead = awayDays.filter((span) => span.to >= today);
  const send = async () => {
    const refused = refusedHere(
      textMissing('awayDays.from', from, 'choose the first day away'),
      lastMissing(from, to),
    );
    if (refused) return { ok: false as const, refused };
    // Those that are over are of no more use: they go with the next change.
    const others = ahead.filter((span) => span.from < from || span.to > to);
    const longer = [...others, { from, to }].sort((a, b) => (a.from < b.from ? -1 : 1));
    return changePlace({ ...shown, awayDays: longer }, `away ${rangeWords(from, to)}. ${workedOut}`);
  };
  const strikeOut = async (span: Span) => {
    const words = `not away ${rangeWords(span.from, span.to)}.`;
    const awayDays = ahead.filter((each) => each !== span);
    const answer = await changePlace({ ...shown, awayDays }, `${words} ${workedOut}`);
    if (!answer.ok) tellRefused(answer.refused, words);
  };
  return (
    <Section title="Days away">
      <p class="note">No parcel is planned for a day you are away. You are told when a count falls on one.</p>
      {ahead.length > 0 && (
        <ul class="entries">
          {ahead.map((span) => (
            <li class="entry" key={`${span.from} ${span.to}`}>
              <div class="entry-head">
                <strong>{rangeWords(span.from, span.to)}</strong>
                <button
                  type="button"
                  class="text-button"
                  aria-label={`not away ${rangeWords(span.from, span.to)}`}
                  onClick={() => void strikeOut(span)}
                >
                  not away
                </button>
              </div>
            </li>
          ))}
        </ul>
      )}
      <Opening title="Add days away">
        <Form
          onSend={send}
          onKept={() => {
            setFrom('');
            setTo('');
          }}
          button="Keep the days away"
        >
          {(refused) => (
            <>
              <Field
                label="First day away"
                type="date"
                value={from}
                onText={setFrom}
                issue={refused?.issues?.find(({ path }) => /from$/.test(path))}
              />
              <Field
                label="Last day away"
                type="date"
                value={to}
                onText={setTo}
                issue={refused?.issues?.find(({ path }) => /to$/.test(path))}
              />
            </>
          )}
        </Form>
      </Opening>
    </Section>
  );
}
