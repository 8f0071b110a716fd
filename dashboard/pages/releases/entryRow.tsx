/** One entry with its undo and its history, for the whole season. */
import { useState } from 'preact/hooks';
import { get, type Recorded } from '../../api.ts';
import { type Noun, undo } from '../../entries.ts';
import { place, placePath } from '../../state.ts';
import { ageWords, dayWords, localClock, localDay } from '../../words/dates.ts';
import { speciesName } from '../../words/names.ts';
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

/** `orderedAt` reads `ordered at`; times and species in the words of the page. */
function valueWords(value: unknown, timeZone: string): string {
  if (typeof value === 'object' && value !== null) {
    return Object.entries(value)
      .map(([key, part]) => `${key} ${valueWords(part, timeZone)}`)
      .join(' ');
  }
  const text = String(value);
  if (!/^\d{4}-\d\d-\d\d/.test(text)) return /^[a-z]+-[a-z]+$/.test(text) ? speciesName(text) : text;
  if (text.length === 10) return dayWords(text);
  const ms = Date.parse(text);
  return `${dayWords(localDay(ms, timeZone))} ${localClock(ms, timeZone)}`;
}

/** The data of a version in one line, without its id. */
function dataWords(version: Version, timeZone: string): string {
  if (version.deleted) return 'taken back';
  const pairs = Object.entries(version.data as Record<string, unknown>).filter(([key]) => key !== 'id');
  const name = (key: string) => key.replace(/[A-Z]/g, (letter) => ` ${letter.toLowerCase()}`);
  return pairs.map(([key, value]) => `${name(key)} ${valueWords(value, timeZone)}`).join(', ');
}

export function EntryRow({ entry, now }: { entry: EntryWords; now: number }) {
  const [versions, setVersions] = useState<Version[] | undefined>(undefined);
  const timeZone = place.value?.timeZone ?? 'UTC';
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
          <button
            type="button"
            class="text-button"
            aria-label={`undo ${words}`}
            onClick={() => void undo(entry.noun, entry.record.id, words)}
          >
            undo
          </button>
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
                ({ageWords(now - changedMs)}): {dataWords(version, timeZone)}
              </li>
            );
          })}
        </ol>
      )}
    </li>
  );
}
