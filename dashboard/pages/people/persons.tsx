/** Sessions, and invitations for whoever helps to count. */
import { useState } from 'preact/hooks';
import type { Answer } from '../../api.ts';
import { Almanac } from '../../parts/almanac.tsx';
import { Field, issueFor, refusedHere, textMissing } from '../../parts/field.tsx';
import { Form, Opening } from '../../parts/form.tsx';
import { Section } from '../../parts/section.tsx';
import { type Credential, CredentialLine, MadeOnce, make } from './credentials.tsx';

const notes: Partial<Record<string, string>> = {
  owner: 'owner: may do everything',
  helper: 'may look and count',
  invite: 'invited, has not come in yet',
};

export function Persons({ all }: { all: readonly Credential[] }) {
  const [name, setName] = useState('');
  const onSend = async (): Promise<Answer<unknown>> => {
    const refused = refusedHere(textMissing('name', name, 'type a name, such as Ada'));
    return refused ? { ok: false, refused } : make({ kind: 'invite', name });
  };
  return (
    <Section title="People">
      <Almanac>
        {all
          .filter(({ kind }) => kind === 'session' || kind === 'invite')
          .map((each) => (
            <CredentialLine key={each.id} credential={each} note={notes[each.role ?? each.kind]} />
          ))}
      </Almanac>
      <MadeOnce kind="invite">
        {({ credential, secret }) => (
          <>
            <p>
              Send this to <strong>{credential.name}</strong>. It opens once, within seven days.
            </p>
            <code class="secret">{`${location.origin}/#invitation=${secret}`}</code>
          </>
        )}
      </MadeOnce>
      <Opening title="Invite somebody to count">
        <Form onSend={onSend} onKept={() => setName('')} button="Make an invitation">
          {(refused) => (
            <Field
              label="Who"
              value={name}
              onText={setName}
              issue={issueFor(refused, 'name')}
              hint="may enter and mend counts, but not take away or set up"
            />
          )}
        </Form>
      </Opening>
    </Section>
  );
}
