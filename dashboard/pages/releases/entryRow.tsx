/** One entry with its undo and its history, for the whole season. */
import { useState } from 'preact/hooks';
import { get, type Recorded } from '../../api.ts';
import { type Noun, undo } from '../../entries.ts';
import { placePath, zone } from '../../state.ts';
import { ageWords, dayWords, localClock, localDay } from '../../words/dates.ts';
import { unbroken } from '../../words/numbers.ts';

export interface EntryWords {
  noun: Noun;
  record: Recorded<unknown>;
  timeMs: number;
  /** What it is, bold; then the rest. */
  name: string;
  note: string;
  friend?: boolean;
}

type Version = Recorded<unknown>;

/** An entry that can also be told as it was before it was changed. */
export interface Entry extends EntryWords {
  told: (version: Version) => EntryWords;
}

/** A version in the words of its row. */
function versionWords({ told }: Entry, version: Version, timeZone: string): string {
  if (version.deleted) return 'taken back';
  const { name, note, timeMs } = told(version);
  const at = `${dayWords(localDay(timeMs, timeZone))} ${localClock(timeMs, timeZone)}`;
  return [name, at, note].filter(Boolean).join(', ');
}

export function EntryRow({ entry, now }: { entry: Entry; now: number }) {
  const [versions, setVersions] = useState<Version[] | undefined>(undefined);
  const timeZone = zone.value;
  const day = dayWords(localDay(entry.timeMs, timeZone));
  const words = `${entry.name}, ${day}`;
  const toggle = async () => {
    if (versions) return setVersions(undefined);
    const answer = await get<{ versions: Version[] }>(placePath(`${entry.noun}/${entry.record.id}/history`));
    if (answer.ok) setVersions(answer.data.versions);
  };
  return (
    <li class="entry">
      <div class="entry-head">
        <span>
          <strong>{entry.name}</strong>
          <span class="note">
            {unbroken(day)}
            {entry.note && `, ${entry.note}`}
          </span>
        </span>
        <span class="entry-actions">
          {entry.record.mayUndo && (
            <button
              type="button"
              class="text-button"
              aria-label={`undo ${words}`}
              onClick={() => void undo(entry.noun, entry.record.id, words)}
            >
              undo
            </button>
          )}
          <button
            type="button"
            class="text-button"
            aria-label={`history of ${words}`}
            aria-expanded={versions !== undefined}
            onClick={() => void toggle()}
          >
            history
          </button>
        </span>
      </div>
      {versions && (
        <ol class="versions">
          {versions.map((version) => {
            const changedMs = Date.parse(version.changedAt);
            return (
              <li key={version.version}>
                <strong>
                  {dayWords(localDay(changedMs, timeZone))}, {localClock(changedMs, timeZone)}
                </strong>{' '}
                ({ageWords(now - changedMs)}): {unbroken(versionWords(entry, version, timeZone))}
              </li>
            );
          })}
        </ol>
      )}
    </li>
  );
}
