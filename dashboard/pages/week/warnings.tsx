/** Warnings one by one: why each is said, what ends it, put off or closed. */
import type { Advice } from '../../../services/model/index.ts';
import { send, type WarningItem } from '../../api.ts';
import { notice, tellRefused } from '../../notices.ts';
import { Almanac, Line } from '../../parts/almanac.tsx';
import { OwnerOnly } from '../../parts/ownerOnly.tsx';
import { Section } from '../../parts/section.tsx';
import { nowMs, placePath, refresh, resource, zone } from '../../state.ts';
import { dayWords, localDay } from '../../words/dates.ts';
import { warningWords } from './captions.ts';

const putOffDays = 3;
const endedShownMs = 7 * 86_400_000;

async function change({ id, text }: WarningItem, how: 'put-off' | 'close'): Promise<void> {
  const path = placePath(`warnings/${encodeURIComponent(id)}/${how}`);
  const body = how === 'put-off' ? { days: putOffDays } : undefined;
  const answer = await send({ method: 'POST', path, ...(body && { body }) });
  const lead = how === 'put-off' ? `Put off for ${putOffDays} days:` : 'Closed:';
  if (answer.ok) notice.value = { kind: 'kept', lead, text };
  else tellRefused(answer.refused);
  refresh(/\/warnings$/);
}

function OpenLine({ warning, sentence }: { warning: WarningItem; sentence: string }) {
  const { words, note } = warningWords(warning, sentence);
  return (
    <Line
      name={words}
      value=""
      note={note}
      action={
        <OwnerOnly>
          <span class="line-actions">
            <button
              type="button"
              class="text-button"
              aria-label={`put off: ${words}`}
              onClick={() => void change(warning, 'put-off')}
            >
              put off
            </button>
            <button
              type="button"
              class="text-button"
              aria-label={`close: ${words}`}
              onClick={() => void change(warning, 'close')}
            >
              close
            </button>
          </span>
        </OwnerOnly>
      }
    />
  );
}

/** What was withdrawn lately, saying why: nobody shall go on by a word that no longer holds. */
function Withdrawn({ warnings }: { warnings: readonly WarningItem[] }) {
  if (warnings.length === 0) return null;
  return (
    <details>
      <summary>No longer true, {warnings.length}</summary>
      <Almanac>
        {warnings.map(({ id, text, ended, deadline }) => (
          <Line
            key={id}
            name={text}
            value={dayWords(localDay(Date.parse(deadline), zone.value))}
            note={ended}
          />
        ))}
      </Almanac>
    </details>
  );
}

export function Warnings({ advice }: { advice: Advice }) {
  const all = resource<{ warnings: WarningItem[] }>(placePath('warnings')).value.data?.warnings ?? [];
  const open = all.filter(({ state }) => state === 'open');
  const withdrawn = all.filter(
    ({ state, deadline }) => state === 'withdrawn' && Date.parse(deadline) > nowMs.value - endedShownMs,
  );
  if (open.length + withdrawn.length === 0) return null;
  return (
    <Section title="With a deadline">
      <Almanac>
        {open.map((warning) => (
          <OpenLine key={warning.id} warning={warning} sentence={advice.sentence} />
        ))}
      </Almanac>
      <Withdrawn warnings={withdrawn} />
      <a class="text-link" href="/telling">
        How you are told
      </a>
    </Section>
  );
}
