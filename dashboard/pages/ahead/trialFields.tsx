/** What is tried: against which pest, which friend, how many, on which day. */
import { useEffect, useState } from 'preact/hooks';
import type { PestId, Trial } from '../../../services/model/index.ts';
import { Choice, Field, numberFrom } from '../../parts/field.tsx';
import type { Start } from '../../whatIf/messages.ts';
import { addDays } from '../../words/dates.ts';
import { capital, enemyWords, pestNames } from '../../words/names.ts';

interface TrialFieldsProps {
  starts: readonly Start[];
  trial: Trial;
  /** Where a try against another pest begins. */
  usual: (pest: PestId) => Trial | undefined;
  onTrial: (trial: Trial) => void;
}

const most = 1_000_000;
const asNumber = (text: string): number | undefined => {
  const number = numberFrom(text);
  return number !== undefined && Number.isInteger(number) && number >= 1 && number <= most
    ? number
    : undefined;
};

function NumberField({ trial, onTrial }: Pick<TrialFieldsProps, 'trial' | 'onTrial'>) {
  const [text, setText] = useState(String(trial.number));
  useEffect(() => {
    if (asNumber(text) !== trial.number) setText(String(trial.number));
  }, [trial.number]);
  const fits = asNumber(text) !== undefined;
  return (
    <Field
      label="How many"
      value={text}
      inputMode="numeric"
      {...(!fits && {
        issue: { path: 'number', expected: 'a whole number above 0', received: text || 'empty' },
      })}
      onText={(typed) => {
        setText(typed);
        const number = asNumber(typed);
        if (number !== undefined) onTrial({ ...trial, number });
      }}
    />
  );
}

export function TrialFields({ starts, trial, usual, onTrial }: TrialFieldsProps) {
  const parcels = starts.find(({ pest }) => pest === trial.pest)?.parcels ?? [];
  const keys: { words: string; next: Trial }[] = [
    { words: 'a week earlier', next: { ...trial, day: addDays(trial.day, -7) } },
    { words: 'a week later', next: { ...trial, day: addDays(trial.day, 7) } },
    { words: 'half as many', next: { ...trial, number: Math.max(1, Math.round(trial.number / 2)) } },
    { words: 'twice as many', next: { ...trial, number: Math.min(most, trial.number * 2) } },
  ];
  return (
    <div class="what-if-fields">
      {starts.length > 1 && (
        <Choice
          label="Against"
          value={trial.pest}
          options={starts.map(({ pest }) => ({ value: pest, label: capital(pestNames[pest]) }))}
          onChoose={(pest) => onTrial(usual(pest) ?? trial)}
        />
      )}
      <Choice
        label="Friend"
        value={trial.enemy}
        options={parcels.map(({ enemy }) => ({ value: enemy, label: capital(enemyWords[enemy].name) }))}
        onChoose={(enemy) => {
          const number = parcels.find((each) => each.enemy === enemy)?.number ?? trial.number;
          onTrial({ ...trial, enemy, number });
        }}
      />
      <NumberField trial={trial} onTrial={onTrial} />
      <Field
        label="Set out on"
        type="date"
        value={trial.day}
        onText={(day) => day !== '' && onTrial({ ...trial, day })}
      />
      <fieldset class="keys">
        <legend>Or</legend>
        {keys.map(({ words, next }) => (
          <button type="button" class="key" key={words} onClick={() => onTrial(next)}>
            {words}
          </button>
        ))}
      </fieldset>
    </div>
  );
}
