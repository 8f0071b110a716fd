/**
 * The contract of the store. Records (places, counts, ...) live in the embedded database; readings
 * may live elsewhere behind the same `Readings` contract. Every implementation passes
 * tests/contracts/. Times are UTC milliseconds.
 */
import type { z } from 'zod';
import type {
  Advice,
  dailyExtremes,
  Forecast,
  leafCheck,
  order,
  outlookPoint,
  place,
  planting,
  release,
  Season,
  sensor,
  sighting,
  trap,
  trapCount,
  treatment,
} from '../model/index.ts';
import type { Answered } from './answered.ts';
import type { Credentials } from './credentials.ts';
import type { Arrival, Readings } from './readingsContract.ts';
import type { Telling } from './tellingContract.ts';

export type { Answered } from './answered.ts';
export type { Credential, CredentialKind, Credentials } from './credentials.ts';
export type * from './readingsContract.ts';
export { firstOfEach } from './sampling.ts';
export type * from './tellingContract.ts';

/** Kinds of record, each with its data. `place` has placeId = its own id. */
export interface RecordData {
  place: z.infer<typeof place>;
  planting: z.infer<typeof planting>;
  sensor: z.infer<typeof sensor>;
  trap: z.infer<typeof trap>;
  trapCount: z.infer<typeof trapCount>;
  leafCheck: z.infer<typeof leafCheck>;
  sighting: z.infer<typeof sighting>;
  release: z.infer<typeof release>;
  order: z.infer<typeof order>;
  treatment: z.infer<typeof treatment>;
  /** id = the day. */
  dailyExtremes: z.infer<typeof dailyExtremes>;
  /** id = `given`: the temperature expected inside, when somebody supplies one. */
  outlook: z.infer<typeof outlookPoint>[];
}
export type RecordKind = keyof RecordData;

export interface StoredRecord<K extends RecordKind = RecordKind> {
  kind: K;
  placeId: string;
  id: string;
  /** 1 for the first version, +1 at each edit, deletion or undo. */
  version: number;
  changedAtMs: number;
  deleted: boolean;
  data: RecordData[K];
  /** Whose session made this version, where a person did; `byFile` where a season was brought in. */
  madeBy?: string;
}

/** No id of a session: those are random. */
export const byFile = 'file';

export interface Records {
  /** The current record; undefined when it is unknown or deleted (`history` still has it). */
  get<K extends RecordKind>(kind: K, placeId: string, id: string): StoredRecord<K> | undefined;
  /** Current records, deleted ones left out, ordered by id. */
  list<K extends RecordKind>(kind: K, placeId: string): StoredRecord<K>[];
  /** Deleted ones, the last deleted first; not those whose place a season from a file took. */
  takenBack<K extends RecordKind>(kind: K, placeId: string): StoredRecord<K>[];
  places(): StoredRecord<'place'>[];
  /** Adds a version. The same idempotency key answers with the record it made the first time and changes nothing. */
  put<K extends RecordKind>(change: {
    kind: K;
    placeId: string;
    id: string;
    data: RecordData[K];
    atMs: number;
    idempotencyKey?: string;
    madeBy?: string;
  }): StoredRecord<K>;
  /** Marks as deleted in a new version; a repeated key answers as the first time and changes nothing. */
  remove<K extends RecordKind>(change: {
    kind: K;
    placeId: string;
    id: string;
    atMs: number;
    idempotencyKey?: string;
    madeBy?: string;
  }): StoredRecord<K>;
  /** All versions, oldest first. */
  history<K extends RecordKind>(kind: K, placeId: string, id: string): StoredRecord<K>[];
  /**
   * Puts back the version before the present one, as a new version; undoing a first version deletes it.
   * A repeated key answers as the first time: a phone that sends its undo again must not undo twice.
   */
  undo<K extends RecordKind>(change: {
    kind: K;
    placeId: string;
    id: string;
    atMs: number;
    idempotencyKey?: string;
    madeBy?: string;
  }): StoredRecord<K>;
}

/** A message that could not be used, kept with its reason until the owner mends or dismisses it. */
export interface QuarantinedMessage {
  id: number;
  placeId?: string;
  topic: string;
  /** First 4 kB as sent. */
  payload: Uint8Array;
  payloadBytes: number;
  retained: boolean;
  arrivedMs: number;
  /** From the catalogue of codes, services/refusals.ts. */
  code: string;
  /** What was found and what to send instead. */
  reason: string;
  /** How it ended, when it has. */
  settled?: 'mended' | 'dismissed';
}

export interface Quarantine {
  /**
   * Resolves when it is on disk. One that may have come before (`again`) is not kept beside the same one that waits
   * already, which is answered.
   */
  add(
    message: Omit<QuarantinedMessage, 'id' | 'settled'>,
    options?: { again?: boolean },
  ): Promise<QuarantinedMessage>;
  get(id: number): QuarantinedMessage | undefined;
  /** Newest first, unsettled only unless asked. */
  list(options?: { placeId?: string; settledToo?: boolean; limit?: number }): QuarantinedMessage[];
  /** How many are not settled. */
  waiting(): number;
  settle(id: number, how: 'mended' | 'dismissed'): void;
  /**
   * At most 10,000 messages are kept. When one more comes, the oldest settled one is let go, and
   * only when none is settled the oldest waiting one; both are counted here.
   */
  letGo(): { settled: number; waiting: number };
}

export interface Arrivals {
  note(arrival: Arrival): void;
  /** Newest first; only the last 200 of a place are kept. */
  list(placeId: string): Arrival[];
}

/** Forecasts as issued, kept before the next count is known, for honest scoring. */
export interface IssuedForecast {
  placeId: string;
  asOfMs: number;
  forecast: Forecast;
  advice: Advice;
}

export interface Issued {
  /**
   * Within one UTC day a later forecast replaces the earlier one if no record of the place changed
   * between them: both know the same counts, and a forecast a minute would fill the disk.
   */
  keep(issued: IssuedForecast): void;
  latest(placeId: string): IssuedForecast | undefined;
  list(placeId: string): IssuedForecast[];
  /** When they were issued, oldest first, without reading them. */
  times(placeId: string): number[];
  at(placeId: string, asOfMs: number): IssuedForecast | undefined;
}

export interface Warning {
  /** Stable while the reason lasts, so that a warning is raised once. */
  id: string;
  placeId: string;
  rule: string;
  raisedAtMs: number;
  deadlineMs: number;
  text: string;
  /** Why it is said, and what ends it, each in a sentence. */
  reason: string;
  ends: string;
  /** From here on it does not wait for the day's one message. */
  urgentFromMs?: number;
  /** `closed` by the person; `done` when what it asked for was done or is past; `withdrawn` when its reason is gone. */
  state: 'open' | 'put-off' | 'closed' | 'done' | 'withdrawn';
  putOffUntilMs?: number;
  /** How it ended, in a sentence, unless the person closed it. */
  ended?: string;
}

export interface Warnings {
  save(warning: Warning): void;
  get(placeId: string, id: string): Warning | undefined;
  /** Nearest deadline first, every state. */
  list(placeId: string): Warning[];
}

/** Where a forecast of the air outdoors is fetched, and where in its JSON the numbers stand (RFC 6901). */
export interface OutdoorSource {
  url: string;
  pointers: {
    /** To a list of entries, in each of which the other two are looked for; absent: they lead to lists themselves. */
    list?: string;
    time: string;
    temperature: string;
  };
  unit: 'Cel' | 'Far' | 'K';
}

/** Air outdoors at an instant: measured, or where `issuedMs` stands, forecast then. */
export interface StoredOutdoorPoint {
  timeMs: number;
  temperatureC: number;
  issuedMs?: number;
}

export interface Outdoor {
  source(placeId: string): OutdoorSource | undefined;
  /** Without a source none is fetched any more. */
  keepSource(placeId: string, source: OutdoorSource | undefined): void;
  /** Adds points as they are; one of the same instant and issue is replaced. */
  add(placeId: string, points: readonly StoredOutdoorPoint[]): void;
  /** Adds a forecast. Of the same UTC day an earlier one is let go where this one covers it. */
  issue(
    placeId: string,
    issuedMs: number,
    points: readonly Pick<StoredOutdoorPoint, 'timeMs' | 'temperatureC'>[],
  ): void;
  /** All points, ordered by time, then issue. */
  list(placeId: string): StoredOutdoorPoint[];
  lastIssuedMs(placeId: string): number | undefined;
  /** Forgets all points: only for an import that replaces the place. */
  clear(placeId: string): void;
}

export interface Store {
  records: Records;
  readings: Readings;
  outdoor: Outdoor;
  quarantine: Quarantine;
  arrivals: Arrivals;
  issued: Issued;
  warnings: Warnings;
  telling: Telling;
  credentials: Credentials;
  answered: Answered;
  /** Sentences for the owner about what does not work just now. */
  troubles(): string[];
  close(): Promise<void>;
}

/** Everything entered in a place as a season without readings and outdoor air; undefined where there is no such place. */
export function enteredSeason({ records }: Pick<Store, 'records'>, placeId: string): Season | undefined {
  const place = records.get('place', placeId, placeId)?.data;
  if (place === undefined) return undefined;
  const all = <K extends RecordKind>(kind: K) => records.list(kind, placeId).map(({ data }) => data);
  return {
    format: 'glasstide-season',
    version: 1,
    place,
    plantings: all('planting'),
    sensors: all('sensor'),
    readings: [],
    dailyExtremes: all('dailyExtremes'),
    traps: all('trap'),
    trapCounts: all('trapCount'),
    leafChecks: all('leafCheck'),
    sightings: all('sighting'),
    releases: all('release'),
    orders: all('order'),
    treatments: all('treatment'),
    outlook: [],
    outdoor: [],
  };
}
