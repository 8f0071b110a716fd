/** Yellow traps: hang one, mend its name or day, take one down. */
import { useState } from 'preact/hooks';
import type { Trap } from '../../../services/model/index.ts';
import type { Recorded } from '../../api.ts';
import { changeAndTell, enterAndTell } from '../../entries.ts';
import { notice } from '../../notices.ts';
import { useDay } from '../../parts/chosenDay.ts';
import { dayMissing, Field, issueFor, refusedHere, textMissing } from '../../parts/field.tsx';
import { Form, Opening } from '../../parts/form.tsx';
import { Section } from '../../parts/section.tsx';
import { nowMs, placePath, resource, today, zone } from '../../state.ts';
import { dayWords, entryTime, localDay } from '../../words/dates.ts';
import { slugFrom } from '../../words/slugs.ts';

const dayOf = (time: string) => localDay(Date.parse(time), zone.value);

interface TrapFormProps {
  /** The trap that is changed; otherwise one is hung. */
  known?: Trap;
  taken: readonly string[];
  onKept: () => void;
}
function TrapForm({ known, taken, onKept }: TrapFormProps) {
  const [name, setName] = useState(known?.name ?? '');
  const [day, setDay] = useDay(known && dayOf(known.hungAt));
  const send = async () => {
    const refused = refusedHere(
      textMissing('name', name, 'type where the trap hangs, such as by the door'),
      dayMissing('hungAt', day, today.value),
    );
    if (refused) return { ok: false as const, refused };
    const words = `${name}, hung ${dayWords(day)}`;
    const hungAt =
      known && day === dayOf(known.hungAt) ? known.hungAt : entryTime(day, nowMs.value, zone.value);
    if (known) return changeAndTell<Trap>('traps', known.id, { ...known, name, hungAt }, words);
    return enterAndTell<Trap>('traps', { id: slugFrom(name, taken), name, hungAt }, words);
  };
  const kept = () => {
    if (!known) setName('');
    onKept();
  };
  return (
    <Form onSend={send} onKept={kept} button={known ? 'Keep the change' : 'Keep the trap'}>
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
            max={today.value}
            onText={setDay}
            hint="the days a trap hung are counted from here until its first count"
            issue={issueFor(refused, 'hungAt')}
          />
        </>
      )}
    </Form>
  );
}

function TrapRow({ trap, taken }: { trap: Trap; taken: readonly string[] }) {
  const [open, setOpen] = useState(false);
  const { takenDownAt, ...hanging } = trap;
  const toggle = async () => {
    const next: Trap = takenDownAt ? hanging : { ...trap, takenDownAt: new Date(nowMs.value).toISOString() };
    const words = `${trap.name} ${takenDownAt ? 'hangs again' : 'taken down'}`;
    const answer = await changeAndTell('traps', trap.id, next, words);
    if (answer.ok) return;
    const { reason, whatToDo } = answer.refused;
    notice.value = { kind: 'refused', lead: 'Not kept:', text: `${reason} ${whatToDo}` };
  };
  return (
    <li class="entry">
      <div class="entry-head">
        <span>
          <strong>{trap.name}</strong>
          <span class="note">
            {takenDownAt
              ? `down since ${dayWords(dayOf(takenDownAt))}`
              : `hung ${dayWords(dayOf(trap.hungAt))}`}
          </span>
        </span>
        <span class="entry-actions">
          <button
            type="button"
            class="text-button"
            aria-label={`change ${trap.name}`}
            aria-expanded={open}
            onClick={() => setOpen(!open)}
          >
            change
          </button>
          <button
            type="button"
            class="text-button"
            aria-label={`${takenDownAt ? 'hang again' : 'take down'} ${trap.name}`}
            onClick={() => void toggle()}
          >
            {takenDownAt ? 'hang again' : 'take down'}
          </button>
        </span>
      </div>
      {open && <TrapForm known={trap} taken={taken} onKept={() => setOpen(false)} />}
    </li>
  );
}

export function Traps() {
  const traps = resource<{ records: Recorded<Trap>[] }>(placePath('traps')).value.data?.records ?? [];
  const taken = traps.map((each) => each.data.id);
  return (
    <Section title="Traps">
      <ul class="entries">
        {traps.map(({ data }) => (
          <TrapRow key={data.id} trap={data} taken={taken} />
        ))}
      </ul>
      <Opening title="Hang a trap">
        <TrapForm taken={taken} onKept={() => undefined} />
      </Opening>
    </Section>
  );
}
