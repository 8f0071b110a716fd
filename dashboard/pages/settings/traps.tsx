/** Yellow traps: hang one, take one down. */
import { useState } from 'preact/hooks';
import type { Trap } from '../../../services/model/index.ts';
import type { Recorded } from '../../api.ts';
import { change, enterAndTell } from '../../entries.ts';
import { notice } from '../../notices.ts';
import { Field, issueFor } from '../../parts/field.tsx';
import { Form, Opening } from '../../parts/form.tsx';
import { Section } from '../../parts/section.tsx';
import { nowMs, place, placePath, resource } from '../../state.ts';
import { dayWords, instantOf, localDay } from '../../words/dates.ts';
import { slugFrom } from '../../words/slugs.ts';

function TrapRow({ trap }: { trap: Trap }) {
  const timeZone = place.value?.timeZone ?? 'UTC';
  const day = (time: string) => dayWords(localDay(Date.parse(time), timeZone));
  const { takenDownAt, ...hanging } = trap;
  const toggle = async () => {
    const next: Trap = takenDownAt ? hanging : { ...trap, takenDownAt: new Date(nowMs.value).toISOString() };
    const answer = await change('traps', trap.id, next);
    notice.value = answer.ok
      ? { kind: 'kept', lead: 'Kept:', text: `${trap.name} ${takenDownAt ? 'hangs again' : 'taken down'}.` }
      : { kind: 'refused', lead: 'Not kept:', text: `${answer.refused.reason} ${answer.refused.whatToDo}` };
  };
  return (
    <li class="entry">
      <div class="entry-head">
        <span>
          <strong>{trap.name}</strong>
          <span class="note">
            {takenDownAt ? `down since ${day(takenDownAt)}` : `hung ${day(trap.hungAt)}`}
          </span>
        </span>
        <button
          type="button"
          class="text-button"
          aria-label={`${takenDownAt ? 'hang again' : 'take down'} ${trap.name}`}
          onClick={() => void toggle()}
        >
          {takenDownAt ? 'hang again' : 'take down'}
        </button>
      </div>
    </li>
  );
}

export function Traps() {
  const traps = resource<{ records: Recorded<Trap>[] }>(placePath('traps')).value.data?.records ?? [];
  const timeZone = place.value?.timeZone ?? 'UTC';
  const today = localDay(nowMs.value, timeZone);
  const [name, setName] = useState('');
  const [day, setDay] = useState(today);
  const send = () => {
    const id = slugFrom(
      name,
      traps.map((each) => each.id),
    );
    const hungAt = day && new Date(day === today ? nowMs.value : instantOf(day, 12, timeZone)).toISOString();
    return enterAndTell<Trap>('traps', { id, name, hungAt }, `${name} hung`);
  };
  return (
    <Section title="Traps">
      <ul class="entries">
        {traps.map(({ data }) => (
          <TrapRow key={data.id} trap={data} />
        ))}
      </ul>
      <Opening title="Hang a trap">
        <Form onSend={send} onKept={() => setName('')} button="Keep the trap">
          {(refused) => (
            <>
              <Field
                label="Name"
                value={name}
                onText={setName}
                hint="where it hangs, such as by the door"
                issue={issueFor(refused, 'name')}
              />
              <Field
                label="Hung on"
                type="date"
                value={day}
                onText={setDay}
                issue={issueFor(refused, 'hungAt')}
              />
            </>
          )}
        </Form>
      </Opening>
    </Section>
  );
}
