/** What the sections of this page share: the list, taking away, and a secret that is shown once. */
import { signal } from '@preact/signals';
import type { ComponentChildren } from 'preact';
import { type Answer, send } from '../../api.ts';
import { notice } from '../../notices.ts';
import { Line } from '../../parts/almanac.tsx';
import { nowMs, refresh, zone } from '../../state.ts';
import { dayWords, localDay } from '../../words/dates.ts';

export interface Credential {
  id: string;
  kind: 'session' | 'invite' | 'device' | 'reader';
  name: string;
  role?: 'owner' | 'helper';
  placeId?: string;
  sensorId?: string;
  /** The name a board signs in with. */
  user?: string;
  yours: boolean;
  createdAt: string;
  lastUsedAt?: string;
  expiresAt?: string;
}
export interface CredentialsAnswer {
  credentials: Credential[];
}
export interface Made {
  credential: Credential;
  secret: string;
}

/** The last secret that was made; gone with the page. */
export const made = signal<Made | undefined>(undefined);

const again = () => refresh(/\/api\/access\//);

export async function make(body: object): Promise<Answer<Made>> {
  const answer = await send<Made>({ method: 'POST', path: '/api/access/credentials', body });
  if (answer.ok) {
    made.value = answer.data;
    again();
  }
  return answer;
}

async function takeAway({ id, name }: Credential): Promise<void> {
  const answer = await send({ method: 'DELETE', path: `/api/access/credentials/${id}` });
  notice.value = answer.ok
    ? { kind: 'kept', lead: 'Taken away:', text: `${name} may not come in any more.` }
    : {
        kind: 'refused',
        lead: 'Not taken away:',
        text: `${answer.refused.reason} ${answer.refused.whatToDo}`,
      };
  if (made.value?.credential.id === id) made.value = undefined;
  again();
}

const dayOf = (iso: string) => dayWords(localDay(Date.parse(iso), zone.value));

function usedWords({ lastUsedAt, expiresAt }: Credential): string {
  if (expiresAt !== undefined) return `open until ${dayOf(expiresAt)}`;
  if (lastUsedAt === undefined) return 'not used yet';
  const today = dayOf(new Date(nowMs.value).toISOString());
  return dayOf(lastUsedAt) === today ? 'used today' : `used ${dayOf(lastUsedAt)}`;
}

export function CredentialLine({ credential, note }: { credential: Credential; note?: string | undefined }) {
  const { name, yours } = credential;
  return (
    <Line
      name={yours ? `${name} (here)` : name}
      value={usedWords(credential)}
      note={note}
      action={
        <button
          type="button"
          class="text-button"
          aria-label={`take away: ${name}`}
          onClick={() => void takeAway(credential)}
        >
          take away
        </button>
      }
    />
  );
}

/** Shown until the page is left; nobody can show it again. */
export function MadeOnce({
  kind,
  children,
}: {
  kind: Credential['kind'];
  children: (made: Made) => ComponentChildren;
}) {
  const shown = made.value?.credential.kind === kind ? made.value : undefined;
  return (
    <div role="status">
      {shown && (
        <div class="made-once">
          {children(shown)}
          <p class="note">This is shown once. When it is lost, take it away and make a new one.</p>
        </div>
      )}
    </div>
  );
}
