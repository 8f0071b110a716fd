/** The trap before it is kept: every answer with its way back, and the words of a refusal beside its field. */
import type { Outcome } from '../../api.ts';
import { Almanac, Line } from '../../parts/almanac.tsx';
import { Field, issueFor, issueWords, RefusedWords } from '../../parts/field.tsx';
import { trapKindNames } from '../../words/names.ts';
import { countedWords } from '../../words/numbers.ts';
import { changeTrap, kinds, refusedEntry, show, type TrapDraft } from './draft.ts';
import { Frame } from './frame.tsx';
import { keepTrap } from './keep.ts';
import { onPart, partName } from './part.tsx';

function Answers({ draft }: { draft: TrapDraft }) {
  return (
    <Almanac>
      {kinds.map((kind) => {
        const counted = draft.counts[kind];
        const issue = issueFor(refusedEntry.value, `counts.${kind}`);
        return (
          <Line
            key={kind}
            name={trapKindNames[kind]}
            value={
              counted === undefined
                ? 'not counted'
                : `${countedWords(counted)}${onPart(draft.countedFraction)}`
            }
            note={issue && issueWords(issue)}
            action={
              <button
                type="button"
                class="text-button"
                aria-label={`change ${trapKindNames[kind]}`}
                onClick={() => show({ at: 'kind', kind, exact: false })}
              >
                change
              </button>
            }
          />
        );
      })}
      <Line
        name="Counted"
        value={partName(draft.countedFraction)}
        action={
          <button
            type="button"
            class="text-button"
            aria-label="change how much was counted"
            onClick={() => show({ at: 'part', back: { at: 'trap' } })}
          >
            change
          </button>
        }
      />
    </Almanac>
  );
}

export function TrapSummary({ draft, outcome }: { draft: TrapDraft; outcome: Outcome | undefined }) {
  const gap = draft.card === 'lost' || draft.card === 'down';
  const refused = refusedEntry.value;
  return (
    <Frame
      title={draft.trap.name}
      done={kinds.length + 1}
      of={kinds.length + 2}
      thumb={
        <>
          <button type="button" class="text-button" onClick={() => show({ at: 'hanging' })}>
            Back
          </button>
          <button type="button" class="main-button" onClick={() => void keepTrap(draft, outcome)}>
            {draft.mends ? 'Keep it mended' : gap ? 'Keep the gap' : 'Keep this trap'}
          </button>
        </>
      }
    >
      <RefusedWords refused={refused} />
      {gap && <p>This week stays empty for this trap. An empty week is never read as zero.</p>}
      {!gap && <Answers draft={draft} />}
      <Field
        label="Days it hung"
        value={draft.exposureDays}
        onText={(exposureDays) => changeTrap({ exposureDays })}
        inputMode="decimal"
        hint={
          draft.exposureDays === ''
            ? 'it was hung this very day by its entry: how long has it hung?'
            : 'since the last count, or since it was hung'
        }
        issue={issueFor(refused, 'exposureDays')}
      />
    </Frame>
  );
}
