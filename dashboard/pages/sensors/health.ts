/** How each sensor does, judged by its own usual interval. */
import type { Sensor } from '../../../services/model/index.ts';
import type { RawReading, Recorded, TemperatureAnswer } from '../../api.ts';
import { doubtSentence, latestReading, newest } from '../../believed.ts';
import type { HourOfSensor } from '../../readings.ts';
import { dayWords, localClock, localDay, spanWords } from '../../words/dates.ts';
import { degrees } from '../../words/numbers.ts';

type Doubted = TemperatureAnswer['doubted'][number];

export interface SensorHealth {
  id: string;
  name: string;
  state: 'well' | 'silent' | 'doubted' | 'never';
  latest?: RawReading;
  lastHeardMs?: number;
  /** Its usual interval. */
  everyMs?: number;
  hoursHeard: number;
  /** Of the last seven days. */
  doubted: number;
  lastDoubted?: Doubted;
}

const hourMs = 3_600_000;

/** The middle of the intervals between readings. */
export function usualInterval(times: readonly number[]): number | undefined {
  const sorted = [...times].sort((a, b) => a - b);
  const steps = sorted.slice(1).map((time, index) => time - (sorted[index] ?? time));
  return steps.sort((a, b) => a - b)[Math.floor(steps.length / 2)];
}

interface Heard {
  /** Of the last six hours. */
  readings: readonly RawReading[];
  /** Of the last seven days. */
  hours: readonly HourOfSensor[];
  doubted: readonly Doubted[];
}

/** Most of what it said in the last 24 hours is not believed; hours with nothing believed are not among `hours`. */
function mostlyDoubted(hours: readonly HourOfSensor[], doubted: readonly Doubted[], nowMs: number): boolean {
  const lately = (time: string) => Date.parse(time) > nowMs - 24 * hourMs;
  const believed = hours.filter((each) => lately(each.hour)).reduce((sum, each) => sum + each.count, 0);
  return doubted.filter((each) => lately(each.time)).length > believed;
}

export function sensorHealth(
  sensors: readonly Recorded<Sensor>[],
  { readings, hours, doubted: allDoubted }: Heard,
  nowMs: number,
): SensorHealth[] {
  return sensors.map(({ data: { id, name } }) => {
    const own = readings.filter((each) => each.sensorId === id);
    const ownHours = hours.filter((each) => each.sensorId === id && each.count + each.doubted > 0);
    const ownDoubted = allDoubted.filter((each) => each.sensorId === id);
    const latest = latestReading(own);
    const everyMs = usualInterval(own.map((each) => Date.parse(each.time)));
    const heard = [
      ...own.map((each) => Date.parse(each.time)),
      ...ownHours.map((each) => Date.parse(each.hour) + hourMs / 2),
      ...ownDoubted.map((each) => Date.parse(each.time)),
    ];
    const marked = ownHours.reduce((sum, each) => sum + each.doubted, 0);
    const lastDoubted = newest(ownDoubted);
    const base = {
      id,
      name,
      hoursHeard: ownHours.filter((each) => each.count > 0).length,
      doubted: Math.max(marked, ownDoubted.length),
      ...(lastDoubted && { lastDoubted }),
    };
    if (heard.length === 0) return { ...base, state: 'never' };
    const lastHeardMs = Math.max(...heard);
    const patience = Math.max(2 * hourMs, 4 * (everyMs ?? 0));
    const silent = nowMs - lastHeardMs > patience;
    const state = silent ? 'silent' : mostlyDoubted(ownHours, ownDoubted, nowMs) ? 'doubted' : 'well';
    return { ...base, state, lastHeardMs, ...(latest && { latest }), ...(everyMs && { everyMs }) };
  });
}

/** `Speaks every 5 minutes.` */
export function everyWords(everyMs: number): string {
  const span = spanWords(everyMs);
  if (span === spanWords(0)) return 'Speaks more than once a minute.';
  return `Speaks every ${span.replace(/^1 (?=[a-z]+$)/, '')}.`;
}

/** What was not believed, the last of it, and why. */
export function doubtedWords({ doubted, lastDoubted }: SensorHealth, timeZone: string): string {
  if (doubted === 0) return '';
  const kept =
    doubted === 1
      ? '1 reading of the last 7 days was not believed: it is'
      : `${doubted} readings of the last 7 days were not believed: they are`;
  if (!lastDoubted) return `${kept} kept and not used.`;
  const ms = Date.parse(lastDoubted.time);
  const when = `${dayWords(localDay(ms, timeZone))} ${localClock(ms, timeZone)}`;
  const which = doubted === 1 ? 'It was' : 'The last was';
  return `${kept} kept and not used. ${which} ${degrees(lastDoubted.temperatureC)}, ${when}. ${doubtSentence(lastDoubted.doubt)}`;
}

const small = ['No', 'One', 'Two', 'Three', 'Four', 'Five', 'Six', 'Seven', 'Eight', 'Nine'];

/** One sentence on all: "One reads well, one is silent, and 3 messages are refused." */
export function healthSentence(all: readonly SensorHealth[], refused: number): string {
  const words = { well: 'well', silent: 'silent', doubted: 'not believed', never: 'not heard yet' } as const;
  const parts = (['well', 'doubted', 'silent', 'never'] as const).flatMap((state) => {
    const n = all.filter((each) => each.state === state).length;
    if (n === 0) return [];
    const many = small[n] ?? String(n);
    if (state === 'well') return [`${many} ${n === 1 ? 'reads' : 'read'} well`];
    return [`${many} ${n === 1 ? 'is' : 'are'} ${words[state]}`];
  });
  if (refused > 0) parts.push(`${refused} ${refused === 1 ? 'message is' : 'messages are'} refused`);
  if (parts.length === 0) return 'No sensor yet: add one, or type in lowest and highest.';
  const sentence = parts.map((part, index) =>
    index === 0 ? part : part.charAt(0).toLowerCase() + part.slice(1),
  );
  return `${sentence.join(', ')}.`;
}
