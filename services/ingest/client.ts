/** Listens on an external broker: persistent session, QoS 1, acknowledged after the commit. */
import mqtt, { type IClientOptions } from 'mqtt';
import type { Message } from './message.ts';

export interface Listening {
  /** Resolves when the broker has granted the subscriptions for the first time. */
  ready(): Promise<void>;
  subscribe(filters: readonly string[]): void;
  /** A sentence for the owner while the broker is away. */
  trouble(): string | undefined;
  close(): Promise<void>;
}

export interface ListenOptions {
  url: string;
  /** Fixed: the broker keeps what came while we were away under this name. One service a name. */
  clientId: string;
  filters: readonly string[];
  /** Rejects when the message could not be kept: it is then not acknowledged, and comes again. */
  handle(message: Message): Promise<void>;
}

/**
 * Connects and keeps connecting. mqtt.js hands over one message at a time and sends its PUBACK only
 * after `done` (its lib/handlers/publish.ts), so acknowledgements keep the order of arrival.
 */
export function listen({ url, clientId, filters, handle }: ListenOptions): Listening {
  // 3.1.1, which every broker speaks; a session of version 5 would need an expiry as well.
  const options: IClientOptions = { clientId, clean: false, protocolVersion: 4, resubscribe: false };
  const client = mqtt.connect(url, { ...options, manualConnect: true });
  const wanted = new Set(filters);
  const granted = new Set<string>();
  const first = withResolvers();
  let lastError = '';

  client.handleMessage = ({ topic, payload, retain, dup, messageId }, done) => {
    const delivery = messageId === undefined ? {} : { delivery: { sender: clientId, packetId: messageId } };
    handle({ topic, payload: Buffer.from(payload), retained: retain, duplicate: dup, ...delivery }).then(
      () => done(),
      // Not acknowledged: the line is dropped, and the broker sends the message again.
      () => client.stream.destroy(),
    );
  };

  // Only what is new: subscribing again would bring every retained message again.
  function subscribe(): void {
    const missing = [...wanted].filter((filter) => !granted.has(filter));
    client.subscribe(missing, { qos: 1 }, (error) => {
      if (error) return;
      for (const filter of missing) granted.add(filter);
      first.resolve();
    });
  }

  client.on('connect', ({ sessionPresent }) => {
    if (!sessionPresent) granted.clear();
    subscribe();
  });
  // Without a listener the first refused connection would end the process; mqtt.js tries again.
  client.on('error', (error) => {
    lastError = error.message;
  });
  client.connect();

  return {
    ready: () => first.promise,
    subscribe(more) {
      for (const filter of more) wanted.add(filter);
      if (client.connected) subscribe();
    },
    trouble() {
      if (client.connected) return undefined;
      const why = lastError && ` (${lastError})`;
      return `The MQTT broker at ${new URL(url).host} does not answer${why}. Readings wait there until it does.`;
    },
    close: () => client.endAsync(),
  };
}

function withResolvers(): { promise: Promise<void>; resolve: () => void } {
  let resolve = () => {};
  const promise = new Promise<void>((done) => {
    resolve = done;
  });
  return { promise, resolve };
}
