/** What the sections of this page share: the answer of the service, and how it is changed and tried. */
import { type Answer, send } from '../../api.ts';
import { notice } from '../../notices.ts';
import { nowMs, placePath, refresh, zone } from '../../state.ts';
import { dayWords, localClock, localDay } from '../../words/dates.ts';

export interface Settings {
  mailTo: string[];
  quietFromHour: number;
  quietToHour: number;
  letter: { weekday: number; hour: number } | null;
}
export interface TargetState {
  channel: 'mail' | 'push';
  to: string;
  waiting: number;
  lastSentAt?: string;
  fault?: string;
  nextTryAt?: string;
}
export interface TellingAnswer {
  settings: Settings;
  canMail: boolean;
  pushPublicKey: string;
  phones: { id: string; name: string; addedAt: string }[];
  targets: TargetState[];
  settled: {
    channel: 'mail' | 'push';
    to: string;
    event: 'raised' | 'withdrawn' | 'letter';
    about: string;
    sent: boolean;
    at: string;
  }[];
}

type Trial = { channel: 'mail' | 'push'; to: string } | { channel: 'mqtt' };

/** Tells the strip how a write went, and fetches again. */
export function told(answer: Answer<unknown>, words: string): void {
  notice.value = answer.ok
    ? { kind: 'kept', lead: 'Kept:', text: words }
    : { kind: 'refused', lead: 'Not kept:', text: `${answer.refused.reason} ${answer.refused.whatToDo}` };
  refresh(/\/telling$/);
}

export async function keepSettings(settings: Settings, words: string): Promise<Answer<unknown>> {
  const answer = await send({ method: 'PUT', path: placePath('telling'), body: settings });
  told(answer, words);
  return answer;
}

export async function tryOut(trial: Trial): Promise<void> {
  notice.value = { kind: 'working', lead: 'Trying:', text: 'a trial is on its way.' };
  const answer = await send<{ sent: boolean; fault?: string }>({
    method: 'POST',
    path: placePath('telling/try'),
    body: trial,
  });
  if (!answer.ok) return told(answer, '');
  const { sent, fault = '' } = answer.data;
  notice.value = sent
    ? { kind: 'kept', lead: 'Sent:', text: 'look whether the trial arrives.' }
    : { kind: 'refused', lead: 'Not sent:', text: fault };
  refresh(/\/telling$/);
}

/** `Wed 13 May, 07:00`, in the time of the place. */
export function momentWords(iso: string): string {
  const timeZone = zone.value;
  const ms = Date.parse(iso);
  const day = localDay(ms, timeZone);
  const clock = localClock(ms, timeZone);
  return day === localDay(nowMs.value, timeZone) ? `today, ${clock}` : `${dayWords(day)}, ${clock}`;
}

/** How it stands with one receiver. */
export function stateWords({ waiting, lastSentAt, fault, nextTryAt }: TargetState): string {
  if (fault !== undefined && nextTryAt !== undefined) {
    return `${fault} ${waiting === 1 ? 'One message waits' : `${waiting} messages wait`}; tried again ${momentWords(nextTryAt)}.`;
  }
  const last = lastSentAt === undefined ? 'Nothing sent yet' : `Last sent ${momentWords(lastSentAt)}`;
  return waiting === 0 ? `${last}.` : `${last}; ${waiting} for the next message.`;
}
