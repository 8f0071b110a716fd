/** The locked house: the passphrase, or an invitation that came as a link. */
import { useState } from 'preact/hooks';
import { beginAnew } from '../access.ts';
import { type Answer, send } from '../api.ts';
import { Field, issueFor, refusedHere, textMissing } from '../parts/field.tsx';
import { Form } from '../parts/form.tsx';
import { PageHead } from '../parts/section.tsx';

/** It stands behind the # so that it never reaches a server's log. */
const invitation = /^#invitation=([\w-]+)$/.exec(location.hash)?.[1];

/** What the phone calls itself, for the list of who may come in. */
export function thisBrowser(): string {
  const device = /iPhone|iPad|Android|Windows|Macintosh|Linux/.exec(navigator.userAgent)?.[0] ?? 'browser';
  return device === 'Macintosh' ? 'Mac' : device;
}

function WithPassphrase() {
  const [passphrase, setPassphrase] = useState('');
  const onSend = async (): Promise<Answer<unknown>> => {
    const refused = refusedHere(textMissing('passphrase', passphrase, 'type the passphrase of this house'));
    if (refused) return { ok: false, refused };
    const body = { passphrase, name: thisBrowser() };
    return send({ method: 'POST', path: '/api/access/sign-in', body });
  };
  return (
    <Form onSend={onSend} onKept={beginAnew} button="Come in" main>
      {(refused) => (
        <Field
          label="Passphrase"
          type="password"
          value={passphrase}
          onText={setPassphrase}
          issue={issueFor(refused, 'passphrase')}
        />
      )}
    </Form>
  );
}

function WithInvitation({ secret }: { secret: string }) {
  const onSend = () => send({ method: 'POST', path: '/api/access/accept', body: { invitation: secret } });
  return (
    <Form onSend={onSend} onKept={beginAnew} button="Come in" main>
      {() => <p>You can look at everything and enter counts. The owner can take it back at any time.</p>}
    </Form>
  );
}

export function Unlock() {
  return (
    <div class="shell no-foot">
      <header class="head">
        <span class="brand">glasstide</span>
      </header>
      <main id="content" class="unlock" tabIndex={-1}>
        <PageHead
          sentence={invitation ? 'You are invited to count here.' : 'This house is locked.'}
          note={
            invitation ? 'The invitation opens once, in this browser.' : 'Its owner knows the passphrase.'
          }
        />
        {invitation ? <WithInvitation secret={invitation} /> : <WithPassphrase />}
      </main>
    </div>
  );
}
