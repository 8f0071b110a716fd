/** The four screens of a new place. */
import type { PestId, Place } from '../../../services/model/index.ts';
import type { Refused } from '../../api.ts';
import { dayMissing, Field, issueFor, Key, refusedHere } from '../../parts/field.tsx';
import { Stepper } from '../../parts/stepper.tsx';
import { areaSign } from '../../words/habits.ts';
import { capital } from '../../words/names.ts';
import {
  areaMissing,
  KindKeys,
  latitudeMissing,
  longitudeMissing,
  nameMissing,
  PestKeys,
  timeZoneMissing,
} from './places.tsx';

export interface Plan {
  name: string;
  area: string;
  kind: Place['kind'];
  /** Plants by crop. */
  crops: Record<string, number>;
  pests: PestId[];
  latitude: string;
  longitude: string;
  timeZone: string;
  trap: string;
  /** The day the first trap was hung; '' = today. */
  hungOn: string;
}

export const freshPlan = (): Plan => ({
  name: '',
  area: '',
  kind: 'glasshouse',
  crops: {},
  pests: [],
  latitude: '',
  longitude: '',
  timeZone: Intl.DateTimeFormat().resolvedOptions().timeZone,
  trap: '',
  hungOn: '',
});

/** What each screen sees before it lets go on. */
export const checks: readonly ((plan: Plan, today: string) => Refused | undefined)[] = [
  ({ name, area }) => refusedHere(nameMissing(name), areaMissing(area)),
  () => undefined,
  () => undefined,
  ({ latitude, longitude, timeZone, hungOn }, today) =>
    refusedHere(
      latitudeMissing(latitude),
      longitudeMissing(longitude),
      timeZoneMissing(timeZone),
      dayMissing('hungAt', hungOn || today, today),
    ),
];

interface StepProps {
  plan: Plan;
  refused: Refused | undefined;
  /** The local day. */
  today: string;
  onChange: (part: Partial<Plan>) => void;
}

export function NameStep({ plan, refused, onChange }: StepProps) {
  return (
    <>
      <h1 tabIndex={-1}>What do you call the place?</h1>
      <p class="note">Rough is fine. Everything can be changed and undone.</p>
      <Field
        label="Name"
        value={plan.name}
        onText={(name) => onChange({ name })}
        issue={issueFor(refused, 'name') ?? issueFor(refused, 'id')}
      />
      <Field
        label="Size"
        unit={areaSign()}
        inputMode="decimal"
        value={plan.area}
        onText={(area) => onChange({ area })}
        hint="length times width"
        issue={issueFor(refused, 'areaM2')}
      />
      <KindKeys kind={plan.kind} onChange={(kind) => onChange({ kind })} />
    </>
  );
}

const crops = [
  'tomato',
  'cucumber',
  'pepper',
  'aubergine',
  'beans',
  'strawberry',
  'fuchsia',
  'rose',
  'citrus',
  'cherry',
  'something else',
];

export function PlantStep({ plan, onChange }: StepProps) {
  const toggle = (crop: string) => {
    const { [crop]: grown, ...rest } = plan.crops;
    onChange({ crops: grown === undefined ? { ...plan.crops, [crop]: 6 } : rest });
  };
  return (
    <>
      <h1 tabIndex={-1}>What grows there?</h1>
      <p class="note">Tap all that do.</p>
      <div class="two-keys">
        {crops.map((crop) => (
          <Key key={crop} pressed={crop in plan.crops} onPress={() => toggle(crop)}>
            {capital(crop)}
          </Key>
        ))}
      </div>
      {Object.keys(plan.crops).length > 0 && <h2 class="round-question">How many plants?</h2>}
      {Object.entries(plan.crops).map(([crop, plants]) => (
        <Stepper
          key={crop}
          label={crop}
          value={plants}
          low={1}
          high={1000}
          onChange={(n) => onChange({ crops: { ...plan.crops, [crop]: n } })}
        />
      ))}
    </>
  );
}

export function PestStep({ plan, onChange }: StepProps) {
  return (
    <>
      <h1 tabIndex={-1}>Which pests have you had?</h1>
      <p class="note">
        Not sure? Leave it: the first counts will tell, and you can choose later under Settings.
      </p>
      <PestKeys pests={plan.pests} kind={plan.kind} onChange={(pests) => onChange({ pests })} />
    </>
  );
}

export function PositionStep({ plan, refused, today, onChange }: StepProps) {
  return (
    <>
      <h1 tabIndex={-1}>Where does it stand?</h1>
      <p class="note">
        Half a degree is near enough: it gives the length of the day. It stays on your own machine.
      </p>
      <Field
        label="Latitude"
        unit="degrees north"
        inputMode="text"
        value={plan.latitude}
        onText={(latitude) => onChange({ latitude })}
        hint="south of the equator with a minus"
        issue={issueFor(refused, 'latitudeDeg')}
      />
      <Field
        label="Longitude"
        unit="degrees east"
        inputMode="text"
        value={plan.longitude}
        onText={(longitude) => onChange({ longitude })}
        hint="west with a minus"
        issue={issueFor(refused, 'longitudeDeg')}
      />
      <Field
        label="Time zone"
        value={plan.timeZone}
        onText={(timeZone) => onChange({ timeZone })}
        issue={issueFor(refused, 'timeZone')}
      />
      {plan.kind !== 'outdoors' && (
        <>
          <Field
            label="Where your first yellow trap hangs"
            value={plan.trap}
            onText={(trap) => onChange({ trap })}
            hint="such as by the door"
          />
          <Field
            label="Hung on"
            type="date"
            value={plan.hungOn || today}
            max={today}
            onText={(hungOn) => onChange({ hungOn })}
            hint="the day that trap was hung: what is on it came since then"
            issue={issueFor(refused, 'hungAt')}
          />
        </>
      )}
    </>
  );
}
