/** How the trap hung since the last count: decides whether there is anything to count. */
import type { TrapCount } from '../../../services/model/index.ts';
import type { Recorded } from '../../api.ts';
import { changeTrap, kinds, show, type TrapDraft } from './draft.ts';
import { Frame } from './frame.tsx';
import { countWords } from './keep.ts';

interface HangingProps {
  draft: TrapDraft;
  counts: readonly Recorded<TrapCount>[];
}
export function Hanging({ draft, counts }: HangingProps) {
  const before = counts
    .map((each) => each.data)
    .filter((each) => each.trapId === draft.trap.id)
    .sort((a, b) => a.time.localeCompare(b.time))
    .at(-1);
  const choose = (card: TrapCount['card']) => {
    changeTrap({ card });
    const counting = card === 'new' || card === 'same';
    show(counting ? { at: 'kind', kind: kinds[0] ?? 'whitefly', exact: false } : { at: 'trap' });
  };
  const subtracted = before
    ? `we subtract last time: ${countWords(before.counts)}`
    : 'nothing to subtract yet';
  const options: { card: TrapCount['card']; name: string; note: string }[] = [
    { card: 'new', name: 'New trap, hung at the last count', note: 'all on it came since then' },
    { card: 'same', name: 'Same trap as last time', note: subtracted },
    { card: 'down', name: 'It was taken down', note: 'wasps are out; this week stays empty, not zero' },
    { card: 'lost', name: 'Trap lost or ruined', note: 'this week stays empty, not zero' },
  ];
  return (
    <Frame
      title={draft.trap.name}
      done={0}
      of={kinds.length + 2}
      thumb={
        <button type="button" class="text-button" onClick={() => show({ at: 'start' })}>
          Back
        </button>
      }
    >
      <h2 class="round-question">The trap itself?</h2>
      <div class="tall-keys">
        {options.map(({ card, name, note }) => (
          <button type="button" class="tall-key" key={card} onClick={() => choose(card)}>
            <strong>{name}</strong>
            <span>{note}</span>
          </button>
        ))}
      </div>
    </Frame>
  );
}
