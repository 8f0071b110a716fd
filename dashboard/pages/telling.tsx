/** How you are told: hours, mail, phones, calendar, and what was sent. */
import { Almanac, Line } from '../parts/almanac.tsx';
import { PageHead, Section } from '../parts/section.tsx';
import { Shell } from '../parts/shell.tsx';
import { place, placePath, resource } from '../state.ts';
import { capital } from '../words/names.ts';
import { momentWords, type TellingAnswer, tryOut } from './telling/answer.ts';
import { Calendar } from './telling/calendar.tsx';
import { Hours } from './telling/hours.tsx';
import { Mail } from './telling/mail.tsx';
import { Phones } from './telling/phones.tsx';

const counted = (n: number, one: string, many: string) => (n === 1 ? `one ${one}` : `${n} ${many}`);

function headSentence({ settings, phones }: TellingAnswer): string {
  const parts = [
    ...(settings.mailTo.length > 0
      ? [counted(settings.mailTo.length, 'mail address', 'mail addresses')]
      : []),
    ...(phones.length > 0 ? [counted(phones.length, 'phone', 'phones')] : []),
  ];
  if (parts.length === 0) return 'Warnings stand on these pages only, so far.';
  return `${capital(parts.join(' and '))} ${settings.mailTo.length + phones.length === 1 ? 'is' : 'are'} told.`;
}

const eventWords = { raised: 'a warning', withdrawn: 'no longer true', letter: 'the letter' };

function Sent({ answer }: { answer: TellingAnswer }) {
  const nameOf = (to: string) => answer.phones.find(({ id }) => id === to)?.name ?? to;
  const sent = answer.settled.filter((each) => each.sent);
  return (
    <Section title="Sent lately">
      {sent.length === 0 && <p class="note">Nothing yet.</p>}
      <Almanac>
        {sent.map(({ channel, to, event, about, at }) => (
          <Line
            key={`${channel} ${to} ${event} ${about} ${at}`}
            name={channel === 'mail' || nameOf(to) !== to ? nameOf(to) : 'a phone'}
            value={momentWords(at)}
            note={eventWords[event]}
          />
        ))}
      </Almanac>
    </Section>
  );
}

function Lamp() {
  return (
    <Section title="A lamp or a display">
      <p>
        Over MQTT, kept for whoever listens: <code>glasstide/{place.value?.id}/warnings</code> and{' '}
        <code>glasstide/{place.value?.id}/advice</code>.
      </p>
      <button type="button" class="key wide-key" onClick={() => void tryOut({ channel: 'mqtt' })}>
        Try it: publish them again
      </button>
    </Section>
  );
}

export function Telling() {
  const { data, refused } = resource<TellingAnswer>(placePath('telling')).value;
  if (!data) {
    return (
      <Shell>
        <PageHead sentence={refused?.reason ?? 'How you are told'} note={refused?.whatToDo} />
      </Shell>
    );
  }
  const { settings } = data;
  return (
    <Shell>
      <PageHead sentence={headSentence(data)} note="Few, in time, and by the way you choose." />
      <div class="two-columns">
        <Hours key={JSON.stringify(settings)} settings={settings} />
        <Mail answer={data} />
        <Phones answer={data} />
        <Calendar />
        <Lamp />
        <Sent answer={data} />
      </div>
    </Shell>
  );
}
