/** What if: another day, another number; the same calculation as the house's, worked out in this browser. */
import { useEffect, useRef, useState } from 'preact/hooks';
import type { PestId, Trial, Tried } from '../../../services/model/index.ts';
import type { Outcome, Refused } from '../../api.ts';
import { Section } from '../../parts/section.tsx';
import { place } from '../../state.ts';
import type { Start } from '../../whatIf/messages.ts';
import { startThread, type Thread } from '../../whatIf/thread.ts';
import '../../styles/whatIf.css';
import { planned } from '../../words/ways.ts';
import { TrialFields } from './trialFields.tsx';
import { TrialResult } from './trialResult.tsx';

type State =
  | { at: 'rest' }
  | { at: 'work' }
  | { at: 'refused'; refused: Refused }
  | { at: 'ready'; from: Outcome; starts: Start[]; trial: Trial; answer?: Answer };

/** A result with what was tried for it: meanwhile the person may have gone on. */
interface Answer {
  trial: Trial;
  tried: Tried;
}

/** Begins with the parcel of the advice, else with the usual one of the first friend. */
export function firstTrial({ advice }: Outcome, starts: readonly Start[], pest?: PestId): Trial | undefined {
  const start = starts.find((each) => each.pest === (pest ?? advice.pest)) ?? starts[0];
  if (!start) return undefined;
  const plan = (advice.pest === start.pest ? planned(advice)?.plan : undefined) ?? start.parcels[0];
  return plan && { pest: start.pest, enemy: plan.enemy, number: plan.number, day: plan.windowFrom };
}

/** A try stays with the outcome it began from; from a newer one it begins when the person asks. */
function useWhatIf(outcome: Outcome) {
  const [state, setState] = useState<State>({ at: 'rest' });
  const thread = useRef<Thread | undefined>(undefined);
  const { asOf, seed, members, placeId } = outcome.forecast;
  useEffect(() => {
    setState({ at: 'rest' });
    return () => thread.current?.close();
  }, [placeId]);
  const choose = (trial: Trial) => {
    setState((now) => (now.at === 'ready' ? { ...now, trial } : now));
    thread.current?.try(trial);
  };
  /** Goes on with `begun` where it can still be tried. */
  const begin = (begun?: Trial) => {
    setState({ at: 'work' });
    thread.current?.close();
    thread.current = startThread(
      { placeId, asOf, seed, members },
      {
        ready: (starts) => {
          const open = starts.some(({ pest }) => pest === begun?.pest);
          const trial = open ? begun : firstTrial(outcome, starts);
          if (!trial) return setState({ at: 'refused', refused: noFriend });
          setState({ at: 'ready', from: outcome, starts, trial });
          thread.current?.try(trial);
        },
        // Only the latest try is told, so it is the one that stands in the fields.
        tried: (tried) =>
          setState((now) => (now.at === 'ready' ? { ...now, answer: { trial: now.trial, tried } } : now)),
        refused: (refused) => setState({ at: 'refused', refused }),
      },
    );
  };
  return { state, begin, choose };
}

const noFriend: Refused = {
  code: 'no-friend',
  reason: 'There is no friend to try against these pests here.',
  whatToDo: 'Add the pests you have had in the settings.',
};

export function WhatIf({ outcome }: { outcome: Outcome }) {
  const { state, begin, choose } = useWhatIf(outcome);
  return (
    <Section title="What if" id="what-if">
      <div role="status">
        {state.at === 'work' && (
          <p>Working through this season in this browser. It may take a while on an old phone.</p>
        )}
        {state.at === 'refused' && (
          <p>
            {state.refused.reason} {state.refused.whatToDo}
          </p>
        )}
      </div>
      {(state.at === 'rest' || state.at === 'refused') && (
        <>
          {state.at === 'rest' && <p>Set friends out on another day, or more of them: see what changes.</p>}
          <button type="button" class="key wide-key" onClick={() => begin()}>
            Try a release
          </button>
        </>
      )}
      {state.at === 'ready' && (
        <div class="what-if">
          {state.from.forecast.asOf !== outcome.forecast.asOf && (
            <div role="status">
              <p>A newer forecast is there. This try goes on from the one before it.</p>
              <button type="button" class="key wide-key" onClick={() => begin(state.trial)}>
                Try it from the newer forecast
              </button>
            </div>
          )}
          <TrialFields
            starts={state.starts}
            trial={state.trial}
            usual={(pest) => firstTrial(state.from, state.starts, pest)}
            onTrial={choose}
          />
          {state.answer && place.value && (
            <TrialResult outcome={state.from} starts={state.starts} {...state.answer} />
          )}
        </div>
      )}
    </Section>
  );
}
