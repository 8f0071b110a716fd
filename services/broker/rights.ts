/** Who may do what on the embedded broker, asked of whoever knows the secrets. */
import type { AuthenticateError, Client, PublishPacket, Subscription } from 'aedes';

/** What a client that signed in may do. */
export interface ClientRights {
  user: string;
  mayPublish(topic: string): boolean;
  mayHear(filter: string): boolean;
  /** False once its secret was taken away. */
  isStillIn(): boolean;
}

export interface BrokerRights {
  /** The rights of a name and password; undefined turns the client away. */
  signIn(user: string | undefined, password: string | undefined): ClientRights | undefined;
  /** Hears of every refusal, for the page that tells whether all is well. */
  onTurnedAway(refused: {
    user: string;
    why: 'sign-in' | 'name' | 'publish' | 'subscribe';
    topic?: string;
  }): void;
}

const everything: ClientRights = {
  user: '',
  mayPublish: () => true,
  mayHear: () => true,
  isStillIn: () => true,
};
export const noRights: BrokerRights = { signIn: () => everything, onTurnedAway: () => {} };

/** Sessions the broker keeps while their client is away; more names than boards would be a flood. */
const mostKeptSessions = 10_000;
/** MQTT 3.1.1, table 3.1. */
const identifierRejected = 2;
const notAuthorized = 5;

/** The hooks of aedes that ask `rights`, and what ends the connections of clients that lost theirs. */
export function guard({ signIn, onTurnedAway }: BrokerRights) {
  const rightsOf = new WeakMap<Client, ClientRights>();
  const present = new Map<string, Client>();
  /** Whose session a client name is: nobody else may take it over and hear what was kept for it. */
  const owners = new Map<string, string>();

  function isTaken(client: Client, user: string): boolean {
    const other = present.get(client.id);
    const owner = other && !other.closed ? rightsOf.get(other)?.user : owners.get(client.id);
    return owner !== undefined && owner !== user;
  }

  return {
    authenticate(
      client: Client,
      user: string | undefined,
      password: Readonly<Buffer> | undefined,
      done: (error: AuthenticateError | null, success: boolean | null) => void,
    ): void {
      const rights = signIn(user, password?.toString());
      if (!rights) {
        onTurnedAway({ user: named(user), why: 'sign-in' });
        done(refusal(notAuthorized, 'unknown name or password'), false);
        return;
      }
      if (isTaken(client, rights.user)) {
        onTurnedAway({ user: rights.user, why: 'name' });
        done(refusal(identifierRejected, 'the client name belongs to another'), false);
        return;
      }
      rightsOf.set(client, rights);
      present.set(client.id, client);
      if (!client.clean && owners.size < mostKeptSessions) owners.set(client.id, rights.user);
      done(null, true);
    },

    mayPublish(client: Client | null, { topic }: PublishPacket): boolean {
      // Without a client the broker itself speaks.
      const rights = client === null ? everything : rightsOf.get(client);
      if (rights?.mayPublish(topic)) return true;
      onTurnedAway({ user: rights?.user ?? '', why: 'publish', topic });
      return false;
    },

    authorizeSubscribe(
      client: Client | null,
      subscription: Subscription,
      done: (error: Error | null, subscription?: Subscription | null) => void,
    ): void {
      const rights = client === null ? everything : rightsOf.get(client);
      if (rights?.mayHear(subscription.topic)) {
        done(null, subscription);
        return;
      }
      onTurnedAway({ user: rights?.user ?? '', why: 'subscribe', topic: subscription.topic });
      // Without a subscription aedes answers 0x80, failure (MQTT 3.1.1, 3.9.3).
      done(null, null);
    },

    forget(client: Client): void {
      if (present.get(client.id) === client) present.delete(client.id);
    },

    /** Ends the connections of clients whose rights are gone. */
    review(): void {
      for (const client of present.values()) {
        if (!rightsOf.get(client)?.isStillIn()) client.close();
      }
    },
  };
}

const named = (user: string | undefined) => (user ?? '').slice(0, 100);

function refusal(returnCode: number, message: string): AuthenticateError {
  return Object.assign(new Error(message), { returnCode }) as AuthenticateError;
}
