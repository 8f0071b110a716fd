/** A copy of everything: the season file out, and in again. */
import { useState } from 'preact/hooks';
import { type Refused, send } from '../../api.ts';
import { notice } from '../../notices.ts';
import { RefusedWords } from '../../parts/field.tsx';
import { Section } from '../../parts/section.tsx';
import { choosePlace, place, placePath, refresh } from '../../state.ts';

interface Imported {
  placeId: string;
  imported: Record<string, number>;
}

/** The lists of a season file: one, many. */
const listWords: Record<string, [one: string, many: string]> = {
  plantings: ['planting', 'plantings'],
  sensors: ['sensor', 'sensors'],
  readings: ['reading', 'readings'],
  dailyExtremes: ['day of lowest and highest', 'days of lowest and highest'],
  traps: ['trap', 'traps'],
  trapCounts: ['count of a trap', 'counts of traps'],
  leafChecks: ['look under leaves', 'looks under leaves'],
  sightings: ['sighting', 'sightings'],
  releases: ['release', 'releases'],
  orders: ['order', 'orders'],
  treatments: ['wash or spray', 'washes or sprays'],
  outlook: ['hour of outlook', 'hours of outlook'],
  outdoor: ['temperature outdoors', 'temperatures outdoors'],
};

const listed = ([list, n]: [string, number]): string => `${n} ${listWords[list]?.[n === 1 ? 0 : 1] ?? list}`;

export function Copies() {
  const [refused, setRefused] = useState<Refused | undefined>(undefined);
  const [replace, setReplace] = useState(false);
  const takeIn = async (file: File | undefined) => {
    if (!file) return;
    let season: unknown;
    try {
      season = JSON.parse(await file.text());
    } catch {
      const reason = `${file.name} is not a season file: it could not be read as JSON.`;
      setRefused({ code: 'payload-unreadable', reason, whatToDo: 'Choose a file that was taken out here.' });
      return;
    }
    const path = replace ? '/api/season?replace=true' : '/api/season';
    const answer = await send<Imported>({ method: 'POST', path, body: season });
    setRefused(answer.ok ? undefined : answer.refused);
    if (!answer.ok) return;
    const parts = Object.entries(answer.data.imported).filter(([, n]) => n > 0);
    choosePlace(answer.data.placeId);
    refresh(/./);
    notice.value = {
      kind: 'kept',
      lead: 'Taken in:',
      text: `${parts.map(listed).join(', ') || 'an empty season'}.`,
    };
  };
  return (
    <Section title="A copy of everything">
      <p>
        One file holds all you entered and all that was read in this place. It gives the same forecast
        anywhere.
      </p>
      {place.value && (
        <a class="key wide-key" href={placePath('season')} download={`${place.value.id}-season.json`}>
          Take the season out
        </a>
      )}
      <label class="check">
        <input
          class="check-box"
          type="checkbox"
          checked={replace}
          onChange={(event) => setReplace(event.currentTarget.checked)}
        />
        Replace the place of the same name
      </label>
      <label class="key wide-key file-key">
        Take a season in
        <input
          class="file-input"
          type="file"
          accept="application/json,.json"
          onChange={(event) => void takeIn(event.currentTarget.files?.[0])}
        />
      </label>
      <RefusedWords refused={refused} />
    </Section>
  );
}
