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
      text: `${parts.map(([what, n]) => `${n} ${what}`).join(', ')}.`,
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
