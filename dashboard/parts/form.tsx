/** A form that stays filled when it is refused, and empties when it is kept. */
import type { ComponentChildren } from 'preact';
import { useState } from 'preact/hooks';
import type { Answer, Refused } from '../api.ts';
import { goToRefused, RefusedWords } from './field.tsx';

interface FormProps {
  /** Sends what the fields hold. */
  onSend: () => Promise<Answer<unknown>>;
  onKept?: () => void;
  button: string;
  /** At most one yellow button in a screenful. */
  main?: boolean;
  children: (refused: Refused | undefined) => ComponentChildren;
}
export function Form({ onSend, onKept, button, main = false, children }: FormProps) {
  const [refused, setRefused] = useState<Refused | undefined>(undefined);
  const [sending, setSending] = useState(false);
  /** Once something is mended, the words about the whole form are of before. */
  const [touched, setTouched] = useState(false);
  const submit = async (event: Event) => {
    event.preventDefault();
    setSending(true);
    const answer = await onSend();
    setSending(false);
    setTouched(false);
    setRefused(answer.ok ? undefined : answer.refused);
    if (answer.ok) onKept?.();
    else goToRefused();
  };
  return (
    <form class="form" noValidate onInput={() => setTouched(true)} onSubmit={(event) => void submit(event)}>
      {children(refused)}
      <RefusedWords refused={touched ? undefined : refused} />
      <button type="submit" class={main ? 'main-button' : 'key wide-key'} disabled={sending}>
        {button}
      </button>
    </form>
  );
}

/** A form behind a key, so that a page opens short. */
export function Opening({ title, children }: { title: string; children: ComponentChildren }) {
  return (
    <details class="opening">
      <summary>{title}</summary>
      {children}
    </details>
  );
}
