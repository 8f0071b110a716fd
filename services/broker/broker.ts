/**
 * The embedded MQTT broker (3.1 and 3.1.1). A publisher's PUBACK waits for `beforeAcknowledge`, so a
 * message that was acknowledged is on disk (docs/decisions/0002-acknowledge-after-commit.md).
 */
import { Aedes, type Client, type PublishPacket } from 'aedes';
import { type Listeners, openListeners } from './listeners.ts';
import { type BrokerRights, guard, noRights } from './rights.ts';

export type { BrokerRights, ClientRights } from './rights.ts';

/** Who does not say within this time who it is holds a connection for nothing. */
const longestGreetingMs = 10_000;

export interface PublishedMessage {
  topic: string;
  payload: Uint8Array;
  /** The publisher asked the broker to keep it for later subscribers. */
  retained: boolean;
  /** The publisher may have sent it before (MQTT 3.1.1 §3.3.1.1). */
  duplicate: boolean;
  /** QoS 1 only: the publisher and its packet identifier, which it repeats when it sends again. */
  delivery?: { sender: string; packetId: number };
  /** It comes straight from its publisher, never out of a broker's memory. */
  live: true;
}

export interface BrokerOptions {
  /** 0 picks a free port. */
  port: number;
  /** This machine only by default; '0.0.0.0' lets boards in the house connect. */
  host?: string;
  /**
   * Resolves when the message is safe; until then its publisher gets no acknowledgement. When it
   * rejects, the connection ends, and the publisher sends the message again.
   */
  beforeAcknowledge?: (message: PublishedMessage) => Promise<void>;
  /** Left out, everybody may do everything. */
  rights?: BrokerRights;
  tls?: { port: number; cert: Buffer; key: Buffer } | undefined;
}

export interface Broker extends Pick<Listeners, 'port' | 'tlsPort' | 'moveTo'> {
  /** Ends the connections of clients whose secret was taken away. */
  review(): void;
  /** Boards and displays that are connected now. */
  connected(): number;
  close(): Promise<void>;
}

/** Starts the broker; resolves when it listens, rejects when the port is taken. */
export async function startBroker(options: BrokerOptions): Promise<Broker> {
  const { authenticate, authorizeSubscribe, mayPublish, forget, review } = guard(options.rights ?? noRights);
  const aedes = await Aedes.createBroker({
    connectTimeout: longestGreetingMs,
    authenticate,
    authorizeSubscribe,
    authorizePublish: holdAcknowledgement(mayPublish, options.beforeAcknowledge ?? (async () => {})),
  });
  aedes.on('clientDisconnect', forget);
  try {
    const { host = '127.0.0.1', port, tls } = options;
    const listeners = await openListeners({ port, host, tls, handle: aedes.handle });
    return {
      ...listeners,
      review,
      connected: () => aedes.connectedClients,
      async close() {
        await closeBroker(aedes);
        await listeners.close();
      },
    };
  } catch (error) {
    await closeBroker(aedes);
    throw error;
  }
}

/**
 * aedes calls authorizePublish before it writes the PUBACK (its lib/handlers/publish.js) and hands
 * over all packets of one network read at once. They are stored together and acknowledged in the
 * order in which they came [MQTT-4.6.0-2].
 */
function holdAcknowledgement(
  mayPublish: (client: Client | null, packet: PublishPacket) => boolean,
  store: NonNullable<BrokerOptions['beforeAcknowledge']>,
) {
  const previous = new WeakMap<Client, Promise<void>>();
  return (client: Client | null, packet: PublishPacket, done: (error?: Error | null) => void) => {
    if (packet.topic.startsWith('$')) {
      done(new Error('topics that begin with $ belong to the broker [MQTT-4.7.2-1]'));
      return;
    }
    if (!mayPublish(client, packet)) {
      done(new Error('this client may not publish on this topic'));
      return;
    }
    const stored = store(messageOf(packet, client));
    const inOrder = Promise.all([client ? previous.get(client) : undefined, stored]).then(() => {});
    if (client) previous.set(client, inOrder);
    inOrder.then(
      () => done(),
      (cause) => done(new Error('the message could not be stored', { cause })),
    );
  };
}

function messageOf(packet: PublishPacket, client: Client | null): PublishedMessage {
  const packetId = packet.qos > 0 ? packet.messageId : undefined;
  return {
    topic: packet.topic,
    payload: Buffer.from(packet.payload),
    retained: packet.retain,
    duplicate: packet.dup,
    live: true,
    ...(client && packetId !== undefined && { delivery: { sender: client.id, packetId } }),
  };
}

function closeBroker(aedes: Aedes): Promise<void> {
  return new Promise((resolve) => {
    aedes.close(() => resolve());
  });
}
