/** Fields of a form. A refused one keeps what was typed and shows the words beside it until it is changed. */
import type { ComponentChildren } from 'preact';
import { useId, useState } from 'preact/hooks';
import type { Issue, Refused } from '../api.ts';
import { dayWords } from '../words/dates.ts';
import { capital } from '../words/names.ts';

/** `/counts/whitefly`, `counts.whitefly` and `counts[whitefly]` name the same field. */
const plainPath = (path: string): string =>
  path
    .split(/[^a-zA-Z0-9-]+/)
    .filter(Boolean)
    .join('.');

export const issueFor = (refused: Refused | undefined, path: string): Issue | undefined =>
  refused?.issues?.find((issue) => plainPath(issue.path) === path);

export const issueWords = (issue: Issue): string => `${capital(issue.expected)}; this was ${issue.received}.`;

/** What the page itself sees before anything is sent; undefined when nothing is amiss. */
export function refusedHere(...issues: (Issue | undefined)[]): Refused | undefined {
  const found = issues.filter((each) => each !== undefined);
  if (found.length === 0) return undefined;
  const reason =
    found.length === 1
      ? 'One field is missing or not right yet.'
      : 'Some fields are missing or not right yet.';
  return { code: 'field-empty', reason, whatToDo: 'Look at the marked field.', issues: found };
}

const received = (text: string) => (text.trim() === '' ? 'empty' : text.trim());

export const textMissing = (path: string, text: string, expected: string): Issue | undefined =>
  text.trim() === '' ? { path, expected, received: 'empty' } : undefined;

/** Neither a number nor, with `above`, more than that. */
export function numberMissing(
  path: string,
  text: string,
  expected: string,
  above?: number,
): Issue | undefined {
  const value = numberFrom(text);
  const fits = value !== undefined && (above === undefined || value > above);
  return fits ? undefined : { path, expected, received: received(text) };
}

/** May be left empty, but then nothing else than a number. */
export const numberOdd = (path: string, text: string, expected: string): Issue | undefined =>
  text.trim() === '' ? undefined : numberMissing(path, text, expected);

/** A day left out, or still to come. */
export function dayMissing(path: string, day: string, today: string): Issue | undefined {
  if (day !== '' && day <= today) return undefined;
  return { path, expected: 'choose today or an earlier day', received: day === '' ? 'empty' : dayWords(day) };
}

interface FieldProps {
  label: string;
  value: string;
  onText: (text: string) => void;
  hint?: string | undefined;
  unit?: string | undefined;
  issue?: Issue | undefined;
  type?: 'text' | 'date' | 'password' | 'new-password';
  /** The last day that can be chosen, for a date. */
  max?: string;
  /** The keyboard a phone shows. */
  inputMode?: 'text' | 'numeric' | 'decimal';
}
export function Field(props: FieldProps) {
  const { label, value, onText, hint, unit, max, type = 'text', inputMode = 'text' } = props;
  const id = useId();
  const [mended, setMended] = useState<Issue | undefined>(undefined);
  const issue = props.issue === mended ? undefined : props.issue;
  const shared = {
    id,
    value,
    'aria-invalid': issue !== undefined,
    ...((hint || issue) && { 'aria-describedby': `${id}-words` }),
    onInput: (event: { currentTarget: HTMLInputElement }) => {
      setMended(props.issue);
      onText(event.currentTarget.value);
    },
  };
  return (
    <div class={issue ? 'field refused' : 'field'}>
      <label for={id}>
        {label}
        {unit && <span class="field-unit">, {unit}</span>}
      </label>
      {type === 'date' && <input type="date" {...(max && { max })} {...shared} />}
      {type === 'text' && <input type="text" inputMode={inputMode} autocomplete="off" {...shared} />}
      {type === 'password' && <input type="password" autocomplete="current-password" {...shared} />}
      {type === 'new-password' && <input type="password" autocomplete="new-password" {...shared} />}
      {(hint || issue) && (
        <p id={`${id}-words`} class={issue ? 'field-issue' : 'note'}>
          {issue ? issueWords(issue) : hint}
        </p>
      )}
    </div>
  );
}

interface ChoiceProps<T extends string> {
  label: string;
  value: T;
  options: readonly { value: T; label: string }[];
  onChoose: (value: T) => void;
  issue?: Issue | undefined;
}
export function Choice<T extends string>({ label, value, options, onChoose, issue }: ChoiceProps<T>) {
  const id = useId();
  return (
    <div class={issue ? 'field refused' : 'field'}>
      <label for={id}>{label}</label>
      <select id={id} value={value} onChange={(event) => onChoose(event.currentTarget.value as T)}>
        {options.map((option) => (
          <option key={option.value} value={option.value}>
            {option.label}
          </option>
        ))}
      </select>
      {issue && <p class="field-issue">{issueWords(issue)}</p>}
    </div>
  );
}

interface KeyProps {
  pressed: boolean;
  onPress: () => void;
  children: ComponentChildren;
  class?: string;
  label?: string;
}
/** A key that stays down: chosen = ink. */
export function Key({ pressed, onPress, children, label, ...rest }: KeyProps) {
  return (
    <button
      type="button"
      class={`key ${rest.class ?? ''}`}
      aria-pressed={pressed}
      {...(label && { 'aria-label': label })}
      onClick={onPress}
    >
      {children}
    </button>
  );
}

/** What the service said about the whole form. */
export function RefusedWords({ refused }: { refused: Refused | undefined }) {
  return (
    <div role="alert">
      {refused && (
        <p class="refused-words">
          <strong>{refused.code === 'field-empty' ? 'Not yet.' : 'Not kept.'}</strong>{' '}
          {capital(refused.reason)} {refused.whatToDo}
        </p>
      )}
    </div>
  );
}

/** After a refusal the reader stands at the field it names. */
export function goToRefused(): void {
  requestAnimationFrame(() => {
    document.querySelector<HTMLElement>('.field.refused input, .field.refused select')?.focus();
  });
}

/** A number from a field; undefined when nothing is typed, NaN never leaves. */
export function numberFrom(text: string): number | undefined {
  const value = Number(text.replace(',', '.').trim());
  return text.trim() === '' || Number.isNaN(value) ? undefined : value;
}
