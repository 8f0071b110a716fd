/**
 * The only file that fetches. The service is trusted: answers are typed, not parsed again. An answer
 * is data either way, so that a form can keep what was typed and show the words of a refusal.
 */
import type { Advice, Forecast, Place } from '../services/model/index.ts';

export interface Issue {
  path: string;
  expected: string;
  received: string;
}
export interface Refused {
  code: string;
  reason: string;
  whatToDo: string;
  issues?: Issue[];
}
export type Answer<T> = { ok: true; data: T } | { ok: false; refused: Refused };

export interface Recorded<T> {
  id: string;
  version: number;
  changedAt: string;
  deleted: boolean;
  data: T;
  /** In lists: whether this browser may undo it. */
  mayUndo?: boolean;
}
export interface Outcome {
  issuedAt: string;
  forecast: Forecast;
  advice: Advice;
}
export interface Health {
  status: 'well' | 'unwell';
  reasons: string[];
  now: string;
  demo: boolean;
  version: string;
}
export interface RawReading {
  sensorId: string;
  time: string;
  temperatureC: number;
  humidityPct?: number;
  doubt?: string;
}
export interface CurvePoint {
  time: string;
  temperatureC: number;
  filledBy?: string;
}
export interface TemperatureAnswer {
  points: CurvePoint[];
  doubted: { sensorId: string; time: string; temperatureC: number; doubt: string }[];
}
export interface Arrival {
  topic: string;
  arrivedAt: string;
  payloadStart: string;
  readAs: string;
}
export interface ParkedMessage {
  id: number;
  placeId?: string;
  topic: string;
  payload: string;
  payloadBytes: number;
  retained: boolean;
  arrivedAt: string;
  code: string;
  reason: string;
  whatToDo: string;
  settled?: string;
}
export interface WarningItem {
  id: string;
  rule: string;
  raisedAt: string;
  deadline: string;
  text: string;
  reason: string;
  ends: string;
  urgent: boolean;
  state: string;
  putOffUntil?: string;
  ended?: string;
}
export interface PlacesAnswer {
  places: Place[];
}

const noSignal: Refused = {
  code: 'no-signal',
  reason: 'The house does not answer.',
  whatToDo: 'Check that glasstide is running and that this phone is in its network.',
};

/** Random without a secure context: phones reach the house by plain http. */
export const newKey = (): string =>
  Array.from(crypto.getRandomValues(new Uint8Array(16)), (byte) => byte.toString(16).padStart(2, '0')).join(
    '',
  );

let locked = () => {};
/** What to do when the house turns out to be locked to this browser. */
export const whenLocked = (act: () => void): void => {
  locked = act;
};

async function answered<T>(response: Response): Promise<Answer<T>> {
  const body: unknown = response.status === 204 ? {} : await response.json().catch(() => undefined);
  if (response.ok && body !== undefined) return { ok: true, data: body as T };
  const refused = body as Partial<Refused> | undefined;
  if (refused?.code === 'sign-in-needed') locked();
  return {
    ok: false,
    refused: {
      code: refused?.code ?? 'fault',
      reason: refused?.reason ?? `The house answered ${response.status} without a reason.`,
      whatToDo: refused?.whatToDo ?? 'Try again in a minute.',
      ...(refused?.issues && { issues: refused.issues }),
    },
  };
}

export async function get<T>(path: string): Promise<Answer<T>> {
  try {
    // Without headers of its own, else what index.html has begun to load would be asked for again.
    return await answered<T>(await fetch(path));
  } catch {
    return { ok: false, refused: noSignal };
  }
}

export interface Write {
  method: 'POST' | 'PUT' | 'DELETE';
  path: string;
  body?: unknown;
  /** Stays the same when the same entry is sent again. */
  key?: string;
}

/** After `giveUpMs` the house counts as not answering; the same key makes it safe to send again. */
export async function send<T>(
  { method, path, body, key = newKey() }: Write,
  giveUpMs?: number,
): Promise<Answer<T>> {
  const json = body !== undefined || method === 'POST';
  try {
    const response = await fetch(path, {
      method,
      headers: { 'idempotency-key': key, ...(json && { 'content-type': 'application/json' }) },
      ...(json && { body: JSON.stringify(body ?? {}) }),
      ...(giveUpMs !== undefined && { signal: AbortSignal.timeout(giveUpMs) }),
    });
    return await answered<T>(response);
  } catch {
    return { ok: false, refused: noSignal };
  }
}
