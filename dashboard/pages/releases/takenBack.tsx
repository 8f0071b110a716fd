/** What was taken back stays within reach: each can be put back, at any time. */
import { useState } from 'preact/hooks';
import type { Recorded } from '../../api.ts';
import { type Noun, undo } from '../../entries.ts';
import { Section } from '../../parts/section.tsx';
import { placePath, resource, zone } from '../../state.ts';
import { dayWords, localDay } from '../../words/dates.ts';
import { unbroken } from '../../words/numbers.ts';
import type { EntryWords } from './entryRow.tsx';

/** The words of each kind of entry. */
export type Telling = readonly { noun: Noun; words: (record: Recorded<never>) => EntryWords }[];

function Taken({ telling }: { telling: Telling }) {
  const timeZone = zone.value;
  const answers = telling.map(({ noun, words }) => ({
    words,
    answer: resource<{ records: Recorded<never>[] }>(placePath(`${noun}/taken-back`)).value,
  }));
  const entries = answers
    .flatMap(({ answer, words }) => (answer.data?.records ?? []).map((record) => words(record)))
    .sort((a, b) => Date.parse(b.record.changedAt) - Date.parse(a.record.changedAt));
  const refusal = answers.find(({ answer }) => answer.refused)?.answer.refused;
  if (refusal) return <p class="note">{`${refusal.reason} ${refusal.whatToDo}`}</p>;
  if (answers.some(({ answer }) => !answer.data)) return <p class="note">Fetching them.</p>;
  if (entries.length === 0) return <p class="note">Nothing was taken back.</p>;
  const others = entries.some(({ record }) => !record.mayUndo);
  return (
    <>
      <ul class="entries">
        {entries.map(({ noun, record, name, note, timeMs }) => {
          const day = dayWords(localDay(timeMs, timeZone));
          const words = `${name}, ${day}`;
          return (
            <li class="entry" key={`${noun} ${record.id}`}>
              <div class="entry-head">
                <span>
                  <strong>{name}</strong>
                  <span class="note">{unbroken([day, note].filter(Boolean).join(', '))}</span>
                </span>
                {record.mayUndo && (
                  <span class="entry-actions">
                    <button
                      type="button"
                      class="text-button"
                      aria-label={`put back ${words}`}
                      onClick={() => void undo(noun, record.id, words, true)}
                    >
                      put back
                    </button>
                  </span>
                )}
              </div>
            </li>
          );
        })}
      </ul>
      {others && <p class="note">Entries without “put back” are for the owner to put back.</p>}
    </>
  );
}

export function TakenBack({ telling }: { telling: Telling }) {
  const [open, setOpen] = useState(false);
  return (
    <Section title="Taken back">
      <details onToggle={(event) => setOpen(event.currentTarget.open)}>
        <summary>What was taken back can be put back</summary>
        {open && <Taken telling={telling} />}
      </details>
    </Section>
  );
}
