/** Kind by kind: six bands, one tap answers and goes on; an exact number and a part of the trap beside. */
import { useLayoutEffect, useState } from 'preact/hooks';
import type { TrapKind } from '../../../services/model/index.ts';
import { trapKindNames } from '../../words/names.ts';
import { bands, wholeTrap } from '../../words/numbers.ts';
import { answerKind, kinds, restIsZero, screen, show, type TrapDraft } from './draft.ts';
import { Frame } from './frame.tsx';
import { onPart } from './part.tsx';

function YellowTrap({
  kind,
  draft,
  number,
}: {
  kind: TrapKind;
  draft: TrapDraft;
  number?: string | undefined;
}) {
  const part = onPart(draft.countedFraction).trim() || 'on the whole trap, both faces';
  return (
    <div class="yellow-trap">
      {number !== undefined && <span class="trap-number">{number || '–'}</span>}
      <div>
        <h2>{trapKindNames[kind]}</h2>
        <p>{number === undefined ? `How many ${part}?` : part}</p>
      </div>
      {draft.countedFraction < 1 && (
        <span
          class="trap-uncounted"
          style={{ width: `${(1 - draft.countedFraction) * 100}%` }}
          aria-hidden="true"
        />
      )}
    </div>
  );
}

interface KindProps {
  draft: TrapDraft;
  kind: TrapKind;
}
export function Kind({ draft, kind }: KindProps) {
  const at = kinds.indexOf(kind);
  const before = kinds[at - 1];
  const back = () => show(before ? { at: 'kind', kind: before, exact: false } : { at: 'hanging' });
  return (
    <Frame
      title={draft.trap.name}
      done={at + 1}
      of={kinds.length + 2}
      thumb={
        <>
          <button type="button" class="text-button" onClick={back}>
            Back
          </button>
          <button type="button" class="text-button" onClick={() => answerKind(kind, undefined)}>
            Not counted
          </button>
          <button type="button" class="text-button" onClick={() => restIsZero(kind)}>
            All else: 0
          </button>
        </>
      }
    >
      <YellowTrap kind={kind} draft={draft} />
      <p class="note">One tap answers and goes on. Not sure what it is? Count it under Not known.</p>
      <div class="band-keys">
        {bands.map((band) => (
          <button
            type="button"
            class="band-key"
            key={band.label}
            onClick={() => answerKind(kind, band.counted)}
          >
            {band.label}
          </button>
        ))}
      </div>
      <div class="two-keys">
        <button type="button" class="key" onClick={() => show({ at: 'kind', kind, exact: true })}>
          Exact number
        </button>
        <button
          type="button"
          class="key"
          onClick={() => show({ at: 'part', back: { at: 'kind', kind, exact: false } })}
        >
          Part of trap
        </button>
      </div>
    </Frame>
  );
}

/** What a count on a part stands for, said at once. */
function StandsFor({ text, fraction }: { text: string; fraction: number }) {
  if (fraction === 1 || text === '') return null;
  const { about, from, to } = wholeTrap(Number(text), fraction);
  return (
    <p>
      <strong>Stands for about {about} on the trap</strong>, somewhere from {from} to {to}.
    </p>
  );
}

export function ExactNumber({ draft, kind, typed }: KindProps & { typed: string | undefined }) {
  const given = draft.counts[kind];
  const [text, setText] = useState(typed ?? (typeof given === 'number' ? String(given) : ''));
  const press = (digit: string) => setText((old) => (old + digit).replace(/^0+(?=\d)/, '').slice(0, 5));
  useLayoutEffect(() => {
    const type = ({ key }: KeyboardEvent) => {
      if (/^\d$/.test(key)) press(key);
      if (key === 'Backspace') setText((old) => old.slice(0, -1));
    };
    addEventListener('keydown', type);
    return () => removeEventListener('keydown', type);
  }, []);
  // What is typed and not yet kept is begun all the same.
  useLayoutEffect(() => {
    screen.value = { at: 'kind', kind, exact: true, typed: text };
  }, [text]);
  const bandsScreen = { at: 'kind', kind, exact: false } as const;
  return (
    <Frame
      title={draft.trap.name}
      done={kinds.indexOf(kind) + 1}
      of={kinds.length + 2}
      thumb={
        <>
          <button type="button" class="text-button" onClick={() => show(bandsScreen)}>
            Back
          </button>
          <button
            type="button"
            class="main-button"
            disabled={text === ''}
            onClick={() => answerKind(kind, Number(text))}
          >
            {text === '' ? 'Type the number' : `Keep ${text}`}
          </button>
        </>
      }
    >
      <YellowTrap kind={kind} draft={draft} number={text} />
      <StandsFor text={text} fraction={draft.countedFraction} />
      <div class="digit-keys">
        {['1', '2', '3', '4', '5', '6', '7', '8', '9'].map((digit) => (
          <button type="button" class="digit-key" key={digit} onClick={() => press(digit)}>
            {digit}
          </button>
        ))}
        <button type="button" class="digit-key words" onClick={() => show(bandsScreen)}>
          bands
        </button>
        <button type="button" class="digit-key" onClick={() => press('0')}>
          0
        </button>
        <button type="button" class="digit-key words" onClick={() => setText('')}>
          wipe
        </button>
      </div>
    </Frame>
  );
}
