/** The calendar's secret address. */
import { send } from '../../api.ts';
import { notice } from '../../notices.ts';
import { Section } from '../../parts/section.tsx';
import { placePath, refresh, resource } from '../../state.ts';

async function renew(): Promise<void> {
  const answer = await send({ method: 'POST', path: placePath('calendar-token') });
  notice.value = answer.ok
    ? { kind: 'kept', lead: 'Renewed:', text: 'the earlier address opens nothing any more.' }
    : { kind: 'refused', lead: 'Not renewed:', text: `${answer.refused.reason} ${answer.refused.whatToDo}` };
  refresh(/\/calendar-token$/);
}

export function Calendar() {
  const token = resource<{ token: string }>(placePath('calendar-token')).value.data?.token;
  const address = `${location.origin}/api/calendar/${token ?? ''}.ics`;
  return (
    <Section title="Calendar">
      <p>
        Last days to order, days to release, counts and looks. Subscribe to this address in your calendar;
        whoever knows it can read them.
      </p>
      {token && (
        <>
          <code class="secret">{address}</code>
          <p>
            <a href={address} download="glasstide.ics">
              Try it: open the calendar once
            </a>
          </p>
        </>
      )}
      <button type="button" class="key wide-key" onClick={() => void renew()}>
        Renew the address
      </button>
    </Section>
  );
}
