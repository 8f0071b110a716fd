/** Three ticks: ants, washed or sprayed, lowest and highest without a sensor. */
import type { Treatment } from '../../../services/model/index.ts';
import { Field, issueFor, Key, RefusedWords } from '../../parts/field.tsx';
import { today } from '../../state.ts';
import { dayWords } from '../../words/dates.ts';
import { degreeSign } from '../../words/habits.ts';
import { treatmentNames } from '../../words/names.ts';
import { countedOn, refusedEntry, roundTime, show, type Ticks, ticksDraft } from './draft.ts';
import { Frame } from './frame.tsx';
import { keepTicks } from './keep.ts';

const treatments = Object.entries(treatmentNames) as [Treatment['kind'], string][];

export function ThreeTicks() {
  const ticks = ticksDraft.value;
  const set = (part: Ticks) => {
    ticksDraft.value = { ...ticksDraft.value, ...part };
  };
  const on = countedOn.value;
  const day = on === today.value ? 'today' : `on ${dayWords(on)}`;
  const sprayed = ticks.treated !== undefined && ticks.treated !== 'no';
  const refused = refusedEntry.value;
  return (
    <Frame
      title="Three ticks"
      thumb={
        <>
          <button type="button" class="text-button" onClick={() => show({ at: 'start' })}>
            Back
          </button>
          <button
            type="button"
            class="main-button"
            onClick={() => void keepTicks(ticks, roundTime.value, on)}
          >
            Keep
          </button>
        </>
      }
    >
      <RefusedWords refused={refused} />
      <fieldset class="keys">
        <legend>Ants on the plants?</legend>
        <Key pressed={ticks.ants === 'no'} onPress={() => set({ ants: 'no' })}>
          no
        </Key>
        <Key pressed={ticks.ants === 'yes'} onPress={() => set({ ants: 'yes' })}>
          yes
        </Key>
      </fieldset>
      <fieldset class="keys">
        <legend>Washed or sprayed since the last round?</legend>
        <Key pressed={ticks.treated === 'no'} onPress={() => set({ treated: 'no' })}>
          no
        </Key>
        <Key pressed={sprayed} onPress={() => set({ treated: 'water-jet' })}>
          yes
        </Key>
      </fieldset>
      {sprayed && (
        <fieldset class="keys">
          <legend>With what, {day}?</legend>
          {treatments.map(([kind, name]) => (
            <Key key={kind} pressed={ticks.treated === kind} onPress={() => set({ treated: kind })}>
              {name}
            </Key>
          ))}
          <p class="note">
            On another day? Enter it under <a href="/releases">Releases and orders</a>.
          </p>
        </fieldset>
      )}
      <fieldset class="keys">
        <legend>Lowest and highest {day}, if there is no sensor</legend>
        <Field
          label="Lowest"
          unit={degreeSign()}
          inputMode="decimal"
          value={ticks.lowest ?? ''}
          issue={issueFor(refused, 'minC')}
          onText={(lowest) => set({ lowest })}
        />
        <Field
          label="Highest"
          unit={degreeSign()}
          inputMode="decimal"
          value={ticks.highest ?? ''}
          issue={issueFor(refused, 'maxC')}
          onText={(highest) => set({ highest })}
        />
      </fieldset>
    </Frame>
  );
}
