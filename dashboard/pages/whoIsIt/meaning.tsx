/** The end of the key: what it means here, what to do, and the sighting that is kept. */
import { useState } from 'preact/hooks';
import { identificationSources, type KeyKind, notKnown } from '../../../services/model/index.ts';
import type { Refused } from '../../api.ts';
import { Picture } from '../../drawings/picture.tsx';
import { enterAndTell } from '../../entries.ts';
import { Field, RefusedWords } from '../../parts/field.tsx';
import { Section } from '../../parts/section.tsx';
import { nowMs } from '../../state.ts';
import { altOf, back, logged, restart } from './answers.ts';
import { Badge } from './plates.tsx';

const longestNote = 500;

/** Where and how many, then the button; afterwards the next animal. */
interface LogProps {
  what: string;
  /** Said in the note where the key ended with a few. */
  perhaps?: string;
  /** Whether the round counts it. */
  counted: boolean;
}
function Log({ what, perhaps = '', counted }: LogProps) {
  const [note, setNote] = useState('');
  const [refused, setRefused] = useState<Refused | undefined>(undefined);
  const keep = async () => {
    const said = [note.trim(), perhaps].filter(Boolean).join('. ').slice(0, longestNote);
    const data = { time: new Date(nowMs.value).toISOString(), what, ...(said && { note: said }) };
    const answer = await enterAndTell('sightings', data, `${what} seen`);
    setRefused(answer.ok ? undefined : answer.refused);
    logged.value = answer.ok;
  };
  return (
    <div class="sighting">
      {!logged.value && <Field label="Where, how many (may stay empty)" value={note} onText={setNote} />}
      <RefusedWords refused={refused} />
      <div class="thumb-bar">
        <button type="button" class="text-button" onClick={logged.value ? restart : back}>
          {logged.value ? 'Look at another' : 'Back'}
        </button>
        {!logged.value && (
          <button type="button" class="main-button" onClick={() => void keep()}>
            Keep the sighting
          </button>
        )}
        {logged.value && counted && (
          <a class="key" href="/round">
            Count in the round
          </a>
        )}
      </div>
    </div>
  );
}

const verdicts = { pest: 'a pest', friend: 'a friend', neither: 'neither pest nor friend' } as const;

export function Meaning({ kind }: { kind: KeyKind }) {
  return (
    <>
      <h1 tabIndex={-1}>
        {kind.name}: {verdicts[kind.side]}.
      </h1>
      <div class="meaning">
        <Picture id={kind.id} alt={altOf(kind)} />
        <div class="meaning-words">
          <Badge side={kind.side} />
          <p>{kind.look}</p>
          <p>
            <strong>Test:</strong> {kind.test}
          </p>
        </div>
      </div>
      <Section title="What it means here">
        <p>{kind.means}</p>
        <p>
          <strong>{kind.whatToDo}</strong>
        </p>
      </Section>
      <details class="opening">
        <summary>Who says so</summary>
        <ul class="note">
          {kind.sources.map((id) => (
            <li key={id}>{identificationSources[id]}</li>
          ))}
        </ul>
      </details>
      <Log what={kind.what} counted={kind.countAs !== undefined} />
    </>
  );
}

export function Unknown({ left }: { left: readonly KeyKind[] }) {
  const few = left.length <= 4 ? left.map(({ name }) => name).join(', or ') : '';
  return (
    <>
      <h1 tabIndex={-1}>Not known yet. Keep it, and look again in two days.</h1>
      <p>
        Put it into a jar with a leaf of its plant and a paper lid, or take a photograph with a ruler beside
        it and ask your adviser. Do not spray for it until it has a name.
      </p>
      {few && <p class="note">It may be: {few}.</p>}
      <Log what={notKnown} counted={false} perhaps={few && `Perhaps: ${few}`} />
    </>
  );
}
