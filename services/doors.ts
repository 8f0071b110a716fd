/**
 * From where the service can be reached, and by whom. An open house answers this machine only; with the
 * first passphrase its doors move to the addresses of the settings, and from then on everybody needs a key.
 */
import { readFileSync } from 'node:fs';
import { Server } from 'node:net';
import {
  type Access,
  createAccess,
  type DeviceName,
  heardTopics,
  mayPublish,
  newSecret,
} from './access/door.ts';
import { isThisMachine } from './api/names.ts';
import type { BrokerRights, ClientRights } from './broker/broker.ts';
import type { Clock } from './clock.ts';
import type { Config } from './config.ts';
import { topicMatches } from './ingest/topics.ts';
import type { Store } from './store/store.ts';

export interface TurnedAway {
  atMs: number;
  user: string;
  why: 'sign-in' | 'name' | 'publish' | 'subscribe';
  topic?: string;
}

export interface Doors {
  access: Access;
  rights: BrokerRights;
  /** Where to listen now, given where the settings want to. */
  hostFor(wanted: string): string;
  /** Does something once, when the first passphrase is there and the house may be reached from outside. */
  onMove(move: () => Promise<void>): void;
  /** Name and password under which the service itself speaks on the embedded broker. */
  ownLogin: string;
  /** Resolves when no door is moving. */
  settled(): Promise<void>;
  /** Sentences for the owner. */
  troubles(): string[];
  /** Boards that were refused lately, newest first, and how many in all. */
  turnedAway(): { total: number; latest: readonly TurnedAway[] };
}

const lockFirst =
  'The settings name an address for others, but there is no passphrase: only this machine is answered. Choose one.';
const keptRefusals = 20;
const thisMachine = '127.0.0.1';

export interface DoorsParts {
  store: Store;
  clock: Clock;
  config: Pick<Config, 'httpHost' | 'mqtt'>;
}

export function createDoors({ store, clock, config }: DoorsParts): Doors {
  const access = createAccess({ credentials: store.credentials, clock });
  let trouble: string | undefined;
  let moving: Promise<void> = Promise.resolve();
  const own = { user: 'glasstide', password: newSecret() };
  const refused = { total: 0, latest: [] as TurnedAway[] };

  const mapped = ({ placeId, sensorId }: DeviceName): string[] =>
    store.records
      .list('sensor', placeId)
      .filter(({ id }) => sensorId === undefined || id === sensorId)
      .flatMap(({ data: { topic } }) => (topic === undefined ? [] : [topic]));

  function rightsOfDevice(user: string, password: string): ClientRights | undefined {
    const device = access.deviceOf(user, password);
    return (
      device && {
        user,
        mayPublish: (topic) => mayPublish(device, topic, { matches: topicMatches, mapped }),
        mayHear: (filter) => heardTopics(device).includes(filter),
        isStillIn: () => access.deviceOf(user, password) !== undefined,
      }
    );
  }

  const wantsOthers = ![config.httpHost, config.mqtt.host ?? thisMachine].every(isThisMachine);

  function onMove(move: () => Promise<void>): void {
    if (!access.isOpen() || !wantsOthers) return;
    let moved = false;
    access.onChange(() => {
      if (moved || access.isOpen()) return;
      moved = true;
      // After the answer to whoever chose the passphrase.
      moving = new Promise((resolve) => setImmediate(resolve)).then(move).catch((error) => {
        trouble = `The new address could not be taken (${error.message}): start glasstide again.`;
      });
    });
  }

  return {
    access,
    onMove,
    settled: () => moving,
    troubles() {
      if (trouble !== undefined) return [trouble];
      return access.isOpen() && wantsOthers ? [lockFirst] : [];
    },
    rights: {
      signIn(user = '', password = '') {
        if (user === own.user && password === own.password) return ownRights;
        return rightsOfDevice(user, password) ?? (access.isOpen() ? openRights(access, user) : undefined);
      },
      onTurnedAway(what) {
        refused.total += 1;
        refused.latest = [{ atMs: clock.nowMs(), ...what }, ...refused.latest].slice(0, keptRefusals);
      },
    },
    hostFor: (wanted) => (access.isOpen() && !isThisMachine(wanted) ? thisMachine : wanted),
    ownLogin: `${own.user}:${own.password}`,
    turnedAway: () => refused,
  };
}

/** The service publishes advice and warnings, and hears nothing: the broker hands messages over before. */
const ownRights: ClientRights = {
  user: 'glasstide',
  mayPublish: () => true,
  mayHear: () => false,
  isStillIn: () => true,
};

const openRights = (access: Access, user: string): ClientRights => ({
  user,
  mayPublish: () => true,
  mayHear: () => true,
  isStillIn: () => access.isOpen(),
});

/**
 * The certificate and key of the settings.
 * @throws an Error that names the file which could not be read
 */
export function certificateOf({ tls }: Config): { cert: Buffer; key: Buffer } | undefined {
  return (
    tls && { cert: fileOf('GLASSTIDE_TLS_CERT', tls.certificate), key: fileOf('GLASSTIDE_TLS_KEY', tls.key) }
  );
}

function fileOf(setting: string, path: string): Buffer {
  try {
    return readFileSync(path);
  } catch (cause) {
    throw new Error(`${setting} names ${path}, which could not be read: let this user read it.`, { cause });
  }
}

/**
 * A server listens at another address from now on; connections that are open stay. The close of an HTTP
 * server would also end those that are idle, and a browser just about to ask again would find no line.
 */
export function moveServer(server: Server, to: { host: string; port: number }): Promise<void> {
  return new Promise((resolve, reject) => {
    server.once('error', reject);
    Server.prototype.close.call(server);
    server.listen(to.port, to.host, () => {
      server.off('error', reject);
      resolve();
    });
  });
}
