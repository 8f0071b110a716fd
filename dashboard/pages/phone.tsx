/** Kept on this phone: entries that the house has not taken yet, each with what became of it. */
import { notice } from '../notices.ts';
import { forget, keep, outbox, sendAgain, sendOutbox } from '../offline/outbox.ts';
import type { KeptEntry } from '../offline/shelf.ts';
import { PageHead } from '../parts/section.tsx';
import { Shell } from '../parts/shell.tsx';
import { offline, refresh, zone } from '../state.ts';
import { dayWords, localClock, localDay } from '../words/dates.ts';
import { capital } from '../words/names.ts';

function sentence(entries: readonly KeptEntry[]): string {
  if (entries.length === 0) return 'Nothing waits on this phone: the house has everything.';
  return entries.length === 1
    ? '1 entry is kept on this phone.'
    : `${entries.length} entries are kept on this phone.`;
}

async function throwAway(entry: KeptEntry): Promise<void> {
  await forget(entry.key);
  notice.value = {
    kind: 'undone',
    lead: 'Thrown away:',
    text: `${entry.words}.`,
    action: { label: 'put back', run: () => void keep(entry) },
  };
}

function Entry({ entry }: { entry: KeptEntry }) {
  const { words, madeAtMs, refused } = entry;
  const made = `${dayWords(localDay(madeAtMs, zone.value))}, ${localClock(madeAtMs, zone.value)}`;
  return (
    <li class="kept-entry">
      <p>
        <strong>{capital(words)}</strong>
      </p>
      <p class="note">
        Entered {made}. {refused ? `${refused.reason} ${refused.whatToDo}` : 'Not sent yet.'}
      </p>
      {refused && (
        <button
          type="button"
          class="text-button"
          aria-label={`send again: ${words}`}
          onClick={() => void sendAgain(entry)}
        >
          Send again
        </button>
      )}
      <button
        type="button"
        class="text-button"
        aria-label={`throw away: ${words}`}
        onClick={() => void throwAway(entry)}
      >
        Throw away
      </button>
    </li>
  );
}

export function Phone() {
  const entries = outbox.value;
  const tryNow = () => {
    refresh(/./);
    void sendOutbox();
  };
  return (
    <Shell>
      <PageHead
        sentence={sentence(entries)}
        note={
          offline.value
            ? 'There is no signal. They are sent by themselves, each once, also after this page was closed.'
            : 'Counts, leaf checks and sightings made without signal lie here until the house has them.'
        }
      />
      <ul class="ruled">
        {entries.map((entry) => (
          <Entry key={entry.key} entry={entry} />
        ))}
      </ul>
      {entries.some(({ refused }) => !refused) && (
        <button type="button" class="main-button" onClick={tryNow}>
          Try now
        </button>
      )}
    </Shell>
  );
}
