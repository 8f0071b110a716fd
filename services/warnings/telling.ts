/** The telling: looks at the warnings of each place, sends what is due, and does the work of fixed hours. */
import type { Clock } from '../clock.ts';
import { localDay, type Place } from '../model/index.ts';
import type { Store, Target, TellingSettings } from '../store/store.ts';
import { calendarFeed } from './channels/calendar.ts';
import { createMailChannel, type MailServer } from './channels/mail.ts';
import { createPushChannel, newPushKeys, type PushKeys } from './channels/push.ts';
import { askForLetter, ChannelFault, type Channels, deliver, settingsOf } from './delivery.ts';
import { trialMessage } from './message.ts';
import { isDue, type Job } from './schedule.ts';
import { updateWarnings } from './warnings.ts';

/** Warnings also begin and end with the hours, between two forecasts. */
const lookEveryMs = 15 * 60_000;
/** A server that is away for some minutes is nobody's trouble. */
const triesBeforeTrouble = 3;
const morning: Job = { name: 'morning-forecast', hour: 5 };

export interface TellingParts {
  store: Store;
  clock: Clock;
  /** Left out, no mail can be sent. */
  mail?: MailServer;
  /** Where phones and mail programs find the page. */
  address?: string;
  /** It is five in the morning at a place, or was while the power was away. */
  onMorning(placeId: string): void;
  /** The warnings of a place were looked at and are no longer the same. */
  onWarnings(placeId: string): void;
}

export interface Telling {
  /** Looks at the warnings of a place as of an instant; what is to be told leaves with the next minute. */
  look(placeId: string, atMs: number): Promise<void>;
  /** To be called every minute. */
  tick(): Promise<void>;
  /** Sends a trial at once; answers what went wrong, if anything. */
  tryOut(placeId: string, target: Target): Promise<string | undefined>;
  settings(placeId: string): TellingSettings;
  /** Sentences for the owner about messages that do not get through. */
  troubles(): string[];
  canMail: boolean;
  /** What a browser needs to agree to messages from this house. */
  pushPublicKey: string;
  /** The calendar of a place as text/calendar. */
  feed(placeId: string): string | undefined;
  close(): Promise<void>;
}

export function createTelling(parts: TellingParts): Telling {
  const { store, clock, address, onMorning, onWarnings } = parts;
  const keys = JSON.parse(store.telling.secret('push-keys', () => JSON.stringify(newPushKeys()))) as PushKeys;
  const mail = parts.mail && createMailChannel(parts.mail);
  const push = createPushChannel({ keys, contact: contactOf(parts) });
  const lastLook = new Map<string, number>();
  const said = new Map<string, string>();

  const channels: Channels = {
    async send(place, { channel, to }, message) {
      if (channel === 'push') {
        const phone = store.telling.phones.list(place.id).find(({ id }) => id === to);
        if (phone === undefined) throw new ChannelFault('This phone is not known here.', { isGone: true });
        await push.send(phone, message);
      } else if (mail === undefined) {
        throw new ChannelFault('No mail server is set: whoever runs glasstide names one.');
      } else {
        await mail.send(to, message);
      }
    },
    ...(address !== undefined && { address }),
  };

  /** One at a time: two deliveries at once would send the same message twice. */
  let last: Promise<unknown> = Promise.resolve();
  const alone = <T>(act: () => Promise<T>): Promise<T> => {
    const next = last.then(act);
    last = next.catch(() => {});
    return next;
  };

  async function refresh(placeId: string, atMs: number): Promise<void> {
    lastLook.set(placeId, clock.nowMs());
    const open = JSON.stringify(await updateWarnings(store, placeId, atMs));
    if (said.get(placeId) === open) return;
    said.set(placeId, open);
    onWarnings(placeId);
  }

  async function turn(place: Place, nowMs: number): Promise<void> {
    doJobs(place, nowMs);
    if (nowMs - (lastLook.get(place.id) ?? Number.NEGATIVE_INFINITY) >= lookEveryMs) {
      await refresh(place.id, nowMs);
    }
    await deliver(store, place.id, channels, nowMs);
  }

  function doJobs({ id, timeZone }: Place, nowMs: number): void {
    const due = isDue(store.telling.jobs, id, morning, timeZone, nowMs);
    if (due) onMorning(id);
    due?.done();
    const { letter } = settingsOf(store, id);
    if (letter === undefined) return;
    // Named by its time: a letter moved to another day is not one that was missed.
    const job = { name: `letter-${letter.weekday}-${letter.hour}`, ...letter };
    const letterDue = isDue(store.telling.jobs, id, job, timeZone, nowMs);
    if (letterDue) askForLetter(store, id, localDay(letterDue.dueMs, timeZone), nowMs);
    letterDue?.done();
  }

  return {
    look: refresh,
    tick: () =>
      alone(async () => {
        for (const { data } of store.records.places()) await turn(data, clock.nowMs());
      }),
    async tryOut(placeId, target) {
      const place = store.records.get('place', placeId, placeId)?.data;
      if (place === undefined) return 'This place is not known.';
      try {
        await channels.send(place, target, trialMessage(place, address));
        return undefined;
      } catch (error) {
        if (error instanceof ChannelFault) return error.message;
        throw error;
      }
    },
    settings: (placeId) => settingsOf(store, placeId),
    troubles: () =>
      store.records.places().flatMap(({ data: { id, name } }) => {
        const stuck = store.telling.outbox.waiting(id).find(({ attempts }) => attempts >= triesBeforeTrouble);
        const to = stuck?.channel === 'mail' ? stuck.to : 'a phone';
        return stuck
          ? [`A message about ${name} to ${to} waits. ${stuck.fault ?? ''} It is tried again.`]
          : [];
      }),
    canMail: mail !== undefined,
    pushPublicKey: keys.publicKey,
    feed(placeId) {
      const place = store.records.get('place', placeId, placeId)?.data;
      return place && calendarFeed(place, store.telling.calendar.list(placeId), address);
    },
    async close() {
      await last;
      mail?.close();
    },
  };
}

/** Whom a push service may ask about this sender (RFC 8292, 2.1). */
function contactOf({ mail, address }: TellingParts): string {
  if (mail !== undefined) return `mailto:${mail.from.replace(/^.*<|>.*$/g, '')}`;
  return address?.startsWith('https:') ? address : 'mailto:nobody@glasstide.invalid';
}
