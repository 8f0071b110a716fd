/** Refused messages: what came, how it could be read, and one way to mend it. */
import { useState } from 'preact/hooks';
import { type ParkedMessage, send } from '../../api.ts';
import { notice } from '../../notices.ts';
import { OwnerOnly } from '../../parts/ownerOnly.tsx';
import { scrolling } from '../../parts/scrolling.ts';
import { Table } from '../../parts/table.tsx';
import { refresh, zone } from '../../state.ts';
import { dayAndMonth, localClock, localDay } from '../../words/dates.ts';
import { degrees, unbroken } from '../../words/numbers.ts';
import { canBeReadAgain, causeAndAdvice, type ParkedGroup } from './parkedGroups.ts';

/** The temperature a payload names, as far as the page can see; the service reads it for good. */
function numberIn(payload: string): number | undefined {
  const found =
    /temperature\w*"?\s*:\s*(-?\d+(?:\.\d+)?)/i.exec(payload) ?? /^\s*(-?\d+(?:\.\d+)?)\s*$/.exec(payload);
  return found?.[1] === undefined ? undefined : Number(found[1]);
}

const fromFahrenheit = (f: number) => ((f - 32) * 5) / 9;

async function readAgain(group: ParkedGroup, unit?: 'Cel' | 'Far'): Promise<void> {
  const ids = group.messages.map((each) => each.id);
  type Result = { mended: number; stillRefused: number };
  const answer = await send<Result>({
    method: 'POST',
    path: '/api/quarantine/reread',
    body: { ids, ...(unit && { unit }) },
  });
  refresh(/quarantine|sensors|readings|temperature|arrivals/);
  notice.value = answer.ok
    ? {
        kind: 'kept',
        lead: 'Read again:',
        text: `${answer.data.mended} mended, ${answer.data.stillRefused} still refused.`,
      }
    : { kind: 'refused', lead: 'Not mended:', text: `${answer.refused.reason} ${answer.refused.whatToDo}` };
}

async function setAside(group: ParkedGroup): Promise<void> {
  for (const { id } of group.messages) await send({ method: 'POST', path: `/api/quarantine/${id}/dismiss` });
  refresh(/quarantine/);
  notice.value = {
    kind: 'kept',
    lead: 'Set aside:',
    text:
      group.messages.length === 1
        ? '1 message. It is kept, not used.'
        : `${group.messages.length} messages. They are kept, not used.`,
  };
}

function arrivedWords(message: ParkedMessage): string {
  const timeZone = zone.value;
  const ms = Date.parse(message.arrivedAt);
  return unbroken(`${dayAndMonth(localDay(ms, timeZone))}, ${localClock(ms, timeZone)}`).replace(
    ', ',
    ',\u00a0',
  );
}

const shownRows = 3;

function Came({ group, fahrenheit }: { group: ParkedGroup; fahrenheit: boolean }) {
  const shown = group.messages.slice(0, shownRows);
  const more = group.messages.length - shown.length;
  const values = (payload: string): string[] => {
    const value = numberIn(payload);
    if (value === undefined) return fahrenheit ? ['none to read', ''] : ['none to read'];
    return fahrenheit ? [String(value), degrees(fromFahrenheit(value))] : [String(value)];
  };
  return (
    <>
      <Table
        caption={`What came on ${group.topic}`}
        head={fahrenheit ? ['Arrived', 'As sent', 'Read as °F'] : ['Arrived', 'As sent']}
        rows={shown.map((each) => [arrivedWords(each), ...values(each.payload)])}
      />
      {more > 0 && <p class="note">and {more} more</p>}
    </>
  );
}

/** The one way to mend a group: its messages are read again, as °F where they look like it. */
function ReadAgain({ group, main }: { group: ParkedGroup; main: boolean }) {
  const n = group.messages.length;
  const them = n === 1 ? 'it' : `all ${n}`;
  const fahrenheit = group.code === 'unit-doubtful';
  return (
    <button
      type="button"
      class={main ? 'main-button' : 'key wide-key'}
      onClick={() => void readAgain(group, fahrenheit ? 'Far' : undefined)}
    >
      {fahrenheit ? `Read ${them} as °F` : `Read ${them} again`}
    </button>
  );
}

export function Parked({ group, main }: { group: ParkedGroup; main: boolean }) {
  const [open, setOpen] = useState(false);
  const fahrenheit = group.code === 'unit-doubtful';
  const first = group.messages[0];
  if (!first) return null;
  const n = group.messages.length;
  const { cause, advice } = causeAndAdvice(first);
  return (
    <article class="parked" aria-label={`Refused on ${group.topic}`}>
      <p>
        <span class="badge">refused</span> {n === 1 ? '1 message' : `${n} messages`}, latest{' '}
        {arrivedWords(first)}
      </p>
      <h2>{group.ofNoPlace ? `A topic nobody knows: ${group.topic}` : cause}</h2>
      {group.ofNoPlace ? <p>{cause}</p> : <p class="topic">{group.topic}</p>}
      <p>{advice}</p>
      <Came group={group} fahrenheit={fahrenheit} />
      <OwnerOnly>{canBeReadAgain(group) && <ReadAgain group={group} main={main} />}</OwnerOnly>
      <div class="beside-button">
        <OwnerOnly>
          {fahrenheit && (
            <button type="button" class="text-button" onClick={() => void readAgain(group, 'Cel')}>
              {n === 1 ? 'It is not °F' : 'They are not °F'}
            </button>
          )}
          <button type="button" class="text-button" onClick={() => void setAside(group)}>
            Set aside
          </button>
        </OwnerOnly>
        <button type="button" class="text-button" aria-expanded={open} onClick={() => setOpen(!open)}>
          Show as sent
        </button>
      </div>
      {open && (
        <section class="as-sent" {...scrolling('Messages as sent')}>
          <pre>{group.messages.map((each) => each.payload).join('\n')}</pre>
        </section>
      )}
      <p class="note">Nothing is lost: what is refused is kept as it came, and not used.</p>
    </article>
  );
}
