/** What the round left behind: one sentence, every entry with its own undo, the new sentence. */
import type { Outcome } from '../../api.ts';
import { undo } from '../../entries.ts';
import { working } from '../../live.ts';
import { Almanac, Line } from '../../parts/almanac.tsx';
import { unbroken } from '../../words/numbers.ts';
import { type KeptEntry, kept, restart, show, verdict } from './draft.ts';
import { Frame } from './frame.tsx';

async function takeBack(entry: KeptEntry): Promise<void> {
  if (!(await undo(entry.noun, entry.id, `${entry.name}, ${entry.value}`, entry.undone))) return;
  if (entry.noun === 'trap-counts') verdict.value = '';
  kept.value = kept.value.map((each) => (each.id === entry.id ? { ...each, undone: !each.undone } : each));
}

const keptSentence = (entries: number): string =>
  entries === 0
    ? 'Nothing entered this time. No harm.'
    : `Kept: ${entries === 1 ? '1 entry' : `${entries} entries`}.`;

export function KeptRound({ outcome }: { outcome: Outcome | undefined }) {
  return (
    <Frame
      title={keptSentence(kept.value.filter((each) => !each.undone).length)}
      thumb={
        <>
          <button type="button" class="text-button" onClick={() => show({ at: 'start' })}>
            Add more
          </button>
          <a class="main-button" href="/" onClick={restart}>
            Read the week
          </a>
        </>
      }
    >
      {verdict.value && <p class="round-verdict">{unbroken(verdict.value)}</p>}
      <Almanac>
        {kept.value.map((entry) => (
          <Line
            key={`${entry.noun} ${entry.id}`}
            name={entry.name}
            value={entry.undone ? 'undone' : ''}
            note={entry.value}
            action={
              entry.id ? (
                <button
                  type="button"
                  class="text-button"
                  aria-label={`${entry.undone ? 'put back' : 'undo'} ${entry.name}, ${entry.value}`}
                  onClick={() => void takeBack(entry)}
                >
                  {entry.undone ? 'put back' : 'undo'}
                </button>
              ) : (
                <span>on this phone</span>
              )
            }
          />
        ))}
      </Almanac>
      {outcome && (
        <p>
          <strong>{working.value ? 'The sentence so far:' : 'The sentence now:'}</strong>{' '}
          {unbroken(outcome.advice.sentence)}
        </p>
      )}
    </Frame>
  );
}
