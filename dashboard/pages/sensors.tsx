/** Sensors: one sentence on all, refused messages first, then each sensor, then what arrived and how it was read. */
import type { Sensor } from '../../services/model/index.ts';
import type { Arrival, ParkedMessage, Recorded } from '../api.ts';
import { OwnerOnly, ownerMends } from '../parts/ownerOnly.tsx';
import { scrolling } from '../parts/scrolling.ts';
import { PageHead, Section } from '../parts/section.tsx';
import { Shell } from '../parts/shell.tsx';
import { TemperatureChart, useDoubted, useTemperature } from '../parts/temperatureChart.tsx';
import { useHours, useLatestReadings } from '../readings.ts';
import { nowMs, offline, place, placePath, resource, zone } from '../state.ts';
import { ageWords, dayWords, localClock, localDay, spanWords } from '../words/dates.ts';
import { degrees, unbroken } from '../words/numbers.ts';
import { Corrections } from './sensors/corrections.tsx';
import { AddSensor, TypeIn, topicOf } from './sensors/forms.tsx';
import {
  doubtedWords,
  everyWords,
  healthSentence,
  type SensorHealth,
  sensorHealth,
} from './sensors/health.ts';
import { Parked } from './sensors/parked.tsx';
import { canBeReadAgain, grouped, shownAt } from './sensors/parkedGroups.ts';

function besideWords(health: SensorHealth, now: number): string {
  if (health.state === 'never') return 'not heard yet';
  if (health.state === 'silent') return `silent ${spanWords(now - (health.lastHeardMs ?? now))}`;
  return health.latest ? degrees(health.latest.temperatureC) : 'not believed';
}

function SensorPart({ health, sensor, now }: { health: SensorHealth; sensor: Sensor; now: number }) {
  const timeZone = zone.value;
  const heard = health.lastHeardMs;
  const humidity = health.latest?.humidityPct;
  const lines = [
    health.latest && `Read ${ageWords(now - Date.parse(health.latest.time))}.`,
    health.everyMs && everyWords(health.everyMs),
    humidity !== undefined && `${Math.round(humidity)} % humidity.`,
    health.state === 'silent' &&
      heard &&
      `Last heard ${dayWords(localDay(heard, timeZone))}, about ${localClock(heard, timeZone)}. Most often a flat battery.`,
    health.state !== 'never' && `Heard in ${health.hoursHeard} of the last 168 hours.`,
  ].filter(Boolean);
  const doubted = doubtedWords(health, timeZone);
  return (
    <Section title={health.name} beside={besideWords(health, now)}>
      <p class="note">{unbroken(lines.join(' '))}</p>
      {doubted && <p>{unbroken(doubted)}</p>}
      {health.state === 'never' && (
        <p>
          It publishes on <code>{topicOf(health.id)}</code>
        </p>
      )}
      <OwnerOnly>
        <Corrections sensor={sensor} />
      </OwnerOnly>
    </Section>
  );
}

/** The time of day; the day as well when it is not today's. */
function arrivedWords(ms: number, timeZone: string): string {
  const day = localDay(ms, timeZone);
  const clock = localClock(ms, timeZone);
  return day === localDay(nowMs.value, timeZone) ? clock : `${dayWords(day)} ${clock}`;
}

function ArrivalRows({ arrivals }: { arrivals: readonly Arrival[] }) {
  const timeZone = zone.value;
  return (
    <ul class="ruled">
      {arrivals.map((each) => (
        <li key={`${each.topic} ${each.arrivedAt} ${each.payloadStart}`} class="arrival">
          <strong>
            {unbroken(arrivedWords(Date.parse(each.arrivedAt), timeZone))},{' '}
            {each.topic.split('/').slice(2).join('/') || each.topic}
          </strong>
          <span>{unbroken(each.readAs)}</span>
        </li>
      ))}
    </ul>
  );
}

const shownAtOnce = 5;

function Arrivals() {
  const arrivals = resource<{ arrivals: Arrival[] }>(placePath('arrivals')).value.data?.arrivals ?? [];
  return (
    <Section title="What arrived">
      {arrivals.length === 0 && (
        <p class="note">
          Nothing yet. The first message shows up here, with how it was read. Topics begin with{' '}
          <code>glasstide/{place.value?.id}/readings/</code>
        </p>
      )}
      <ArrivalRows arrivals={arrivals.slice(0, shownAtOnce)} />
      {arrivals.length > shownAtOnce && (
        <details>
          <summary>{unbroken(`Earlier ones, ${arrivals.length - shownAtOnce}`)}</summary>
          <ArrivalRows arrivals={arrivals.slice(shownAtOnce)} />
        </details>
      )}
      {arrivals.length > 0 && (
        <details>
          <summary>As sent</summary>
          <section class="as-sent" {...scrolling('What arrived, as sent')}>
            <pre>{arrivals.map((each) => `${each.topic}  ${each.payloadStart}`).join('\n')}</pre>
          </section>
        </details>
      )}
    </Section>
  );
}

const notKnown = () => (offline.value ? 'How the sensors are needs signal' : 'Fetching how the sensors are');

export function Sensors() {
  const records = resource<{ records: Recorded<Sensor>[] }>(placePath('sensors')).value.data?.records;
  const messagesNow = resource<{ messages: ParkedMessage[] }>('/api/quarantine').value.data?.messages;
  const hours = useHours();
  // Half of it would be told as if it were all.
  const isKnown = records && messagesNow && hours;
  const sensors = isKnown ? records : [];
  const refused = isKnown ? messagesNow : [];
  const parked = grouped(shownAt(refused, place.value?.id));
  const firstToMend = parked.find(canBeReadAgain);
  const health = sensorHealth(
    sensors,
    { readings: useLatestReadings(), hours: hours ?? [], doubted: useDoubted(4) },
    nowMs.value,
  );
  const temperature = useTemperature(4);
  const messages = parked.reduce((sum, group) => sum + group.messages.length, 0);
  return (
    <Shell>
      <PageHead sentence={isKnown ? healthSentence(health, messages) : notKnown()} />
      {parked.map((group) => (
        <Parked key={`${group.topic} ${group.code}`} group={group} main={group === firstToMend} />
      ))}
      {sensors.map(({ id, data }, i) => (
        <SensorPart key={id} health={health[i]!} sensor={data} now={nowMs.value} />
      ))}
      <Section title="The temperature in use">
        {sensors.length > 1 && (
          <p class="note">
            One sensor leads, of those heard most the one that reads coolest; the others fill its gaps.
          </p>
        )}
        {temperature ? (
          <TemperatureChart data={temperature} />
        ) : (
          <p class="note">Fetching the temperature.</p>
        )}
      </Section>
      <div class="openings">
        <OwnerOnly line={ownerMends}>
          <AddSensor taken={sensors.map((each) => each.id)} />
        </OwnerOnly>
        <TypeIn />
      </div>
      <Arrivals />
    </Shell>
  );
}
