/** Quiet hours and the weekly letter. */
import { useState } from 'preact/hooks';
import { Choice } from '../../parts/field.tsx';
import { Form } from '../../parts/form.tsx';
import { Section } from '../../parts/section.tsx';
import { keepSettings, type Settings } from './answer.ts';

const clock = (hour: number) => `${String(hour).padStart(2, '0')}:00`;
const hours = Array.from({ length: 24 }, (_, hour) => ({ value: String(hour), label: clock(hour) }));
const none = '0';
const days = [
  { value: none, label: 'no letter' },
  ...['Monday', 'Tuesday', 'Wednesday', 'Thursday', 'Friday', 'Saturday', 'Sunday'].map((label, index) => ({
    value: String(index + 1),
    label,
  })),
];

export function Hours({ settings }: { settings: Settings }) {
  const [from, setFrom] = useState(String(settings.quietFromHour));
  const [to, setTo] = useState(String(settings.quietToHour));
  const [day, setDay] = useState(String(settings.letter?.weekday ?? none));
  const [at, setAt] = useState(String(settings.letter?.hour ?? 18));
  const onSend = () =>
    keepSettings(
      {
        ...settings,
        quietFromHour: Number(from),
        quietToHour: Number(to),
        letter: day === none ? null : { weekday: Number(day), hour: Number(at) },
      },
      from === to ? 'no hours are quiet.' : `quiet from ${clock(Number(from))} to ${clock(Number(to))}.`,
    );
  return (
    <Section title="When">
      <p>
        At most one message a day, and none in quiet hours. Only what cannot wait comes besides, and at night
        only if morning would be too late.
      </p>
      <Form onSend={onSend} button="Keep the hours">
        {() => (
          <>
            <Choice label="Quiet from" value={from} options={hours} onChoose={setFrom} />
            <Choice label="Quiet until" value={to} options={hours} onChoose={setTo} />
            <Choice label="The weekly letter, by mail" value={day} options={days} onChoose={setDay} />
            {day !== none && <Choice label="At" value={at} options={hours} onChoose={setAt} />}
          </>
        )}
      </Form>
    </Section>
  );
}
