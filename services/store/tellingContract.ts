/** The contract of what is kept for telling people: settings, outbox, phones, calendar, jobs. Times are UTC milliseconds. */

/** Where a message goes: one mail address or one phone, so that each is retried by itself. */
export interface Target {
  channel: 'mail' | 'push';
  /** Mail address, or id of the phone. */
  to: string;
}

/** How the people of a place are told; hours are of its own clock. */
export interface TellingSettings {
  mailTo: string[];
  /** No message leaves from `quietFromHour` until `quietToHour`; equal hours mean none are quiet. */
  quietFromHour: number;
  quietToHour: number;
  /** The weekly letter: ISO weekday and hour; absent: none is written. */
  letter?: { weekday: number; hour: number };
}

/** One thing to tell one target, once: `event` and `about` together are its identity. */
export interface OutboxEntry extends Target {
  id: number;
  placeId: string;
  event: 'raised' | 'withdrawn' | 'letter';
  about: string;
  createdMs: number;
  state: 'waiting' | 'sent' | 'dropped';
  /** When it was sent or dropped. */
  settledMs?: number;
  attempts: number;
  nextTryMs: number;
  /** What went wrong at the last try, in a sentence. */
  fault?: string;
}

export interface Outbox {
  /** Adds what is not yet there: the same event about the same thing is told to a target once. */
  add(
    entry: Target & { placeId: string; event: OutboxEntry['event']; about: string; createdMs: number },
  ): void;
  waiting(placeId: string): OutboxEntry[];
  find(
    entry: Target & { placeId: string; event: OutboxEntry['event']; about: string },
  ): OutboxEntry | undefined;
  /** Newest settled first. */
  settled(placeId: string, limit: number): OutboxEntry[];
  /** When a target was last told something. */
  lastSentMs(placeId: string, target: Target): number | undefined;
  settle(ids: readonly number[], how: 'sent' | 'dropped', atMs: number): void;
  /** Keeps the entries waiting, with the words of what went wrong. */
  postpone(ids: readonly number[], nextTryMs: number, fault: string): void;
}

/** A browser that agreed to be sent messages (Push API: endpoint and keys, base64url). */
export interface Phone {
  id: string;
  placeId: string;
  endpoint: string;
  p256dh: string;
  auth: string;
  name: string;
  addedMs: number;
}

export interface Phones {
  /** The same endpoint is one phone: added again it gets its new keys. */
  save(phone: Phone): void;
  list(placeId: string): Phone[];
  remove(placeId: string, id: string): void;
}

/** One entry of the calendar feed; `content` is the room's own JSON. */
export interface CalendarEntry {
  placeId: string;
  uid: string;
  /** Grows by one at each change (RFC 5545, SEQUENCE). */
  sequence: number;
  changedMs: number;
  cancelled: boolean;
  content: string;
}

export interface Calendar {
  save(entry: CalendarEntry): void;
  list(placeId: string): CalendarEntry[];
  remove(placeId: string, uid: string): void;
}

/** When each job of a place was last due and done, so that a missed one is caught up once. */
export interface Jobs {
  lastDueMs(placeId: string, job: string): number | undefined;
  done(placeId: string, job: string, dueMs: number): void;
}

export interface Telling {
  settings(placeId: string): TellingSettings | undefined;
  keepSettings(placeId: string, settings: TellingSettings): void;
  outbox: Outbox;
  phones: Phones;
  calendar: Calendar;
  jobs: Jobs;
  /** A secret made once, such as a key pair; the first one kept stays. */
  secret(name: string, make: () => string): string;
  replaceSecret(name: string, value: string): void;
}
