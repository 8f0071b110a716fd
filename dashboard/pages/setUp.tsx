/** From nothing to the first count in four short screens; the rest is asked by the page that needs it. */
import { useState } from 'preact/hooks';
import type { Place, Planting, Trap } from '../../services/model/index.ts';
import { newKey, type Refused, send } from '../api.ts';
import { goToRefused, numberFrom, RefusedWords } from '../parts/field.tsx';
import { Shell } from '../parts/shell.tsx';
import { go } from '../router.ts';
import { choosePlace, nowMs, places, refresh } from '../state.ts';
import { entryTime, isTimeZone, localDay } from '../words/dates.ts';
import { areaTyped } from '../words/habits.ts';
import { slugFrom } from '../words/slugs.ts';
import {
  checks,
  freshPlan,
  NameStep,
  PestStep,
  type Plan,
  PlantStep,
  PositionStep,
} from './settings/setUpSteps.tsx';

const steps = [NameStep, PlantStep, PestStep, PositionStep];
const buttons = ['Next: what grows', 'Next: pests', 'Next: where it stands', 'Keep, and count'];

/** Which screen asked for the refused field. */
function stepOf(refused: Refused): number {
  const path = refused.issues?.[0]?.path ?? '';
  if (/name|area|kind/i.test(path)) return 0;
  return /pests/.test(path) ? 2 : 3;
}

function placeFrom(plan: Plan, taken: readonly string[]): Place {
  const latitudeDeg = numberFrom(plan.latitude) ?? 0;
  return {
    id: slugFrom(plan.name, taken),
    name: plan.name,
    kind: plan.kind,
    areaM2: areaTyped(numberFrom(plan.area) ?? 0),
    latitudeDeg,
    longitudeDeg: numberFrom(plan.longitude) ?? 0,
    timeZone: plan.timeZone,
    pests: plan.pests,
    limits: {},
    seasonEnd: latitudeDeg < 0 ? '04-30' : '10-31',
  };
}

/** The place first; plants and trap follow. The keys make it safe to press twice. */
async function keep(
  plan: Plan,
  keys: { place: string; rest: string },
  now: number,
): Promise<Refused | undefined> {
  const place = placeFrom(plan, places.value.data?.places.map((each) => each.id) ?? []);
  const answer = await send({ method: 'POST', path: '/api/places', body: place, key: keys.place });
  if (!answer.ok) return answer.refused;
  const hungAt = entryTime(plan.hungOn || localDay(now, plan.timeZone), now, plan.timeZone);
  const trap: Trap = { id: slugFrom(plan.trap || 'trap 1'), name: plan.trap || 'Trap 1', hungAt };
  const plantings: Omit<Planting, 'id'>[] = Object.entries(plan.crops).map(([crop, plants]) => ({
    crop,
    plants,
  }));
  const base = `/api/places/${place.id}`;
  for (const [index, planting] of plantings.entries()) {
    await send({ method: 'POST', path: `${base}/plantings`, body: planting, key: `${keys.rest}-${index}` });
  }
  if (plan.kind !== 'outdoors') {
    const hung = await send({ method: 'POST', path: `${base}/traps`, body: trap, key: `${keys.rest}-trap` });
    if (!hung.ok) return hung.refused;
  }
  choosePlace(place.id);
  return undefined;
}

export function SetUp() {
  const [step, setStep] = useState(0);
  const [plan, setPlan] = useState<Plan>(freshPlan);
  const [keys] = useState(() => ({ place: newKey(), rest: newKey() }));
  const [refused, setRefused] = useState<Refused | undefined>(undefined);
  const [touched, setTouched] = useState(false);
  const Step = steps[step] ?? NameStep;
  const today = localDay(nowMs.value, isTimeZone(plan.timeZone) ? plan.timeZone : 'UTC');
  const show = (to: number, why?: Refused) => {
    setRefused(why);
    setTouched(false);
    setStep(to);
    if (why) goToRefused();
  };
  const next = async () => {
    const missing = checks[step]?.(plan, today);
    if (missing) return show(step, missing);
    if (step < steps.length - 1) return show(step + 1);
    const answer = await keep(plan, keys, nowMs.value);
    if (answer) return show(stepOf(answer), answer);
    refresh(/./);
    go('/round');
  };
  return (
    <Shell footBar={false}>
      <div class="round">
        <p class="note">{step + 1} of 4, about a minute each</p>
        <div class="round-body" onInput={() => setTouched(true)}>
          <Step
            plan={plan}
            refused={refused}
            today={today}
            onChange={(part) => setPlan((old) => ({ ...old, ...part }))}
          />
          <RefusedWords refused={touched ? undefined : refused} />
        </div>
        <div class="thumb-bar">
          {step > 0 && (
            <button type="button" class="text-button" onClick={() => show(step - 1)}>
              Back
            </button>
          )}
          <button type="button" class="main-button" onClick={() => void next()}>
            {buttons[step]}
          </button>
        </div>
      </div>
    </Shell>
  );
}
