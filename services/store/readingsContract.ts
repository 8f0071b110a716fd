/** The contract of readings, which live in the embedded database or on a server. Times are UTC milliseconds. */

export interface StoredReading {
  sensorId: string;
  timeMs: number;
  temperatureC: number;
  humidityPct?: number;
  /** Why it is not believed; absent = believed. */
  doubt?: string;
}

/**
 * One hour (UTC) of one sensor, believed readings only; `doubted` counts the others. An hour
 * without a believed reading has no mean and is left out.
 */
export interface HourlyRollup {
  sensorId: string;
  hourMs: number;
  count: number;
  meanC: number;
  minC: number;
  maxC: number;
  doubted: number;
}

export interface Added {
  stored: number;
  /** Readings for a sensor and time already known, conflicts included. */
  duplicates: number;
  /** Those duplicates that carry another value than the one in use. */
  conflicts: StoredReading[];
  /** The same delivery was stored before: nothing was stored now. */
  deliveredBefore?: true;
}

/** Readings up to this far apart leave no gap. */
export const longestLineMs = 2 * 3_600_000;

/** How much there is of a sensor, and how warm it reads: by which the model tells who leads. */
export interface Standing {
  sensorId: string;
  /** Stretches of `longestLineMs` (counted from 1970) in which something is believed. */
  coveredMs: number;
  /** Of its hours. */
  meanC: number;
}

/** What is written in the same transaction as readings, so that neither is ever there without the other. */
export interface Noting {
  /** What the page of arrivals tells, once it is known what became of the readings. */
  arrival(added: Added): Arrival;
  /** Given when the readings have no time of their own: only the delivery tells a second sending apart. */
  delivery?: Delivery;
}

/** One QoS 1 delivery. Its packet identifier stays the same when it is sent again [MQTT-4.4.0-1]. */
export interface Delivery {
  sender: string;
  packetId: number;
  /** The sensor it is read for: one message may speak to several. */
  sensorId: string;
  /** Topic and payload, since identifiers are used again for other messages. */
  content: string;
  arrivedMs: number;
  /** The flag DUP: it may have come before. */
  again: boolean;
}

export interface Readings {
  /**
   * Stores a batch in one durable transaction; resolves after it is on disk. A second reading for
   * the same sensor and time is counted, not stored: the first stays in use. Counts are as far as
   * known when the store of readings is a server that does not answer just now.
   */
  add(placeId: string, readings: StoredReading[], noting?: Noting): Promise<Added>;
  /** Sets or clears doubts found later and rolls the hours up again. */
  mark(placeId: string, marks: { sensorId: string; timeMs: number; doubt?: string }[]): Promise<void>;
  /** Ordered by time, then sensor; `fromMs` inclusive, `toMs` exclusive. */
  range(
    placeId: string,
    window: { fromMs: number; toMs: number; sensorId?: string },
  ): Promise<StoredReading[]>;
  hourly(
    placeId: string,
    window: { fromMs: number; toMs: number; sensorId?: string },
  ): Promise<HourlyRollup[]>;
  /**
   * What is enough to draw and to forecast from: of each sensor the first believed reading of each stretch of
   * `everyMs` (counted from 1970), in the order of `range`.
   */
  sampled(
    placeId: string,
    window: { fromMs: number; toMs: number },
    everyMs: number,
  ): Promise<StoredReading[]>;
  /** Those of `range` that are not believed. */
  doubted(placeId: string, window: { fromMs: number; toMs: number }): Promise<StoredReading[]>;
  /** By sensor, over all its hours. */
  standings(placeId: string): Promise<Standing[]>;
  /** The time of the first reading. */
  earliestMs(placeId: string): Promise<number | undefined>;
  /** The last reading of each sensor, ordered by sensor. */
  latest(placeId: string): Promise<StoredReading[]>;
  /** Forgets every reading of a place: only for an import that replaces it. */
  clear(placeId: string): Promise<void>;
  /** The places that have readings, ordered by id. */
  places(): Promise<string[]>;
}

/** What each sensor last said and how it was read, whether stored or refused: the page of arrivals. */
export interface Arrival {
  placeId: string;
  topic: string;
  arrivedMs: number;
  payloadStart: string;
  readAs: string;
}
