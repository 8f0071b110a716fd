/** Keys of programs that only read: a display, or whatever watches the house. */
import { useState } from 'preact/hooks';
import type { Answer } from '../../api.ts';
import { Almanac } from '../../parts/almanac.tsx';
import { Field, issueFor, refusedHere, textMissing } from '../../parts/field.tsx';
import { Form, Opening } from '../../parts/form.tsx';
import { Section } from '../../parts/section.tsx';
import { type Credential, CredentialLine, MadeOnce, make } from './credentials.tsx';

export function Programs({ all }: { all: readonly Credential[] }) {
  const [name, setName] = useState('');
  const onSend = async (): Promise<Answer<unknown>> => {
    const refused = refusedHere(textMissing('name', name, 'type a name, such as display in the kitchen'));
    return refused ? { ok: false, refused } : make({ kind: 'reader', name });
  };
  return (
    <Section title="Programs">
      <p>A program that reads the API or the metrics sends a key as “Authorization: Bearer”.</p>
      <Almanac>
        {all
          .filter(({ kind }) => kind === 'reader')
          .map((each) => (
            <CredentialLine key={each.id} credential={each} note="may read, not write" />
          ))}
      </Almanac>
      <MadeOnce kind="reader">
        {({ credential, secret }) => (
          <>
            <p>
              The key of <strong>{credential.name}</strong>:
            </p>
            <code class="secret">{secret}</code>
          </>
        )}
      </MadeOnce>
      <Opening title="A key for a program">
        <Form onSend={onSend} onKept={() => setName('')} button="Make a key">
          {(refused) => (
            <Field label="Name" value={name} onText={setName} issue={issueFor(refused, 'name')} />
          )}
        </Form>
      </Opening>
    </Section>
  );
}
