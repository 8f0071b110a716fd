/**
 * Who is asking, and the secrets that say so. Until the owner has chosen a passphrase the house is open to
 * this machine and closed to every other.
 */
import type { Clock } from '../clock.ts';
import { RefusalError } from '../refusals.ts';
import type { Credential, Credentials } from '../store/store.ts';
import { oneAtATime } from './oneAtATime.ts';
import { hashPassphrase, isPassphrase, passphraseIssue } from './passphrase.ts';
import type { DeviceName, Role } from './rights.ts';
import { userOf } from './rights.ts';
import { newId, newSecret, secretHash } from './secrets.ts';

const dayMs = 86_400_000;
const hourMs = 3_600_000;
/** A phone that is used stays signed in; one that lies in a drawer for a season does not. */
export const sessionDays = 90;
const inviteDays = 7;
const mostCredentials = 1000;

export interface Caller {
  role: Role;
  /** Absent in an open house, where nobody needs one. */
  credential?: Credential;
}

/** A secret is shown once, to whoever it was made for. */
export interface Made {
  credential: Credential;
  secret: string;
}

export interface Access {
  /** True until a passphrase is chosen. */
  isOpen(): boolean;
  /** Who holds this secret: a session's cookie or a reader's key. */
  callerOf(secret: string | undefined): Caller;
  /** The board that signs in with this name and password; undefined for any other pair. */
  deviceOf(user: string, password: string): (DeviceName & { id: string }) | undefined;
  /**
   * Chooses the passphrase; a later one needs the one before, and signs every owner's session out.
   * @throws RefusalError `passphrase-wrong`, `record-invalid`
   */
  choosePassphrase(chosen: { passphrase: string; before?: string | undefined; name: string }): Promise<Made>;
  /** The same without the one before: for whoever sits at the machine itself. */
  resetPassphrase(passphrase: string): Promise<void>;
  /** @throws RefusalError `passphrase-wrong` */
  signIn(passphrase: string, name: string): Promise<Made>;
  invite(name: string): Made;
  /** An invitation is good for one session. @throws RefusalError `invitation-unknown` */
  accept(secret: string): Made;
  makeDevice(name: string, device: DeviceName): Made;
  makeReader(name: string): Made;
  /** Without those that ran out. */
  list(): Credential[];
  /** False when there was none. */
  revoke(id: string): boolean;
  /**
   * Calls `act` when somebody may do more or less than before: a passphrase was chosen, a secret taken away.
   * Returns the function that ends it.
   */
  onChange(act: () => unknown): () => void;
}

export interface AccessParts {
  credentials: Credentials;
  clock: Clock;
}

export function createAccess({ credentials, clock }: AccessParts): Access {
  const acts = new Set<() => unknown>();
  const changed = () => {
    for (const act of acts) act();
  };
  const alone = oneAtATime();
  const isOpen = () => credentials.passphraseHash() === undefined;

  function make(details: Omit<Credential, 'id' | 'createdMs'>): Made {
    for (const { id } of ranOut()) credentials.remove(id);
    if (credentials.list().length >= mostCredentials) throw tooMany();
    const secret = newSecret();
    const credential: Credential = { id: newId(), createdMs: clock.nowMs(), ...details };
    credentials.add(credential, secretHash(secret));
    return { credential, secret };
  }

  const session = (role: 'owner' | 'helper', name: string) => make({ kind: 'session', role, name });

  const isOver = ({ expiresMs, kind, lastUsedMs, createdMs }: Credential) =>
    kind === 'session'
      ? (lastUsedMs ?? createdMs) + sessionDays * dayMs <= clock.nowMs()
      : expiresMs !== undefined && expiresMs <= clock.nowMs();
  const ranOut = () => credentials.list().filter(isOver);

  function holderOf(secret: string): Credential | undefined {
    const found = credentials.bySecretHash(secretHash(secret));
    if (!found || isOver(found)) return undefined;
    // Once an hour is enough to know whether something is still in use.
    if (clock.nowMs() - (found.lastUsedMs ?? 0) > hourMs) credentials.markUsed(found.id, clock.nowMs());
    return found;
  }

  function keep(hash: string): void {
    credentials.keepPassphraseHash(hash, clock.nowMs());
    for (const { id, role } of credentials.list()) if (role === 'owner') credentials.remove(id);
  }

  /** One trial at a time: guesses must not take the whole machine. */
  const tryPassphrase = (passphrase: string, kept: string) => alone(() => isPassphrase(passphrase, kept));

  return {
    isOpen,
    callerOf(secret) {
      if (isOpen()) return { role: 'owner' };
      const credential = secret === undefined ? undefined : holderOf(secret);
      if (credential?.kind === 'session') return { role: credential.role ?? 'helper', credential };
      if (credential?.kind === 'reader') return { role: 'reader', credential };
      return { role: 'nobody' };
    },
    deviceOf(user, password) {
      const found = holderOf(password);
      if (found?.kind !== 'device' || found.placeId === undefined) return undefined;
      const { id, placeId, sensorId } = found;
      const device = { id, placeId, ...(sensorId !== undefined && { sensorId }) };
      return userOf(device) === user ? device : undefined;
    },
    async choosePassphrase({ passphrase, before, name }) {
      refuseUnfit(passphrase);
      const kept = credentials.passphraseHash();
      if (kept !== undefined && !(await tryPassphrase(before ?? '', kept))) throw wrongPassphrase();
      const hash = await alone(() => hashPassphrase(passphrase));
      // Another may have been chosen while this one was worked out: the first one stands.
      if (credentials.passphraseHash() !== kept) throw wrongPassphrase();
      keep(hash);
      const made = session('owner', name);
      changed();
      return made;
    },
    async resetPassphrase(passphrase) {
      refuseUnfit(passphrase);
      keep(await hashPassphrase(passphrase));
      changed();
    },
    async signIn(passphrase, name) {
      const kept = credentials.passphraseHash();
      if (kept === undefined || !(await tryPassphrase(passphrase, kept))) throw wrongPassphrase();
      return session('owner', name);
    },
    invite: (name) => make({ kind: 'invite', name, expiresMs: clock.nowMs() + inviteDays * dayMs }),
    accept(secret) {
      const invitation = holderOf(secret);
      if (invitation?.kind !== 'invite' || !credentials.remove(invitation.id)) throw unknownInvitation();
      return session('helper', invitation.name);
    },
    makeDevice: (name, device) => make({ kind: 'device', name, ...device }),
    makeReader: (name) => make({ kind: 'reader', name }),
    list: () => credentials.list().filter((each) => !isOver(each)),
    revoke(id) {
      const removed = credentials.remove(id);
      if (removed) changed();
      return removed;
    },
    onChange(act) {
      acts.add(act);
      return () => acts.delete(act);
    },
  };
}

/** @throws RefusalError that says what to use instead, without a word of the passphrase itself */
function refuseUnfit(passphrase: string): void {
  const expected = passphraseIssue(passphrase);
  if (expected === undefined) return;
  throw new RefusalError({
    code: 'record-invalid',
    reason: 'This passphrase will not do. Nothing was changed.',
    issues: [{ path: 'passphrase', expected, received: `${passphrase.length} characters` }],
  });
}

function wrongPassphrase(): RefusalError {
  return new RefusalError({ code: 'passphrase-wrong', reason: 'That is not the passphrase of this house.' });
}

function unknownInvitation(): RefusalError {
  return new RefusalError({
    code: 'invitation-unknown',
    reason: 'This invitation was used already, has run out, or was taken back.',
  });
}

function tooMany(): RefusalError {
  return new RefusalError({
    code: 'too-many-requests',
    reason: `There are ${mostCredentials} sessions, boards and keys already.`,
  });
}
