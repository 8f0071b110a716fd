/**
 * The embedded MQTT broker (3.1 and 3.1.1). A publisher's PUBACK waits for `beforeAcknowledge`, so a
 * message that was acknowledged is on disk (docs/decisions/0002-acknowledge-after-commit.md).
 */
import { createServer, type Server } from 'node:net';
import { Aedes, type Client, type PublishPacket } from 'aedes';

const maxConnections = 200;

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
}

export interface Broker {
  port: number;
  close(): Promise<void>;
}

/** Starts the broker; resolves when it listens, rejects when the port is taken. */
export async function startBroker(options: BrokerOptions): Promise<Broker> {
  const aedes = await Aedes.createBroker({
    authorizePublish: holdAcknowledgement(options.beforeAcknowledge ?? (async () => {})),
  });
  const server = createServer((socket) => {
    socket.setNoDelay(true);
    aedes.handle(socket);
  });
  server.maxConnections = maxConnections;
  try {
    const port = await listen(server, options.port, options.host ?? '127.0.0.1');
    return { port, close: () => closeBoth(aedes, server) };
  } catch (error) {
    await closeBoth(aedes, server);
    throw error;
  }
}

/**
 * aedes calls authorizePublish before it writes the PUBACK (its lib/handlers/publish.js) and hands
 * over all packets of one network read at once. They are stored together and acknowledged in the
 * order in which they came [MQTT-4.6.0-2].
 */
function holdAcknowledgement(store: NonNullable<BrokerOptions['beforeAcknowledge']>) {
  const previous = new WeakMap<Client, Promise<void>>();
  return (client: Client | null, packet: PublishPacket, done: (error?: Error | null) => void) => {
    if (packet.topic.startsWith('$')) {
      done(new Error('topics that begin with $ belong to the broker [MQTT-4.7.2-1]'));
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

function listen(server: Server, port: number, host: string): Promise<number> {
  return new Promise((resolve, reject) => {
    server.once('error', reject);
    server.listen(port, host, () => {
      server.off('error', reject);
      const address = server.address();
      resolve(typeof address === 'object' && address ? address.port : port);
    });
  });
}

async function closeBoth(aedes: Aedes, server: Server): Promise<void> {
  const closed = new Promise<void>((resolve) => {
    server.close(() => resolve());
  });
  await new Promise<void>((resolve) => {
    aedes.close(() => resolve());
  });
  await closed;
}
