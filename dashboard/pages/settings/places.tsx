/** The places: which one is shown, and its plain facts. */
import { useState } from 'preact/hooks';
import type { PestId, Place } from '../../../services/model/index.ts';
import { type Issue, send } from '../../api.ts';
import { notice } from '../../notices.ts';
import {
  Field,
  issueFor,
  Key,
  numberFrom,
  numberMissing,
  refusedHere,
  textMissing,
} from '../../parts/field.tsx';
import { Form, Opening } from '../../parts/form.tsx';
import { OwnerOnly } from '../../parts/ownerOnly.tsx';
import { Section } from '../../parts/section.tsx';
import { choosePlace, place, places, refresh } from '../../state.ts';
import { isTimeZone } from '../../words/dates.ts';
import { areaSign, areaTyped, ownArea } from '../../words/habits.ts';
import { capital } from '../../words/names.ts';
import { offeredPests, pestGroups, pestWords, togglePest } from '../../words/pests.ts';

/** Keeps a changed place; the words go to the strip. */
export async function changePlace(changed: Place, words: string) {
  const answer = await send<unknown>({ method: 'PUT', path: `/api/places/${changed.id}`, body: changed });
  if (answer.ok) {
    refresh(/\/api\/places/);
    notice.value = { kind: 'kept', lead: 'Kept:', text: words };
  }
  return answer;
}

export const nameMissing = (text: string) =>
  textMissing('name', text, 'type a name for the place, such as the lean-to');
export const areaMissing = (text: string) =>
  numberMissing('areaM2', text, `type the size in ${areaSign()}, such as ${ownArea(12)}`, 0);
export const latitudeMissing = (text: string) =>
  numberMissing('latitudeDeg', text, 'type the degrees north, such as 52');
export const longitudeMissing = (text: string) =>
  numberMissing('longitudeDeg', text, 'type the degrees east, such as -0.5');

export const timeZoneMissing = (text: string): Issue | undefined =>
  isTimeZone(text)
    ? undefined
    : { path: 'timeZone', expected: 'type a time zone such as Europe/Paris', received: text || 'empty' };

export const placeKindWords: Record<Place['kind'], string> = {
  glasshouse: 'under glass',
  room: 'a room',
  outdoors: 'outdoors',
};

export function KindKeys({
  kind,
  onChange,
}: {
  kind: Place['kind'];
  onChange: (kind: Place['kind']) => void;
}) {
  return (
    <fieldset class="keys">
      <legend>It is</legend>
      {(Object.keys(placeKindWords) as Place['kind'][]).map((each) => (
        <Key key={each} pressed={kind === each} onPress={() => onChange(each)}>
          {placeKindWords[each]}
        </Key>
      ))}
    </fieldset>
  );
}

export function PestKeys({
  pests,
  kind,
  onChange,
}: {
  pests: readonly PestId[];
  kind: Place['kind'];
  onChange: (pests: PestId[]) => void;
}) {
  return (
    <>
      {pestGroups.map(({ group, title, outdoors }) => (
        <fieldset class="keys" key={group}>
          <legend>{kind === 'outdoors' ? outdoors : title}</legend>
          {offeredPests(group, kind === 'outdoors', pests).map((pest) => (
            <Key key={pest} pressed={pests.includes(pest)} onPress={() => onChange(togglePest(pests, pest))}>
              {capital(pestWords[pest].name)}
            </Key>
          ))}
        </fieldset>
      ))}
      <p class="note">One whitefly and one aphid: the eye cannot tell them apart.</p>
    </>
  );
}

function PlaceForm({ shown }: { shown: Place }) {
  const [name, setName] = useState(shown.name);
  const [area, setArea] = useState(ownArea(shown.areaM2));
  const [kind, setKind] = useState(shown.kind);
  const [latitude, setLatitude] = useState(String(shown.latitudeDeg));
  const [longitude, setLongitude] = useState(String(shown.longitudeDeg));
  const [timeZone, setTimeZone] = useState(shown.timeZone);
  const [seasonEnd, setSeasonEnd] = useState(shown.seasonEnd);
  const [pests, setPests] = useState<PestId[]>(shown.pests);
  const changed = (): Place => ({
    ...shown,
    name,
    kind,
    // What was not changed keeps its decimals.
    areaM2: area === ownArea(shown.areaM2) ? shown.areaM2 : areaTyped(numberFrom(area) ?? 0),
    latitudeDeg: numberFrom(latitude) ?? 0,
    longitudeDeg: numberFrom(longitude) ?? 0,
    timeZone,
    seasonEnd,
    pests,
    // Limits are in another unit outdoors.
    limits: (kind === 'outdoors') === (shown.kind === 'outdoors') ? shown.limits : {},
  });
  const send = async () => {
    const refused = refusedHere(
      nameMissing(name),
      areaMissing(area),
      latitudeMissing(latitude),
      longitudeMissing(longitude),
      timeZoneMissing(timeZone),
    );
    return refused ? { ok: false as const, refused } : changePlace(changed(), `${name}.`);
  };
  return (
    <Opening title={`Change ${shown.name}`}>
      <Form onSend={send} button="Keep the place">
        {(refused) => (
          <>
            <Field label="Name" value={name} onText={setName} issue={issueFor(refused, 'name')} />
            <Field
              label="Area"
              unit={areaSign()}
              value={area}
              onText={setArea}
              inputMode="decimal"
              issue={issueFor(refused, 'areaM2')}
            />
            <KindKeys kind={kind} onChange={setKind} />
            <p>
              <strong>Pests you have had</strong>
            </p>
            <PestKeys pests={pests} kind={kind} onChange={setPests} />
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
                  {ownArea(each.areaM2)} {areaSign()}, {placeKindWords[each.kind]}
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
      <OwnerOnly>
        {shown && <PlaceForm shown={shown} />}
        <a class="key wide-key" href="/new-place">
          Add a place
        </a>
      </OwnerOnly>
    </Section>
  );
}
