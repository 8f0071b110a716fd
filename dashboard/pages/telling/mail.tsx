/** Who is told by mail. */
import { useState } from 'preact/hooks';
import { Almanac } from '../../parts/almanac.tsx';
import { Field, issueFor, refusedHere, textMissing } from '../../parts/field.tsx';
import { Form, Opening } from '../../parts/form.tsx';
import { Section } from '../../parts/section.tsx';
import { keepSettings, type TellingAnswer } from './answer.ts';
import { Receiver } from './receiver.tsx';

export function Mail({ answer }: { answer: TellingAnswer }) {
  const { settings, canMail, targets } = answer;
  const [address, setAddress] = useState('');
  const path = `mailTo.${settings.mailTo.length}`;
  const onSend = async () => {
    const refused = refusedHere(textMissing(path, address, 'type a mail address such as ada@example.org'));
    if (refused) return { ok: false as const, refused };
    const to = address.trim();
    return keepSettings({ ...settings, mailTo: [...settings.mailTo, to] }, `${to} is told by mail.`);
  };
  const takeAway = (to: string) =>
    void keepSettings(
      { ...settings, mailTo: settings.mailTo.filter((each) => each !== to) },
      `${to} is told no longer.`,
    );
  return (
    <Section title="Mail">
      {!canMail && (
        <p class="note">
          No mail server is set yet: whoever runs glasstide names one, as the page on running it tells.
        </p>
      )}
      {settings.mailTo.length === 0 && <p>Nobody is told by mail.</p>}
      <Almanac>
        {settings.mailTo.map((to) => (
          <Receiver
            key={to}
            name={to}
            state={targets.find((each) => each.channel === 'mail' && each.to === to)}
            onTakeAway={() => takeAway(to)}
          />
        ))}
      </Almanac>
      <Opening title="Tell another address">
        <Form onSend={onSend} onKept={() => setAddress('')} button="Tell this address">
          {(refused) => (
            <Field label="Mail address" value={address} onText={setAddress} issue={issueFor(refused, path)} />
          )}
        </Form>
      </Opening>
    </Section>
  );
}
