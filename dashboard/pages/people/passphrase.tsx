/** Choosing the passphrase, changing it, and leaving. */
import { useState } from 'preact/hooks';
import { beginAnew, learnAccess } from '../../access.ts';
import { type Answer, send } from '../../api.ts';
import { notice } from '../../notices.ts';
import { Field, issueFor, refusedHere, textMissing } from '../../parts/field.tsx';
import { Form, Opening } from '../../parts/form.tsx';
import { Section } from '../../parts/section.tsx';
import { thisBrowser } from '../unlock.tsx';

function PassphraseForm({ chosen }: { chosen: boolean }) {
  const [before, setBefore] = useState('');
  const [passphrase, setPassphrase] = useState('');
  const [again, setAgain] = useState('');
  const onSend = async (): Promise<Answer<unknown>> => {
    const refused = refusedHere(
      chosen ? textMissing('before', before, 'type the present passphrase') : undefined,
      textMissing('passphrase', passphrase, 'type the new passphrase'),
      passphrase === again
        ? undefined
        : { path: 'again', expected: 'type the same passphrase', received: 'another' },
    );
    if (refused) return { ok: false, refused };
    const body = { passphrase, name: thisBrowser(), ...(chosen && { before }) };
    return send({ method: 'POST', path: '/api/access/passphrase', body });
  };
  const onKept = async () => {
    for (const empty of [setBefore, setPassphrase, setAgain]) empty('');
    await learnAccess();
    notice.value = {
      kind: 'kept',
      lead: 'The house is locked.',
      text: 'This browser is in; all others need the passphrase.',
    };
  };
  return (
    <Form onSend={onSend} onKept={() => void onKept()} button="Lock the house with it" main={!chosen}>
      {(refused) => (
        <>
          {chosen && (
            <Field
              label="Present passphrase"
              type="password"
              value={before}
              onText={setBefore}
              issue={issueFor(refused, 'before')}
            />
          )}
          <Field
            label="New passphrase"
            type="new-password"
            value={passphrase}
            onText={setPassphrase}
            issue={issueFor(refused, 'passphrase')}
            hint="at least 12 characters; four words that have nothing to do with each other are easy to keep"
          />
          <Field
            label="Once more"
            type="new-password"
            value={again}
            onText={setAgain}
            issue={issueFor(refused, 'again')}
          />
        </>
      )}
    </Form>
  );
}

const signOut = async () => {
  const answer = await send({ method: 'POST', path: '/api/access/sign-out' });
  if (!answer.ok) return;
  beginAnew();
};

export function Passphrase({ chosen, owner }: { chosen: boolean; owner: boolean }) {
  return (
    <Section title={chosen ? 'This browser' : 'The passphrase'}>
      {!chosen && <PassphraseForm chosen={false} />}
      {chosen && owner && (
        <Opening title="Change the passphrase">
          <PassphraseForm chosen />
        </Opening>
      )}
      {chosen && (
        <p>
          <button type="button" class="key wide-key" onClick={() => void signOut()}>
            Leave on this browser
          </button>
        </p>
      )}
    </Section>
  );
}
