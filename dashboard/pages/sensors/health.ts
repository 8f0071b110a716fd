/** How each sensor does, judged by its own usual interval. */
import type { Sensor } from '../../../services/model/index.ts';
import type { RawReading, Recorded } from '../../api.ts';
import { type HourOfSensor, latestReading } from '../../readings.ts';

export interface SensorHealth {
  id: string;
  name: string;
  state: 'well' | 'silent' | 'doubted' | 'never';
  latest?: RawReading;
  lastHeardMs?: number;
  /** Its usual interval. */
  everyMs?: number;
  hoursHeard: number;
  doubted: number;
}

const hourMs = 3_600_000;

/** The middle of the intervals between readings. */
export function usualInterval(times: readonly number[]): number | undefined {
  const sorted = [...times].sort((a, b) => a - b);
  const steps = sorted.slice(1).map((time, index) => time - (sorted[index] ?? time));
  return steps.sort((a, b) => a - b)[Math.floor(steps.length / 2)];
}

export function sensorHealth(
  sensors: readonly Recorded<Sensor>[],
  readings: readonly RawReading[],
  hours: readonly HourOfSensor[],
  nowMs: number,
): SensorHealth[] {
  return sensors.map(({ data: { id, name } }) => {
    const own = readings.filter((each) => each.sensorId === id);
    const ownHours = hours.filter((each) => each.sensorId === id && each.count + each.doubted > 0);
    const latest = latestReading(own);
    const everyMs = usualInterval(own.map((each) => Date.parse(each.time)));
    const heard = [
      ...own.map((each) => Date.parse(each.time)),
      ...ownHours.map((each) => Date.parse(each.hour) + hourMs / 2),
    ];
    const doubted = ownHours.reduce((sum, each) => sum + each.doubted, 0);
    const base = { id, name, hoursHeard: ownHours.filter((each) => each.count > 0).length, doubted };
    if (heard.length === 0) return { ...base, state: 'never' };
    const lastHeardMs = Math.max(...heard);
    const patience = Math.max(2 * hourMs, 4 * (everyMs ?? 0));
    const silent = nowMs - lastHeardMs > patience;
    const newest = own.reduce<RawReading | undefined>((a, b) => (!a || b.time > a.time ? b : a), undefined);
    const state = silent ? 'silent' : newest?.doubt ? 'doubted' : 'well';
    return { ...base, state, lastHeardMs, ...(latest && { latest }), ...(everyMs && { everyMs }) };
  });
}

const small = ['No', 'One', 'Two', 'Three', 'Four', 'Five', 'Six', 'Seven', 'Eight', 'Nine'];

/** One sentence on all: "One reads well, one is silent, and 3 messages are parked." */
export function healthSentence(all: readonly SensorHealth[], parked: number): string {
  const words = { well: 'well', silent: 'silent', doubted: 'not believed', never: 'not heard yet' } as const;
  const parts = (['well', 'doubted', 'silent', 'never'] as const).flatMap((state) => {
    const n = all.filter((each) => each.state === state).length;
    if (n === 0) return [];
    const many = small[n] ?? String(n);
    if (state === 'well') return [`${many} ${n === 1 ? 'reads' : 'read'} well`];
    return [`${many} ${n === 1 ? 'is' : 'are'} ${words[state]}`];
  });
  if (parked > 0) parts.push(`${parked} ${parked === 1 ? 'message is' : 'messages are'} parked`);
  if (parts.length === 0) return 'No sensor yet: add one, or type in lowest and highest.';
  const sentence = parts.map((part, index) =>
    index === 0 ? part : part.charAt(0).toLowerCase() + part.slice(1),
  );
  return `${sentence.join(', ')}.`;
}
