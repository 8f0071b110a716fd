/**
 * From warnings to messages. What is to be told stands in the outbox first and leaves it only when it was
 * told or is no longer true; what could not be sent is tried again, later each time.
 */
import { localDay, type Place } from '../model/index.ts';
import type { OutboxEntry, Store, Target, TellingSettings, Warning } from '../store/store.ts';
import { letter } from './letter.ts';
import { dailyMessage, type Message } from './message.ts';
import { standsInLetter } from './rules/countDue.ts';
import { lastDueMs } from './schedule.ts';
import { backOffMs, defaultSettings, mayLeave } from './timing.ts';

/** Why a message did not go, in a sentence for the person. */
export class ChannelFault extends Error {
  /** The target will never take a message again. */
  readonly isGone: boolean;
  constructor(sentence: string, { isGone = false }: { isGone?: boolean } = {}) {
    super(sentence);
    this.isGone = isGone;
  }
}

export interface Channels {
  /** @throws ChannelFault */
  send(place: Place, target: Target, message: Message): Promise<void>;
  /** Where the page is, when that is known. */
  address?: string;
}

export const settingsOf = (store: Store, placeId: string): TellingSettings =>
  store.telling.settings(placeId) ?? defaultSettings;

/** Everybody who is to be told about a place. */
export function targetsOf(store: Store, placeId: string): Target[] {
  return [
    ...settingsOf(store, placeId).mailTo.map((to) => ({ channel: 'mail' as const, to })),
    ...store.telling.phones.list(placeId).map(({ id }) => ({ channel: 'push' as const, to: id })),
  ];
}

/** Asks for the weekly letter of the day `about`; only mail is long enough for it. */
export function askForLetter(store: Store, placeId: string, about: string, nowMs: number): void {
  for (const target of targetsOf(store, placeId)) {
    if (target.channel === 'mail')
      store.telling.outbox.add({ ...target, placeId, event: 'letter', about, createdMs: nowMs });
  }
}

/** Brings the outbox in step with the warnings and sends what may leave now. */
export async function deliver(
  store: Store,
  placeId: string,
  channels: Channels,
  nowMs: number,
): Promise<void> {
  const place = store.records.get('place', placeId, placeId)?.data;
  if (place === undefined) return;
  const targets = targetsOf(store, placeId);
  for (const target of targets) noteWarnings(store, place, target, nowMs);
  dropPointless(store, placeId, targets, nowMs);
  for (const target of targets) await sendTo(store, place, target, channels, nowMs);
}

/** Names one raising of a warning: raised again, or woken after being put off, it is told again. */
export const aboutOf = ({ id, raisedAtMs, putOffUntilMs }: Warning): string =>
  `${id}@${putOffUntilMs ?? raisedAtMs}`;

function noteWarnings(store: Store, place: Place, target: Target, nowMs: number): void {
  const { outbox } = store.telling;
  const placeId = place.id;
  const hasLetter = letterReached(store, place, target, nowMs);
  for (const warning of store.warnings.list(placeId)) {
    const entry = { ...target, placeId, about: aboutOf(warning), createdMs: nowMs };
    const named = hasLetter && standsInLetter(warning, nowMs);
    if (warning.state === 'open' && !named) outbox.add({ ...entry, event: 'raised' });
    // Only who was told something needs to hear that it is no longer true.
    const told =
      warning.state === 'withdrawn' && outbox.find({ ...entry, event: 'raised' })?.state === 'sent';
    if (told) outbox.add({ ...entry, event: 'withdrawn' });
  }
}

/** Whether the newest letter has reached a target. */
function letterReached(store: Store, place: Place, target: Target, nowMs: number): boolean {
  const { letter } = settingsOf(store, place.id);
  if (target.channel !== 'mail' || letter === undefined) return false;
  const dueMs = lastDueMs({ name: 'letter', ...letter }, place.timeZone, nowMs);
  const about = localDay(dueMs, place.timeZone);
  return (
    store.telling.outbox.find({ ...target, placeId: place.id, event: 'letter', about })?.state === 'sent'
  );
}

/** What is no longer so, and what was meant for somebody who is no longer told. */
function dropPointless(store: Store, placeId: string, targets: readonly Target[], nowMs: number): void {
  const stateNow = new Map(store.warnings.list(placeId).map((w) => [aboutOf(w), w.state]));
  const pointless = store.telling.outbox.waiting(placeId).filter(({ channel, to, event, about }) => {
    if (!targets.some((target) => target.channel === channel && target.to === to)) return true;
    if (event === 'raised') return stateNow.get(about) !== 'open';
    return event === 'withdrawn' && stateNow.get(about) !== 'withdrawn';
  });
  store.telling.outbox.settle(
    pointless.map(({ id }) => id),
    'dropped',
    nowMs,
  );
}

async function sendTo(
  store: Store,
  place: Place,
  target: Target,
  channels: Channels,
  nowMs: number,
): Promise<void> {
  const { outbox } = store.telling;
  const entries = outbox
    .waiting(place.id)
    .filter(({ channel, to }) => channel === target.channel && to === target.to);
  const resting = entries.some(({ nextTryMs }) => nextTryMs > nowMs);
  if (entries.length === 0 || resting) return;
  const raised = warningsOf(store, place.id, entries, 'raised');
  const isLetter = entries.some(({ event }) => event === 'letter');
  const moment = {
    settings: settingsOf(store, place.id),
    timeZone: place.timeZone,
    nowMs,
    lastSentMs: isLetter ? undefined : outbox.lastSentMs(place.id, target),
    getsLetter: target.channel === 'mail',
  };
  if (!mayLeave(raised, moment)) return;
  const told = { raised, withdrawn: warningsOf(store, place.id, entries, 'withdrawn') };
  const message = isLetter
    ? letter(store, place, told, nowMs, channels.address)
    : dailyMessage(place, told, channels.address);
  const ids = entries.map(({ id }) => id);
  try {
    await channels.send(place, target, message);
    outbox.settle(ids, 'sent', nowMs);
  } catch (error) {
    if (!(error instanceof ChannelFault)) throw error;
    if (error.isGone) {
      store.telling.phones.remove(place.id, target.to);
      outbox.settle(ids, 'dropped', nowMs);
    } else {
      const attempts = Math.max(...entries.map((entry) => entry.attempts));
      outbox.postpone(ids, nowMs + backOffMs(attempts), error.message);
    }
  }
}

function warningsOf(
  store: Store,
  placeId: string,
  entries: readonly OutboxEntry[],
  event: OutboxEntry['event'],
): Warning[] {
  const abouts = new Set(entries.filter((entry) => entry.event === event).map(({ about }) => about));
  return store.warnings.list(placeId).filter((warning) => abouts.has(aboutOf(warning)));
}
