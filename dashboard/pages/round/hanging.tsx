/** How the trap hung since the last count: decides whether there is anything to count. */
import type { TrapCount } from '../../../services/model/index.ts';
import type { Recorded } from '../../api.ts';
import { today, zone } from '../../state.ts';
import { dayWords, localClock, localDay } from '../../words/dates.ts';
import { unbroken } from '../../words/numbers.ts';
import { changeTrap, countsOf, kinds, mendCount, show, type TrapDraft } from './draft.ts';
import { Frame } from './frame.tsx';
import { countWords } from './keep.ts';

/** How the trap may have hung, each with its consequence; without an earlier count nothing is subtracted. */
function options(draft: TrapDraft, before: TrapCount | undefined) {
  const hung = dayWords(localDay(Date.parse(draft.trap.hungAt), zone.value));
  const gap = 'this week stays empty, not zero';
  const all: { card: TrapCount['card']; name: string; note: string }[] = [
    before
      ? { card: 'new', name: 'A fresh trap', note: 'hung at the last count: all on it came since then' }
      : { card: 'new', name: 'Count it for the first time', note: `all on it came since ${hung}` },
    { card: 'down', name: 'It was taken down', note: `wasps are out; ${gap}` },
    { card: 'lost', name: 'Trap lost or ruined', note: gap },
  ];
  if (!before) return all;
  const note = `count all on it; we subtract last time: ${countWords(before)}`;
  return all.toSpliced(1, 0, { card: 'same', name: 'The same trap as last time', note });
}

function CountedAlready({ draft, count }: { draft: TrapDraft; count: Recorded<TrapCount> }) {
  const timeMs = Date.parse(count.data.time);
  const day = localDay(timeMs, zone.value);
  return (
    <>
      <h2 class="round-question">
        Counted {day === today.value ? 'today' : `on ${unbroken(dayWords(day))}`} already
      </h2>
      <p>
        At {localClock(timeMs, zone.value)}: {unbroken(countWords(count.data))}. One count a day is enough for
        a trap.
      </p>
      <div class="tall-keys">
        <button type="button" class="tall-key" onClick={() => mendCount(draft.trap, count)}>
          <strong>Mend that count</strong>
          <span>its answers are filled in</span>
        </button>
      </div>
    </>
  );
}

interface HangingProps {
  draft: TrapDraft;
  counts: readonly Recorded<TrapCount>[];
  /** The day chosen for this round. */
  day: string;
}
export function Hanging({ draft, counts, day }: HangingProps) {
  const all = countsOf(draft.trap, counts);
  const already = all.find((each) => localDay(Date.parse(each.data.time), zone.value) === day);
  const before = all.filter((each) => Date.parse(each.data.time) < draft.timeMs).at(-1)?.data;
  const hungOn = localDay(Date.parse(draft.trap.hungAt), zone.value);
  const choose = (card: TrapCount['card']) => {
    changeTrap({ card });
    const counting = card === 'new' || card === 'same';
    show(counting ? { at: 'kind', kind: kinds[0] ?? 'whitefly', exact: false } : { at: 'trap' });
  };
  const keys = (
    <>
      <h2 class="round-question">The trap itself?</h2>
      <div class="tall-keys">
        {options(draft, before).map(({ card, name, note }) => (
          <button type="button" class="tall-key" key={card} onClick={() => choose(card)}>
            <strong>{name}</strong>
            <span>{note}</span>
          </button>
        ))}
      </div>
      <p class="note">
        A trap of another make or size catches differently: take this one down and hang the new one as a trap
        of its own, under <a href="/settings">Settings, Traps</a>.
      </p>
    </>
  );
  const notYet = (
    <p>
      This trap was hung on {unbroken(dayWords(hungOn))}, after the day you count. Choose a later day, or mend
      the day it was hung under <a href="/settings">Settings, Traps</a>.
    </p>
  );
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
      {already && !draft.mends && <CountedAlready draft={draft} count={already} />}
      {(!already || draft.mends) && (hungOn > day ? notYet : keys)}
    </Frame>
  );
}
