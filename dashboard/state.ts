/** What the pages share: answers of the service kept by path, the chosen place, the time, live changes. */
import { computed, type Signal, signal } from '@preact/signals';
import { currencyOf, type Place } from '../services/model/index.ts';
import { letIn } from './access.ts';
import { type Answer, get, type Health, type PlacesAnswer, type Refused } from './api.ts';
import { keepAnswer, keptAnswer } from './offline/answers.ts';
import { localDay } from './words/dates.ts';

export interface Loaded<T> {
  data?: T;
  refused?: Refused;
  atMs?: number;
}
interface Entry {
  /** The name it is kept under on this phone; its path may move on. */
  key: string;
  path: string;
  signal: Signal<Loaded<unknown>>;
  inUse: boolean;
  stale: boolean;
  running: boolean;
}
const entries = new Map<string, Entry>();

/** True while the service does not answer; the last answers stay. */
export const offline = signal(false);

/** Without signal, or after a while of waiting for it, a page shows what this phone knew last. */
const patienceMs = 1_500;

async function recall({ key, signal: shown }: Entry): Promise<void> {
  if (shown.value.data !== undefined) return;
  const kept = await keptAnswer(key);
  if (kept && shown.value.data === undefined) shown.value = { ...shown.value, ...kept };
}

/** Opening the shelf costs a slow phone a moment, which belongs to the page first. */
const keepAfterMs = 1_000;
const keepLater = (key: string, data: unknown, atMs: number) =>
  setTimeout(() => void keepAnswer(key, data, atMs), keepAfterMs);

async function load(entry: Entry): Promise<void> {
  if (entry.running) {
    entry.stale = true;
    return;
  }
  entry.running = true;
  entry.stale = false;
  const path = entry.path;
  const waiting = setTimeout(() => void recall(entry), patienceMs);
  const answer: Answer<unknown> = await letIn.then(() => get(path));
  clearTimeout(waiting);
  if (answer.ok) keepLater(entry.key, answer.data, Date.now());
  else if (answer.refused.code === 'no-signal') await recall(entry);
  entry.running = false;
  offline.value = !answer.ok && answer.refused.code === 'no-signal';
  entry.signal.value = answer.ok
    ? { data: answer.data, atMs: Date.now() }
    : { ...entry.signal.value, refused: answer.refused };
  if (entry.path !== path) void load(entry);
}

/**
 * The answer at a path, fetched on first use and again when something changed. With `key`, the path
 * may move on (a window of time) while the last answer stays on the page.
 */
export function resource<T>(path: string, key: string = path): Signal<Loaded<T>> {
  let entry = entries.get(key);
  if (!entry) {
    entry = { key, path, signal: signal<Loaded<unknown>>({}), inUse: true, stale: false, running: false };
    entries.set(key, entry);
    void load(entry);
  } else {
    const moved = entry.path !== path;
    entry.path = path;
    entry.inUse = true;
    if ((moved || entry.stale) && !entry.running) void load(entry);
  }
  return entry.signal as Signal<Loaded<T>>;
}

/** The answer at a path as far as it was asked for and came. */
export const shownAt = <T>(path: string): T | undefined =>
  entries.get(path)?.signal.peek().data as T | undefined;

/** Fetches again what this page shows; other pages fetch when they are opened. */
export function refresh(pattern: RegExp): void {
  for (const entry of entries.values()) {
    if (!pattern.test(entry.path)) continue;
    if (entry.inUse) void load(entry);
    else entry.stale = true;
  }
}

/** Called on each change of page. */
export function leavePage(): void {
  for (const entry of entries.values()) {
    entry.inUse = false;
    entry.stale = true;
  }
}

export const health = resource<Health>('/api/health');
export const places = resource<PlacesAnswer>('/api/places');

const chosenPlaceId = signal(localStorage.getItem('glasstide.place') ?? '');
export function choosePlace(id: string): void {
  localStorage.setItem('glasstide.place', id);
  chosenPlaceId.value = id;
}
export const place = computed<Place | undefined>(() => {
  const all = places.value.data?.places ?? [];
  return all.find((each) => each.id === chosenPlaceId.value) ?? all[0];
});
/** Of every sum told of the chosen place. */
export const currency = computed(() => place.value && currencyOf(place.value));
/** `/api/places/<place>/<rest>` of the chosen place. */
export const placePath = (rest: string): string => `/api/places/${place.value?.id ?? ''}/${rest}`;

const tick = signal(0);
setInterval(() => {
  tick.value += 1;
}, 30_000);
/** The service's time: its clock may be another than this phone's, also in a practice season. */
export const nowMs = computed(() => {
  tick.value;
  const { data, atMs } = health.value;
  return data && atMs ? Date.parse(data.now) + (Date.now() - atMs) : Date.now();
});
/** The time zone of the chosen place, and today there. */
export const zone = computed(() => place.value?.timeZone ?? 'UTC');
export const today = computed(() => localDay(nowMs.value, zone.value));
