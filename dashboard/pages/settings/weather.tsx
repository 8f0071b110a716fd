/** The weather ahead: where a forecast of the air outdoors is fetched, and how that went. */
import { useState } from 'preact/hooks';
import { type Answer, send } from '../../api.ts';
import { notice } from '../../notices.ts';
import { Choice, Field, issueFor, refusedHere, textMissing } from '../../parts/field.tsx';
import { Form, Opening } from '../../parts/form.tsx';
import { Section } from '../../parts/section.tsx';
import { placePath, refresh, resource } from '../../state.ts';
import { momentWords } from '../telling/answer.ts';

interface Source {
  url: string;
  pointers: { list?: string; time: string; temperature: string };
  unit: 'Cel' | 'Far' | 'K';
}
interface WeatherAnswer {
  source?: Source;
  issuedAt?: string;
  trouble?: string;
}

const units = [
  { value: 'Cel', label: '°C' },
  { value: 'Far', label: '°F' },
  { value: 'K', label: 'K' },
] as const;

function stateWords({ source, issuedAt, trouble }: WeatherAnswer): string {
  if (!source) return 'Not set: the days ahead are taken from your own readings and the season.';
  const last = issuedAt === undefined ? 'Nothing fetched yet.' : `Last fetched ${momentWords(issuedAt)}.`;
  return trouble === undefined ? last : `${last} ${trouble}`;
}

function kept(answer: Answer<WeatherAnswer>, words: string): Answer<WeatherAnswer> {
  if (answer.ok) {
    refresh(/\/outdoor$/);
    notice.value = { kind: 'kept', lead: 'Kept:', text: answer.data.trouble ?? words };
  }
  return answer;
}

function SourceForm({ known }: { known: Source | undefined }) {
  const [url, setUrl] = useState(known?.url ?? '');
  const [list, setList] = useState(known?.pointers.list ?? '');
  const [time, setTime] = useState(known?.pointers.time ?? '/hourly/time');
  const [temperature, setTemperature] = useState(known?.pointers.temperature ?? '/hourly/temperature');
  const [unit, setUnit] = useState<Source['unit']>(known?.unit ?? 'Cel');
  const keep = async () => {
    const refused = refusedHere(
      textMissing('url', url, 'type an address such as https://weather.example.org/forecast.json'),
    );
    if (refused) return { ok: false as const, refused };
    const pointers = { time, temperature, ...(list !== '' && { list }) };
    const body: Source = { url, pointers, unit };
    const answer = await send<WeatherAnswer>({ method: 'PUT', path: placePath('outdoor'), body });
    return kept(answer, 'where the weather comes from.');
  };
  return (
    <Form onSend={keep} button="Keep and fetch now">
      {(refused) => (
        <>
          <Field label="Address of a forecast" value={url} onText={setUrl} issue={issueFor(refused, 'url')} />
          <Field
            label="Its list of hours, if it has one"
            hint="the way to it in the answer, such as /hours; empty for none"
            value={list}
            onText={setList}
            issue={issueFor(refused, 'pointers.list')}
          />
          <Field
            label="Where times stand"
            hint="such as /hourly/time"
            value={time}
            onText={setTime}
            issue={issueFor(refused, 'pointers.time')}
          />
          <Field
            label="Where temperatures stand"
            hint="such as /hourly/temperature"
            value={temperature}
            onText={setTemperature}
            issue={issueFor(refused, 'pointers.temperature')}
          />
          <Choice label="They are in" value={unit} options={units} onChoose={setUnit} />
          <p class="note">Times without a zone are taken as UTC: ask for UTC where there is a choice.</p>
        </>
      )}
    </Form>
  );
}

export function Weather() {
  const answer = resource<WeatherAnswer>(placePath('outdoor')).value.data;
  if (!answer) return null;
  const { source } = answer;
  const stop = async () =>
    kept(
      await send<WeatherAnswer>({ method: 'DELETE', path: placePath('outdoor') }),
      'no weather is fetched.',
    );
  return (
    <Section title="The weather ahead">
      <p class="note">{stateWords(answer)}</p>
      <Opening title={source ? 'Change where it comes from' : 'Fetch a forecast'}>
        <SourceForm key={source?.url ?? ''} known={source} />
        {source && (
          <button type="button" class="key wide-key" onClick={() => void stop()}>
            Fetch none any more
          </button>
        )}
      </Opening>
    </Section>
  );
}
