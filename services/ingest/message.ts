/** What the rooms of ingest hand each other. */
/** One MQTT message as it came. */
export interface Message {
  topic: string;
  payload: Uint8Array;
  retained: boolean;
  /** Possibly sent before (MQTT 3.1.1 §3.3.1.1, DUP). */
  duplicate: boolean;
  /** QoS 1 only: who delivered it under which packet identifier, which a second sending repeats. */
  delivery?: { sender: string; packetId: number };
  /** Straight from its publisher: even when it is to be kept, it was sent just now. */
  live?: true;
}

/** A message with the time it came, by our clock. */
export interface ArrivedMessage extends Message {
  arrivedMs: number;
  /** Its full length, when the payload was cut for keeping. */
  payloadBytes: number;
}
