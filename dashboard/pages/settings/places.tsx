/** The places: which one is shown, and its plain facts. */
import { useState } from 'preact/hooks';
import type { PestId, Place } from '../../../services/model/index.ts';
import { send } from '../../api.ts';
import { notice } from '../../notices.ts';
import { Field, issueFor, Key, numberFrom } from '../../parts/field.tsx';
import { Form, Opening } from '../../parts/form.tsx';
import { Section } from '../../parts/section.tsx';
import { choosePlace, place, places, refresh } from '../../state.ts';
import { capital, pestNames } from '../../words/names.ts';

/** Keeps a changed place; the words go to the strip. */
export async function changePlace(changed: Place, words: string) {
  const answer = await send<unknown>({ method: 'PUT', path: `/api/places/${changed.id}`, body: changed });
  if (answer.ok) {
    refresh(/\/api\/places/);
    notice.value = { kind: 'kept', lead: 'Kept:', text: words };
  }
  return answer;
}

/** One aphid at most: winged ones on a trap cannot be told apart by eye. */
export function togglePest(pests: readonly PestId[], pest: PestId): PestId[] {
  if (pests.includes(pest)) return pests.filter((each) => each !== pest);
  const isAphid = (each: PestId) => each !== 'trialeurodes-vaporariorum';
  return [...pests.filter((each) => !isAphid(pest) || !isAphid(each)), pest];
}

export function PestKeys({
  pests,
  onChange,
}: {
  pests: readonly PestId[];
  onChange: (pests: PestId[]) => void;
}) {
  return (
    <fieldset class="keys">
      <legend>Pests you have had, one aphid at most</legend>
      {(Object.keys(pestNames) as PestId[]).map((pest) => (
        <Key key={pest} pressed={pests.includes(pest)} onPress={() => onChange(togglePest(pests, pest))}>
          {capital(pestNames[pest])}
        </Key>
      ))}
    </fieldset>
  );
}

function PlaceForm({ shown }: { shown: Place }) {
  const [name, setName] = useState(shown.name);
  const [area, setArea] = useState(String(shown.areaM2));
  const [latitude, setLatitude] = useState(String(shown.latitudeDeg));
  const [longitude, setLongitude] = useState(String(shown.longitudeDeg));
  const [timeZone, setTimeZone] = useState(shown.timeZone);
  const [seasonEnd, setSeasonEnd] = useState(shown.seasonEnd);
  const [pests, setPests] = useState<PestId[]>(shown.pests);
  const changed = (): Place => ({
    ...shown,
    name,
    areaM2: numberFrom(area) ?? 0,
    latitudeDeg: numberFrom(latitude) ?? 0,
    longitudeDeg: numberFrom(longitude) ?? 0,
    timeZone,
    seasonEnd,
    pests,
  });
  return (
    <Opening title={`Change ${shown.name}`}>
      <Form onSend={() => changePlace(changed(), `${name}.`)} button="Keep the place">
        {(refused) => (
          <>
            <Field label="Name" value={name} onText={setName} issue={issueFor(refused, 'name')} />
            <Field
              label="Area"
              unit="m²"
              value={area}
              onText={setArea}
              inputMode="decimal"
              issue={issueFor(refused, 'areaM2')}
            />
            <PestKeys pests={pests} onChange={setPests} />
            <Field
              label="Latitude"
              unit="degrees north"
              value={latitude}
              onText={setLatitude}
              issue={issueFor(refused, 'latitudeDeg')}
            />
            <Field
              label="Longitude"
              unit="degrees east"
              value={longitude}
              onText={setLongitude}
              issue={issueFor(refused, 'longitudeDeg')}
            />
            <Field
              label="Time zone"
              value={timeZone}
              onText={setTimeZone}
              issue={issueFor(refused, 'timeZone')}
            />
            <Field
              label="Last day of the season"
              unit="month-day"
              value={seasonEnd}
              onText={setSeasonEnd}
              issue={issueFor(refused, 'seasonEnd')}
            />
          </>
        )}
      </Form>
    </Opening>
  );
}

export function Places() {
  const all = places.value.data?.places ?? [];
  const shown = place.value;
  return (
    <Section title="Places">
      <ul class="entries">
        {all.map((each) => (
          <li class="entry" key={each.id}>
            <div class="entry-head">
              <span>
                <strong>{each.name}</strong>
                <span class="note">
                  {each.areaM2} m², {each.kind}
                </span>
              </span>
              {each.id === shown?.id ? (
                <span class="note">shown</span>
              ) : (
                <button
                  type="button"
                  class="text-button"
                  aria-label={`show ${each.name}`}
                  onClick={() => choosePlace(each.id)}
                >
                  show
                </button>
              )}
            </div>
          </li>
        ))}
      </ul>
      {shown && <PlaceForm shown={shown} />}
      <a class="key wide-key" href="/new-place">
        Add a place
      </a>
    </Section>
  );
}
