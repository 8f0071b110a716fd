/** The ports of the broker: plain, and over TLS when there is a certificate. */
import { createServer, type Server, type Socket } from 'node:net';
import { createServer as createTlsServer } from 'node:tls';
import { refuseLargePackets } from './packetSize.ts';

const maxConnections = 200;

export interface Listeners {
  port: number;
  tlsPort?: number;
  /** Listens at another address of this machine from now on. */
  moveTo(host: string): Promise<void>;
  close(): Promise<void>;
}

export interface ListenersOptions {
  port: number;
  host: string;
  /** With a certificate only this machine may speak in plain; all others come over TLS. */
  tls?: { port: number; cert: Buffer; key: Buffer } | undefined;
  handle(socket: Socket): unknown;
}

const thisMachine = '127.0.0.1';

/** @throws when a port is taken */
export async function openListeners({ port, host, tls, handle }: ListenersOptions): Promise<Listeners> {
  const servers: Server[] = [];
  const sockets = new Set<Socket>();
  const take = (socket: Socket) => {
    sockets.add(socket);
    socket.once('close', () => sockets.delete(socket));
    socket.setNoDelay(true);
    refuseLargePackets(socket);
    handle(socket);
  };
  const open = (server: Server, at: number, address: string) => {
    server.maxConnections = maxConnections;
    servers.push(server);
    return listen(server, at, address);
  };
  const openSecure = (at: number, address: string) => {
    const secure = createTlsServer({ cert: tls?.cert, key: tls?.key }, take);
    // A handshake that comes to nothing is the caller's affair.
    secure.on('tlsClientError', () => {});
    return open(secure, at, address);
  };

  async function openAll(at: string, ports: { port: number; tlsPort: number }) {
    const [first = thisMachine, ...others] = tls ? [thisMachine] : withThisMachine(at);
    const plain = await open(createServer(take), ports.port, first);
    for (const other of others) await open(createServer(take), plain, other);
    return { port: plain, ...(tls && { tlsPort: await openSecure(ports.tlsPort, at) }) };
  }
  const closeAll = () => Promise.all(servers.splice(0).map(closed));

  try {
    const opened = await openAll(host, { port, tlsPort: tls?.port ?? 0 });
    return {
      ...opened,
      async moveTo(next) {
        // Their open connections stay; a port is free for others as soon as nobody listens on it.
        for (const server of servers.splice(0)) server.close();
        await openAll(next, { tlsPort: 0, ...opened });
      },
      async close() {
        const all = closeAll();
        // Those that have not said yet who they are would hold the port open.
        for (const socket of sockets) socket.destroy();
        await all;
      },
    };
  } catch (error) {
    await closeAll();
    throw error;
  }
}

/** The service itself speaks to its broker at this machine's own address. */
function withThisMachine(host: string): string[] {
  return /^(0\.0\.0\.0|::|localhost|::1|127\..*)$/.test(host) ? [host] : [host, thisMachine];
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

/** Also for one that never listened. */
function closed(server: Server): Promise<void> {
  return new Promise((resolve) => {
    server.close(() => resolve());
  });
}
