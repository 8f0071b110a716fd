/** Where the round begins and comes back to: which trap, then leaves, then three ticks. */
import type { Trap, TrapCount } from '../../../services/model/index.ts';
import type { Recorded } from '../../api.ts';
import { Field } from '../../parts/field.tsx';
import { place, today, zone } from '../../state.ts';
import { dayWords, localDay } from '../../words/dates.ts';
import { unbroken } from '../../words/numbers.ts';
import { begunTraps, forgetBegun, goOn } from './begun.ts';
import { beginTrap, chooseDay, countedOn, countedTraps, kept, show, verdict } from './draft.ts';
import { Frame } from './frame.tsx';
import { countWords } from './keep.ts';

/** Stopped before it was kept: nothing of it is sent yet. */
function BegunTraps({ traps }: Pick<StartProps, 'traps'>) {
  const hanging = begunTraps.value.filter(({ draft }) => traps.some(({ data }) => data.id === draft.trap.id));
  return (
    <>
      {hanging.map((each) => {
        const { trap, timeMs } = each.draft;
        const typed = each.screen.at === 'kind' && each.screen.typed;
        const day = dayWords(localDay(timeMs, zone.value));
        const answers = `${countWords(each.draft)}${typed ? `, ${typed} typed` : ''}`;
        return (
          <div class="tall-keys" key={trap.id}>
            <button type="button" class="tall-key" onClick={() => goOn(each)}>
              <strong>Go on with {trap.name}</strong>
              <span>{unbroken(`begun on ${day}, on this phone only: ${answers}`)}</span>
            </button>
            <button type="button" class="text-button" onClick={() => forgetBegun(trap.id)}>
              Throw away what was begun
            </button>
          </div>
        );
      })}
    </>
  );
}

interface StartProps {
  traps: readonly Recorded<Trap>[];
  counts: readonly Recorded<TrapCount>[];
}
export function Start({ traps, counts }: StartProps) {
  const left = traps.filter((each) => !countedTraps.value.includes(each.data.id));
  const begun = kept.value.length > 0;
  const minutes = traps.length * 2 + 4;
  const number = traps.length === 1 ? '1 trap' : `${traps.length} traps`;
  return (
    <Frame
      title={begun ? 'What next?' : 'The round'}
      thumb={
        begun && (
          <button type="button" class="main-button" onClick={() => show({ at: 'kept' })}>
            That is all
          </button>
        )
      }
    >
      {begun && verdict.value && <p class="round-verdict">{verdict.value}</p>}
      {!begun && traps.length > 0 && (
        <p>
          About {minutes} minutes: {number}, 10 leaves. Or the short round: one trap.
        </p>
      )}
      {traps.length === 0 && place.value?.kind === 'outdoors' && (
        <p>Outdoors the leaves tell: a sticky trap in the open catches birds and bats.</p>
      )}
      {traps.length === 0 && place.value?.kind !== 'outdoors' && (
        <p>
          No trap hangs here yet. <a href="/settings">Hang a trap</a>, or begin with the leaves.
        </p>
      )}
      <Field
        label="Counted on"
        type="date"
        value={countedOn.value}
        max={today.value}
        onText={chooseDay}
        hint="an earlier day is fine: old counts help too"
      />
      <BegunTraps traps={traps} />
      <div class="tall-keys">
        {left.map(({ data: trap }) => (
          <button type="button" class="tall-key" key={trap.id} onClick={() => beginTrap(trap, counts)}>
            <strong>{trap.name}</strong>
            <span>the yellow trap, kind by kind</span>
          </button>
        ))}
        <button type="button" class="tall-key" onClick={() => show({ at: 'leaves' })}>
          <strong>Look under leaves</strong>
          <span>undersides, with the lens</span>
        </button>
        <button type="button" class="tall-key" onClick={() => show({ at: 'ticks' })}>
          <strong>Three ticks</strong>
          <span>ants, washed or sprayed, lowest and highest</span>
        </button>
      </div>
    </Frame>
  );
}
